package tick

import (
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner"
	"quiltrun/tracker"
)

func TestKeys(t *testing.T) {
	for _, c := range []struct {
		name string
		keys []string
		done int
		said string
	}{
		{"space and enter check off one", []string{"space", "enter"}, 2, ""},
		{"a number is for the next key", []string{"1", "0", "space"}, 10, "10 pairs checked off"},
		{"and for that one alone", []string{"3", "space", "enter"}, 4, ""},
		{"backspace takes a digit off", []string{"1", "2", "backspace", "space"}, 1, ""},
		{"esc takes all of them", []string{"1", "2", "esc", "space"}, 1, ""},
		{"more than is left is nothing", []string{"1", "1", "space"}, 0, "11 typed, and 10 left: nothing was checked off"},
		{"nothing is nothing", []string{"0", "space"}, 0, "0 is nothing to check off"},
		{"a long number is a slip", []string{"1", "2", "3", "4", "5", "6"}, 0, "that number is too long; type it anew"},
		{"the end of the chain", []string{"1", "0", "enter", "space"}, 10, "all 10 pairs are made: n for the next"},
		{"take back", []string{"4", "space", "t"}, 0, "taken back: 4 pairs of tide"},
		{"one after the other", []string{"space", "enter", "t", "T"}, 0, "taken back: 1 pair of tide"},
		{"nothing to take back", []string{"t"}, 0, "there is nothing to take back here"},
		{"take back clears a number first", []string{"space", "7", "t"}, 1, ""},
		{"capitals are as good", []string{"B"}, 0, "a full bobbin is in"},
		{"a note", []string{"w", "o", "k", "enter", "space"}, 1, ""},
		{"a note is dropped", []string{"w", "o", "esc"}, 0, "no note was kept"},
		{"an empty note is none", []string{"w", "enter"}, 0, "there was nothing in the note"},
		{"work ends a pause", []string{"p", "space"}, 1, ""},
		{"keys that mean nothing do nothing", []string{"x", "f9", "up", "space"}, 1, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := sit(t, "sew-pairs", "tide")
			d.press(c.keys...)
			assert.Equal(t, c.done, d.row().Done)
			assert.Equal(t, c.said, d.screen.said)
		})
	}
}

func TestTheNextLotThenTheNextOperation(t *testing.T) {
	d := sit(t, "sew-pairs", "wrack")
	d.press("n")
	assert.Equal(t, place{"sew-pairs", tracker.Lot{Kind: planner.ColourwayLot, Name: "shingle"}}, d.screen.at)
	d.press("n")
	assert.Equal(t, place{"press-pairs", tracker.Lot{Kind: planner.ColourwayLot, Name: "tide"}}, d.screen.at)
	d.press("left", "left")
	assert.Equal(t, "wrack", d.screen.at.lot.Name)

	// Without catching up only what can go on comes up: of a job just booked that
	// is fabric to prepare and the seam test (hand-worked: nothing waits for less).
	d.screen.CatchUp = false
	d.press("n")
	assert.Equal(t, "prepare", d.screen.at.key, "after the last comes the first")
}

// TestAtTheEndOfTheJobThereIsNothingElse, and a long sitting is summed up shortly.
func TestAtTheEndOfTheJobThereIsNothingElse(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	rows := len(d.log.Rows())
	for range rows {
		left := d.row().Left()
		if left > 0 {
			d.press(strings.Split(strconv.Itoa(left), "")...)
			d.press("space")
		}
		d.press("n")
	}
	assert.Empty(t, d.log.Remaining())
	assert.Equal(t, "nothing is left of this job: d is done", d.screen.said)
	said := d.screen.Sitting()
	assert.Len(t, said, mostSummed+1)
	assert.Regexp(t, `^\d+ rows before these:$`, said[0])
}

func TestATickTakenBackBringsItsRowBack(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	d.press("space", "n", "t")
	assert.Equal(t, "tide", d.screen.at.lot.Name)
	assert.Zero(t, d.row().Done)
}

