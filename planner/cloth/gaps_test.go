package cloth

import (
	"flag"
	"fmt"
	"io"
	"os"
	"slices"
	"strconv"
	"strings"
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

// updateGaps writes the table into its file: it is looked at, then committed.
var updateGaps = flag.Bool("update", false, "with -gaps: write the table into testdata/gaps.txt")

// gapFile is the table as it stands in the project's documentation.
const gapFile = "testdata/gaps.txt"

// TestGapTable measures the table of gaps and prints it where that is asked for,
// and the documentation must have the same; else it holds the rows of the smallest
// sets against the documentation.
func TestGapTable(t *testing.T) {
	cases := stripCases(t)
	if !*gaps {
		const few = 10
		cases = slices.DeleteFunc(cases, func(c stripCase) bool { return c.pieces > few })
	}
	var out strings.Builder
	w := tabwriter.NewWriter(&out, 0, 0, 2, ' ', tabwriter.AlignRight)
	for _, fixed := range []bool{true, false} {
		g := gapTable{t: t, w: w, fixed: fixed, sums: map[string]*tally{}}
		g.print(cases)
	}
	if !*gaps {
		require.NoError(t, w.Flush())
		documented := rowsOf(t, gapFile)
		rows := 0
		for line := range strings.Lines(out.String()) {
			if fields := strings.Fields(line); len(fields) > 3 && isNumber(fields[1]) && isNumber(fields[2]) {
				rows++
				assert.Contains(t, documented, strings.Join(fields, " "), "the table in %s is not what is measured", gapFile)
			}
		}
		assert.Equal(t, 2*len(cases), rows)
		return
	}
	printSheets(t, w)
	require.NoError(t, w.Flush())
	_, _ = io.WriteString(os.Stdout, out.String())
	if *updateGaps {
		require.NoError(t, os.WriteFile(gapFile, []byte(out.String()), 0o644))
	}
	documented, err := os.ReadFile(gapFile)
	require.NoError(t, err)
	assert.Equal(t, string(documented), out.String(), "the table in %s is not what is measured; write it with -gaps -update", gapFile)
}

// rowsOf is a file's lines, with single blanks.
func rowsOf(t *testing.T, file string) map[string]bool {
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	rows := map[string]bool{}
	for line := range strings.Lines(string(data)) {
		rows[strings.Join(strings.Fields(line), " ")] = true
	}
	return rows
}

func isNumber(text string) bool {
	_, err := strconv.Atoi(text)
	return err == nil
}

// The summary in DEVELOPERS.md is that of the table, word for word.
func TestTheSummaryOfTheGapsIsInTheDocumentation(t *testing.T) {
	page, err := os.ReadFile("../../DEVELOPERS.md")
	require.NoError(t, err)
	table, err := os.ReadFile(gapFile)
	require.NoError(t, err)
	sums, classes := 0, 0
	for line := range strings.Lines(string(table)) {
		switch line = strings.TrimSpace(line); {
		case strings.Contains(line, " sets, mean "):
			sums++
		case strings.Contains(line, ", ") && strings.HasSuffix(strings.TrimRight(line, " -"), "%"):
			classes++
		default:
			continue
		}
		assert.True(t, strings.Contains(string(page), line), "DEVELOPERS.md has not: %s", line)
	}
	assert.Equal(t, 11, sums, "to the optimum and to the bound, few pieces and many, simple and nested, turned or not")
	assert.Greater(t, classes, 15)
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
	class map[string]map[string]*tally // by class of sets and column
	order []string                     // of the classes
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
	g.classes()
	for _, key := range g.keys {
		fmt.Fprintf(g.w, "%s: %s\n", key, g.sums[key])
	}
}

// classOf is the family that a set was published in: its name without numbers.
func classOf(name string) string {
	class, _, _ := strings.Cut(name, "-")
	if class == "BKW" {
		return class
	}
	return strings.TrimRight(class, "0123456789_abcde")
}

// classes prints the gaps of each family: how many sets, their mean and their worst.
func (g *gapTable) classes() {
	fmt.Fprintf(g.w, "\nClass\tsimple to the optimum\tto the bound\tnested to the optimum\tto the bound\t\n")
	for _, class := range g.order {
		fmt.Fprintf(g.w, "%s\t", class)
		for _, column := range []string{"simple optimum", "simple bound", "nested optimum", "nested bound"} {
			y := g.class[class][column]
			if y == nil {
				fmt.Fprint(g.w, "-\t")
				continue
			}
			fmt.Fprintf(g.w, "%d: %.2f, %.2f %%\t", y.n, 100*y.mean(), 100*y.worst)
		}
		fmt.Fprintln(g.w)
	}
}

// count adds a gap to its family.
func (g *gapTable) count(name string, style Style, to string, gap float64) {
	class, column := classOf(name), string(style)+" "+to
	if g.class == nil {
		g.class = map[string]map[string]*tally{}
	}
	if g.class[class] == nil {
		g.class[class] = map[string]*tally{}
		g.order = append(g.order, class)
	}
	if g.class[class][column] == nil {
		g.class[class][column] = &tally{}
	}
	g.class[class][column].add(gap)
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
		g.count(c.name, style, "optimum", gap)
		fmt.Fprintf(g.w, "%d\t%d\t%.2f\t%d\t\t", length, optimum, 100*gap, bound)
		return
	}
	gap := over(length, bound)
	g.sum(fmt.Sprintf("%s%s, %s, to the bound", style, map[bool]string{false: ", turned"}[g.fixed], few)).add(gap)
	g.count(c.name, style, "bound", gap)
	fmt.Fprintf(g.w, "%d\t-\t\t%d\t%.2f\t", length, bound, 100*gap)
}

func (g *gapTable) sum(key string) *tally {
	if g.sums[key] == nil {
		g.sums[key] = &tally{}
		g.keys = append(g.keys, key)
	}
	return g.sums[key]
}
