package planner

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Columns are counted by hand in the lines of plainJob.
func TestPositionsAreThoseOfTheValues(t *testing.T) {
	j := readGood(t, plainJob)
	for path, want := range map[string]Position{
		"job":                       {1, 6},
		"seam":                      {6, 7},
		"fabrics.Kelp":              {9, 9},
		"fabrics.Kelp.on-hand":      {9, 38},
		"fabrics.Kelp.size":         {9, 9}, // not given: the fabric
		"block":                     {12, 1},
		"block.offset":              {15, 11},
		"colourways.tide":           {18, 3},
		"colourways.tide.blocks":    {19, 13},
		"colourways.tide.offset":    {15, 11}, // shared: where the value is
		"colourways.tide.make":      {13, 9},
		"colourways.dune.print[0]":  {24, 13},
		"colourways.dune.print[1]":  {24, 12}, // not given: the list
		"layout.down":               {29, 9},
		"borders[0].width":          {31, 13},
		"borders[1].width":          {30, 1},
		"quilting.density":          {35, 31},
		"colourways.gull.print":     {17, 1},
		"nothing.of.the.kind":       {1, 1},
		"colourways.tide.ground[2]": {21, 13},
	} {
		assert.Equal(t, want, j.PositionOf(path), path)
	}
}

// A character is a column, however many bytes it has; a thread spool is one.
func TestColumnsAreCountedInCharacters(t *testing.T) {
	text := "job: x\nfabrics: {藍: {form: yardage}, 🧵 rose: {form: yardage, wdth: 40}}\n" +
		"block: {make: plain square, square: 5}\ncolourways: {藍: {blocks: 1, print: Ai}}\nlayout: {across: 1, down: 1}\n"
	want := []string{
		`2:55: "wdth" is not a key of fabric "🧵 rose"; did you mean "width"?`,
		`4:36: the fabric "Ai" is not described under fabrics; the fabrics are 藍 and 🧵 rose`,
	}
	assert.Equal(t, want, sentences(t, text))
	assert.Equal(t, want, sentences(t, "\ufeff"+strings.ReplaceAll(text, "\n", "\r\n")))
}

// Whatever the names, the style and the line ends: the text at each position is
// the value that was put there.
func TestThePositionOfEveryFabricsValuesHoldsThem(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		names := rapid.SliceOfNDistinct(rapid.StringMatching(`[a-zé藍🧵][a-zé藍🧵 ']{0,8}[a-zé藍🧵]`), 1, 5, rapid.ID[string]).Draw(t, "names")
		end := rapid.SampledFrom([]string{"\n", "\r\n", "\r"}).Draw(t, "line end")
		var b strings.Builder
		b.WriteString(rapid.SampledFrom([]string{"", "\ufeff"}).Draw(t, "mark") + "job: x" + end + "fabrics:" + end)
		for i, name := range names {
			form := rapid.SampledFrom([]string{
				"  %s: {form: 'yardage', width: %d}", "  \"%s\":\t{ width:   %[2]d , form: yardage }",
				"  %s:" + end + "    # 藍" + end + "    width: %d", "  %s: {" + end + "    width: \"%d\"}",
			}).Draw(t, "style")
			fmt.Fprintf(&b, form+end, name, 30+i)
		}
		text := b.String() + "block: {make: plain square, square: 5}" + end +
			"colourways: {tide: {blocks: 1, print: \"" + names[0] + "\"}}" + end + "layout: {across: 1, down: 1}" + end
		j, err := Parse("job.yaml", []byte(text))
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		lines := strings.Split(strings.ReplaceAll(strings.ReplaceAll(strings.TrimPrefix(text, "\ufeff"), "\r\n", "\n"), "\r", "\n"), "\n")
		for i, name := range names {
			at := j.PositionOf("fabrics." + name + ".width")
			found := strings.TrimPrefix(string([]rune(lines[at.Line-1])[at.Column-1:]), `"`)
			assert.True(t, strings.HasPrefix(found, fmt.Sprint(30+i)), "%s: %v in %q", name, at, text)
		}
	})
}
