package cloth

import (
	"testing"

	"github.com/stretchr/testify/require"

	"quiltrun/planner/measure"
)

// BenchmarkPublishedSets plans the sets that take longest, turned where that
// helps: few distinct pieces on a fine grid, two hundred and five hundred
// different ones.
func BenchmarkPublishedSets(b *testing.B) {
	slow := map[string]bool{}
	for _, name := range []string{"cgcut3-acrossWidth", "gcut12-acrossWidth", "gcut13-acrossWidth", "BENG10", "C7_2", "BKW-N12"} {
		slow[name] = true
	}
	for _, c := range stripCases(b) {
		if !slow[c.name] {
			continue
		}
		for _, style := range []Style{Simple, Nested} {
			b.Run(c.name+"/"+string(style), func(b *testing.B) {
				for b.Loop() {
					c.cut(b, style, false)
				}
			})
		}
	}
}

// BenchmarkQuilt plans the one ground fabric of a quilt: squares, sashes,
// cornerstones, borders and binding strips on 40 in cloth.
func BenchmarkQuilt(b *testing.B) {
	wants := []Want{
		{Name: "squares", Size: size(b, "7", "7"), Count: 128},
		{Name: "sashes", Size: size(b, "12 1/2", "2 1/2"), Count: 80},
		{Name: "cornerstones", Size: size(b, "2 1/2", "2 1/2"), Count: 25},
		{Name: "border", Size: size(b, "3 1/2", "40"), Count: 8},
		{Name: "binding", Size: size(b, "40", "2 1/2"), Count: 9},
	}
	for _, style := range []Style{Simple, Nested} {
		b.Run(string(style), func(b *testing.B) {
			for b.Loop() {
				_, err := CutYardage(wants, measure.Inch*40, Settings{Style: style})
				require.NoError(b, err)
			}
		})
	}
}

// BenchmarkFatQuarters plans squares of two sizes on fat quarters.
func BenchmarkFatQuarters(b *testing.B) {
	wants := []Want{
		{Name: "squares", Size: size(b, "5", "5"), Count: 96},
		{Name: "corners", Size: size(b, "2 1/2", "2 1/2"), Count: 120},
	}
	for _, style := range []Style{Simple, Nested} {
		b.Run(string(style), func(b *testing.B) {
			for b.Loop() {
				_, err := CutSheets(wants, []Sheet{{Size: size(b, "18", "22")}}, Settings{Style: style})
				require.NoError(b, err)
			}
		})
	}
}
