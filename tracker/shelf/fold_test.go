package shelf

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

const (
	inch = planner.Amount(measure.Inch)
	yard = 36 * inch
)

// Hand-worked: 6 blocks take 12 squares of 5 in of each fabric. 12 come from one
// fat quarter of 18 × 22 (3 × 4). Of Foam 40 in wide 8 lie in a strip: two
// strips, 10 in. The top is 54 × 9 finished, the backing 79 × 17: two whole widths
// of 40 in less a seam, 17 in off the bolt each, of which nothing else comes.
func TestBookingKeepsWhatAJobNeeds(t *testing.T) {
	w := &world{t: t}
	require.NoError(t, w.enter(foam(3*measure.Yard, "A1")))
	require.NoError(t, w.enter(kelp(2, "")))
	w.book(dunes("spit", 6, ""))
	s := w.fold()
	f, k := s.Items[0], s.Items[1]
	assert.Equal(t, []planner.Amount{44 * inch, 64 * inch, 0}, []planner.Amount{f.Kept, f.Free, f.Used})
	assert.Equal(t, []Claim{{"spit", "", 10 * inch}, {"spit", "backing", 34 * inch}}, f.For)
	assert.Equal(t, []planner.Amount{1, 1}, []planner.Amount{k.Kept, k.Free})
	assert.Zero(t, w.needOf(s, "spit", "Foam", "").Short)
}

// Logging the cut uses cloth up in proportion, and what it leaves comes back as
// pieces of the same dye lot; taking the entry back makes it as if never cut.
func TestCuttingUsesClothAndLeavesPieces(t *testing.T) {
	w := &world{t: t}
	require.NoError(t, w.enter(foam(measure.Length(15*inch), "A1"))) // too little for the backing
	job := w.book(dunes("spit", 6, ""))
	before := w.fold()
	require.NoError(t, w.log(job, "cut", "Foam", 6))
	f := w.fold().Items[0]
	assert.Equal(t, []planner.Amount{5 * inch, 5 * inch}, []planner.Amount{f.Used, f.Kept}, "half of the pieces")
	require.NoError(t, w.log(job, "cut", "Foam", 6))
	s := w.fold()
	require.Len(t, s.Items, 2)
	assert.Equal(t, []planner.Amount{10 * inch, 0}, []planner.Amount{s.Items[0].Used, s.Items[0].Kept})
	left := s.Items[1]
	// Hand-worked: the second strip gives 4 squares; 20 × 5 in are left of 40.
	assert.Equal(t, "Foam, pieces 20 × 5 in", left.Called())
	assert.Equal(t, []any{"spit.2", "A1", "spit", planner.Amount(1)}, []any{left.ID, left.DyeLot, left.Job, left.Free})
	w.undoJob(job)
	w.undoJob(job)
	after := w.fold()
	assert.Equal(t, before.Items, after.Items)
}

// Backing and batting go with their own operations.
func TestEachOperationUsesItsOwn(t *testing.T) {
	w := &world{t: t}
	require.NoError(t, w.enter(foam(3*measure.Yard, "")))
	require.NoError(t, w.enter(tracker.Shelf{Do: tracker.PutOn, Material: planner.BattingMaterial, Form: planner.Roll, Width: 96 * measure.Inch, Amount: 2 * yard}))
	require.NoError(t, w.enter(tracker.Shelf{Do: tracker.PutOn, Material: planner.ThreadMaterial, Name: "Ecru", Form: planner.Spool, Amount: 500 * yard}))
	job := w.book(dunes("spit", 6, ""))
	// 62 × 17 off a roll 96 wide: the 62 lie across, 17 in off the roll.
	assert.Equal(t, 17*inch, w.fold().Items[1].Kept)
	require.NoError(t, w.log(job, "layer", "quilt-1", 1))
	s := w.fold()
	assert.Equal(t, 17*inch, s.Items[1].Used)
	assert.Equal(t, 44*inch, s.Items[0].Used, "the backing and the pieces that were logged along")
	assert.Positive(t, s.Items[2].Used)
	assert.Positive(t, s.Items[2].Kept, "the quilting is to be sewn yet")
}

// One dye lot that does for all of a job goes before an older one that does not.
func TestOneDyeLotIsPreferred(t *testing.T) {
	w := &world{t: t}
	require.NoError(t, w.enter(foam(measure.Length(20*inch), "old")))
	require.NoError(t, w.enter(foam(2*measure.Yard, "new")))
	w.book(dunes("spit", 6, ""))
	s := w.fold()
	back := w.needOf(s, "spit", "Foam", "backing")
	assert.Equal(t, 1, back.Lots)
	assert.Equal(t, []Claim{{"spit", "", 10 * inch}}, s.Items[0].For)
	assert.Equal(t, []Claim{{"spit", "backing", 34 * inch}}, s.Items[1].For)

	w = &world{t: t}
	require.NoError(t, w.enter(kelp(1, "old")))
	require.NoError(t, w.enter(kelp(1, "new")))
	w.book(dunes("spit", 12, "")) // 24 squares: 2 fat quarters
	assert.Equal(t, 2, w.needOf(w.fold(), "spit", "Kelp", "").Lots, "it would be split, and says so")
}

