package planner

import (
	"errors"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
)

// FuzzParse checks that no bytes make Parse panic, and that what is wrong is
// always said as Problems, in order, at places that the file has.
func FuzzParse(f *testing.F) {
	files, err := filepath.Glob(filepath.Join("testdata", "jobs", "*.yaml"))
	require.NoError(f, err)
	for _, file := range files {
		f.Add(jobFile(f, filepath.Base(file)))
	}
	for _, text := range []string{
		"a: [", "{", "? a", "- - -", "a: |\n b", "\"", "'", "&a *a", "<<: 1", "%x", "a: b: c", "\t", "---\n---", "a: \"\\x", "!t {a: ]}",
		strings.Repeat("a:\n ", 30), "x: >-\n\n - ", ": {,,}", "[a: b]: c", "a: 'b'c",
	} {
		f.Add([]byte(text))
		f.Add([]byte(changed(f, "title: Estuary lap quilt", text)))
		f.Add([]byte(changed(f, "  down: 2", "  down: 2\n  order: "+text)))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		j, err := Parse("job.yaml", data)
		if err == nil {
			require.NotEmpty(t, j.ID)
			require.NotEmpty(t, j.Colourways)
			return
		}
		var problems Problems
		require.True(t, errors.As(err, &problems))
		require.NotEmpty(t, problems)
		lines := strings.Split(lineEnds.Replace(strings.TrimPrefix(string(data), "\ufeff")), "\n")
		before := Position{1, 1}
		for _, p := range problems {
			require.GreaterOrEqual(t, p.At.Line, before.Line)
			require.LessOrEqual(t, p.At.Line, len(lines))
			require.GreaterOrEqual(t, p.At.Column, 1)
			require.LessOrEqual(t, p.At.Column, utf8.RuneCountInString(lines[p.At.Line-1])+1)
			require.NotEmpty(t, p.What)
			before = p.At
		}
	})
}

// BenchmarkParse reads a job of twelve colourways and fourteen fabrics.
func BenchmarkParse(b *testing.B) {
	data := jobFile(b, "twelve-colourways.yaml")
	b.ReportAllocs()
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		if _, err := Parse("job.yaml", data); err != nil {
			b.Fatal(err)
		}
	}
}
