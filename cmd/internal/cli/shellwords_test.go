package cli

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Words and quotes as POSIX.1-2024, Shell Command Language, section 2.2 has them;
// hand-worked.
func TestALineIsTakenApartAsAShellWould(t *testing.T) {
	for _, c := range []struct {
		line string
		want []string
	}{
		{"quiltrun log ", []string{"quiltrun", "log", ""}},
		{`log Sea\ glass 'a b'`, []string{"log", `Sea\ glass`, "'a b'"}},
		{"log\t'it", []string{"log", "'it"}},
		{"", []string{""}},
	} {
		assert.Equal(t, c.want, rawWords(c.line), c.line)
	}
	for _, c := range []struct {
		raw, want string
		open      int
	}{
		{`Sea\ glass`, "Sea glass", -1},
		{`'Sea gl`, "Sea gl", 0},
		{`"it's`, "it's", 0},
		{`col:'a b`, "col:a b", 4},
		{`"a\"b\q"`, `a"b\q`, -1},
		{`\$(touch x)`, "$(touch x)", -1},
		{"$(touch x)", "$(touch x)", -1},
		{`it\'s`, "it's", -1},
	} {
		text, open := unquoted(c.raw)
		assert.Equal(t, c.want, text, c.raw)
		assert.Equal(t, c.open, open, c.raw)
	}
}

func TestBashGetsWhatItPutsInPlaceOfItsWord(t *testing.T) {
	const breaks = " \t\n\"'><=;|&(:"
	for _, c := range []struct{ word, raw, want string }{
		{"Sea glass", "Sea", `Sea\ glass`},
		{"it's", "it", `it\'s`},
		{"a:b", "a:", "b"},
		{"colourway:a:b", "colourway:a", "a:b"},
		{"Sea glass", "--colourway=Sea", `Sea\ glass`},
		{"Sea glass", "'Sea", "Sea glass"},
		{"$(touch x)", `"$`, `\$(touch x)`},
		{"it's", "'it", `it'\''s`},
		{"$(touch x)", "", `\$\(touch\ x\)`},
		{"~tide", "", `\~tide`},
		{"藍", "", "藍"},
	} {
		assert.Equal(t, c.want, bashReply(c.word, c.raw, breaks), "%q for %q", c.word, c.raw)
	}
}

// Whatever a name is, quoted it is one word, and it says the name.
func TestAQuotedNameIsOneWordAndSaysTheName(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.StringMatching(`[ -~éה藍]{1,12}`).Draw(t, "name")
		raw := bashQuoted(name)
		assert.Equal(t, []string{raw}, rawWords(raw))
		text, open := unquoted(raw)
		assert.Equal(t, name, text)
		assert.Equal(t, -1, open)
	})
}

func FuzzWordsOfALine(f *testing.F) {
	f.Add(`quiltrun log 'Sea "glass\`)
	f.Fuzz(func(t *testing.T, line string) {
		for _, raw := range rawWords(line) {
			bashReply("name", raw, "=:")
		}
	})
}
