// Package cli is quiltrun's command tree: it reads files, clock and store,
// calls the planner and the tracker, shows their answers, and words errors.
package cli

import (
	"io"
	"time"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
)

// Env is all that a command knows of the world beside its own arguments.
// Main works on a copy, so one Env can serve several calls.
type Env struct {
	In       io.Reader
	Out, Err io.Writer

	Width       int  // columns of the terminal behind Out; 0: none, nothing is cut
	InTerminal  bool // In is a terminal
	OutTerminal bool // Out is a terminal
	Draws       bool // and one that can be drawn on, not only written to
	ErrTerminal bool // Err is a terminal
	Colour      bool // escapes for colour may be written to Out
	Unicode     bool // Out can show more than ASCII

	Now      func() time.Time // in the maker's own time zone
	DataDir  string           // the user's data folder; "" where none is known
	User     string           // who makes the entries
	Random   io.Reader        // what ids are made of
	Revision func() string    // of the source that the program was built from
	Trace    bool             // show where in the program a fault lies

	given  given
	direct io.Writer // Out itself, for answers that must not wait until the command is done
}

// today is the maker's calendar date.
func (e *Env) today() planner.Date { return planner.DateOf(e.Now()) }

// look is how tables and text are shown on Out.
func (e *Env) look() render.Look {
	return render.Look{Width: e.Width, Colour: e.Colour, Unicode: e.Unicode}
}
