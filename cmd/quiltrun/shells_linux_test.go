package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.etcd.io/bbolt"
)

// These tests sit at real shells: they type a line into a terminal, press Tab and
// then Enter, and look at the arguments that the shell calls quiltrun with.

// shellSetups are how each shell is started and what it reads first.
var shellSetups = map[string]struct {
	args []string
	file string // within the home
	text string
}{
	"bash": {[]string{"--noprofile", "--rcfile", "rc.bash", "-i"}, "rc.bash",
		"source <(quiltrun completion bash)\nbind 'set enable-bracketed-paste off'\nPS1='ready> '\n"},
	"zsh": {[]string{"-i"}, ".zshrc",
		"autoload -U compinit && compinit -u -D\nsource <(quiltrun completion zsh)\nPS1='ready> '\nunsetopt PROMPT_SP\n"},
	"fish": {[]string{"-i"}, ".config/fish/config.fish",
		"quiltrun completion fish | source\nfunction fish_greeting; end\nfunction fish_prompt; printf 'ready> '; end\n"},
}

// standIn is called in place of quiltrun: it lets a press of Tab through and shows
// the arguments of any other call.
const standIn = `#!/bin/sh
case $1 in
__words|completion) exec "$REAL_QUILTRUN" "$@" ;;
esac
for word in "$@"; do printf '[%s]\n' "$word"; done
echo 'END OF'' CALL'
`

// shell is a shell at a terminal.
type shell struct {
	t        *testing.T
	home     string
	terminal *os.File
	mutex    sync.Mutex
	shown    bytes.Buffer
}

// startShell starts a shell in a home in which jobs are booked. A machine without
// it fails where QUILTRUN_CI is 1, and passes the test over elsewhere.
func startShell(t *testing.T, name string) *shell {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		if os.Getenv("QUILTRUN_CI") == "1" {
			t.Fatal(err)
		}
		t.Skip(err)
	}
	env := home(t)
	folder := homeOf(env)
	require.NoError(t, quiltrun(env, "book", "cove.yaml", "--today", "2026-11-02").Run())
	require.NoError(t, quiltrun(env, "book", "odd.yaml").Run())
	setup := shellSetups[name]
	real, err := exec.LookPath("quiltrun")
	require.NoError(t, err)
	write := func(file, text string, mode os.FileMode) {
		file = filepath.Join(folder, file)
		require.NoError(t, os.MkdirAll(filepath.Dir(file), 0o700))
		require.NoError(t, os.WriteFile(file, []byte(text), mode))
	}
	write("bin/quiltrun", standIn, 0o700)
	write(setup.file, setup.text, 0o600)
	control, terminal := openTerminal(t, 200)
	cmd := exec.Command(path, setup.args...)
	cmd.Dir = folder
	cmd.Env = append(env, "REAL_QUILTRUN="+real, "PATH="+filepath.Join(folder, "bin")+":"+os.Getenv("PATH"),
		"TERM=xterm", "LANG=C.UTF-8", "XDG_CONFIG_HOME="+filepath.Join(folder, ".config"), "ZDOTDIR="+folder)
	cmd.Stdin, cmd.Stdout, cmd.Stderr = terminal, terminal, terminal
	cmd.SysProcAttr = &syscall.SysProcAttr{Setsid: true, Setctty: true}
	require.NoError(t, cmd.Start())
	require.NoError(t, terminal.Close())
	s := &shell{t: t, home: folder, terminal: control}
	go s.listen()
	t.Cleanup(func() {
		_ = cmd.Process.Kill()
		_ = cmd.Wait()
	})
	s.await("ready> ")
	return s
}

// listen keeps what the shell shows.
func (s *shell) listen() {
	part := make([]byte, 4096)
	for {
		n, err := s.terminal.Read(part)
		s.mutex.Lock()
		s.shown.Write(part[:n])
		s.mutex.Unlock()
		if err != nil {
			return
		}
	}
}

// await is what the shell has shown up to a text, which has to come.
func (s *shell) await(text string) string {
	s.t.Helper()
	for deadline := time.Now().Add(30 * time.Second); time.Now().Before(deadline); time.Sleep(5 * time.Millisecond) {
		s.mutex.Lock()
		before, _, found := strings.Cut(s.shown.String(), text)
		if found {
			rest := s.shown.String()[len(before)+len(text):]
			s.shown.Reset()
			s.shown.WriteString(rest)
		}
		s.mutex.Unlock()
		if found {
			return before
		}
	}
	s.t.Fatalf("%q did not come; shown is %q", text, s.shown.String())
	return ""
}

// keys types.
func (s *shell) keys(text string) {
	_, err := s.terminal.WriteString(text)
	require.NoError(s.t, err)
}