// A strip is not cut of two lengths: panels of 17 in are not cut of 16 and 16.
func TestALengthIsNotJoined(t *testing.T) {
	w := &world{t: t}
	require.NoError(t, w.enter(foam(measure.Length(16*inch), "A")))
	require.NoError(t, w.enter(foam(measure.Length(16*inch), "A")))
	w.book(dunes("spit", 6, ""))
	assert.Equal(t, 34*inch, w.needOf(w.fold(), "spit", "Foam", "backing").Short)
}

// What a job file says is on hand is the job's own, and not on the shelf.
func TestOnHandIsTheJobsOwn(t *testing.T) {
	w := &world{t: t}
	require.NoError(t, w.enter(kelp(1, "")))
	w.book(dunes("spit", 12, ", on-hand: 1"))
	s := w.fold()
	n := w.needOf(s, "spit", "Kelp", "")
	assert.Equal(t, []planner.Amount{1, 1, 0}, []planner.Amount{n.FromOwn, n.Kept, n.Short})
	require.Len(t, s.Own, 1)
	assert.Equal(t, planner.Amount(1), s.Items[0].Kept)
	require.NoError(t, w.log(0, "cut", "Kelp", 12))
	s = w.fold()
	assert.Equal(t, []planner.Amount{1, 0}, []planner.Amount{s.Own[0].Used, s.Items[0].Used}, "its own is cut first")
}

// Scrap takes what is free before what is kept; what is kept cannot be taken off.
func TestScrapDrawsOnWhatIsFreeFirst(t *testing.T) {
	w := &world{t: t}
	require.NoError(t, w.enter(kelp(3, "")))
	w.book(dunes("spit", 12, ""))
	require.NoError(t, w.enter(tracker.Shelf{Do: tracker.Scrapped, Item: "1", Amount: 1}))
	assert.Zero(t, w.needOf(w.fold(), "spit", "Kelp", "").Short)
	err := w.enter(tracker.Shelf{Do: tracker.TakenOff, Item: "1", Amount: 1})
	assert.ErrorContains(t, err, "only 0 fat quarters of item 1 (Kelp, fat quarter 18 × 22 in) is free; kept: 2 fat quarters for spit")
	require.NoError(t, w.enter(tracker.Shelf{Do: tracker.Scrapped, Item: "1", Amount: 1}))
	assert.Equal(t, planner.Amount(1), w.needOf(w.fold(), "spit", "Kelp", "").Short)
	assert.ErrorContains(t, w.enter(tracker.Shelf{Do: tracker.Scrapped, Item: "1", Amount: 2}), "only 1 fat quarter of item 1")
}

// Pieces that a recount did not find have used their cloth, and need more.
func TestLostPiecesNeedMoreCloth(t *testing.T) {
	w := &world{t: t}
	require.NoError(t, w.enter(foam(measure.Length(16*inch), "")))
	job := w.book(dunes("spit", 6, ""))
	require.NoError(t, w.log(job, "cut", "Foam", 12))
	w.recount(job, "cut", "Foam", 6)
	f := w.fold().Items[0]
	assert.Equal(t, []planner.Amount{10 * inch, 5 * inch, 1 * inch}, []planner.Amount{f.Used, f.Kept, f.Free})
}

// Numbers of items are never given twice, also where one was taken back.
func TestItemsKeepTheirNumbers(t *testing.T) {
	w := &world{t: t}
	require.NoError(t, w.enter(kelp(3, "")))
	require.NoError(t, w.enter(kelp(4, "")))
	require.True(t, w.undo())
	require.NoError(t, w.enter(kelp(5, "")))
	s := w.fold()
	require.Len(t, s.Items, 2)
	assert.Equal(t, []string{"1", "3"}, []string{s.Items[0].ID, s.Items[1].ID})
}

// A job that an older program booked says nothing of cloth, and is named.
func TestAJobWithoutNeedsIsNamed(t *testing.T) {
	w := &world{t: t}
	job := w.book(dunes("spit", 6, ""))
	ledger := w.jobs[job].Ledger
	ledger.Cloth = nil
	old, err := tracker.Fold([]tracker.Event{{Schema: 1, ID: "b", Seq: 1, At: morning, Kind: tracker.Booked, Ledger: &ledger}})
	require.NoError(t, err)
	s, err := Fold(nil, []tracker.State{old})
	require.NoError(t, err)
	assert.Equal(t, []string{"spit"}, s.Silent)
}

