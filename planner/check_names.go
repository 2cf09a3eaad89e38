package planner

import (
	"fmt"
	"strings"
)

// checkColourwayNames checks that block ids, which begin with the colourway's
// name, cannot be taken for each other when they are said or typed.
func (r *jobReader) checkColourwayNames() {
	seen := map[string]string{}
	for _, c := range r.job.Colourways {
		folded := foldName(c.Name)
		if other, twice := seen[folded]; twice {
			r.collide(c.Name, fmt.Sprintf("the colourways %s and %s would have block ids that look alike", said(other), said(c.Name)))
			continue
		}
		seen[folded] = c.Name
	}
	for _, c := range r.job.Colourways {
		folded := foldName(c.Name)
		stem, isBlock := strings.CutSuffix(strings.TrimRight(folded, "0123456789"), "-")
		if other, ok := seen[stem]; ok && isBlock && !strings.HasSuffix(folded, "-") {
			r.collide(c.Name, fmt.Sprintf("the colourway %s reads like a block of %s", said(c.Name), said(other)))
		}
	}
	r.checkRenames()
}

// foldName is a name as it sounds: small letters, single blanks.
func foldName(name string) string { return strings.Join(strings.Fields(strings.ToLower(name)), " ") }

// collide reports a colourway whose name stands in the way of another.
func (r *jobReader) collide(name, what string) {
	path := "colourways." + name
	r.report(r.at[path], path, what, "give one of them another name")
}

// checkRenames checks that every old name belongs to one colourway, which no
// longer has it.
func (r *jobReader) checkRenames() {
	now, before := map[string]string{}, map[string]string{}
	for _, c := range r.job.Colourways {
		now[c.Name] = c.Was
	}
	for _, c := range r.job.Colourways {
		if c.Was == "" {
			continue
		}
		path := "colourways." + c.Name + ".was"
		still, kept := now[c.Was]
		other, taken := before[c.Was]
		switch {
		case c.Was == c.Name:
			r.report(r.at[path], path, fmt.Sprintf("the colourway %s was %s all along", said(c.Name), said(c.Was)), `take "was" out`)
		case taken:
			r.report(r.at[path], path, fmt.Sprintf("both %s and %s say that they were %s", said(other), said(c.Name), said(c.Was)), "keep one")
		case kept && still == "":
			r.report(r.at[path], path, fmt.Sprintf("%s says that it was %s, but there is still a colourway of that name", said(c.Name), said(c.Was)),
				"a renamed colourway leaves its old name free")
		}
		before[c.Was] = c.Name
	}
}
