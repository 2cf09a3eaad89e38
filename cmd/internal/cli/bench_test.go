package cli

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"quiltrun/planner"
)

// wallSized is the job file of a quilt of 400 blocks in ten colourways of four
// prints each.
func wallSized() []byte {
	var file bytes.Buffer
	fmt.Fprintln(&file, "job: sea-wall\nfabrics:\n  Foam: {form: yardage, width: 42}")
	for i := range 40 {
		fmt.Fprintf(&file, "  Print %d: {form: yardage, width: 42}\n", i)
	}
	fmt.Fprintln(&file, "block: {make: nine-patch recut, square: 5, side: Foam, centre: Foam}\ncolourways:")
	for i := range 10 {
		fmt.Fprintf(&file, "  tide %d: {blocks: 40, corner: [Print %d, Print %d, Print %d, Print %d]}\n", i, 4*i, 4*i+1, 4*i+2, 4*i+3)
	}
	fmt.Fprintln(&file, "layout: {across: 20, down: 20}")
	return file.Bytes()
}

// The whole plan command but for the start of the process.
func BenchmarkPlanOf400Blocks(b *testing.B) {
	file := string(wallSized())
	env := Env{Out: io.Discard, Err: io.Discard, Unicode: true}
	for b.Loop() {
		env.In = strings.NewReader(file)
		require.Equal(b, exitDone, Main(env, []string{"plan", "-"}))
	}
}

// The same without reading the file and without showing the sheet.
func BenchmarkMakeOf400Blocks(b *testing.B) {
	file := jobFile{"wall.yaml", wallSized()}
	job, err := file.parse()
	require.NoError(b, err)
	for b.Loop() {
		_, err := file.plan(job, planner.Prior{})
		require.NoError(b, err)
	}
}

func BenchmarkParseOf400Blocks(b *testing.B) {
	file := jobFile{"wall.yaml", wallSized()}
	for b.Loop() {
		_, err := file.parse()
		require.NoError(b, err)
	}
}

func BenchmarkVersion(b *testing.B) {
	env := Env{Out: io.Discard, Err: io.Discard, Revision: revision}
	for b.Loop() {
		require.Equal(b, exitDone, Main(env, []string{"--version"}))
	}
}
