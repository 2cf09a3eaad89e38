package patchwork

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Hand-worked: a four-patch of 5 in squares is 9 1/2 raw, its seams 4 3/4 from each
// edge, with allowances of 1/4. A cut 1/8 from a seam leaves a strip of 1/8 of each
// allowance without stitches; at 1/4 the cut only touches their edges.
func TestACutBesideASeamLeavesItsAllowanceLoose(t *testing.T) {
	recut := func(upright, level []From) Made {
		r := FourPatch(in(t, "5"))
		r.Steps = append(r.Steps, Step{Name: "recut", Do: Recut, Of: "units", Upright: upright, Level: level}, Step{Name: "block", Do: Sew, Of: "recut", Whole: true})
		return made(t, r, quarter).step(t, "recut")
	}
	from := func(edge Edge, distance string) []From { return []From{{edge, in(t, distance)}} }

	assert.Equal(t, []LooseCut{
		{Upright: true, At: in(t, "4 5/8"), Off: in(t, "1/8")}, {At: in(t, "4 13/16"), Off: in(t, "1/16")},
	}, recut(from(Near, "4 5/8"), from(Centre, "1/16")).LooseCuts(quarter))
	assert.Empty(t, recut(from(Centre, "1/4"), from(Near, "4 1/2")).LooseCuts(quarter))
	assert.Equal(t, []LooseCut{{At: in(t, "4 1/2"), Off: in(t, "1/4")}}, recut(from(Centre, "1/4"), from(Near, "4 1/2")).LooseCuts(quarter + mm)[1:], "a wider allowance")
	assert.Empty(t, made(t, FourPatch(in(t, "5")), quarter).step(t, "units").LooseCuts(quarter), "nothing is cut")
}

// No cut of the built-ins at the measures of published blocks is one.
func TestBuiltInsLeaveNoAllowanceLoose(t *testing.T) {
	for name, r := range builtIns() {
		for _, m := range made(t, r, quarter).Steps {
			assert.Empty(t, m.LooseCuts(quarter), name)
		}
	}
}
