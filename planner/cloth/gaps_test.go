package cloth

import (
	"flag"
	"fmt"
	"io"
	"os"
	"slices"
	"strconv"
	"testing"
	"text/tabwriter"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// gaps asks for the whole table: go test ./planner/cloth -run TestGapTable -v -gaps
var gaps = flag.Bool("gaps", false, "measure every published set, turned and not, and print the table of gaps")

// tally adds up gaps.
type tally struct {
	n, best    int
	sum, worst float64
}

func (y *tally) add(gap float64) {
	y.n++
	y.sum += gap
	y.worst = max(y.worst, gap)
	if gap == 0 {
		y.best++
	}
}

func (y *tally) String() string {
	if y.n == 0 {
		return "none"
	}
	return fmt.Sprintf("%d sets, mean %.2f %%, worst %.2f %%, %d at it", y.n, 100*y.mean(), 100*y.worst, y.best)
}

func (y *tally) mean() float64 { return y.sum / float64(y.n) }

func over(length, optimum int) float64 { return float64(length-optimum) / float64(optimum) }

// TestGapTable measures the table of gaps and prints it where that is asked
// for; else it holds the smallest sets against their bounds.
func TestGapTable(t *testing.T) {
	cases, out := stripCases(t), io.Writer(os.Stdout)
	if !*gaps {
		const few = 10
		cases, out = slices.DeleteFunc(cases, func(c stripCase) bool { return c.pieces > few }), io.Discard
	}
	w := tabwriter.NewWriter(out, 0, 0, 2, ' ', tabwriter.AlignRight)
	for _, fixed := range []bool{true, false} {
		g := gapTable{t: t, w: w, fixed: fixed, sums: map[string]*tally{}}
		g.print(cases)
	}
	if *gaps {
		printSheets(t, w)
	}
	require.NoError(t, w.Flush())
}

func printSheets(t *testing.T, w io.Writer) {
	fmt.Fprintln(w, "\nSheets, not turned: class\tsimple\tnested\tthree stages\t")
	simple, nested := sheetCounts(t, Simple), sheetCounts(t, Nested)
	for k, three := range []int{71, 10, 53, 10, 65, 10} {
		class := fmt.Sprintf("BW%d", k+1)
		fmt.Fprintf(w, "%s\t%d\t%d\t%d\t\n", class, simple[class], nested[class], three)
	}
	fmt.Fprintln(w, "\nOne sheet, not turned: set\tsimple\ttwo stages\tgap %\tnested\tthree stages\t")
	for _, v := range sheetValues(t) {
		fmt.Fprintf(w, "%s\t%d\t%d\t%.2f\t%d\t%s\t\n", v.name, v.simple, v.most, 100*v.gap(), v.nested, known(v.three))
	}
}

func known(n int) string {
	if n == 0 {
		return "-"
	}
	return strconv.Itoa(n)
}

// gapTable prints one table and adds up its columns.
type gapTable struct {
	t     *testing.T
	w     *tabwriter.Writer
	fixed bool
	sums  map[string]*tally
	keys  []string
}

func (g *gapTable) print(cases []stripCase) {
	turned := map[bool]string{true: "not turned", false: "turned where that helps"}[g.fixed]
	fmt.Fprintf(g.w, "\nPieces %s\t\t\tsimple\toptimum\tgap %%\tbound\tgap %%\tnested\toptimum\tgap %%\tbound\tgap %%\t\n", turned)
	for _, c := range cases {
		fmt.Fprintf(g.w, "%s\t%d\t%d\t", c.name, c.across, c.pieces)
		for _, style := range []Style{Simple, Nested} {
			g.cell(c, style)
		}
		fmt.Fprintln(g.w)
	}
	for _, key := range g.keys {
		fmt.Fprintf(g.w, "%s: %s\n", key, g.sums[key])
	}
}

// cell prints a plan's length, and its gap to the optimum where that is known,
// else to the bound of its style.
func (g *gapTable) cell(c stripCase, style Style) {
	plan := c.cut(g.t, style, g.fixed)
	length, bound := units(plan.Length), units(plan.StyleBound)
	assert.LessOrEqual(g.t, plan.Bound, plan.StyleBound, c.name)
	assert.LessOrEqual(g.t, plan.StyleBound, plan.Length, c.name)
	few := "up to 20 pieces"
	if c.pieces > 20 {
		few = "beyond 20 pieces"
	}
	if optimum := c.optimum[style]; g.fixed && optimum > 0 {
		gap := over(length, optimum)
		g.sum(fmt.Sprintf("%s, %s, to the optimum", style, few)).add(gap)
		fmt.Fprintf(g.w, "%d\t%d\t%.2f\t%d\t\t", length, optimum, 100*gap, bound)
		return
	}
	gap := over(length, bound)
	g.sum(fmt.Sprintf("%s, %s, to the bound", style, few)).add(gap)
	fmt.Fprintf(g.w, "%d\t-\t\t%d\t%.2f\t", length, bound, 100*gap)
}

func (g *gapTable) sum(key string) *tally {
	if g.sums[key] == nil {
		g.sums[key] = &tally{}
		g.keys = append(g.keys, key)
	}
	return g.sums[key]
}
