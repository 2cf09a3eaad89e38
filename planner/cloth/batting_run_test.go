package cloth

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

// Hand-worked: a crib package is 45 × 60, 2700 in²; a queen 90 × 108 holds four of
// 44 × 53 (2 × 2), 9720 in², less than four cribs; a twin 72 × 90 holds none beside
// another: 44 + 44 = 88 by 53 is in 90 × 72, so that two come of it, and two twins
// are 12960. King 120 × 120 is 14400.
func TestSeveralBattingsComeFromOnePackage(t *testing.T) {
	four := []measure.Size{inches(44, 53), inches(44, 53), inches(44, 53), inches(44, 53)}
	p, n, plan, ok := FewerPackages(four, Packages)
	assert.True(t, ok)
	assert.Equal(t, []any{"queen", 1, 4}, []any{p.Name, n, len(plan.Cloths[0].Pieces)})
	_, _, _, ok = FewerPackages(four[:1], Packages)
	assert.False(t, ok, "one is one package")
	_, _, _, ok = FewerPackages([]measure.Size{inches(130, 130), inches(44, 53)}, Packages)
	assert.False(t, ok, "no package holds the large one")
}

// Hand-worked: off a roll 96 wide, 60 × 70 and 36 × 70 lie side by side in 70 in,
// where each by itself takes 60 (70 across) and 36: 96.
func TestSeveralSizesComeOffTheRollTogether(t *testing.T) {
	length, ok := RollFor([]measure.Size{inches(60, 70), inches(36, 70)}, 96*measure.Inch)
	assert.True(t, ok)
	assert.Equal(t, 70*measure.Inch, length)
	_, ok = RollFor([]measure.Size{inches(100, 97)}, 96*measure.Inch)
	assert.False(t, ok)
}

// Together never takes more than apart, and what is bought has the area.
func TestBattingsTogetherTakeNoMoreThanApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var sizes []measure.Size
		var apart measure.Length
		var area measure.Area
		for range rapid.IntRange(1, 5).Draw(t, "quilts") {
			s := inches(rapid.IntRange(20, 90).Draw(t, "w"), rapid.IntRange(20, 108).Draw(t, "h"))
			sizes = append(sizes, s)
			one, _ := RollFor([]measure.Size{s}, 96*measure.Inch)
			apart += one
			area = area.Add(measure.Mul(s.Width, s.Height))
		}
		length, ok := RollFor(sizes, 96*measure.Inch)
		assert.True(t, ok)
		assert.LessOrEqual(t, length, apart)
		if p, n, _, ok := PackagesFor(sizes, Packages); ok {
			assert.GreaterOrEqual(t, areaOf(p, n).Cmp(area), 0)
			assert.LessOrEqual(t, n, len(sizes))
		}
	})
}
