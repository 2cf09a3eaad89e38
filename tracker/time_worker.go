package tracker

import (
	"time"

	"quiltrun/planner"
)

// slip is how far a computer's clock may go back with no doubt about the time:
// clocks are put right by seconds all the time.
const slip = time.Minute

// worker is what the log says of one person: whether they are at work, since when
// and at what. A clock is one that was started and runs until it is stopped;
// without it, time is told by ticks alone.
type worker struct {
	clock bool
	row   rowKey
	from  time.Time // since when the time under way is not told yet; zero: not at work
	open  int       // the sitting under way, by its place from 1; 0: none
	doubt Doubt     // why the sitting under way is not counted
	late  int       // the last clock's sitting, by its place from 1, for what is logged after it

	seen time.Time // the latest moment at which the log says anything of them
	upTo time.Time // nothing before it is counted once more
	mark time.Time // the last sign of work while the clock ran
	// quiet is the longest time with no sign of work, and when it began.
	quiet     time.Duration
	quietFrom time.Time
}

// began puts the worker to work from a moment on. A moment that was counted
// already comes of a clock that was set back.
func (w *worker) began(at time.Time) {
	w.from, w.doubt = at, ""
	switch early := w.upTo.Sub(at); {
	case early > slip:
		w.doubt = ClockSetBack
	case early > 0:
		w.from = w.upTo
	}
}

// sign notes a moment at which the worker was surely there.
func (w *worker) sign(at time.Time) {
	if quiet := at.Sub(w.mark); quiet > w.quiet {
		w.quiet, w.quietFrom = quiet, w.mark
	}
	if at.After(w.mark) {
		w.mark = at
	}
}

// back reports that a moment lies before the time under way, beyond what clocks
// are put right by.
func (w *worker) back(at time.Time) bool { return w.from.Sub(at) > slip }

// tooQuiet reports that the clock ran too long with no sign of work.
func (w *worker) tooQuiet(most planner.Minutes) bool {
	return minutesOf(w.quiet) > most
}

// counted moves on what is counted.
func (w *worker) counted(to time.Time) {
	if to.After(w.upTo) {
		w.upTo = to
	}
}

// rest ends what is under way.
func (w *worker) rest() { w.clock, w.from, w.open, w.doubt = false, time.Time{}, 0, "" }

// minutesOf is a duration in minutes, and durationOf is the way back, to the
// nanosecond.
func minutesOf(d time.Duration) planner.Minutes { return planner.Minutes(d.Minutes()) }

func durationOf(m planner.Minutes) time.Duration {
	return time.Duration(float64(m) * float64(time.Minute))
}

// later is the later of two moments.
func later(a, b time.Time) time.Time {
	if b.After(a) {
		return b
	}
	return a
}
