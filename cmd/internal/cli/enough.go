package cli

import (
	"context"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker/shelf"
)

const enoughLong = `enough says how many blocks of which colourway the cloth on hand makes, print by
print, and what would make it go far enough: how much to buy, a smaller square,
another split of the prints, or another colourway for the blocks that are
missing, each with the lines of the job file that would do it. Of a booked job
it is what is left to cut.

On hand is what the job file says, and what lies free on the shelf or is kept
for the job. A fabric of which neither says anything is taken as bought as
needed. --have says otherwise, for this question alone. Blocks come first,
colourways in file order; borders, binding and backing have what is left.`

const enoughExample = `  quiltrun enough estuary-lap
  quiltrun enough examples/harbour-pair.yaml
  quiltrun enough estuary-lap --have Marram=0 --have "Foam=1 1/4 yd"`

// enoughOptions are what enough was asked.
type enoughOptions struct {
	of   string
	have []string
}

// newEnough is the command enough.
func newEnough(env *Env) *cobra.Command {
	var opts enoughOptions
	cmd := &cobra.Command{
		Use:               "enough JOB|FILE",
		Short:             "Say how far the cloth on hand goes",
		Long:              enoughLong,
		Example:           enoughExample,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: env.completeFileOrJob,
		RunE: env.aboutJob(between(1, 1, "JOB or FILE"), nil, func(cmd *cobra.Command, args []string) error {
			opts.of = args[0]
			return runEnough(cmd.Context(), env, opts)
		}),
	}
	cmd.Flags().StringArrayVar(&opts.have, "have", nil, "`FABRIC=AMOUNT` is what is there, such as Kelp=2")
	return cmd
}

// runEnough shows how far the cloth goes; nothing is stored.
func runEnough(ctx context.Context, env *Env, opts enoughOptions) error {
	jobs, stock, err := env.provide(ctx, []string{opts.of})
	if err != nil {
		return err
	}
	job := jobs[0]
	ask := planner.EnoughAsk{Plan: job.plan, Left: job.left, Have: job.have(stock), Begun: job.begun()}
	if job.state.Booked() {
		ask.Prior = job.state.Prior()
	}
	for _, text := range opts.have {
		if err := haveInstead(&ask, text); err != nil {
			return err
		}
	}
	answer, err := ask.Answer()
	if err != nil {
		return err
	}
	if env.given.json {
		return render.EnoughJSON(env.Out, answer)
	}
	return render.Enough(env.Out, answer, job.state.Booked(), env.look())
}

// have is what is there of the fabrics of which the job file or the shelf says
// anything.
func (p provision) have(stock shelf.Shelf) map[string]planner.Have {
	have := map[string]planner.Have{}
	wanted, ids := p.left(p.plan), bookedAmong([]provision{p})
	for i, n := range p.plan.Fabrics {
		free := stock.Free(n.Fabric, ids)
		if n.Fabric.OnHand != nil || len(free.Lengths)+len(free.Sheets) > 0 {
			have[n.Fabric.Name] = wanted.Fabrics[i].Own.And(free)
		}
	}
	return have
}

// begun reports that some cloth of the job is cut.
func (p provision) begun() bool {
	for _, n := range p.state.Stock() {
		if n.Material == planner.ClothMaterial && len(n.Uses) > 0 {
			return true
		}
	}
	return false
}

// haveInstead takes what was typed for what is there of a fabric: whole, with no
// sheet begun.
func haveInstead(ask *planner.EnoughAsk, text string) error {
	at := strings.LastIndexByte(text, '=')
	if at <= 0 || at == len(text)-1 {
		return wrong("--have %q is no fabric and amount", text).hint("write it such as --have Kelp=2, or --have \"Foam=1 1/2 yd\"")
	}
	name, amount := strings.TrimSpace(text[:at]), strings.TrimSpace(text[at+1:])
	var names []string
	for _, n := range ask.Plan.Fabrics {
		if n.Fabric.Name != name {
			names = append(names, n.Fabric.Name)
			continue
		}
		there, err := haveOf(n.Fabric, amount, ask.Plan.Job.Units)
		ask.Have[name] = there
		ask.Whole = append(ask.Whole, name)
		return err
	}
	return noFabric(name, names)
}

func haveOf(f planner.Fabric, amount string, u measure.Unit) (planner.Have, error) {
	if f.Form.Sheets() {
		number, word, _ := strings.Cut(amount, " ")
		n, err := strconv.Atoi(number)
		form, named := countedForm(word, planner.ClothMaterial)
		if err != nil || n < 0 || n > mostOnShelf || word != "" && (!named || form != f.Form) {
			return planner.Have{}, wrong("--have: %q is not a count of %s", amount, f.Form.Several())
		}
		return planner.Have{Sheets: []planner.HaveSheets{{Size: f.Size, Count: n}}}, nil
	}
	l, err := measure.ParseAllowZero(amount, u)
	if err == nil && l > 0 {
		l, err = measure.ParseNamed(amount)
	}
	if err != nil {
		return planner.Have{}, wrong("--have of %s: %v", f.Name, err)
	}
	return planner.Have{Lengths: []measure.Length{l}}, nil
}

// completeHave offers the fabrics of the job, with the amount still to come.
func (e *Env) completeHave(cmd *cobra.Command, args []string, typed string) (completions, cobra.ShellCompDirective) {
	var names []string
	for _, name := range e.glanceJob(cmd.Context(), args).Ledger.Fabrics {
		names = append(names, name+"=")
	}
	return fitting(names, typed), noFiles | cobra.ShellCompDirectiveNoSpace
}
