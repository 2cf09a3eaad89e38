package shelf

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

// Whatever happens, in whatever order: nothing on the shelf is below 0, and what
// was put there is somewhere.
func TestTheShelfNeverGoesNegativeAndAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := &world{t: t}
		for range rapid.IntRange(1, 25).Draw(t, "steps") {
			happening(t, w)
			addsUp(t, w.fold())
		}
	})
}

// addsUp checks every item and every need.
func addsUp(t require.TestingT, s Shelf) {
	for _, i := range append(s.Items, s.Own...) {
		for _, a := range []planner.Amount{i.Put, i.Used, i.Kept, i.Free, i.Scrapped, i.TakenOff} {
			require.GreaterOrEqual(t, a, planner.Amount(0), i.ID)
		}
		require.Equal(t, i.Put+i.Found, i.Used+i.Kept+i.Free+i.Scrapped+i.TakenOff, i.ID)
		require.Equal(t, i.Kept, sum(i.For), i.ID)
		require.Equal(t, i.Used, sum(i.By), i.ID)
	}
	for _, n := range s.Needs {
		require.GreaterOrEqual(t, n.Short, planner.Amount(0))
		require.Equal(t, n.Stock.Left, n.Kept+n.FromOwn+n.Begun+n.Short, n.Name)
	}
}

func sum(claims []Claim) planner.Amount {
	var all planner.Amount
	for _, c := range claims {
		all += c.Amount
	}
	return all
}

// happening is one thing that may happen to a maker.
func happening(t *rapid.T, w *world) {
	job := -1
	if len(w.jobs) > 0 {
		job = rapid.IntRange(0, len(w.jobs)-1).Draw(t, "job")
	}
	n := rapid.IntRange(1, 15).Draw(t, "n")
	fabric := rapid.SampledFrom([]string{"Kelp", "Foam"}).Draw(t, "fabric")
	lot := rapid.SampledFrom([]string{"", "A", "B"}).Draw(t, "dye lot")
	switch what := rapid.SampledFrom([]string{"foam", "kelp", "pieces", "pieces of kelp", "thread", "roll", "count", "scrap", "take", "undo", "book", "cut", "more", "lost", "back", "revise"}).Draw(t, "what"); {
	case what == "foam":
		require.NoError(t, w.enter(foam(measure.Inch.Times(7*n), lot)))
	case what == "kelp":
		require.NoError(t, w.enter(kelp(n, lot)))
	case what == "pieces": // some as wide as a strip, some as a fat quarter
		require.NoError(t, w.enter(rectangles("Foam", 3*n, rapid.SampledFrom([]int{5, 17, 40}).Draw(t, "across"), n%4+1, lot)))
	case what == "pieces of kelp":
		require.NoError(t, w.enter(rectangles("Kelp", 3*n, 22, n%4+1, lot)))
	case what == "thread":
		require.NoError(t, w.enter(tracker.Shelf{Do: tracker.PutOn, Material: planner.ThreadMaterial, Name: "Ecru", Form: planner.Spool, Amount: planner.Amount(n) * 30 * yard}))
	case what == "roll":
		require.NoError(t, w.enter(tracker.Shelf{Do: tracker.PutOn, Material: planner.BattingMaterial, Form: planner.Roll, Width: 60 * measure.Inch, Amount: planner.Amount(n) * 20 * inch}))
	case what == "count", what == "scrap", what == "take":
		deed := map[string]tracker.ShelfDeed{"count": tracker.CountedAnew, "scrap": tracker.Scrapped, "take": tracker.TakenOff}[what]
		enterSome(t, w, deed, planner.Amount(n))
	case what == "undo":
		w.undo()
	case what == "book" && len(w.jobs) < 3:
		w.book(dunes(fmt.Sprint("job-", len(w.jobs)), n, rapid.SampledFrom([]string{"", ", on-hand: 1"}).Draw(t, "own")))
	case job < 0:
	case what == "cut":
		_ = w.log(job, "cut", fabric, n) // what is refused changes nothing
	case what == "more":
		_ = w.log(job, rapid.SampledFrom([]string{"layer", "quilt", "prepare-backing", "hand-over"}).Draw(t, "op"), "quilt-1", 1)
	case what == "lost":
		w.recount(job, "cut", fabric, n)
	case what == "back":
		w.undoJob(job)
	case what == "revise":
		w.put(w.jobs[job], job, dunes(fmt.Sprint("job-", job), n, ""))
	}
}

// enterSome says something of an item, which may be refused.
func enterSome(t *rapid.T, w *world, deed tracker.ShelfDeed, n planner.Amount) {
	items := w.fold().Items
	if len(items) == 0 {
		return
	}
	i := rapid.SampledFrom(items).Draw(t, "item")
	if !i.Form.Counted() {
		n *= 3 * inch
	}
	_ = w.enter(tracker.Shelf{Do: deed, Item: i.ID, Amount: n})
}

// The order in which jobs are handed over to the fold changes nothing.
func TestTheFoldDependsOnTheLogAlone(t *testing.T) {
	w := &world{t: t}
	require.NoError(t, w.enter(kelp(3, "")))
	w.book(dunes("spit", 12, ""))
	w.book(dunes("dune", 12, ""))
	there := w.fold()
	w.jobs[0], w.jobs[1] = w.jobs[1], w.jobs[0]
	assert.Equal(t, there, w.fold())
}
