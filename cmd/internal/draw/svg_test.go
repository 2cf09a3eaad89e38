package draw

import (
	"encoding/xml"
	"io"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner"
)

// element is an element of a drawing as a reader of XML sees it.
type element struct {
	name  string
	attrs map[string]string
	text  string // its own and that of all within
}

// elements reads a drawing as XML, in the order in which elements begin.
func elements(t require.TestingT, drawn string) []element {
	decode := xml.NewDecoder(strings.NewReader(drawn))
	var all []element
	var open []int
	for {
		token, err := decode.Token()
		if err == io.EOF {
			return all
		}
		require.NoError(t, err)
		switch token := token.(type) {
		case xml.StartElement:
			e := element{name: token.Name.Local, attrs: map[string]string{}}
			for _, a := range token.Attr {
				_, twice := e.attrs[a.Name.Local]
				require.False(t, twice, "attribute given twice: %s", a.Name.Local)
				e.attrs[a.Name.Local] = a.Value
			}
			open = append(open, len(all))
			all = append(all, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			for _, i := range open {
				all[i].text += string(token)
			}
		}
	}
}

// textsOf is what the text elements of a drawing say.
func textsOf(all []element) []string {
	var texts []string
	for _, e := range all {
		if e.name == "text" {
			texts = append(texts, e.text)
		}
	}
	return texts
}

var reference = regexp.MustCompile(`^(?:url\()?#([^)]+)\)?$`)

// everyDrawing is all that can be drawn of a plan.
func everyDrawing(p planner.Plan) []Drawing { return append(List(p), CuttingList(p)...) }

// Every drawing of every plan is XML whose references lead somewhere, and is
// named and described for those who cannot see it.
func TestDrawingsAreWellMadeAndDescribed(t *testing.T) {
	for name, p := range plans(t) {
		for _, d := range everyDrawing(p) {
			all := elements(t, drawingOf(t, p, d))
			root := all[0]
			assert.Equal(t, "img", root.attrs["role"], name)
			require.Equal(t, []string{"svg", "title", "desc"}, []string{root.name, all[1].name, all[2].name})
			assert.Equal(t, root.attrs["aria-labelledby"], all[1].attrs["id"]+" "+all[2].attrs["id"])
			assert.Contains(t, all[1].text, strings.Join(strings.Fields(p.Job.Title), " "))
			assert.Greater(t, len(all[2].text), 20, "%s has a description", d.File)
			ids := map[string]bool{}
			for _, e := range all {
				if id := e.attrs["id"]; id != "" {
					assert.False(t, ids[id], "%s: id %s twice", d.File, id)
					ids[id] = true
				}
			}
			for _, e := range all {
				for _, value := range e.attrs {
					if m := reference.FindStringSubmatch(value); m != nil && len(m[1]) > 6 {
						assert.True(t, ids[m[1]], "%s: nothing is called %s", d.File, m[1])
					}
				}
			}
		}
	}
}

// Two drawings on one page must not take each other's definitions.
func TestDrawingsOfAJobShareNoIDs(t *testing.T) {
	for name, p := range plans(t) {
		seen := map[string]string{}
		for _, d := range everyDrawing(p) {
			for _, e := range elements(t, drawingOf(t, p, d)) {
				if id := e.attrs["id"]; id != "" {
					assert.Empty(t, seen[id], "%s: %s is in %s too", name, id, d.File)
					seen[id] = d.File
				}
			}
		}
	}
}

// All that is drawn lies on the page.
func TestLetteringStaysOnThePage(t *testing.T) {
	for _, p := range plans(t) {
		for _, d := range List(p) {
			if d.Quilt > 0 {
				continue
			}
			for _, text := range textsOf(elements(t, drawingOf(t, p, d))) {
				assert.LessOrEqual(t, textWidth(text, textSize), pageWidth-2*margin, text)
			}
		}
	}
}

func TestSpansAreWrittenExactlyAndShort(t *testing.T) {
	for want, n := range map[string]span{"0": 0, "1": 100, "-1": -100, "12.5": 1250, "0.07": 7, "-0.07": -7, "-3.2": -320, "100": 10000} {
		assert.Equal(t, want, n.String())
	}
}

// Whatever stands in a file, the drawing is XML and says it, but for what XML
// cannot hold and what would turn the writing round.
func TestAnyTextCanStandInADrawing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.String().Draw(t, "text")
		var c canvas
		c.open("svg")
		c.words("text", text, is("title", text))
		c.shut("svg")
		got := elements(t, c.String())[1]
		assert.Equal(t, got.text, got.attrs["title"])
		assert.True(t, utf8.ValidString(got.text))
		plain := strings.Map(func(r rune) rune {
			if r < ' ' || r > '~' {
				return -1
			}
			return r
		}, text)
		assert.Equal(t, strings.ReplaceAll(plain, " ", ""), strings.ReplaceAll(strings.Map(func(r rune) rune {
			if r < ' ' || r > '~' {
				return -1
			}
			return r
		}, got.text), " ", ""))
	})
}

func TestControlCharactersAndOverridesAreTakenOut(t *testing.T) {
	assert.Equal(t, "a\uFFFDb c&lt;d&gt; &amp; &quot;e&quot; it's 藍", escaped("a\x01b\nc<d> & \"e\" it's\u202e 藍"))
}

func TestLinesAreWrappedWithoutLosingAWord(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOf(rapid.StringMatching(`[a-z藍]{1,30}`)).Draw(t, "words")
		limit := span(rapid.IntRange(2000, 40000).Draw(t, "limit"))
		lines := wrapped(strings.Join(words, " "), textSize, limit)
		for _, line := range lines {
			assert.LessOrEqual(t, textWidth(line, textSize), limit+2*textSize)
		}
		squeezed := strings.ReplaceAll(strings.Join(lines, ""), " ", "")
		assert.Equal(t, strings.Join(words, ""), squeezed)
	})
}

func TestMeasuresAreNotParted(t *testing.T) {
	lines := wrapped("Cut pieces of "+together("13 1/2 × 7 in")+" each.", textSize, 130*unit)
	assert.True(t, slices.ContainsFunc(lines, func(l string) bool { return strings.Contains(l, "13 1/2 × 7 in") }), lines)
}
