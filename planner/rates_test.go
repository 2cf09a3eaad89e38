package planner

import (
	"go/ast"
	"go/parser"
	"go/token"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestEveryStartingTimeNamesItsSource(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range Rates {
		assert.NotEmpty(t, r.Source, r.Per)
		assert.False(t, seen[r.Per], "%s stands twice", r.Per)
		seen[r.Per] = true
		assert.Positive(t, float64(r.Median), r.Per)
		assert.Greater(t, r.Spread, 0.0, r.Per)
		assert.Less(t, r.Spread, 1.0, r.Per)
	}
}

// Every name that a route may ask for stands in the table: a name without an
// entry would be work that takes no time.
func TestEveryNamedRateIsInTheTable(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "rates.go", nil, 0)
	require.NoError(t, err)
	names := 0
	for _, d := range file.Decls {
		g, ok := d.(*ast.GenDecl)
		if !ok || g.Tok != token.CONST {
			continue
		}
		for _, s := range g.Specs {
			v := s.(*ast.ValueSpec)
			lit, ok := v.Values[0].(*ast.BasicLit)
			if !ok || len(v.Names[0].Name) < 5 || v.Names[0].Name[:4] != "rate" {
				continue
			}
			names++
			assert.Contains(t, rateByName(), lit.Value[1:len(lit.Value)-1], v.Names[0].Name)
		}
	}
	assert.Len(t, Rates, names)
}

// The mean of a lognormal time: median times exp(spread²/2); mu ln 110, sigma
// 0.25 gives 113.491775 (closed form). Allowances of 5 + 4 + 5 % go on top.
func TestASpanIsTheMeanWithAllowances(t *testing.T) {
	saved := rateByName()["test only"]
	rateByName()["test only"] = Rate{Per: "test only", Median: 110, Spread: 0.25}
	defer func() { rateByName()["test only"] = saved; delete(rateByName(), "test only") }()
	got := span("test only", 2)
	assert.InDelta(t, 2*113.491775*1.14, float64(got.Mean), 1e-4)
	assert.Equal(t, 0.25, got.Spread)
}

// Published logs that part the two say that pressing takes longer than sewing:
// twiggyandopal.blogspot.com 2016/06 (18.5 min against 13.5), and
// stephskardalquilts.com (three quarters of 27 h).
func TestPressingTakesLongerThanChainSewing(t *testing.T) {
	p := planOf(t, recutFour)
	minutes := map[string]Minutes{}
	for _, o := range p.Operations {
		minutes[o.Key] += o.Unit.Mean
	}
	assert.Greater(t, minutes["press-pairs"], minutes["sew-pairs"])
	assert.Greater(t, minutes["press-units"], minutes["sew-units"])
}

func TestSpansAddInProportion(t *testing.T) {
	sum := Span{Mean: 3, Spread: 0.2}.plus(Span{Mean: 1, Spread: 0.4})
	assert.InDelta(t, 4, float64(sum.Mean), 1e-12)
	assert.InDelta(t, 0.25, sum.Spread, 1e-12)
	assert.Equal(t, Span{}, Span{}.plus(Span{}))
}
