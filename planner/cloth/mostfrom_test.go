package cloth

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Squares from a fat quarter of 18 × 22 in, cut in either style. Source:
// docsbay.net, "Number of squares from a fat quarter"; the same list at
// piecefulliving.blogspot.com 2011/08.
func TestMostSquaresFromAFatQuarterAgreeWithTheChart(t *testing.T) {
	for square, most := range map[string]int{
		"2": 99, "2 1/2": 56, "3": 42, "3 1/2": 30, "4": 20, "4 1/2": 16, "5": 12, "5 1/2": 12, "6": 9, "6 1/2": 6,
	} {
		for _, style := range []Style{Simple, Nested} {
			want := []Want{{Size: size(t, square, square), Count: 120}}
			s := Settings{Style: style, Effort: 5}
			plan, err := MostFrom(want, nil, Sheet{Size: size(t, "18", "22")}, s)
			require.NoError(t, err)
			sound(t, plan, want, s)
			assert.Len(t, plan.Cloths[0].Pieces, most, "%s in, %s", square, style)
		}
	}
}

// Of one sheet, what is worth more is cut first; wants of one size and another
// worth stay apart.
func TestWorthDecidesWhatIsCut(t *testing.T) {
	wants := []Want{
		{Name: "spares", Size: size(t, "5", "5"), Count: 12},
		{Name: "blocks", Size: size(t, "5", "5"), Count: 7},
		{Name: "too large", Size: size(t, "19", "19"), Count: 1},
	}
	plan, err := MostFrom(wants, []int{1, 3, 100}, Sheet{Size: size(t, "18", "22")}, Settings{Effort: 5})
	require.NoError(t, err)
	sound(t, plan, wants, Settings{})
	short := map[string]int{}
	for _, m := range plan.Missing {
		short[m.Name] = m.Count
	}
	assert.Equal(t, map[string]int{"spares": 7, "too large": 1}, short)

	plan, err = MostFrom(wants[2:], nil, Sheet{Size: size(t, "18", "22")}, Settings{})
	require.NoError(t, err)
	assert.Empty(t, plan.Cloths, "nothing fits, and the sheet is not cut")
	assert.Equal(t, wants[2:], plan.Missing)
}
