package planner

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func TestARouteIsNumberedByTens(t *testing.T) {
	assert.Equal(t, map[string]int{"prepare": 10, "cut": 20, "kit": 30}, number([]string{"prepare", "cut", "kit"}, nil))
}

// Hand-worked: numbers on the wall stay, a new operation goes between.
func TestANumberOnTheWallStays(t *testing.T) {
	wall := map[string]int{"prepare": 10, "cut": 20, "kit": 30, "trim": 40}
	for _, c := range []struct {
		name string
		keys []string
		want map[string]int
	}{
		{"nothing new", []string{"prepare", "cut", "kit"}, map[string]int{"prepare": 10, "cut": 20, "kit": 30}},
		{"one between", []string{"prepare", "test", "cut"}, map[string]int{"prepare": 10, "test": 15, "cut": 20}},
		{"two between", []string{"prepare", "test", "mark", "cut"}, map[string]int{"prepare": 10, "test": 15, "mark": 17, "cut": 20}},
		{"one first", []string{"wash", "prepare"}, map[string]int{"wash": 5, "prepare": 10}},
		{"one last", []string{"kit", "trim", "pack"}, map[string]int{"kit": 30, "trim": 40, "pack": 50}},
		{"a retired number is not used again", []string{"kit", "pack"}, map[string]int{"kit": 30, "pack": 45}},
	} {
		assert.Equal(t, c.want, number(c.keys, wall), c.name)
	}
}

func TestNoTwoOperationsShareANumber(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		all := []string{"a", "b", "c", "d", "e", "f", "g", "h", "i", "j", "k", "l", "m", "n", "o", "p"}
		wall := map[string]int{}
		for range rapid.IntRange(1, 6).Draw(t, "revisions") {
			keys := rapid.Permutation(all).Draw(t, "route")[:rapid.IntRange(1, len(all)).Draw(t, "length")]
			got := number(keys, wall)
			seen := map[int]bool{}
			for _, k := range keys {
				assert.False(t, seen[got[k]], "number %d twice", got[k])
				seen[got[k]] = true
				if old, ok := wall[k]; ok {
					assert.Equal(t, old, got[k], "renumbered")
				} else {
					for other, n := range wall {
						assert.NotEqual(t, n, got[k], "%s took the number of %s", k, other)
					}
				}
			}
			for k, n := range got {
				wall[k] = n
			}
		}
	})
}