// TestWhatOthersLoggedIsTakenBackOnlyAtTheSecondAsking keeps a stray key from
// undoing an evening's work.
func TestWhatOthersLoggedIsTakenBackOnlyAtTheSecondAsking(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	d.press("5", "space")
	next := sit(t, "sew-pairs", "tide")
	next.log, next.screen.state = d.log, d.log
	next.keys = 100
	next.press("t")
	assert.Equal(t, 5, next.row().Done)
	// Five pairs are of three blocks, in two prints: three fabrics are prepared and
	// cut along, a kit row and the seam test. Hand-worked.
	assert.Equal(t, "t again takes back entry 2 of 25 Nov 19:30: 5 pairs of tide, and 8 more with it", next.screen.said)
	next.press("x", "t")
	assert.Equal(t, 5, next.row().Done, "another key between, and it asks anew")
	next.press("t")
	assert.Zero(t, next.row().Done)
}

// TestAHeldKeyCountsOnce: a terminal that reports no held keys repeats the press,
// first after 250 to 660 ms (Linux kernel, X server), then every 33 ms or so.
func TestAHeldKeyCountsOnce(t *testing.T) {
	for _, first := range []time.Duration{250 * time.Millisecond, 660 * time.Millisecond} {
		d := sit(t, "sew-pairs", "tide")
		d.pressAt(0, "space")
		for i := range 60 {
			d.pressAt(first+time.Duration(i)*33*time.Millisecond, "space")
		}
		d.write()
		assert.Equal(t, 1, d.row().Done)
		assert.Equal(t, "held key: counted once; type 2, then space, for two", d.screen.said)

		d.press("2", "space")
		assert.Equal(t, 3, d.row().Done, "what it says to do works")
	}
}

func TestASlowSecondPressCounts(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	d.pressAt(0, "space")
	d.pressAt(Apart, "space")
	d.pressAt(Apart+10*time.Millisecond, "enter") // another key is another press
	d.write()
	assert.Equal(t, 3, d.row().Done)
}

func TestHowFarApartIsSettable(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	d.screen.Apart = 200 * time.Millisecond
	d.pressAt(0, "space")
	d.pressAt(199*time.Millisecond, "space")
	d.pressAt(399*time.Millisecond, "space")
	d.write()
	assert.Equal(t, 2, d.row().Done)
}

// TestATerminalThatReportsHeldKeysIsBelieved: two quick presses are two there, and
// a repeat is none however late it comes.
func TestATerminalThatReportsHeldKeysIsBelieved(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	d.screen.KeysReported()
	d.pressAt(0, "space")
	d.pressAt(100*time.Millisecond, "space")
	d.screen.Press(Press{Key: "space", Repeat: true, Since: 5 * time.Second, At: evening, ID: "repeat"})
	d.write()
	assert.Equal(t, 2, d.row().Done)
	assert.Contains(t, d.screen.said, "held key")
}

func TestHeldLettersAreTakenOnce(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	d.press("space", "enter")
	d.pressAt(10*time.Second, "t")
	d.pressAt(10*time.Second+33*time.Millisecond, "t")
	d.write()
	assert.Equal(t, 1, d.row().Done)
	assert.Equal(t, "taken back: 1 pair of tide", d.screen.said)
}

// TestAPedalMayTakeALetter: its command is then had by the capital.
func TestAPedalMayTakeALetter(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	d.screen.Keys = []string{"b"}
	d.press("b", "B")
	assert.Equal(t, 1, d.row().Done)
	_, changed := d.log.SinceBobbin()
	assert.True(t, changed)
	assert.Contains(t, strings.Join(d.shown(80, 24), "\n"), "B bobbin changed")
}

// TestNothingShowsBeforeItIsWritten, and what waits is counted neither twice nor
// away.
func TestNothingShowsBeforeItIsWritten(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	for i := range 12 {
		d.pressAt(time.Duration(i)*time.Second, "space")
	}
	assert.Zero(t, d.row().Done)
	assert.Len(t, d.screen.Unwritten(), 10, "there is no room for more")
	d.write()
	assert.Equal(t, 10, d.row().Done)
	assert.Empty(t, d.screen.Unwritten())
}

