package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// root is the module's folder as this package's tests see it.
const root = "../.."

// ban says what the files of a room may not import directly, and why.
type ban struct {
	room    string // folder below the module, with everything in it
	except  string // a room inside it that may
	imports []string
	reason  string
}

const pure = "the planner and the tracker are pure: same values in, same values out, whatever the clock, the disk or the day"

var bans = []ban{
	{"planner", "", []string{"os", "io/fs", "net", "net/http", "log", "math/rand", "math/rand/v2", "crypto/rand", "path/filepath"}, pure},
	{"planner", "", []string{"quiltrun/tracker", "quiltrun/cmd"}, "data goes one way: the planner knows neither the log nor the screen"},
	{"planner", "", []string{"github.com/spf13/cobra", "go.etcd.io/bbolt", "github.com/olekukonko/tablewriter"}, "how a plan is asked for, kept or shown is not the planner's business"},
	{"planner/english", "", []string{"quiltrun/planner", "quiltrun/planner/measure"}, "words rest on nothing of ours"},
	{"planner/measure", "", []string{"quiltrun/planner"}, "lengths rest on nothing of ours"},
	{"planner/patchwork", "", []string{"quiltrun/planner", "quiltrun/planner/cloth", "quiltrun/planner/thread"}, "geometry rests on lengths alone"},
	{"planner/cloth", "", []string{"quiltrun/planner", "quiltrun/planner/patchwork", "quiltrun/planner/thread"}, "cloth rests on lengths alone"},
	{"planner/cloth/guillotine", "", []string{"quiltrun/planner", "quiltrun/planner/measure", "quiltrun/planner/cloth"}, "layouts rest on whole numbers alone"},
	{"planner/thread", "", []string{"quiltrun/planner", "quiltrun/planner/patchwork", "quiltrun/planner/cloth"}, "thread rests on lengths alone"},
	{"tracker", "tracker/store", []string{"os", "io/fs", "net", "net/http", "log", "math/rand", "math/rand/v2", "crypto/rand", "path/filepath"}, pure},
	{"tracker", "tracker/store", []string{"go.etcd.io/bbolt", "quiltrun/tracker/store"}, "only the store knows how events are kept"},
	{"tracker", "", []string{"quiltrun/cmd", "github.com/spf13/cobra", "github.com/olekukonko/tablewriter"}, "progress is counted in one place and shown in another"},
	{"tracker/store", "", []string{"quiltrun/tracker/forecast"}, "the store keeps events and draws no conclusions"},
	{"tracker/store", "", []string{"quiltrun/tracker/shelf"}, "the store keeps events and draws no conclusions"},
	{"tracker/shelf", "", []string{"quiltrun/tracker/forecast"}, "what lies on the shelf does not depend on when work is done"},
	{"cmd/internal/render", "", []string{"quiltrun/tracker/store", "go.etcd.io/bbolt", "github.com/spf13/cobra", "os"}, "a renderer takes a writer and a value and asks nobody for more"},
	{"cmd/internal/draw", "", []string{"quiltrun/tracker/store", "go.etcd.io/bbolt", "github.com/spf13/cobra", "os"}, "a renderer takes a writer and a value and asks nobody for more"},
	{"cmd/internal/tick", "", []string{"quiltrun/tracker/store", "go.etcd.io/bbolt", "github.com/spf13/cobra"}, "the screen is handed what reads and writes the log, so that a test can stand in for both"},
	{"cmd/internal/cli", "", []string{"charm.land/bubbletea/v2"}, "bubbletea is known in one place"},
	{"cmd/internal/cli", "", []string{"go.etcd.io/bbolt", "github.com/olekukonko/tablewriter"}, "bbolt and tablewriter are each known in one place"},
}

// TestRoomsImportOnlyWhatTheyMay holds every file's own imports against the
// bans. What a standard package brings in behind the scenes does not count.
func TestRoomsImportOnlyWhatTheyMay(t *testing.T) {
	for path, imports := range importsByFile(t) {
		for _, b := range bans {
			if !inRoom(path, b.room) || b.except != "" && inRoom(path, b.except) {
				continue
			}
			for _, banned := range b.imports {
				assert.NotContains(t, imports, banned, "%s: %s", path, b.reason)
			}
		}
	}
}

// TestOnlyTheShellReadsTheClock keeps time.Now out of every room but cmd.
func TestOnlyTheShellReadsTheClock(t *testing.T) {
	for _, path := range sources(t) {
		if inRoom(path, "cmd") || inRoom(path, "tracker/store") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), filepath.Join(root, path), nil, 0)
		require.NoError(t, err)
		ast.Inspect(file, func(n ast.Node) bool {
			if sel, ok := n.(*ast.SelectorExpr); ok {
				if pkg, ok := sel.X.(*ast.Ident); ok && pkg.Name == "time" {
					assert.NotContains(t, []string{"Now", "Since", "Until", "Local"}, sel.Sel.Name, path)
				}
			}
			return true
		})
	}
}

// TestTheTopLevelStaysAsItIs keeps the house's outer walls.
func TestTheTopLevelStaysAsItIs(t *testing.T) {
	fixed := []string{"cmd", "tracker", "planner", "testdata", "examples", "go.mod", "go.sum", "README.md", "DEVELOPERS.md", "LICENSE"}
	entries, err := os.ReadDir(root)
	require.NoError(t, err)
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), ".") {
			assert.Contains(t, fixed, e.Name())
		}
	}
}

func inRoom(path, room string) bool { return strings.HasPrefix(path, room+"/") }

// sources are the module's Go files, tests left out: a test may use what it
// likes.
func sources(t *testing.T) []string {
	t.Helper()
	var paths []string
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err == nil && strings.HasSuffix(path, ".go") && !strings.HasSuffix(path, "_test.go") {
			rel, _ := filepath.Rel(root, path)
			paths = append(paths, filepath.ToSlash(rel))
		}
		return err
	})
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	return paths
}

func importsByFile(t *testing.T) map[string][]string {
	t.Helper()
	byFile := map[string][]string{}
	for _, path := range sources(t) {
		file, err := parser.ParseFile(token.NewFileSet(), filepath.Join(root, path), nil, parser.ImportsOnly)
		require.NoError(t, err)
		for _, spec := range file.Imports {
			name, err := strconv.Unquote(spec.Path.Value)
			require.NoError(t, err)
			byFile[path] = append(byFile[path], name)
		}
	}
	return byFile
}
