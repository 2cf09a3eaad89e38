package cli

import (
	"context"

	"github.com/spf13/cobra"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
	"quiltrun/tracker/shelf"
	"quiltrun/tracker/store"
)

const shelfPutLong = `shelf put lays something new on the shelf and gives it a number. WHAT is the
fabric's name as job files write it; a job is served by the fabric of its name
and form. AMOUNT is a length with its unit, or a count of a form:

  3 1/4 yd, 2.5 m     yardage; --width is the usable width as you measured it
  4 fat quarters      or fat eighths, pre-cut squares, pre-cut strips, pieces;
                      --size is the size of one
  1 package, 2 yd     of --batting; --size of the package, --width of the roll
  500 m, 3 x 500 m    of --thread

Bare measures are inches. A width or size that is left out is taken as usual in
the shops, and said to be assumed. --dye-lot keeps cloth of one colour together.`

const shelfPutExample = `  quiltrun shelf put Foam 3 yd --width 42 --dye-lot A7 --where "blue box"
  quiltrun shelf put Sea holly 2 fat quarters --size 18x21
  quiltrun shelf put Reed 1.2 m --width "108 cm"
  quiltrun shelf put --batting Cotton 1 package --size 72x90`

// shelfPutOptions are what is put on the shelf, as it was typed.
type shelfPutOptions struct {
	what            []string
	width, size     string
	lot, place      string
	batting, thread bool
	id, reason      string
}

func newShelfPut(env *Env) *cobra.Command {
	var opts shelfPutOptions
	cmd := &cobra.Command{
		Use:               "put WHAT AMOUNT",
		Short:             "Lay something new on the shelf",
		Long:              shelfPutLong,
		Example:           shelfPutExample,
		Args:              between(2, -1, "WHAT", "AMOUNT"),
		ValidArgsFunction: env.completeShelfNames,
		RunE: func(cmd *cobra.Command, args []string) error {
			opts.what = args
			return runShelfPut(cmd.Context(), env, opts)
		},
	}
	flags := cmd.Flags()
	flags.StringVar(&opts.width, "width", "", "usable `WIDTH`, measured")
	flags.StringVar(&opts.size, "size", "", "`SIZE` of one, such as 18x21")
	flags.StringVar(&opts.lot, "dye-lot", "", "the `DYE LOT`, as it stands on the bolt")
	flags.StringVar(&opts.place, "where", "", "`PLACE` where it lies")
	flags.BoolVar(&opts.batting, "batting", false, "it is batting")
	flags.BoolVar(&opts.thread, "thread", false, "it is thread")
	registerReason(flags, &opts.reason)
	registerID(flags, &opts.id)
	return cmd
}

// runShelfPut reads what is put there before the store is opened.
func runShelfPut(ctx context.Context, env *Env, opts shelfPutOptions) error {
	entry, err := opts.entry()
	if err != nil {
		return err
	}
	return env.enterShelf(ctx, opts.id, opts.reason, func(shelf.Shelf) (tracker.Shelf, error) { return entry, nil })
}

func (o shelfPutOptions) entry() (tracker.Shelf, error) {
	material := planner.ClothMaterial
	switch {
	case o.batting && o.thread:
		return tracker.Shelf{}, wrong("it is --batting or --thread, not both")
	case o.batting:
		material = planner.BattingMaterial
	case o.thread:
		material = planner.ThreadMaterial
	}
	name, amount, err := parseStock(o.what, material)
	if err != nil {
		return tracker.Shelf{}, err
	}
	for _, text := range [][3]string{{"the name", name, "in letters of your keyboard"}, {"--dye-lot", o.lot, "leave --dye-lot out"}, {"--where", o.place, "leave --where out"}} {
		if err := plainUTF8(text[0], text[1], text[2]); err != nil {
			return tracker.Shelf{}, err
		}
	}
	e := tracker.Shelf{
		Do: tracker.PutOn, Material: material, Name: name, Form: amount.form, Amount: amount.amount,
		DyeLot: o.lot, Place: o.place, Metric: amount.metric || metric(o.width) || metric(o.size),
	}
	return o.measured(e)
}

// measured gives what is put there its width or size, as it was measured or as it
// usually is.
func (o shelfPutOptions) measured(e tracker.Shelf) (tracker.Shelf, error) {
	unit := measure.Inches
	if e.Metric {
		unit = measure.Centimetres
	}
	switch {
	case e.Material == planner.ThreadMaterial:
		if o.width != "" || o.size != "" {
			return e, wrong("thread has neither --width nor --size")
		}
		return e, nil
	case e.Form.Counted() && o.width != "":
		return e, wrong("%s has a size and no width", e.Form).hint("write: --size 18x21")
	case !e.Form.Counted() && o.size != "":
		return e, wrong("%s has a width and no size", e.Form).hint("write: --width 42")
	case e.Form.Counted():
		return o.sized(e, unit)
	}
	e.Width, e.Assumed = planner.UsualWidth(unit), true
	if o.width != "" {
		width, err := measure.Parse(o.width, unit)
		if err != nil {
			return e, wrong("--width %v", err)
		}
		e.Width, e.Assumed = width, false
	} else if e.Form == planner.Roll {
		return e, wrong("how wide is the roll?").hint("write: --width 96")
	}
	return e, nil
}

func (o shelfPutOptions) sized(e tracker.Shelf, unit measure.Unit) (tracker.Shelf, error) {
	size, known := planner.UsualSize(e.Form, unit)
	e.Assumed = true
	if o.size != "" {
		var err error
		if size, err = measure.ParseSize(o.size, unit); err != nil {
			return e, wrong("--size %v", err)
		}
		known, e.Assumed = true, false
	}
	if !known {
		return e, wrong("what size is one of the %s?", e.Form.Several()).hint("write: --size 5, or --size 9x21")
	}
	e.Width, e.Height = size.Width, size.Height
	return e, nil
}

// completeShelfNames offers the names of fabrics: of booked jobs, and of what was
// on the shelf before.
func (e *Env) completeShelfNames(cmd *cobra.Command, args []string, typed string) (completions, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, noFiles
	}
	var names []string
	add := func(name string) {
		for _, n := range names {
			if n == name {
				return
			}
		}
		names = append(names, name)
	}
	e.glance(cmd.Context(), func(opened *store.Store) {
		stock, err := shelfOf(opened)
		if err != nil {
			return
		}
		for _, n := range stock.Needs {
			if n.Material == planner.ClothMaterial {
				add(n.Name)
			}
		}
		for _, i := range stock.Items {
			add(i.Name)
		}
	})
	return fitting(names, typed), noFiles
}
