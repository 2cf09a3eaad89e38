package draw

import (
	"bytes"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
)

func topOf(t *testing.T, p planner.Plan, quilt int) []element {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, Top(&out, p, quilt))
	return elements(t, out.String())
}

// A top without one of its blocks, or with one twice, would be sewn so.
func TestEveryBlockOfAQuiltIsOnItsTopOnce(t *testing.T) {
	for name, p := range plans(t) {
		for quilt := 1; quilt <= p.Job.Quantity; quilt++ {
			times := map[string]int{}
			all := topOf(t, p, quilt)
			for _, text := range textsOf(all) {
				times[text]++
			}
			uses := 0
			for _, e := range all {
				if e.name == "use" && strings.Contains(e.attrs["href"], "r") && e.attrs["x"] != "" {
					uses++
				}
			}
			blocks := 0
			for _, b := range p.Blocks {
				want := 0
				if b.Quilt == quilt {
					want, blocks = 1, blocks+1
				}
				assert.Equal(t, want, times[b.ID], "%s: %s on quilt %d", name, b.ID, quilt)
			}
			assert.Equal(t, blocks, uses, "%s: a picture for each id", name)
		}
	}
}

// Hand-worked: an estuary top is 56 in wide on 772 units, so that a block of 12 in
// is 12·772/56 = 165.43 wide and the first begins behind borders of 4 in at
// 55.14; the third column begins at 28·772/56 = 386.
func TestBlocksLieWhereTheyAreSewn(t *testing.T) {
	var places []string
	for _, e := range topOf(t, example(t, "estuary-lap"), 1) {
		if e.name == "use" && e.attrs["x"] != "" {
			places = append(places, e.attrs["x"])
		}
	}
	assert.Equal(t, []string{"55.14", "220.57", "386", "551.43"}, places[:4])
	assert.Len(t, places, 20)
}

func TestTurnedBlocksAreDrawnTurned(t *testing.T) {
	p := planned(t, oddNames)
	var out bytes.Buffer
	require.NoError(t, Top(&out, p, 1))
	for _, b := range p.Blocks {
		if b.Turn != 0 {
			assert.Contains(t, out.String(), "rotate("+map[int]string{90: "90", 180: "180", 270: "270"}[b.Turn]+" ")
			assert.Contains(t, elements(t, out.String())[2].text, b.ID+" turned ")
		}
	}
}

// Blocks of the same cloths share a picture, whatever their number.
func TestLikeBlocksAreDrawnOnce(t *testing.T) {
	p := fileAt(t, "../../../testdata/breakwater-400.yaml")
	patches := 0
	for _, e := range topOf(t, p, 1) {
		if e.name == "path" && strings.HasPrefix(e.attrs["fill"], "#") && strings.Contains(e.attrs["d"], "Z") && e.attrs["stroke"] == "" {
			patches++ // cloth round the blocks has one of its own
		}
	}
	assert.Equal(t, 4*2+1, patches, "four colourways of two cloths each, and the border")
}

func TestColoursComeFromTheJobFile(t *testing.T) {
	p := planned(t, oddNames)
	k := newCloths(p, "", 100)
	assert.Equal(t, "#"+tones[0], k.fill("<Kelp> & 'Foam'"), "no colour is given")
	assert.Equal(t, "#224488", k.fill("藍"), "#248")
	assert.Equal(t, "#708090", k.fill("שלום"), "SlateGray in CSS Color Module Level 4, section 6.1")
	assert.True(t, k.dark("藍"))
	assert.False(t, k.dark("<Kelp> & 'Foam'"))
}

// In black and white, and where all cloths are alike, roles must differ by what
// is drawn on them.
func TestRolesDifferWithoutColour(t *testing.T) {
	for name, p := range plans(t) {
		k := newCloths(p, "", 100)
		cloth := p.Job.Fabrics[0].Name
		for _, c := range p.Job.Colourways {
			seen := map[string]string{}
			for _, r := range c.Roles {
				over := k.over(cloth, r.Role, 0)
				other, twice := seen[over]
				assert.False(t, twice, "%s: %s looks like %s", name, r.Role, other)
				seen[over] = r.Role
			}
		}
	}
}

// A piece that was turned shows it: its gulls fly another way.
func TestMarksTurnWithTheirCloth(t *testing.T) {
	p := example(t, "estuary-lap")
	k := newCloths(p, "", 100)
	seen := map[string]bool{}
	for quarters := range 4 {
		seen[k.over("Kelp", "print", quarters)] = true
	}
	assert.Len(t, seen, 4)
	assert.Equal(t, k.over("Foam", "ground", 0), k.over("Foam", "ground", 1))
}

