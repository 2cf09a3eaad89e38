package draw

import (
	"bytes"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestCuttingDrawingsLookAsTheyWereLeft(t *testing.T) {
	for _, c := range []struct{ plan, file string }{
		{"estuary-lap", "estuary-lap-cutting-Slack-water.svg"},
		{"estuary-lap", "estuary-lap-cutting-Kelp.svg"},
		{"gull-cot", "gull-cot-cutting-Morning.svg"},
		{"saltmarsh-cot", "saltmarsh-cot-cutting-Reed.svg"},
	} {
		t.Run(c.file, func(t *testing.T) {
			p := example(t, c.plan)
			for _, d := range CuttingList(p) {
				if d.File == c.file {
					golden(t, c.file, drawingOf(t, p, d))
					return
				}
			}
			assert.Fail(t, "there is no such drawing")
		})
	}
}

// Every piece and every cut of the plan is in the drawing, and nothing lies
// outside the page.
func TestACuttingShowsEveryPieceAndEveryStep(t *testing.T) {
	for name, p := range plans(t) {
		for _, d := range CuttingList(p) {
			all := elements(t, drawingOf(t, p, d))
			text := strings.Join(textsOf(all), "\n")
			for _, n := range p.Fabrics {
				if n.Fabric.Name != d.Fabrics[0] {
					continue
				}
				for step := range n.Cutting.Steps {
					assert.Regexp(t, regexp.MustCompile(`(?m)^`+strconv.Itoa(step+1)+`$`), text, "%s: step %d has its number", d.File, step+1)
				}
				pieces := 0
				for _, e := range all {
					if e.name == "rect" && e.attrs["stroke-width"] == ".8" {
						pieces++
					}
				}
				drawn := 0
				alike := map[string]bool{}
				for _, k := range n.Cutting.Cloths {
					key := cutAlikeCloth(k)
					if !alike[key] || !n.Fabric.Form.Sheets() && !k.Hand {
						drawn += len(k.Pieces)
					}
					alike[key] = true
				}
				assert.Equal(t, drawn, pieces, "%s: %s", name, d.File)
			}
			root := all[0]
			width, err := strconv.ParseFloat(root.attrs["width"], 64)
			require.NoError(t, err)
			assert.Equal(t, pageWidth.String(), root.attrs["width"])
			assert.LessOrEqual(t, width, 840.0)
		}
	}
}

func TestFabricsCutAlikeShareADrawing(t *testing.T) {
	list := CuttingList(example(t, "estuary-lap"))
	require.Len(t, list, 4)
	assert.Equal(t, []string{"Kelp", "Marram", "Oystercatcher", "Turnstone"}, list[0].Fabrics)
	assert.Equal(t, "the cutting of Kelp, Marram, Oystercatcher and Turnstone", list[0].What)
	assert.Equal(t, "estuary-lap-cutting-Foam.svg", list[2].File)
}

func TestWhatIsNotCutIsNotDrawn(t *testing.T) {
	p := example(t, "harbour-pair")
	var out bytes.Buffer
	assert.EqualError(t, Cutting(&out, p, "Buoy"), "there is no cutting of Buoy to draw")
	assert.Zero(t, out.Len())
	for _, d := range CuttingList(p) {
		assert.NotContains(t, d.Fabrics, "Buoy", "its squares come as they are used")
	}
}

func TestMeasuresStayOnOneLine(t *testing.T) {
	assert.Equal(t, "of 14\u00a0×\u00a07\u00a0in left, ≈\u00a03\u00a01/2\u00a0cm", measuresTied("of 14 × 7 in left, ≈ 3 1/2 cm"))
}
