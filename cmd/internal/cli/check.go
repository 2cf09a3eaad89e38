package cli

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"

	"github.com/spf13/cobra"

	"quiltrun/planner/english"
	"quiltrun/tracker/store"
)

const checkLong = `check reads every entry of the log and says whether all of it is in order: the
file's own book-keeping, the numbers of the entries, and that each job's entries
add up. It changes nothing.`

const checkExample = `  quiltrun check
  quiltrun check --store copy-of-quiltrun.db`

// newCheck is the command check.
func newCheck(env *Env) *cobra.Command {
	return &cobra.Command{
		Use:               "check",
		Short:             "Check that the log is in order",
		Long:              checkLong,
		Example:           checkExample,
		Args:              between(0, 0),
		ValidArgsFunction: cobra.NoFileCompletions,
		RunE:              func(cmd *cobra.Command, _ []string) error { return runCheck(cmd.Context(), env) },
	}
}

// checked is what check found in a log without faults. Entries are everything
// that was ever appended: bookings, work, what was taken back, hours.
type checked struct {
	Schema  int    `json:"schema"`
	Store   string `json:"store"`
	Exists  bool   `json:"exists"`
	Jobs    int    `json:"jobs"`
	Entries int    `json:"entries"`
}

// runCheck looks at the file first: only one that is whole is worth folding.
// Faults are a failure, and are worded as one error with all of them.
func runCheck(ctx context.Context, env *Env) error {
	path, err := env.openable(ctx)
	if err != nil {
		return err
	}
	found := checked{Schema: schema, Store: path, Exists: true}
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		found.Exists = false
	}
	faults, err := store.Check(path, env.waiting())
	if err != nil {
		return err
	}
	if len(faults) > 0 {
		f := failed("the log %s is damaged: %s", path, faults[0])
		f.hints = append(f.hints, faults[1:]...)
		return f.hint("restore a copy of it; keep this file until that is done")
	}
	if err := env.read(ctx, found.count); err != nil {
		return err
	}
	return found.show(env)
}

// count counts what is in the log. It folds every job and the shelf, which finds
// what no single entry shows.
func (c *checked) count(opened *store.Store) error {
	ids, err := opened.Jobs()
	if err != nil {
		return err
	}
	maker, err := opened.MakerEvents()
	if err != nil {
		return err
	}
	c.Jobs, c.Entries = len(ids), len(maker)
	for _, id := range ids {
		events, err := opened.Events(id)
		if err != nil {
			return err
		}
		if _, err := folded(id, events); err != nil {
			return err
		}
		c.Entries += len(events)
	}
	_, err = shelfAfter(opened, maker)
	return err
}

// show says that all is well, or that there is no log to look at, which is no
// fault: nothing has been booked yet.
func (c checked) show(env *Env) error {
	if env.given.json {
		return json.NewEncoder(env.Out).Encode(c)
	}
	if !c.Exists {
		_, err := fmt.Fprintf(env.Out, "There is no log yet: %s\n", c.Store)
		return err
	}
	_, err := fmt.Fprintf(env.Out, "The log is in order: %s, %s\n%s\n",
		english.Count(c.Jobs, "job"), english.Count(c.Entries, "entry"), c.Store)
	return err
}
