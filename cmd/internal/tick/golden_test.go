package tick

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/cmd/internal/render"
)

var update = flag.Bool("update", false, "write the screens anew")

// golden compares a screen with what it was when somebody last looked at it.
func golden(t *testing.T, name string, lines []string) {
	t.Helper()
	path := filepath.Join("testdata", name+".golden")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	got := strings.Join(lines, "\n") + "\n"
	if *update {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(want), got)
}

var sizes = [][2]int{{40, 12}, {80, 24}, {132, 43}}

// moments are screens worth looking at, each as the keys that lead to it.
var moments = []struct {
	name, key, colourway string
	keys                 []string
}{
	{"opened", "sew-pairs", "tide", nil},
	{"chain", "sew-pairs", "tide", []string{"b", "space", "4", "space", "space"}},
	{"typed", "sew-pairs", "dune", []string{"space", "1", "2"}},
	{"done", "press-pairs", "dune", []string{"1", "0", "space", "space"}},
	{"cutting", "recut-upright", "wrack", []string{"space", "p"}},
	{"note", "sew-units", "tide", []string{"w", "n", "e", "e", "d", "l", "e"}},
	{"kit", "kit", "dune", []string{"space"}},
	{"full", "turn", "shingle", []string{"i"}},
}

func TestScreens(t *testing.T) {
	for _, m := range moments {
		d := sit(t, m.key, m.colourway)
		d.every = 17 * time.Second
		d.press(m.keys...)
		for _, size := range sizes {
			name := fmt.Sprintf("%s-%dx%d", m.name, size[0], size[1])
			t.Run(name, func(t *testing.T) { golden(t, name, d.shown(size[0], size[1])) })
		}
	}
}

func TestAScreenOfASCIIHasNothingElse(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	d.screen.Look = render.Look{}
	d.press("space", "space")
	lines := d.shown(80, 24)
	golden(t, "ascii-80x24", lines)
	for _, l := range lines {
		for _, r := range l {
			assert.Less(t, r, rune(128), l)
		}
	}
}

// TestWhatIsParkedStandsFirst until work is logged.
func TestWhatIsParkedStandsFirst(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	ev, err := d.log.Park("blue box 3; row 4 half joined", "park", evening, "Runa")
	require.NoError(t, err)
	ev.Seq = 2
	d.log, err = d.log.With(ev)
	require.NoError(t, err)
	d.screen.Seen(News{State: d.log})
	assert.Equal(t, "Parked: blue box 3; row 4 half joined", d.shown(80, 24)[0])
	d.press("space")
	assert.Contains(t, d.shown(80, 24)[0], "80 chain-sew pairs")
}

// TestEveryScreenFits lays every row of the job out on every size: exactly as many
// lines as there are, none wider.
func TestEveryScreenFits(t *testing.T) {
	state, guide := estuary(t)
	for _, row := range state.Rows() {
		for _, unicode := range []bool{true, false} {
			s := settings()
			s.Look.Unicode = unicode
			screen := NewScreen(state, guide, row.Operation, s)
			for _, size := range [][2]int{{20, 6}, {40, 12}, {41, 13}, {60, 15}, {80, 24}, {100, 30}, {132, 43}, {240, 70}} {
				for _, whole := range []bool{false, true} {
					screen.whole = whole
					lines := screen.Lines(size[0], size[1])
					require.Len(t, lines, size[1], "%s on %v", row.Title(), size)
					for _, l := range lines {
						require.LessOrEqual(t, render.Columns(l.Text), size[0], "%s on %v: %s", row.Title(), size, l.Text)
					}
				}
			}
		}
	}
}