// enter types a line with the keys that end it, and gives back the arguments that
// quiltrun was called with, and all that was shown.
func (s *shell) enter(text string) (args []string, shown string) {
	s.t.Helper()
	s.keys(text + "\r")
	shown = s.await("END OF CALL")
	s.await("ready> ")
	for _, line := range strings.Split(steering.ReplaceAllString(shown, "\n"), "\n") {
		if word, ok := strings.CutPrefix(line, "["); ok {
			args = append(args, strings.TrimSuffix(word, "]"))
		}
	}
	return args, shown
}

// steering is what moves about on a terminal: everything behind it is a new line
// here.
var steering = regexp.MustCompile("\x1b\\[[0-9;?]*[A-Za-z]|\r")

const (
	tab     = "\t"
	eraseIt = "\x15" // Ctrl-U takes the line away
)

// forEachShell runs a test at every shell.
func forEachShell(t *testing.T, test func(t *testing.T, s *shell)) {
	for name := range shellSetups {
		t.Run(name, func(t *testing.T) { test(t, startShell(t, name)) })
	}
}

func TestShellsPutANameOfAnySortDownAsOneWord(t *testing.T) {
	forEachShell(t, func(t *testing.T, s *shell) {
		for _, c := range []struct{ typed, want string }{
			{"Sea", "Sea glass"},
			{"it", "it's"},
			{`\$`, "$(touch pwned)"},
			{"a", "a:b"},
			{"a:", "a:b"},
			{"x", "x=y"},
			{"藍", "藍"},
			{"'Sea", "Sea glass"},
			{`"it`, "it's"},
		} {
			args, _ := s.enter("quiltrun log odd-names sew-pairs 1 --colourway " + c.typed + tab)
			if assert.NotEmpty(t, args, c.typed) {
				assert.Equal(t, c.want, args[len(args)-1], c.typed)
			}
		}
		assert.NoFileExists(t, filepath.Join(s.home, "pwned"))
	})
}

func TestShellsAreOfferedJobsOperationsLotsAndBlocks(t *testing.T) {
	forEachShell(t, func(t *testing.T, s *shell) {
		for typed, want := range map[string]string{
			"quiltrun log o":                                        "odd-names",
			"quiltrun log cove-mat sew-p":                           "sew-pairs",
			"quiltrun log cove-mat sew-pairs ti":                    "tide=",
			"quiltrun log cove-mat sew-pairs 1 --lot colourway:t":   "colourway:tide",
			"quiltrun log cove-mat sew-pairs 1 --lot fabric:K":      "fabric:Kelp",
			"quiltrun log cove-mat sew-pairs 1 --block=tide-02":     "--block=tide-02",
			"quiltrun history cove-mat --op press-p":                "press-pairs",
			"quiltrun next --at ir":                                 "iron",
			"quiltrun book odd.y":                                   "odd.yaml",
			"quiltrun histo":                                        "history",
			"quiltrun log odd-names sew-pairs 1 --colourway=Sea":    "--colourway=Sea glass",
			"quiltrun log odd-names sew-pairs 1 --lot colourway:it": "colourway:it's",
		} {
			args, _ := s.enter(typed + tab)
			if assert.NotEmpty(t, args, typed) {
				assert.Equal(t, want, args[len(args)-1], typed)
			}
		}
	})
}

// A press of Tab runs nothing of the line, whoever's completion did so once.
func TestAPressOfTabRunsNothing(t *testing.T) {
	forEachShell(t, func(t *testing.T, s *shell) {
		for _, typed := range []string{
			"quiltrun log odd-names $(touch pwned) ",
			"quiltrun log odd-names \"$(touch pwned)\" ",
			"quiltrun log odd-names '$(touch pwned)' --colourway ",
			"quiltrun log odd-names > pwned ",
		} {
			s.keys(typed + tab + eraseIt + eraseIt)
			args, _ := s.enter(eraseIt + "quiltrun end")
			assert.Equal(t, []string{"end"}, args)
			assert.NoFileExists(t, filepath.Join(s.home, "pwned"), typed)
		}
	})
}

func TestAPressOfTabIsSilentWithoutALogOrWithOneInUse(t *testing.T) {
	forEachShell(t, func(t *testing.T, s *shell) {
		log := filepath.Join(s.home, "quiltrun", "quiltrun.db")
		db, err := bbolt.Open(log, 0o600, &bbolt.Options{Timeout: time.Second})
		require.NoError(t, err)
		args, shown := s.enter("quiltrun log ove" + tab)
		assert.Equal(t, []string{"log", "ove"}, args)
		assert.NotContains(t, shown, "quiltrun:")
		require.NoError(t, db.Close())
		require.NoError(t, os.Remove(log))
		args, shown = s.enter("quiltrun left cov" + tab)
		assert.Equal(t, []string{"left", "cov"}, args)
		assert.NotContains(t, shown, "quiltrun:")
		assert.NoFileExists(t, log)
	})
}
