package planner

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A slip in what people call a block leads to the block, as one in its own name
// does; what is like nothing leads nowhere.
func TestASlipInWhatABlockIsCalledLeadsToIt(t *testing.T) {
	for typed, want := range map[string]string{
		"disapearing nine-patch": "nine-patch recut", "disappearing pinwhel": "pinwheel recut",
		"rail fense": "rail", "nine-pach": "nine-patch", "carpenter's square knot": "",
	} {
		assert.Equal(t, want, NearBuiltIn(typed), typed)
	}
}
