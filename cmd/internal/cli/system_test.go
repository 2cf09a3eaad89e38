package cli

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func environment(pairs map[string]string) func(string) string {
	return func(name string) string { return pairs[name] }
}

func TestDataDirOfEachSystem(t *testing.T) {
	for _, c := range []struct {
		name, system string
		env          map[string]string
		want         string
	}{
		{"named by the user", "linux", map[string]string{"XDG_DATA_HOME": "/cove", "HOME": "/home/kelp"}, "/cove"},
		{"named by the user on macOS too", "darwin", map[string]string{"XDG_DATA_HOME": "/cove", "HOME": "/home/kelp"}, "/cove"},
		// The XDG base directory specification has relative paths ignored.
		{"a relative name is passed over", "linux", map[string]string{"XDG_DATA_HOME": "cove", "HOME": "/home/kelp"}, "/home/kelp/.local/share"},
		{"usual", "linux", map[string]string{"HOME": "/home/kelp"}, "/home/kelp/.local/share"},
		{"usual on macOS", "darwin", map[string]string{"HOME": "/Users/kelp"}, "/Users/kelp/Library/Application Support"},
		{"usual on Windows", "windows", map[string]string{"LocalAppData": `C:\kelp`}, `C:\kelp`},
		{"nowhere", "linux", nil, ""},
	} {
		assert.Equal(t, c.want, dataDir(c.system, environment(c.env)), c.name)
	}
}

func TestWidthOfOutput(t *testing.T) {
	for _, c := range []struct {
		name     string
		columns  string
		terminal bool
		want     int
	}{
		{"a pipe cuts nothing", "", false, 0},
		{"COLUMNS narrows a pipe", "40", false, 40},
		{"COLUMNS goes before the terminal", "132", true, 132},
		{"nonsense in COLUMNS does not count", "wide", false, 0},
		{"nor does nothing", "0", false, 0},
		{"nor less", "-3", false, 0},
	} {
		assert.Equal(t, c.want, width(c.columns, c.terminal), c.name)
	}
}

func TestUnicodeFollowsTheLocale(t *testing.T) {
	for _, c := range []struct {
		env  map[string]string
		want bool
	}{
		{nil, true},
		{map[string]string{"LANG": "en_GB.UTF-8"}, true},
		{map[string]string{"LANG": "nb_NO.utf8"}, true},
		{map[string]string{"LANG": "C.UTF-8"}, true},
		{map[string]string{"LANG": "C"}, false},
		{map[string]string{"LANG": "en_GB.UTF-8", "LC_ALL": "POSIX"}, false},
		{map[string]string{"LANG": "C", "LC_CTYPE": "en_GB.UTF-8"}, true},
		{map[string]string{"LANG": "de_DE.ISO-8859-1"}, false},
	} {
		assert.Equal(t, c.want, showsUnicode(environment(c.env)), c.env)
	}
}
