package cli

import (
	"context"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/tracker"
	"quiltrun/tracker/shelf"
	"quiltrun/tracker/store"
)

const shelfLong = `shelf lists the cloth, batting and thread that lie on the shelf: how much, what
of it is kept for booked jobs, what is free, its dye lot and where it lies. One
stock serves all jobs.

Booking a job keeps what it needs, the oldest first and of one dye lot where
that does; logging the cut uses it up, and leftovers of use come back as pieces.
Nothing is entered twice. What a job file says is on hand is that job's own, and
not on the shelf. Pieces are listed and not kept for anybody: take them off when
you use them.`

const shelfExample = `  quiltrun shelf
  quiltrun shelf put Foam 3 yd --width 42 --dye-lot A7 --where "blue box"
  quiltrun shelf put Sea holly 2 fat quarters --size 18x21
  quiltrun shelf put --thread Ecru 500 m
  quiltrun shelf recount 1 2 3/4 yd
  quiltrun shelf scrap 2 1 --reason "iron mark"
  quiltrun shelf undo`

// newShelf is the command shelf, with a command for each deed under it.
func newShelf(env *Env) *cobra.Command {
	cmd := &cobra.Command{
		Use:               "shelf",
		Short:             "Say what lies on the shelf, or change it",
		Long:              shelfLong,
		Example:           shelfExample,
		Args:              between(0, 0),
		ValidArgsFunction: cobra.NoFileCompletions,
		RunE:              func(cmd *cobra.Command, _ []string) error { return runShelf(cmd.Context(), env) },
	}
	group := &cobra.Group{ID: "shelf", Title: "what happens there"}
	cmd.AddGroup(group)
	for _, deed := range []*cobra.Command{newShelfPut(env), newShelfRecount(env), newShelfScrap(env), newShelfTake(env), newShelfUndo(env)} {
		deed.GroupID = group.ID
		cmd.AddCommand(deed)
	}
	return cmd
}

// runShelf reads the shelf and shows it; it changes nothing.
func runShelf(ctx context.Context, env *Env) error {
	stock, err := env.shelf(ctx)
	switch {
	case err != nil:
		return err
	case env.given.json:
		return render.ShelfJSON(env.Out, stock)
	}
	return render.Shelf(env.Out, stock, env.look())
}

// shelf folds the maker's stock. A store that is not there is an empty shelf.
func (e *Env) shelf(ctx context.Context) (stock shelf.Shelf, err error) {
	err = e.read(ctx, func(opened *store.Store) (err error) {
		stock, err = shelfOf(opened)
		return err
	})
	return stock, err
}

// shelfOf folds the stock of an open store.
func shelfOf(opened *store.Store) (shelf.Shelf, error) {
	maker, err := opened.MakerEvents()
	if err != nil {
		return shelf.Shelf{}, err
	}
	return shelfAfter(opened, maker)
}

// shelfAfter folds the stock as it is after the maker's events.
func shelfAfter(opened *store.Store, maker []tracker.Event) (shelf.Shelf, error) {
	states, err := allStates(opened)
	if err != nil {
		return shelf.Shelf{}, err
	}
	stock, err := shelf.Fold(maker, states)
	if err != nil {
		return stock, unreadableShelf(err)
	}
	return stock, nil
}

// unreadableShelf is damage that no look at single entries finds.
func unreadableShelf(err error) *fault {
	return failed("the shelf cannot be read: %v", err).hint("a newer quiltrun may have written it, or the log is damaged: restore a copy")
}
