package planner

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Values of CSS Color Module Level 4: #rgb doubles each digit (section 5.2),
// slategray is 708090 (section 6.1).
func TestFabricsGiveTheirColourInOneForm(t *testing.T) {
	for colour, want := range map[string]string{"": "", "#2E6f57": "2e6f57", "#2aF": "22aaff", "SlateGray": "708090"} {
		assert.Equal(t, want, Fabric{Colour: colour}.Hex(), colour)
	}
}
