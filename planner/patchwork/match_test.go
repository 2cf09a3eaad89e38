package patchwork

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

// crossingsAt makes crossings of a join at places in 64ths of an inch.
func crossingsAt(along int8, places ...measure.Length) []Crossing {
	list := make([]Crossing, len(places))
	for i, at := range places {
		list[i] = Crossing{At: at * measure.Inch / 64, Along: along}
	}
	return list
}

// The rule, with seams of 1/4 in on a join 6 in long: places in 64ths of an inch
// (hand-worked).
func TestMeetCountsMatchPoints(t *testing.T) {
	for _, row := range []struct {
		name string
		a, b []Crossing
		want Tally
	}{
		{"nothing", nil, nil, Tally{}},
		{"only one side has seams", crossingsAt(1, 100, 200), nil, Tally{}},
		{"opposed nest", crossingsAt(+1, 100), crossingsAt(-1, 100), Tally{Nest: 1}},
		{"alike clash", crossingsAt(-1, 100), crossingsAt(-1, 100), Tally{Clash: 1}},
		{"both open", crossingsAt(0, 100), crossingsAt(0, 100), Tally{Open: 1}},
		{"one open", crossingsAt(0, 100), crossingsAt(1, 100), Tally{Open: 1}},
		{"1/64 in apart is together", crossingsAt(1, 100), crossingsAt(-1, 101), Tally{Nest: 1}},
		{"2/64 in apart is near", crossingsAt(1, 100), crossingsAt(-1, 102), Tally{Near: 1}},
		{"just under a seam is near", crossingsAt(1, 115), crossingsAt(-1, 100), Tally{Near: 1}},
		{"a seam apart is nothing", crossingsAt(1, 116), crossingsAt(-1, 100), Tally{}},
		{"near needs both sides", crossingsAt(1, 100, 105), nil, Tally{}},
		{"near to one with a partner is nothing", crossingsAt(1, 100), crossingsAt(-1, 100, 105), Tally{Nest: 1}},
		{"each pair that misses counts", crossingsAt(1, 100), crossingsAt(-1, 95, 105), Tally{Near: 2}},
		{"a pair that meets in between hides none", crossingsAt(1, 100, 104), crossingsAt(-1, 104, 108), Tally{Nest: 1, Near: 1}},
		{"three in one place, two alike", append(crossingsAt(1, 100), crossingsAt(-1, 100)...), crossingsAt(-1, 100), Tally{Clash: 1}},
		{"three in one place, one open", append(crossingsAt(1, 100), crossingsAt(0, 100)...), crossingsAt(-1, 100), Tally{Nest: 1}},
		{"four in one place", append(crossingsAt(1, 100), crossingsAt(-1, 100)...), append(crossingsAt(1, 100), crossingsAt(-1, 100)...), Tally{Clash: 1}},
		{"the end allowances are left out", crossingsAt(1, 10, 16, 368, 380), crossingsAt(1, 10, 16, 368, 380), Tally{}},
		{"just inside them counts", crossingsAt(1, 17, 367), crossingsAt(-1, 17, 367), Tally{Nest: 2}},
	} {
		t.Run(row.name, func(t *testing.T) {
			assert.Equal(t, row.want, Meet(row.a, row.b, 6*measure.Inch, quarter))
			assert.Equal(t, row.want, Meet(row.b, row.a, 6*measure.Inch, quarter), "seen from the other side")
		})
	}
}

// Near misses are told by the seam in use: 6 mm are near with 7.5 mm seams, not
// with 5 mm seams (hand-worked).
func TestNearGoesByTheSeamInUse(t *testing.T) {
	a, b := []Crossing{{100 * mm, 1}}, []Crossing{{106 * mm, 1}}
	assert.Equal(t, Tally{Near: 1}, Meet(a, b, 300*mm, mm*15/2))
	assert.Equal(t, Tally{}, Meet(a, b, 300*mm, 5*mm))
}