func TestWhatCannotBeDrawnIsSaid(t *testing.T) {
	p := example(t, "estuary-lap")
	assert.EqualError(t, Top(io.Discard, p, 2), "there is no quilt 2 to draw")
	assert.EqualError(t, Block(io.Discard, p, "tied"), `there is no colourway "tied" to draw`)
}

// Sides first, then top and bottom over their ends: hand-worked for borders of 1 and
// 3 in round 48 × 60 in, at 772/56 units an inch. The outer border's top goes from
// edge to edge and is 3 in high, its left side from 3 to 65 in down.
func TestBordersMeetAsTheyAreSewn(t *testing.T) {
	var lines string
	for _, e := range topOf(t, example(t, "estuary-lap"), 1) {
		if e.name == "path" && e.attrs["opacity"] == ".6" {
			lines = e.attrs["d"]
		}
	}
	assert.Contains(t, lines, "M0 0H772V41.36H0Z", "top of the outer border")
	assert.Contains(t, lines, "M0 41.36H41.36V896.07H0Z", "its left side")
	assert.Contains(t, lines, "M41.36 41.36H730.64V55.14H41.36Z", "top of the inner border")
}

// Every part of a top is on its drawing: all cloth in its colour, all blocks turned
// as they lie. On point a block stands on its corner.
func TestEverySettingIsDrawn(t *testing.T) {
	for name, p := range plans(t) {
		var out bytes.Buffer
		require.NoError(t, Top(&out, p, 1), name)
		pieces := 0
		for _, part := range p.Top(1) {
			if part.Kind != planner.BlockPart {
				pieces++
			}
		}
		for _, e := range elements(t, out.String()) {
			if e.name == "path" && e.attrs["opacity"] == ".6" {
				assert.Equal(t, pieces, strings.Count(e.attrs["d"], "Z"), "%s: outlines of cloth", name)
			}
		}
		if p.Job.Layout.Setting == planner.OnPoint {
			assert.Contains(t, out.String(), "rotate(-45 ", name)
			assert.Contains(t, out.String(), "Setting triangles: "+p.Job.Layout.Triangles)
		}
	}
}

// Where one role has several fabrics, each has a letter of its own, on every block
// that it is in and in the key.
func TestFabricsAreToldApartByLetters(t *testing.T) {
	p := example(t, "estuary-lap")
	letters := fabricLetters(p)
	assert.Equal(t, "a", letters["Kelp"])
	assert.Equal(t, "b", letters["Cormorant"])
	assert.Empty(t, letters["Foam"], "the one ground")
	seen := map[string]bool{}
	for _, l := range letters {
		assert.False(t, seen[l])
		seen[l] = true
	}
	texts := textsOf(topOf(t, p, 1))
	assert.Contains(t, texts, "a Kelp")
	times := 0
	for _, text := range texts {
		times += map[string]int{"a": 1}[text]
	}
	assert.Equal(t, 3, times, "tide-01, tide-03 and tide-05")
	assert.Equal(t, []string{"a", "z", "aa", "az", "ba", "zz", "aaa"}, []string{letter(0), letter(25), letter(26), letter(51), letter(52), letter(701), letter(702)})
}

func TestFileNamesDifferAndFitAnyDisk(t *testing.T) {
	var files []string
	for _, d := range List(planned(t, oddNames)) {
		files = append(files, d.File)
	}
	assert.Equal(t, []string{
		"odd-names-top.svg", "odd-names-tide.svg", "odd-names-its.svg", "odd-names-藍.svg", "odd-names-co.svg",
		"odd-names-top-2.svg", "odd-names-its-2.svg",
	}, files)
	assert.Equal(t, "block", fileWord("🧵 / \\ :"))
	assert.LessOrEqual(t, len(fileWord(strings.Repeat("藍", 100))), longestWord)

	var pair []string
	for _, d := range List(example(t, "harbour-pair")) {
		pair = append(pair, d.File+": "+d.What)
	}
	assert.Equal(t, []string{
		"harbour-pair-top-1.svg: the top of quilt 1", "harbour-pair-top-2.svg: the top of quilt 2",
		"harbour-pair-mooring.svg: the block mooring", "harbour-pair-float.svg: the block float",
	}, pair)
}

func TestOwnDrawingsAreKnown(t *testing.T) {
	p := example(t, "estuary-lap")
	for _, d := range List(p) {
		assert.True(t, IsDrawing([]byte(drawingOf(t, p, d))))
	}
	assert.False(t, IsDrawing(nil))
	assert.False(t, IsDrawing([]byte(`<svg xmlns="http://www.w3.org/2000/svg" width="3"/>`)))
}

func TestDrawingsAreTheSameEveryTime(t *testing.T) {
	first, second := plans(t), plans(t)
	for name, p := range first {
		for _, d := range List(p) {
			assert.Equal(t, drawingOf(t, p, d), drawingOf(t, second[name], d), d.File)
		}
	}
}
