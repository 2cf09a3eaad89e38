package planner

import (
	"fmt"
	"maps"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
)

// nothingRunsOut buys exactly the list and cuts everything by the cutting planner,
// each length and sheet by itself: no piece is missing, and nothing is cut that
// is neither there nor bought.
func nothingRunsOut(t require.TestingT, wanted []Wanted, s Shopping, there map[string]Have) {
	pieces := map[string]int{}
	for _, w := range wanted {
		for _, f := range w.Fabrics {
			for _, p := range f.Pieces {
				pieces[fmt.Sprint(f.Fabric.Name, p.Size, p.For)] += p.Count
			}
		}
	}
	for _, f := range s.Fabrics {
		have := there[f.Fabric.Name]
		bought := measure.Length(0)
		if f.Fabric.Form.Sheets() {
			have = have.And(Have{Sheets: []HaveSheets{{f.Fabric.Size, int(f.Buy)}}})
		} else {
			bought = measure.Length(f.Buy)
			assert.Zero(t, bought%s.Units.ShopStep(), "%s is bought by the step", f.Fabric.Name)
		}
		for _, c := range f.Cuts {
			for _, p := range c.Pieces {
				pieces[fmt.Sprint(f.Fabric.Name, p.Size, p.For)] -= p.Count
			}
			if f.Fabric.Form.Sheets() || c.Length == 0 {
				cutsFromSheet(t, f.Fabric, c, &have)
				continue
			}
			assert.LessOrEqual(t, lengthTaken(t, f.Fabric, c.Pieces), c.Length, f.Fabric.Name)
			if c.Bought {
				assert.Equal(t, bought, c.Length)
				bought = 0
				continue
			}
			at := slices.Index(have.Lengths, c.Length)
			require.GreaterOrEqual(t, at, 0, "%s has no length of %s", f.Fabric.Name, c.Length)
			have.Lengths = slices.Delete(have.Lengths, at, at+1)
		}
	}
	maps.DeleteFunc(pieces, func(_ string, n int) bool { return n == 0 })
	assert.Empty(t, pieces, "pieces that are not cut, or cut twice")
}

func lengthTaken(t require.TestingT, f Fabric, pieces []PieceCount) measure.Length {
	plan, err := cloth.CutYardage(wantsOf(f, pieces), f.Across(), cloth.Settings{})
	require.NoError(t, err)
	return f.unwashed(plan.Length)
}

func cutsFromSheet(t require.TestingT, f Fabric, c ShopCut, have *Have) {
	var wants []cloth.Want
	for _, p := range c.Pieces {
		wants = append(wants, cloth.Want{Name: p.For, Size: p.Size, Count: p.Count, Directional: f.Directional})
	}
	plan, err := cloth.CutSheets(wants, []cloth.Sheet{{Size: c.Sheets.Size, Count: 1}}, cloth.Settings{})
	require.NoError(t, err)
	assert.Empty(t, plan.Missing, f.Name)
	at := slices.IndexFunc(have.Sheets, func(h HaveSheets) bool { return h.Size == c.Sheets.Size && h.Count > 0 })
	require.GreaterOrEqual(t, at, 0, "no such sheet of %s is left", f.Name)
	have.Sheets = slices.Clone(have.Sheets)
	have.Sheets[at].Count--
}

// ownOfAll is what the jobs' files say is there, by fabric.
func ownOfAll(wanted []Wanted) map[string]Have {
	there := map[string]Have{}
	for _, w := range wanted {
		for _, f := range w.Fabrics {
			there[f.Fabric.Name] = there[f.Fabric.Name].And(f.Own)
		}
	}
	return there
}

// Every example's list, and the list of all of them together, can be carried to a
// shop.
func TestNothingRunsOutOfWhatTheListBuys(t *testing.T) {
	inch, metric := []Wanted(nil), []Wanted(nil)
	for _, name := range slices.Sorted(maps.Keys(examples(t))) {
		plan, err := Make(examples(t)[name], Prior{})
		require.NoError(t, err)
		w := plan.Wanted()
		if w.Job.Units == measure.Centimetres {
			metric = append(metric, w)
		} else {
			inch = append(inch, w)
		}
		t.Run(name, func(t *testing.T) {
			s, err := Shop([]Wanted{w}, Stocked{})
			require.NoError(t, err)
			nothingRunsOut(t, []Wanted{w}, s, ownOfAll([]Wanted{w}))
		})
	}
	for _, all := range [][]Wanted{inch, metric} {
		s, err := Shop(all, Stocked{})
		require.NoError(t, err)
		nothingRunsOut(t, all, s, ownOfAll(all))
	}
}