func TestALogThatIsHeldKeepsNothingFromBeingTicked(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	d.pressAt(0, "space")
	r, _ := d.screen.Send()
	d.screen.Answered(Answer{Request: r, Held: true})
	d.pressAt(time.Second, "space")
	assert.Contains(t, strings.Join(d.shown(80, 24), "\n"), "2 entries wait for the log")
	d.pressAt(2*time.Second, "d")
	assert.False(t, d.screen.Over(), "it is left when all is written")
	again, _ := d.screen.Send()
	assert.Equal(t, r, again, "with the same id, so that it counts once")
	d.write()
	assert.True(t, d.screen.Over())
	assert.Equal(t, 2, d.row().Done)

	d = sit(t, "sew-pairs", "tide")
	d.pressAt(0, "space")
	d.pressAt(time.Second, "d")
	d.pressAt(2*time.Second, "d")
	assert.True(t, d.screen.Over(), "who asks twice goes at once")
	require.Len(t, d.screen.Unwritten(), 1)
	assert.Equal(t, "quiltrun log estuary-lap sew-pairs 1 --lot 'colourway:tide' --id key-1 --catch-up", d.screen.Unwritten()[0].Command("estuary-lap"))
}

// TestARefusalIsSaidAndForgotten: without catching up the first pair waits for
// its kit.
func TestARefusalIsSaidAndForgotten(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	d.screen.CatchUp = false
	d.press("space", "t")
	assert.Zero(t, d.row().Done)
	assert.Equal(t, "there is nothing to take back here", d.screen.said)
}

func TestWhatOthersWriteShows(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	other := sit(t, "sew-pairs", "tide")
	other.press("6", "space")
	d.screen.Seen(News{State: other.log})
	assert.Equal(t, 6, d.row().Done)
	d.pressAt(time.Minute, "5")
	d.pressAt(time.Minute, "space")
	assert.Equal(t, "5 typed, and 4 left: nothing was checked off", d.screen.said)
}

// TestWhateverIsPressedCountsStayInBounds presses keys as a cat would: what is
// made stays between none and all, what the screen shows is what the log has, and
// ticks less those taken back are what is made.
func TestWhateverIsPressedCountsStayInBounds(t *testing.T) {
	keys := []string{"space", "enter", "1", "2", "9", "0", "t", "p", "n", "left", "b", "w", "i", "d", "esc", "backspace", "x", "ctrl+c"}
	rapid.Check(t, func(t *rapid.T) {
		d := sit(t, "sew-pairs", "tide")
		held := false
		for range rapid.IntRange(1, 40).Draw(t, "keys") {
			key := rapid.SampledFrom(keys).Draw(t, "key")
			d.pressAt(d.now+time.Duration(rapid.IntRange(-900, 3000).Draw(t, "ms"))*time.Millisecond, key)
			switch held = rapid.Bool().Draw(t, "held"); {
			case !held:
				d.write()
			default:
				if r, ok := d.screen.Send(); ok {
					d.screen.Answered(Answer{Request: r, Held: true})
				}
			}
			for _, row := range d.screen.state.Rows() {
				require.GreaterOrEqual(t, row.Done, 0)
				require.LessOrEqual(t, row.Done, row.Count)
			}
			each, _ := d.screen.pace()
			require.GreaterOrEqual(t, each, planner.Minutes(0))
			require.Len(t, d.screen.Lines(80, 24), 24)
		}
		d.write()
		d.write()
		assert.Equal(t, d.log.Rows(), d.screen.state.Rows(), "the screen shows what the log has")
		assert.Equal(t, standing(d.log), ticked(d.screen), "nothing is lost, nothing counts twice")
	})
}

// standing is the ids of the entries that count.
func standing(s tracker.State) []string {
	ids := []string{}
	for _, e := range s.Entries {
		if e.Standing() {
			ids = append(ids, e.ID)
		}
	}
	return ids
}

// ticked is the ids of the ticks that the screen thinks stand.
func ticked(s *Screen) []string {
	ids := []string{}
	for _, r := range s.mine {
		ids = append(ids, r.ID)
	}
	return ids
}

func TestALineCannotSteerTheTerminal(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	d.press("w")
	d.screen.Paste("a\x1b[31mb\nc\u202e")
	d.press("enter")
	note, ok := d.log.NewestNote()
	require.True(t, ok)
	assert.Equal(t, "a[31mbc", note.Reason)
}

func TestTheSittingIsSummedUp(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	d.press("3", "space", "enter", "t", "n", "2", "space")
	assert.Equal(t, []string{
		"80 chain-sew pairs, tide: 3 pairs checked off; 3 of 10 made, 7 left",
		"80 chain-sew pairs, dune: 2 pairs checked off; 2 of 10 made, 8 left",
	}, d.screen.Sitting())
}
