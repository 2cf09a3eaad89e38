package cli

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "draw the README's drawings anew")

// The README shows these files; they are what the command draws, to the byte.
func TestTheREADMEsDrawingsAreWhatTheCommandDraws(t *testing.T) {
	for file, what := range map[string][]string{
		"estuary-lap-top.svg":  {"top"},
		"estuary-lap-tide.svg": {"block", "tide"},
	} {
		env, _, _ := calm(t)
		args := append([]string{"draw", filepath.Join("..", "..", "..", "examples", "estuary-lap.yaml")}, what...)
		code, out, words := call(env, append(args, "--out", "-")...)
		require.Equal(t, exitDone, code, words)
		path := filepath.Join("..", "..", "..", "testdata", "drawings", file)
		if *update {
			require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
			require.NoError(t, os.WriteFile(path, []byte(out), 0o644))
		}
		want, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.Equal(t, string(want), out, "go test ./cmd/internal/cli -update draws %s anew", file)
	}
}

// A folder that is full or read-only must not leave half a drawing, nor one that
// nobody asked for.
func TestADrawingIsWrittenWholeOrNotAtAll(t *testing.T) {
	folder := t.TempDir()
	file := drawnFile{path: filepath.Join(folder, "taken"), data: []byte("new"), state: drawnNew}
	require.NoError(t, os.Mkdir(file.path, 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(file.path, "inside"), nil, 0o644))
	err := file.write()
	require.Error(t, err)
	assert.True(t, strings.HasPrefix(err.Error(), file.path+" cannot be written: "), err)
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	assert.Len(t, entries, 1, "nothing is left behind")
}

func TestDrawKeepsItsContract(t *testing.T) {
	contract, err := jsonschema.NewCompiler().Compile(filepath.Join("..", "..", "..", "testdata", "contract", "draw.schema.json"))
	require.NoError(t, err)
	env, _, _ := calm(t)
	file, folder := filepath.Join("..", "..", "..", "examples", "harbour-pair.yaml"), t.TempDir()
	for _, state := range []string{drawnNew, drawnSame} {
		code, out, words := call(env, "draw", file, "--out", folder, "--json")
		require.Equal(t, exitDone, code, words)
		value, err := jsonschema.UnmarshalJSON(strings.NewReader(out))
		require.NoError(t, err)
		assert.NoError(t, contract.Validate(value))
		assert.Equal(t, 4, strings.Count(out, `"state":"`+state+`"`), "two tops and two blocks")
		for _, drawn := range value.(map[string]any)["files"].([]any) {
			d := drawn.(map[string]any)
			assert.True(t, (d["quilt"] == nil) != (d["colourway"] == nil), "a top or a block: %v", d)
		}
	}
}