// shopJob is a job of plain squares of one fabric, and a backing.
func shopJob(t require.TestingT, id string, blocks int, square, onHand string) Wanted {
	job, err := Parse("job.yaml", fmt.Appendf(nil, `job: %s
fabrics:
  Foam: {form: yardage, width: 40%s}
block: {make: plain square, square: %s, print: Foam}
colourways: {tide: {blocks: %d}}
layout: {across: %d, down: 1, order: rows}
`, id, onHand, square, blocks, blocks))
	require.NoError(t, err)
	plan, err := Make(job, Prior{})
	require.NoError(t, err)
	return plan.Wanted()
}

// Hand-worked: 9 squares of 5 in are two strips of 8, 10 in: 3/8 yd. Two such jobs
// are 18 squares, three strips, 15 in: 1/2 yd, where each apart buys 3/8.
func TestJobsAreCutTogetherAndRoundedOnce(t *testing.T) {
	wanted := []Wanted{shopJob(t, "spit", 9, "5", ""), shopJob(t, "dune", 9, "5", "")}
	s, err := Shop(wanted, Stocked{})
	require.NoError(t, err)
	require.Len(t, s.Fabrics, 1)
	f := s.Fabrics[0]
	assert.Equal(t, []string{"spit", "dune"}, f.Jobs)
	assert.Equal(t, Amount(inches(t, "15")), f.Need)
	assert.Equal(t, Amount(inches(t, "18")), f.Buy)
	assert.Equal(t, Amount(inches(t, "9")), f.Saves())
}

// Hand-worked: of 15 in of strips of 5 in, 9 in on hand hold one; the other two
// are 10 in, 3/8 yd. Need less on hand would be 6 in, 1/4 yd: a strip too short.
func TestAStripIsNotCutOfTwoLengths(t *testing.T) {
	s, err := Shop([]Wanted{shopJob(t, "spit", 18, "5", ", on-hand: 1/4 yd")}, Stocked{})
	require.NoError(t, err)
	assert.Equal(t, Amount(inches(t, "13 1/2")), s.Fabrics[0].Buy)
}

// Hand-worked: of 18 squares of 5 in a piece of 20 × 10 in gives 8; the other 10 take
// two strips of 40 in, 10 in: 3/8 yd. Pieces of both jobs serve either.
func TestPiecesOnHandAreCutFirst(t *testing.T) {
	wanted := []Wanted{shopJob(t, "spit", 9, "5", ", on-hand: [20 x 10]"), shopJob(t, "dune", 9, "5", "")}
	s, err := Shop(wanted, Stocked{})
	require.NoError(t, err)
	nothingRunsOut(t, wanted, s, ownOfAll(wanted))
	assert.Equal(t, Amount(inches(t, "13 1/2")), s.Fabrics[0].Buy)
}

// What lies free on the shelf is not bought.
func TestWhatIsFreeIsNotBought(t *testing.T) {
	free := func(Fabric) Have { return Have{Lengths: []measure.Length{inches(t, "5"), inches(t, "11")}} }
	s, err := Shop([]Wanted{shopJob(t, "spit", 18, "5", "")}, Stocked{Cloth: free})
	require.NoError(t, err)
	f := s.Fabrics[0]
	assert.Zero(t, f.Buy)
	assert.Equal(t, Amount(inches(t, "16")), f.Shelf)
}

// Hand-worked: 18 squares of 5 in are two strips of 40 in and one of 10 × 5 in, 15 in
// off the bolt. Two free pieces of 6 × 11 hold four squares between them: 14 are left,
// two strips, 10 in. A piece of 4 in holds none and is left alone.
func TestFreePiecesSaveCloth(t *testing.T) {
	have := Have{Sheets: []HaveSheets{{inchSize(t, "6", "11"), 2}, {inchSize(t, "4", "40"), 1}}}
	wanted := []Wanted{shopJob(t, "spit", 9, "5", ""), shopJob(t, "dune", 9, "5", "")}
	s, err := Shop(wanted, Stocked{Cloth: func(Fabric) Have { return have }})
	require.NoError(t, err)
	nothingRunsOut(t, wanted, s, map[string]Have{"Foam": have})
	f := s.Fabrics[0]
	assert.Equal(t, []Amount{Amount(inches(t, "15")), Amount(inches(t, "5")), Amount(inches(t, "13 1/2"))}, []Amount{f.Need, f.Pieces, f.Buy})
}

