package patchwork

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

// Hand-worked from the pictures of the blocks; where the cloth has a direction,
// from which of the patches stand on their heads.
func TestWhichBlocksLookTheSameAfterHalfATurn(t *testing.T) {
	five := 5 * measure.Inch
	for name, c := range map[string]struct {
		recipe          Recipe
		plain, directed bool
	}{
		"plain square":                        {PlainSquare(five), true, false},
		"four-patch, two squares upside down": {FourPatch(five), true, true},
		"nine-patch":                          {NinePatch(five), true, false},
		"four-patch recut":                    {FourPatchRecut(five, measure.Inch, nil), true, true},
		"nine-patch recut":                    {NinePatchRecut(five, nil), true, false},
		"one quarter turned":                  {NinePatchRecut(five, [][]int{{0, 90}, {0, 0}}), false, false},
		"half-square triangle":                {HalfSquares(five, 2), false, false},
		"pinwheel":                            {Pinwheel(five, 2), true, true},
	} {
		block := made(t, c.recipe, quarter).Block()
		assert.Equal(t, c.plain, block.SameAfterHalfTurn(func(role string) Look { return Look{Name: role} }), name)
		assert.Equal(t, c.directed, block.SameAfterHalfTurn(func(role string) Look { return Look{role, true} }), "%s of one-way prints", name)
	}
}

// Two roles of one fabric look alike, whatever their names.
func TestRolesOfOneFabricLookAlike(t *testing.T) {
	rows := Recipe{Steps: []Step{
		cutSquare("first", 5*measure.Inch), cutSquare("last", 5*measure.Inch),
		{Name: "block", Do: Sew, Rows: [][]Cell{{{Of: "first"}, {Of: "last"}}}},
	}}
	block := made(t, rows, quarter).Block()
	assert.False(t, block.SameAfterHalfTurn(func(role string) Look { return Look{Name: role} }))
	assert.True(t, block.SameAfterHalfTurn(func(string) Look { return Look{Name: "Kelp"} }))
}

// A block and its half turn look the same both ways or neither.
func TestLookingTheSameGoesBothWays(t *testing.T) {
	forRecipes(t, func(t *rapid.T, b *Build) {
		look := func(role string) Look { return Look{role, len(role)%2 == 0} }
		block := b.Block()
		assert.Equal(t, block.SameAfterHalfTurn(look), block.Turned(2).SameAfterHalfTurn(look))
	})
}

// Of the choices of a nine-patch, a recut four-patch and a triangle: those whose
// seams join single cloths, hand-worked.
func TestSeamsBetweenSingleCloths(t *testing.T) {
	seams := func(r Recipe) map[Choice][]ClothSeam {
		b, all := made(t, r, quarter), map[Choice][]ClothSeam{}
		for _, c := range b.Choices {
			if found := b.ClothSeams(c); found != nil {
				all[c] = found
			}
		}
		return all
	}
	five := 5 * measure.Inch
	assert.Equal(t, map[Choice][]ClothSeam{{Step: "pairs"}: {{"print", "ground"}}}, seams(FourPatchRecut(five, measure.Inch, nil)))
	outer, middle := []ClothSeam{{"corner", "side"}, {"side", "corner"}}, []ClothSeam{{"side", "centre"}, {"centre", "side"}}
	assert.Equal(t, map[Choice][]ClothSeam{
		{Step: "nine-patch", Row: 0}: outer, {Step: "nine-patch", Row: 1}: middle, {Step: "nine-patch", Row: 2}: outer,
	}, seams(NinePatch(five)))
	assert.Equal(t, map[Choice][]ClothSeam{{Step: "half-squares"}: {{"print", "ground"}}}, seams(Pinwheel(five, 2)))
	stack := Recipe{Steps: []Step{cutSquare("top", five), cutSquare("foot", five), {Name: "block", Do: Sew, Rows: [][]Cell{{{Of: "top"}}, {{Of: "foot"}}}}}}
	assert.Equal(t, map[Choice][]ClothSeam{{Step: "block", Between: true}: {{"top", "foot"}}}, seams(stack))
}