// Where seams of one side lie well apart, the rule is that of a plain search
// over all pairs.
func TestMeetIsThePlainSearchOverAllPairs(t *testing.T) {
	const sixtyFourths = 60 * 64
	rapid.Check(t, func(t *rapid.T) {
		side := func(name string) []Crossing {
			steps := rapid.SliceOfN(rapid.IntRange(3, 60), 0, 12).Draw(t, name)
			at, list := 16, []Crossing{}
			for _, step := range steps {
				at += step
				lean := rapid.SampledFrom([]int8{-1, 0, 1}).Draw(t, "lean")
				list = append(list, crossingsAt(lean, measure.Length(at))...)
			}
			return list
		}
		a, b := side("a"), side("b")
		assert.Equal(t, plainSearch(a, b), Meet(a, b, sixtyFourths*measure.Inch/64, quarter))
	})
}

func plainSearch(a, b []Crossing) Tally {
	var tally Tally
	partnerA, partnerB := make([]bool, len(a)), make([]bool, len(b))
	for i, p := range a {
		for j, q := range b {
			if max(p.At-q.At, q.At-p.At) <= measure.Inch/64 {
				partnerA[i], partnerB[j] = true, true
				switch p.Along * q.Along {
				case 1:
					tally.Clash++
				case -1:
					tally.Nest++
				default:
					tally.Open++
				}
			}
		}
	}
	for i, p := range a {
		for j, q := range b {
			if !partnerA[i] && !partnerB[j] && max(p.At-q.At, q.At-p.At) < quarter {
				tally.Near++
			}
		}
	}
	return tally
}

// The sides of a pair: its seam crosses top and bottom, in the middle, and
// leans left the first way (hand-worked).
func TestCrossingsOfAPair(t *testing.T) {
	pair := SewBeside(CutPiece("a", sides(t, "2", "2")), CutPiece("b", sides(t, "2", "2")), quarter, 0)
	for _, side := range []Side{TopSide, BottomSide} {
		assert.Equal(t, []Crossing{{in(t, "1 3/4"), -1}}, Crossings(pair, side, quarter, nil))
		assert.Equal(t, []Crossing{{in(t, "1 3/4"), +1}}, Crossings(pair, side, quarter, Way{true}))
	}
	for _, side := range []Side{LeftSide, RightSide} {
		assert.Empty(t, Crossings(pair, side, quarter, nil))
	}
}

// A diagonal meets the sewing line of a side where it is sewn, not where it
// reaches the raw edge: cut 1 in from the top, the diagonal of a 2 in square
// reaches the raw edge of the upper piece 1 in from the left, and its sewing
// line 1/4 in farther right (hand-worked).
func TestCrossingsOfDiagonalsAreOnTheSewingLine(t *testing.T) {
	upper := RecutUnit(triangles(), nil, []measure.Length{in(t, "1")})[0][0]
	assert.Equal(t, []Crossing{{in(t, "1 1/4"), -1}}, Crossings(upper, BottomSide, quarter, nil))
	assert.Empty(t, Crossings(upper, TopSide, quarter, nil), "it leaves the top at the end of the sewing line")
}

// Two seams that come together in one place make one match point with the
// seam across the join, and a seam that meets none is no match (hand-worked).
func TestMatchesOfAJoinKeepEverySeamThatMeets(t *testing.T) {
	seamAt := func(choice int, along int8, eighths measure.Length) crossing {
		return crossing{eighths * measure.Inch / 8, Signed{choice, along}}
	}
	a := []crossing{seamAt(0, -1, 8), seamAt(1, +1, 8), seamAt(2, +1, 20)}
	b := []crossing{seamAt(3, +1, 8), seamAt(4, -1, 21), seamAt(5, -1, 40)}
	assert.Equal(t, []Match{
		{At: in(t, "3/4"), Leans: []Signed{{0, -1}, {1, +1}, {3, +1}}},
		{At: in(t, "2 1/4"), Near: true, Leans: []Signed{{2, +1}, {4, -1}}},
	}, meet(a, b, quarter))
}