// Whatever is wanted and whatever is there, what is bought and there is enough,
// and more on the shelf never buys more.
func TestTheListIsAlwaysEnough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var wanted []Wanted
		for i := range rapid.IntRange(1, 3).Draw(t, "jobs") {
			square := rapid.SampledFrom([]string{"3", "5", "7 1/2", "11"}).Draw(t, "square")
			own := rapid.SampledFrom([]string{"", ", on-hand: 1/4 yd", ", on-hand: 20 in"}).Draw(t, "own")
			wanted = append(wanted, shopJob(t, fmt.Sprint("job-", i), rapid.IntRange(1, 40).Draw(t, "blocks"), square, own))
		}
		var have Have
		for range rapid.IntRange(0, 3).Draw(t, "lengths") {
			have.Lengths = append(have.Lengths, measure.Inch.Times(rapid.IntRange(1, 60).Draw(t, "length")))
		}
		before, err := Shop(wanted, Stocked{Cloth: func(Fabric) Have { return have }})
		require.NoError(t, err)
		for range rapid.IntRange(0, 3).Draw(t, "sizes of pieces") {
			size := measure.Size{Width: measure.Inch.Times(rapid.IntRange(2, 40).Draw(t, "width")), Height: measure.Inch.Times(rapid.IntRange(2, 30).Draw(t, "height"))}
			have.Sheets = append(have.Sheets, HaveSheets{size, rapid.IntRange(1, 3).Draw(t, "pieces")})
		}
		there := ownOfAll(wanted)
		there["Foam"] = there["Foam"].And(have)
		s, err := Shop(wanted, Stocked{Cloth: func(Fabric) Have { return have }})
		require.NoError(t, err)
		nothingRunsOut(t, wanted, s, there)
		assert.LessOrEqual(t, s.Fabrics[0].Buy, before.Fabrics[0].Buy, "pieces never make it more")
	})
}

// 4 quilts of 30 × 40 with 4 in on each side are 38 × 48 in: crib packages of 45 ×
// 60. A roll 96 in wide and 40 in long gives one, 38 in off it; a package of 72 ×
// 90 serves another.
func TestBattingIsTakenFromTheShelfFirst(t *testing.T) {
	w := shopJob(t, "spit", 1, "5", "")
	w.Batting, w.Battings = &BattingPlan{Size: inchSize(t, "38", "48")}, 4
	there := []HaveBatting{{Size: inchSize(t, "96", "40")}, {Size: inchSize(t, "72", "90"), Count: 1}}
	s, err := Shop([]Wanted{w}, Stocked{Batting: there})
	require.NoError(t, err)
	require.Len(t, s.Battings, 1)
	assert.Equal(t, []int{4, 2, 2}, []int{s.Battings[0].Need, s.Battings[0].Shelf, s.Battings[0].Buy})
	assert.Equal(t, "crib", s.Battings[0].Package.Name)
	assert.Equal(t, 1, there[1].Count, "what lies there is not changed")
}

// Needles by the eight hours, blades by three quilts: published, see NeedleMinutes.
func TestRemindersFollowTheWork(t *testing.T) {
	w := shopJob(t, "spit", 1, "5", "")
	for _, c := range []struct {
		machine Minutes
		quilts  int
		want    []int
	}{{0, 0, []int{0, 0}}, {1, 1, []int{1, 1}}, {480, 3, []int{1, 1}}, {481, 4, []int{2, 2}}} {
		w.Machine, w.Quilts = c.machine, c.quilts
		s, err := Shop([]Wanted{w}, Stocked{})
		require.NoError(t, err)
		assert.Equal(t, c.want, []int{s.Needles, s.Blades})
	}
}

// 162 squares of 5 in over 100 fabrics are one fat quarter of each (12 from 18 ×
// 22), 62 × 2 and 38 × 1, and no fabric is lost. Hand-worked.
func TestAHundredFabricsAreAHundredLines(t *testing.T) {
	var w Wanted
	for i := range 100 {
		n := 1
		if i < 62 {
			n = 2
		}
		f := Fabric{Name: fmt.Sprint("Shore ", i+1), Form: FatQuarter, Size: inchSize(t, "18", "22")}
		w.Fabrics = append(w.Fabrics, WantedFabric{FabricNeed: FabricNeed{Fabric: f, Pieces: []PieceCount{{Size: squareOf(inches(t, "5")), Count: n, For: "blocks"}}}})
	}
	s, err := Shop([]Wanted{w}, Stocked{})
	require.NoError(t, err)
	sheets, pieces := Amount(0), 0
	for _, f := range s.Fabrics {
		sheets += f.Buy
		for _, c := range f.Cuts {
			for _, p := range c.Pieces {
				pieces += p.Count
			}
		}
	}
	assert.Equal(t, []any{Amount(100), 162}, []any{sheets, pieces})
}
