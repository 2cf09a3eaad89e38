package cli

import (
	"context"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"quiltrun/planner"
	"quiltrun/tracker"
	"quiltrun/tracker/shelf"
	"quiltrun/tracker/store"
)

// registerReason adds the note that an entry may carry.
func registerReason(flags *pflag.FlagSet, reason *string) {
	flags.StringVar(reason, "reason", "", "a `NOTE` to keep with the entry")
}

// shelfChangeOptions are a change of an item, as it was typed.
type shelfChangeOptions struct {
	item, amount string
	id, reason   string
}

// changing is a deed on an item that lies there: how the command reads, and what
// of the item "all" means.
type changing struct {
	do                         tracker.ShelfDeed
	use, short, long, examples string
	all                        func(shelf.Item) planner.Amount
}

func newShelfRecount(env *Env) *cobra.Command {
	return newShelfChange(env, changing{
		do: tracker.CountedAnew, use: "recount ITEM AMOUNT", short: "Say how much of an item lies there",
		long: `shelf recount sets an item to what you measured or counted: AMOUNT lies there,
whatever was reckoned before. The difference is kept as found, or missing.`,
		examples: "  quiltrun shelf recount 1 2 3/4 yd\n  quiltrun shelf recount 2 0",
		all:      shelf.Item.Lies,
	})
}

func newShelfScrap(env *Env) *cobra.Command {
	return newShelfChange(env, changing{
		do: tracker.Scrapped, use: "scrap ITEM AMOUNT", short: "Say that some of an item is spoilt",
		long: `shelf scrap takes spoilt cloth out of the reckoning: first what is free, then
what is kept for jobs, the last booked first. Which job lacks it then is said.`,
		examples: "  quiltrun shelf scrap 1 10 in --reason \"a fault in the print\"\n  quiltrun shelf scrap 2 all",
		all:      shelf.Item.Lies,
	})
}

func newShelfTake(env *Env) *cobra.Command {
	return newShelfChange(env, changing{
		do: tracker.TakenOff, use: "take ITEM AMOUNT", short: "Take some of an item off the shelf",
		long: `shelf take takes something off the shelf for what is no booked job: a gift, a
swap, a job of another kind. Only what is free is taken; all is all of that.`,
		examples: "  quiltrun shelf take 1 1/2 yd --reason \"for the fair\"\n  quiltrun shelf take 2 all",
		all:      func(i shelf.Item) planner.Amount { return i.Free },
	})
}

func newShelfChange(env *Env, c changing) *cobra.Command {
	var opts shelfChangeOptions
	cmd := &cobra.Command{
		Use: c.use, Short: c.short, Long: c.long, Example: c.examples,
		Args:              between(2, -1, "ITEM", "AMOUNT"),
		ValidArgsFunction: env.completeItem,
		RunE: func(cmd *cobra.Command, args []string) error {
			opts.item, opts.amount = args[0], textOf(args[1:])
			return runShelfChange(cmd.Context(), env, c, opts)
		},
	}
	registerReason(cmd.Flags(), &opts.reason)
	registerID(cmd.Flags(), &opts.id)
	return cmd
}

// runShelfChange reads the amount as the item is measured, so the shelf is needed
// for it.
func runShelfChange(ctx context.Context, env *Env, c changing, opts shelfChangeOptions) error {
	return env.enterShelf(ctx, opts.id, opts.reason, func(stock shelf.Shelf) (tracker.Shelf, error) {
		item, err := stock.Item(opts.item)
		if err != nil {
			return tracker.Shelf{}, err
		}
		amount, err := parseOf(item, opts.amount, c.all(item))
		return tracker.Shelf{Do: c.do, Item: item.ID, Amount: amount}, err
	})
}

// completeItem offers the items that lie on the shelf.
func (e *Env) completeItem(cmd *cobra.Command, args []string, typed string) (completions, cobra.ShellCompDirective) {
	var ids []string
	if len(args) == 0 {
		e.glance(cmd.Context(), func(opened *store.Store) {
			stock, _ := shelfOf(opened)
			for _, i := range stock.Items {
				if i.Lies() > 0 {
					ids = append(ids, i.ID)
				}
			}
		})
	}
	return fitting(ids, typed), noFiles
}

const shelfUndoLong = `shelf undo takes back the newest entry of the shelf that stands, or the one that
--entry names by its number or id. It stays in the log, marked as undone; what
was put there keeps its number, which is not given again.`

func newShelfUndo(env *Env) *cobra.Command {
	var entry, id string
	cmd := &cobra.Command{
		Use: "undo", Short: "Take back an entry of the shelf", Long: shelfUndoLong,
		Example:           "  quiltrun shelf undo\n  quiltrun shelf undo --entry 4",
		Args:              between(0, 0),
		ValidArgsFunction: cobra.NoFileCompletions,
		RunE: func(cmd *cobra.Command, _ []string) error {
			return env.appendShelf(cmd.Context(), tracker.Undone, id, func(stock shelf.Shelf, event tracker.Event) (tracker.Event, error) {
				target, err := stock.Undo(entry)
				event.Target = target.ID
				return event, err
			})
		},
	}
	cmd.Flags().StringVar(&entry, "entry", "", "take back the entry with this `ID`")
	registerID(cmd.Flags(), &id)
	return cmd
}
