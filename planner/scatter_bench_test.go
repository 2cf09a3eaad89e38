package planner

import (
	"cmp"
	"fmt"
	"slices"
	"testing"
)

// scatterJob is a square quilt whose colourways share the blocks and whose prints are
// dealt through all of them.
func scatterJob(across, down, colourways, prints int) Job {
	return scatterLayout(Layout{Across: across, Down: down, Order: Scatter}, colourways, prints)
}

// scatterLayout is the same in any layout.
func scatterLayout(l Layout, colourways, prints int) Job {
	j := Job{Layout: l, Quantity: 1}
	blocks := placesOf(l)
	for c := range colourways {
		n := blocks*(c+1)/colourways - blocks*c/colourways
		role := RoleFabrics{Role: "print"}
		for f := range prints {
			if f%colourways == c || prints < colourways {
				role.Fabrics = append(role.Fabrics, Share{Fabric: fmt.Sprint("print ", f)})
			}
		}
		j.Colourways = append(j.Colourways, Colourway{Name: fmt.Sprintf("c%d", c), Blocks: n,
			Roles: []RoleFabrics{role, {Role: "ground", Fabrics: []Share{{Fabric: "ground"}}}}})
	}
	return j
}

// The wanted figure is 20 × 20 with 12 colourways and 40 prints; 100 × 100 is the
// largest run there is.
func BenchmarkScatter(b *testing.B) {
	for _, c := range []struct{ side, colourways, prints int }{{10, 6, 12}, {20, 12, 40}, {100, 12, 40}} {
		b.Run(fmt.Sprintf("%d blocks", c.side*c.side), func(b *testing.B) {
			j := scatterJob(c.side, c.side, c.colourways, c.prints)
			var s *scatter
			var best []int
			for b.Loop() {
				s = scatterOf(j, eightInches)
				best = s.best()
			}
			dealt := slices.MinFunc(s.dealt, func(a, b []int) int { return cmp.Compare(s.cost(a), s.cost(b)) })
			const nearest = colourwayWeight << 40
			b.ReportMetric(float64(s.cost(dealt))/nearest, "dealt")
			b.ReportMetric(float64(s.cost(best))/nearest, "scattered")
		})
	}
}
