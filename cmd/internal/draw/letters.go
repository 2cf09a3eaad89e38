package draw

import (
	"slices"
	"strings"

	"quiltrun/planner"
)

// leastLetters is the size below which letters of fabrics are left out of a top: they
// could not be read, and would hide what lies under them.
const leastLetters = 7 * unit

// fabricLetters gives a letter to every fabric that fills a role in some blocks of a
// top and not in others: printed in black and white, their colours tell nobody which
// is which. Letters follow the job file; after z comes aa.
func fabricLetters(p planner.Plan) map[string]string {
	var names []string
	for _, c := range p.Colourways {
		names = append(names, c.Name)
	}
	varied := map[string]bool{}
	for _, role := range rolesOf(p, names) {
		for _, f := range role.fabrics {
			varied[f] = varied[f] || len(role.fabrics) > 1
		}
	}
	letters := map[string]string{}
	for _, f := range p.Job.Fabrics {
		if varied[f.Name] {
			letters[f.Name] = letter(len(letters))
		}
	}
	return letters
}

// letter is the n-th letter, n from nought.
func letter(n int) string {
	word := string(rune('a' + n%26))
	for n = n/26 - 1; n >= 0; n = n/26 - 1 {
		word = string(rune('a'+n%26)) + word
	}
	return word
}

// lettersOf is the letters of a block's fabrics in the order of its roles, each once.
func lettersOf(b planner.Block, letters map[string]string) string {
	var said []string
	for _, f := range b.Fabrics {
		if l := letters[f.Fabric]; l != "" && !slices.Contains(said, l) {
			said = append(said, l)
		}
	}
	return strings.Join(said, " ")
}
