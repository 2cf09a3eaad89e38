package planner

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Slips: worked by hand from the definition (optimal string alignment);
// "ca" to "abc" is 3 in it, and 2 in the unrestricted form.
func TestSlips(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"", "", 0}, {"", "abc", 3}, {"abc", "", 3}, {"tide", "tide", 0}, {"tide", "tied", 1},
		{"kitten", "sitting", 3}, {"ca", "abc", 3}, {"dune", "dunes", 1}, {"藍", "監", 1},
	} {
		assert.Equal(t, c.want, Slips(c.a, c.b), c.a+" "+c.b)
	}
}
