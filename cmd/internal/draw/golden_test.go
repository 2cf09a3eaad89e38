package draw

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// golden compares what was drawn with the file that somebody has looked at.
func golden(t *testing.T, name, drawn string) {
	t.Helper()
	path := filepath.Join("testdata", "golden", name)
	if *update {
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, []byte(drawn), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err, "run the test with -update, then look at what it drew")
	assert.Equal(t, string(want), drawn)
}

func TestDrawingsLookAsTheyWereLeft(t *testing.T) {
	all := plans(t)
	for _, c := range []struct {
		plan string
		file string
	}{
		{"saltmarsh-cot", "saltmarsh-cot-top.svg"},
		{"saltmarsh-cot", "saltmarsh-cot-creek.svg"},
		{"harbour-pair", "harbour-pair-top-2.svg"},
		{"cormorant-point", "cormorant-point-top.svg"},
		{"dune-sampler", "dune-sampler-top.svg"},
		{"block border", "lagoon-throw-top.svg"},
		{"odd names", "odd-names-top-2.svg"},
		{"odd names", "odd-names-top.svg"},
		{"two ways", "headland-king-tide.svg"},
		{"pinwheel recut", "pinwheel-recut-skerry.svg"},
		{"four at a time", "four-at-a-time-skerry.svg"},
		{"hourglass", "hourglass-skerry.svg"},
		{"rail", "rail-skerry.svg"},
		{"all that is done", "every-action-skerry.svg"},
	} {
		t.Run(c.file, func(t *testing.T) {
			found := false
			for _, d := range List(all[c.plan]) {
				if d.File == c.file {
					found = true
					golden(t, c.file, drawingOf(t, all[c.plan], d))
				}
			}
			assert.True(t, found, "there is such a drawing")
		})
	}
}

func TestBlocksInCharactersLookAsTheyWereLeft(t *testing.T) {
	var all strings.Builder
	show := func(title string, b *patchwork.Build, w patchwork.Way, width int, unicode bool) {
		all.WriteString("== " + title + "\n" + strings.Join(Characters(b, w, width, unicode), "\n") + "\n\n")
	}
	tide, creek := example(t, "estuary-lap").Colourways[0], example(t, "saltmarsh-cot").Colourways[0]
	show("four-patch recut", tide.Build, tide.Press, 80, true)
	show("the same on a narrow page", tide.Build, tide.Press, 22, true)
	show("the same in ASCII", tide.Build, tide.Press, 40, false)
	show("nine-patch recut", creek.Build, creek.Press, 80, true)
	for _, c := range []struct {
		name   string
		recipe patchwork.Recipe
	}{
		{"pinwheel", patchwork.Pinwheel(4*inch, 2)},
		{"pinwheel recut", patchwork.PinwheelRecut(4*inch, 2, 0, nil)},
		{"hourglass", patchwork.Hourglass(5 * inch)},
		{"plain square", patchwork.PlainPiece(squareOf(5 * inch))},
		{"rail", patchwork.Rail([]string{"a", "b", "c", "d", "e", "f", "g", "h", "i"}, 2*inch, 8*inch)},
	} {
		b, err := patchwork.Make(c.recipe, inch/4, measure.Inches)
		require.NoError(t, err)
		show(c.name, b, b.Best(), 80, true)
		show(c.name+" in ASCII", b, b.Best(), 30, false)
	}
	golden(t, "characters.txt", all.String())
}
