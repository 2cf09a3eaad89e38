package render

import (
	"bytes"
	"os"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// names are names that people give, in many scripts.
var names = []string{
	"藍", "🧵 rose", "cafe\u0301", "🇳🇴", "שלום", "👩\u200d🌾", "✂\ufe0f", "it's", "NO", "Sea glass", "\U0010F000", "مرحبا",
}

func nameTable() *grid {
	g := &grid{columns: []column{{title: "Name", flexible: true}, {title: "Form"}, {title: "Count", right: true}}}
	for _, n := range names {
		g.add(n, "fat quarter", "12 pieces")
	}
	return g
}

func drawn(t testing.TB, look Look, draw func(*page)) []string {
	t.Helper()
	p := &page{look: look}
	draw(p)
	return strings.Split(strings.TrimSuffix(p.out.String(), "\n"), "\n")
}

func asTable(t testing.TB) func(*page) {
	return func(p *page) { require.NoError(t, p.table(nameTable())) }
}

func asColumns(t testing.TB) func(*page) {
	return func(p *page) { require.True(t, p.columns(0, nameTable(), func(int) {}, func(int) {})) }
}

func TestColumnsLineUpByDisplayWidth(t *testing.T) {
	for kind, draw := range map[string]func(*page){"table": asTable(t), "columns": asColumns(t)} {
		for _, l := range []Look{{Width: 80, Unicode: true}, {Unicode: true}, {Width: 40}} {
			lines := drawn(t, l, draw)
			require.Len(t, lines, len(names)+2)
			for i, line := range lines[2:] {
				before, after, found := strings.Cut(line, "fat quarter")
				require.True(t, found, line)
				assert.Equal(t, 11, width(before), "%s: %q", kind, line) // Sea glass and the gap
				assert.Equal(t, "  12 pieces", after, kind)
				assert.Equal(t, l.text(names[i]), strings.TrimRight(before, " "), kind)
			}
			assert.Equal(t, width(lines[2]), width(lines[1]), "the rule ends with the columns")
		}
	}
}

func TestBothWaysToSetATableGiveTheSame(t *testing.T) {
	l := Look{Width: 60, Unicode: true}
	assert.Equal(t, drawn(t, l, asTable(t)), drawn(t, l, asColumns(t)))
}

// inLocale makes the test binary print its tables and nothing else.
const inLocale = "RENDER_TABLES_IN_LOCALE"

// A locale of East Asia, where border characters may be taken for wide, must
// not move a column. The locale is read when a program starts, so this starts
// the test binary again.
func TestTablesAreTheSameInEveryLocale(t *testing.T) {
	if os.Getenv(inLocale) != "" {
		p := &page{look: Look{Width: 80, Unicode: true}}
		asTable(t)(p)
		asColumns(t)(p)
		require.NoError(t, p.writeTo(os.Stdout))
		return
	}
	in := func(env ...string) string {
		cmd := exec.Command(os.Args[0], "-test.run=^TestTablesAreTheSameInEveryLocale$")
		cmd.Env = append(append(os.Environ(), inLocale+"=1"), env...)
		out, err := cmd.Output()
		require.NoError(t, err)
		return string(out)
	}
	plain := in("LC_ALL=C", "LANG=C")
	assert.Contains(t, plain, "藍")
	assert.Equal(t, plain, in("LC_ALL=zh_CN.UTF-8", "LANG=zh_CN.UTF-8"))
	assert.Equal(t, plain, in("LANG=zh_CN.UTF-8", "LC_ALL=", "RUNEWIDTH_EASTASIAN=1"))
}

func TestATableTooWideForThePageBecomesAList(t *testing.T) {
	g := &grid{columns: []column{{title: "Job", flexible: true}, {title: "Due"}, {title: "Hours", right: true}}}
	g.add("estuary-lap", "2027-02-12", "34 h 28 min")
	want := []string{"estuary-lap", "  Due: 2027-02-12;", "  Hours: 34 h 28 min"}
	l := Look{Width: 24, Unicode: true}
	assert.Equal(t, want, drawn(t, l, func(p *page) { p.records(0, g) }))
	assert.Equal(t, want, drawn(t, l, func(p *page) { require.NoError(t, p.table(g)) }))
}

func TestCellsKeepTheirTextHoweverNarrow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := &grid{columns: []column{{title: "Name", flexible: true}, {title: "Text", flexible: true}, {title: "No", right: true}}}
		name := rapid.SampledFrom(names[:9]).Draw(t, "name")
		text := rapid.StringMatching(`([a-z]{1,9} ){1,8}[0-9]{1,4} 1/2 in`).Draw(t, "text")
		g.add(name, text, "12345")
		w := rapid.IntRange(20, 120).Draw(t, "width")
		p := &page{look: Look{Width: w, Unicode: true}}
		p.records(1, g)
		var shown bytes.Buffer
		require.NoError(t, p.writeTo(&shown))
		for _, line := range strings.Split(shown.String(), "\n") {
			assert.LessOrEqual(t, width(line), w)
		}
		assert.Contains(t, shown.String(), "12345")
		for _, word := range strings.Fields(text) {
			assert.Contains(t, shown.String(), word)
		}
	})
}
