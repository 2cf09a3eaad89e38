package planner

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestFilesThatAreNoJobFileAreRefusedWhole(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"nothing", "", "1:1: the file is empty; begin with job: estuary-lap"},
		{"blanks", " \n\n", "1:1: the file is empty; begin with job: estuary-lap"},
		{"comments alone", "# later\n", "1:1: the file is empty; begin with job: estuary-lap"},
		{"a document without content", "---\n...\n", "1:1: the file is empty; begin with job: estuary-lap"},
		{"a mark of byte order alone", "\ufeff", "1:1: the file is empty; begin with job: estuary-lap"},
		{"one word", "quilt\n", `1:1: the job file should hold keys with values, not "quilt"`},
		{"a list", "- job: x\n", "1:1: the job file should hold keys with values, not a list"},
		{"UTF-16", "\xff\xfej\x00o\x00b\x00", "1:1: the file is saved as UTF-16; save it as UTF-8 text"},
		{"another encoding", "job: x\ntitle: f\xfcr\n", "2:9: the byte 0xfc here is not UTF-8; save the file as UTF-8 text"},
		{"a zero byte", "job: x\x00\n", "1:7: a control character (U+0000) stands here; delete it; it cannot be seen in most editors"},
		{"more than 1 MiB", strings.Repeat("#", 1<<20+1), "1:1: the file has 1048577 bytes; a job file has at most 1048576 (1 MiB); is this the right file?"},
		{"more than 20 000 lines", strings.Repeat("\n", 20_000) + "a\n", "20001:1: the file has 20001 lines; a job file has at most 20000; is this the right file?"},
	} {
		t.Run(c.name, func(t *testing.T) {
			assert.Equal(t, []string{c.want}, sentences(t, c.text))
		})
	}
}

// The library counts on after a broken escape; the place stays within the line.
func TestAPlaceIsAlwaysInTheFile(t *testing.T) {
	text := "job: x\ntitle: \"\\x\nlap\n of the estuary \"}"
	assert.Equal(t, []string{"3:4: this does not stand in line with what is above; give keys that belong together the same indent"},
		sentences(t, text))
}

func TestAFileOfJustTheLargestSizeIsRead(t *testing.T) {
	readGood(t, plainJob+"#"+strings.Repeat("x", largestFile-len(plainJob)-1))
}

// A tab beyond the indent stands for a blank; people line comments up with it.
func TestTabsThatAreNoIndentAreBlanks(t *testing.T) {
	j := readGood(t, changed(t, "title: Estuary lap quilt", "title:\tEstuary\tlap\t# tide\n\t\n\t# a comment"))
	assert.Equal(t, "Estuary lap", j.Title)
}

// Lines may end as any editor ends them, and a mark of byte order in front is no
// part of the first key.
func TestLineEndsAndByteOrderMarksChangeNothing(t *testing.T) {
	want := readGood(t, plainJob)
	for name, text := range map[string]string{
		"CRLF":      strings.ReplaceAll(plainJob, "\n", "\r\n"),
		"CR":        strings.ReplaceAll(plainJob, "\n", "\r"),
		"BOM":       "\ufeff" + plainJob,
		"BOM, CRLF": "\ufeff" + strings.ReplaceAll(plainJob, "\n", "\r\n"),
		"no end":    strings.TrimSuffix(plainJob, "\n"),
	} {
		assert.Equal(t, want, readGood(t, text), name)
	}
	marked := readGood(t, "---\n"+plainJob+"...\n")
	assert.Equal(t, want.Colourways, marked.Colourways, "the marks of one document may stand")
}
