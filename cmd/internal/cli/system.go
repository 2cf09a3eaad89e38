package cli

import (
	"cmp"
	"crypto/rand"
	"os"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"strconv"
	"strings"
	"time"

	"golang.org/x/term"
)

// System is the environment of this process. It asks for nothing that takes
// long: it stands at the start of every call.
func System() Env {
	terminal := term.IsTerminal(int(os.Stdout.Fd()))
	return Env{
		In: os.Stdin, Out: os.Stdout, Err: os.Stderr,
		Width:       width(os.Getenv("COLUMNS"), terminal),
		InTerminal:  term.IsTerminal(int(os.Stdin.Fd())),
		OutTerminal: terminal,
		Draws:       terminal && os.Getenv("TERM") != "dumb",
		ErrTerminal: term.IsTerminal(int(os.Stderr.Fd())),
		Colour:      terminal && os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb",
		Unicode:     showsUnicode(os.Getenv),
		Now:         time.Now,
		DataDir:     dataDir(runtime.GOOS, os.Getenv),
		// The environment's word is enough for a name beside an entry; asking
		// the system's user list may take longer than the whole command.
		User:     cmp.Or(os.Getenv("USER"), os.Getenv("USERNAME"), "maker"),
		Random:   rand.Reader,
		Revision: revision,
		Trace:    os.Getenv("QUILTRUN_TRACE") == "1",
	}
}

// width is how many columns there are to fill. COLUMNS goes before the
// terminal's own answer, and is the only way to narrow a pipe.
func width(columns string, terminal bool) int {
	if n, err := strconv.Atoi(columns); err == nil && n > 0 {
		return n
	}
	if !terminal {
		return 0
	}
	if n, _, err := term.GetSize(int(os.Stdout.Fd())); err == nil && n > 0 {
		return n
	}
	return 80
}

// showsUnicode follows the locale. Where no locale is named at all, as in most
// containers, terminals of today still show UTF-8.
func showsUnicode(getenv func(string) string) bool {
	locale := strings.ToUpper(cmp.Or(getenv("LC_ALL"), getenv("LC_CTYPE"), getenv("LANG")))
	return locale == "" || strings.Contains(locale, "UTF-8") || strings.Contains(locale, "UTF8")
}

// dataDir is where programs keep a user's data on the given system. A relative
// XDG_DATA_HOME is passed over, as its specification asks.
func dataDir(system string, getenv func(string) string) string {
	if dir := getenv("XDG_DATA_HOME"); filepath.IsAbs(dir) {
		return dir
	}
	if system == "windows" {
		return getenv("LocalAppData")
	}
	home := getenv("HOME")
	switch {
	case home == "":
		return ""
	case system == "darwin":
		return filepath.Join(home, "Library", "Application Support")
	default:
		return filepath.Join(home, ".local", "share")
	}
}

// revision is the source revision that the program was built from, with a mark
// where files had been changed since, or "unknown".
func revision() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "unknown"
	}
	rev, changed := "", ""
	for _, setting := range info.Settings {
		switch {
		case setting.Key == "vcs.revision":
			rev = setting.Value
		case setting.Key == "vcs.modified" && setting.Value == "true":
			changed = " (changed since)"
		}
	}
	if rev == "" {
		return "unknown"
	}
	return rev + changed
}
