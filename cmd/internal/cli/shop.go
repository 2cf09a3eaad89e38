package cli

import (
	"context"
	"slices"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
	"quiltrun/planner/measure"
)

const shopLong = `shop lists what is to be bought for several jobs together: fabrics, batting, and
notions. Of booked jobs it is what is left to do; what the jobs have on hand and
what lies free on the shelf, or kept for them, is taken off.

Cloth of one name, form and width is planned together for all jobs, cut from
what is there first, and rounded to the shop's step once. No strip is cut of two
lengths, so it may be more than need less stock. Of a fabric that a job has half
cut, no more counts as there than the rest of that job takes, and the room in
its begun sheets is for it alone. Thread of every colour counts as one.`

const shopExample = `  quiltrun shop estuary-lap
  quiltrun shop examples/gull-cot.yaml examples/oyster-throw.yaml
  quiltrun shop estuary-lap --print
  quiltrun shop estuary-lap --csv > list.csv`

// shopOptions are what shop was asked.
type shopOptions struct {
	of         []string
	csv, print bool
	spool      string // "": the usual length
}

// newShop is the command shop.
func newShop(env *Env) *cobra.Command {
	var opts shopOptions
	cmd := &cobra.Command{
		Use:               "shop JOB|FILE ...",
		Short:             "List what is to be bought for one job or several",
		Long:              shopLong,
		Example:           shopExample,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: env.completeFilesOrJobs,
		RunE: env.aboutJob(between(1, -1, "JOB or FILE"), nil, func(cmd *cobra.Command, args []string) error {
			opts.of = args
			return runShop(cmd.Context(), env, opts)
		}),
	}
	cmd.Flags().BoolVar(&opts.csv, "csv", false, "write it as a table for a spreadsheet (RFC 4180)")
	cmd.Flags().BoolVar(&opts.print, "print", false, "write it as a list to take along and tick")
	cmd.Flags().StringVar(&opts.spool, "spool", "", "thread on one spool, such as `500m`")
	return cmd
}

// usualSpool is what a spool of sewing thread holds: 500 m, the longest of the
// spools that are common. Source: Fashion2Apparel, "Popular thread packages"
// (spools of 100 to 500 m).
const usualSpool = 500 * measure.Metre

// runShop shows a list; nothing is stored.
func runShop(ctx context.Context, env *Env, opts shopOptions) error {
	spool, err := opts.spoolLength()
	if err != nil {
		return err
	}
	if err := opts.once(env.given.json); err != nil {
		return err
	}
	jobs, stock, err := env.provide(ctx, opts.of)
	if err != nil {
		return err
	}
	wanted := make([]planner.Wanted, len(jobs))
	for i, j := range jobs {
		wanted[i] = j.left(j.plan)
	}
	ids := bookedAmong(jobs)
	list, err := planner.Shop(wanted, planner.Stocked{
		Cloth:   func(f planner.Fabric) planner.Have { return stock.Free(f, ids) },
		Batting: stock.FreeBatting(ids), Thread: stock.FreeThread(ids),
	})
	if err != nil {
		return err
	}
	shown := render.Shopped{Wanted: wanted, Shopping: list, Spool: spool}
	switch {
	case env.given.json:
		return render.ShopJSON(env.Out, shown)
	case opts.csv:
		return render.ShopCSV(env.Out, shown)
	case opts.print:
		return render.ShopPrint(env.Out, shown, env.look())
	}
	return render.Shop(env.Out, shown, env.look())
}

func (o shopOptions) spoolLength() (measure.Length, error) {
	if o.spool == "" {
		return usualSpool, nil
	}
	a, ok := parseThread(o.spool)
	if !ok {
		return 0, wrong("--spool %q is not a length of thread", o.spool).hint("write it such as 500m, or 547yd")
	}
	return measure.Length(a.amount), nil
}

// once refuses two forms of the list at once, and a job that is named twice: its needs would be bought twice.
func (o shopOptions) once(json bool) error {
	if o.csv && o.print || json && (o.csv || o.print) {
		return wrong("shop writes --json, --csv or --print, one of them")
	}
	for i, name := range o.of {
		if slices.Contains(o.of[:i], name) {
			return wrong("%q is named twice", name).hint("for several quilts alike give the job a quantity")
		}
	}
	return nil
}

// completeFilesOrJobs offers booked jobs that are not named yet, and job files.
func (e *Env) completeFilesOrJobs(cmd *cobra.Command, args []string, typed string) (completions, cobra.ShellCompDirective) {
	jobs, _ := e.completeJob(cmd, nil, typed)
	jobs = slices.DeleteFunc(jobs, func(j cobra.Completion) bool { return slices.Contains(args, j) })
	if len(jobs) > 0 {
		return jobs, cobra.ShellCompDirectiveDefault
	}
	return completeFile(cmd, nil, typed)
}
