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
	f.Add([]byte(stepsJob))
	for _, step := range []string{
		"{cut: print, size: 4 x 2 1/2}", "{sew: [[pairs, pairs@90], [units]]}", "{sew: units}", "{sew: [[@]]}", "{sew: []}", "{sew: [[[]]]}",
		"{recut: units, upright: halves, level: [top 1, bottom -2, −3]}", "{recut: units, upright: left}", "{turn: recut, exchange: [[1, 2], []]}",
		"{turn: recut, by: [[360]], exchange: 1}", "{subcut: units, every: 0}", "{half-square: [print, ground], at-a-time: eight, trim: 3}",
		"{half square: [print, print], size: 4}", "{quarter-square: [print], size: 4 x 5}", "{trim: units, size: 1e9}", "{trim: {trim: trim}}", "{}", "cut",
	} {
		f.Add([]byte(strings.Replace(stepsJob, "{sew: turn}", step, 1)))
	}
	for _, b := range BuiltIns() {
		shared := stepsJob[strings.Index(stepsJob, "block:"):strings.Index(stepsJob, "  print: Kelp")]
		f.Add([]byte(strings.Replace(stepsJob, shared, Fragment(b.Sample().Recipe), 1)))
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
