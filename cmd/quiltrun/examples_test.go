package main

import (
	"bufio"
	"os"
	"os/exec"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What has to be done before the examples of a command work.
var before = map[string][]string{
	"book": nil,
	"undo": {
		"quiltrun book examples/estuary-lap.yaml --today 2026-11-02",
		"quiltrun log estuary-lap prepare Kelp=1 --id monday-pairs",
		"quiltrun log estuary-lap prepare Foam=1",
	},
	"start": {
		"quiltrun book examples/estuary-lap.yaml --today 2026-11-02",
		"quiltrun log estuary-lap seam-test 1",
		"quiltrun log estuary-lap kit all --colourway tide --catch-up",
	},
	"stop": clockRan,
	"time": clockRan,
	"rip":  {booked[0], "quiltrun log estuary-lap sew-top-rows 15 --catch-up"},
	"scrap": {booked[0], "quiltrun log estuary-lap sew-units 5 --colourway tide --catch-up",
		"quiltrun log estuary-lap cut 2 --lot Marram --catch-up"},
	"recount":  {booked[0], "quiltrun log estuary-lap sew-units 5 --colourway tide --catch-up"},
	"quiltrun": nil,
}

// clockRan is a job at which somebody began to work, long enough ago for any end to
// be past.
var clockRan = []string{booked[0], "quiltrun start estuary-lap prepare --lot Kelp --now 2020-01-02T17:00:00Z"}

var booked = []string{"quiltrun book examples/estuary-lap.yaml --today 2026-11-02"}

// The examples of every command's help work as they stand, in their order.
func TestExamplesOfHelpWork(t *testing.T) {
	if _, err := exec.LookPath("sh"); err != nil {
		if os.Getenv("QUILTRUN_CI") == "1" {
			t.Fatal(err)
		}
		t.Skip("there is no shell here to run them as they stand")
	}
	for command, lines := range examples(t) {
		t.Run(command, func(t *testing.T) {
			env := home(t)
			prepare, known := before[command]
			if !known {
				prepare = booked
			}
			for _, line := range append(prepare, lines...) {
				cmd := exec.Command("sh", "-c", line)
				cmd.Env, cmd.Dir = env, homeOf(env)
				out, err := cmd.CombinedOutput()
				assert.NoError(t, err, "%s\n%s", line, out)
			}
		})
	}
}

// An example without the file that its output goes to.
var exampleLine = regexp.MustCompile(`(?m)^  (quiltrun [^>\n]*)`)

// examples is the lines under Examples of the help of every command.
func examples(t *testing.T) map[string][]string {
	found := map[string][]string{}
	for _, command := range append(commandNames(t), "quiltrun") {
		args := []string{command, "--help"}
		if command == "quiltrun" {
			args = args[1:]
		}
		out, err := quiltrun(home(t), args...).Output()
		require.NoError(t, err)
		_, text, _ := strings.Cut(string(out), "\nExamples:\n")
		text, _, _ = strings.Cut(text, "\nCommands:\n")
		text, _, _ = strings.Cut(text, "\nOptions:\n")
		for _, line := range exampleLine.FindAllStringSubmatch(text, -1) {
			found[command] = append(found[command], line[1])
		}
	}
	return found
}

// commandNames is the commands that help lists, indented under their groups.
func commandNames(t *testing.T) []string {
	out, err := quiltrun(home(t), "help").Output()
	require.NoError(t, err)
	_, list, _ := strings.Cut(string(out), "\nCommands:\n")
	var names []string
	for lines := bufio.NewScanner(strings.NewReader(list)); lines.Scan() && lines.Text() != ""; {
		if name, ok := strings.CutPrefix(lines.Text(), "    "); ok {
			names = append(names, strings.Fields(name)[0])
		}
	}
	require.NotEmpty(t, names)
	return names
}
