package planner

import (
	"fmt"
	"sort"
	"strings"
)

// Position is a place in the job file, counted from one.
type Position struct {
	Line, Column int
}

// Positions holds where the job file says what, by path. A path names keys and
// list places from the top: "colourways.tide.offset", "borders[0].width".
type Positions map[string]Position

// Nearest is the position of the path itself or of the nearest thing around it
// that the file does mention.
func (p Positions) Nearest(path string) Position {
	for {
		if at, ok := p[path]; ok {
			return at
		}
		cut := strings.LastIndexAny(path, ".[")
		if cut < 0 {
			return Position{Line: 1, Column: 1}
		}
		path = path[:cut]
	}
}

// Problem is one thing wrong with a job file, worded for the person who wrote
// it. Hint says what was probably meant or what to do; it may be empty.
type Problem struct {
	File string
	At   Position
	Path string
	What string
	Hint string
}

// Error is "file:line:column: what; hint".
func (p *Problem) Error() string {
	text := fmt.Sprintf("%s:%d:%d: %s", p.File, p.At.Line, p.At.Column, p.What)
	if p.Hint != "" {
		text += "; " + p.Hint
	}
	return text
}

// Problems are all that is wrong with a job file, in file order. It is never
// returned empty.
type Problems []*Problem

// Error is one line per problem.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.Error()
	}
	return strings.Join(lines, "\n")
}

func (ps Problems) sorted() Problems {
	sort.SliceStable(ps, func(i, j int) bool {
		a, b := ps[i].At, ps[j].At
		return a.Line < b.Line || a.Line == b.Line && a.Column < b.Column
	})
	return ps
}