// A revision that needs less frees what it no longer takes.
func TestARevisionKeepsWhatItNeeds(t *testing.T) {
	w := &world{t: t}
	require.NoError(t, w.enter(kelp(3, "")))
	job := w.book(dunes("spit", 12, ""))
	require.NoError(t, w.log(job, "cut", "Kelp", 12))
	w.put(w.jobs[job], job, dunes("spit", 6, ""))
	k := w.fold().Items[0]
	assert.Equal(t, []planner.Amount{1, 0, 2}, []planner.Amount{k.Used, k.Kept, k.Free})
}

// On a day whose clock stands still what was counted is what lies there, whatever
// was cut at the same time.
func TestCountingComesAfterCuttingOfTheSameTime(t *testing.T) {
	w := &world{t: t}
	require.NoError(t, w.enter(foam(measure.Yard, "")))
	job := w.book(dunes("spit", 6, ""))
	require.NoError(t, w.log(job, "cut", "Foam", 12))
	require.NoError(t, w.enter(tracker.Shelf{Do: tracker.CountedAnew, Item: "1", Amount: 20 * inch}))
	w.maker[1].At = w.fold().Needs[1].Uses[0].At
	assert.Equal(t, 20*inch, w.fold().Items[0].Lies())
}

// A fat quarter of which some squares are cut lies there for its job until all of
// them are: it is neither used up nor whole. Hand-worked: 12 squares of 5 in come
// of one; with 5 cut the other 7 still do, and no thirteenth.
func TestABegunSheetStillServesItsJob(t *testing.T) {
	w := &world{t: t}
	require.NoError(t, w.enter(kelp(1, "")))
	job := w.book(dunes("spit", 6, ""))
	require.NoError(t, w.log(job, "cut", "Kelp", 5))
	k := w.fold().Items[0]
	assert.Equal(t, []planner.Amount{0, 1, 0}, []planner.Amount{k.Used, k.Kept, k.Free})

	for blocks, makes := range map[int]int{6: 6, 7: 6} {
		plan := w.planned(w.jobs[job], dunes("spit", blocks, ""))
		ask := planner.EnoughAsk{Plan: plan, Prior: w.jobs[job].Prior(), Begun: true,
			Have: map[string]planner.Have{"Kelp": w.fold().Free(plan.Fabrics[0].Fabric, []string{"spit"})},
			Left: func(p planner.Plan) planner.Wanted {
				return w.jobs[job].Wanted(p, func(string) planner.Have { return planner.Have{} })
			}}
		e, err := ask.Answer()
		require.NoError(t, err)
		assert.Equal(t, makes, e.Colourways[0].Makes)
		assert.Equal(t, 7, e.Fabrics[0].Gives)
	}

	require.NoError(t, w.log(job, "cut", "Kelp", 7))
	k = w.fold().Items[0]
	assert.Equal(t, []planner.Amount{1, 0, 0}, []planner.Amount{k.Used, k.Kept, k.Free})
}

// Of 12 squares and 4 spare ones 3 are spoilt: nothing more is cut for them, nor
// kept, nor bought. With 6 spoilt 2 are cut anew, of 16 that take 10 in.
func TestLostPiecesAreMadeUpFromSparesFirst(t *testing.T) {
	w := &world{t: t}
	require.NoError(t, w.enter(foam(measure.Yard, "")))
	file := strings.Replace(dunes("spit", 6, ""), "backing:", "spares: {pieces: 4}\nbacking:", 1)
	job := w.book(file)
	cloth := func() (kept planner.Amount, pieces int) {
		for _, c := range w.fold().Items[0].For {
			if c.For == "" {
				kept += c.Amount
			}
		}
		wanted := w.jobs[job].Wanted(w.planned(w.jobs[job], file), func(string) planner.Have { return planner.Have{} })
		for _, p := range wanted.Fabrics[1].Pieces {
			if p.For != "backing" {
				pieces += p.Count
			}
		}
		return kept, pieces
	}
	_, pieces := cloth()
	assert.Equal(t, 16, pieces)
	require.NoError(t, w.log(job, "cut", "Foam", 12))
	for lies, want := range map[int]int{12: 0, 9: 0, 6: 2} {
		w.recount(job, "cut", "Foam", 12)
		w.undoJob(job) // as if never recounted
		if lies < 12 {
			w.recount(job, "cut", "Foam", lies)
		}
		kept, pieces := cloth()
		assert.Equal(t, want, pieces, "%d lie there", lies)
		assert.Equal(t, want > 0, kept > 0)
		if lies < 12 {
			w.undoJob(job)
		}
	}
}
