package planner

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// longestStep is how many columns a step may take on one line of a fragment.
const longestStep = 78

// Fragment is a recipe as the part of a job file that makes it: `block` with its
// `steps`, in the order of work. Read from a job file it is the same recipe.
// Measures carry their unit, so that it can be pasted into a job of either.
func Fragment(r patchwork.Recipe) string {
	longest := 0
	for _, s := range r.Steps {
		longest = max(longest, utf8.RuneCountInString(s.Name))
	}
	var b strings.Builder
	b.WriteString("block:\n  steps:\n")
	for _, s := range r.Steps {
		line := fmt.Sprintf("    %-*s {%s}", longest+1, s.Name+":", strings.Join(stepValues(s), ", "))
		if utf8.RuneCountInString(line) > longestStep {
			line = tallStep(s)
		}
		b.WriteString(line + "\n")
	}
	return b.String()
}

// tallStep is a step with a line for each of its values, and for each row of a
// grid.
func tallStep(s patchwork.Step) string {
	lines := []string{"    " + s.Name + ":"}
	for _, value := range stepValues(s) {
		key, rows, isGrid := strings.Cut(value, ": [[")
		if !isGrid {
			lines = append(lines, "      "+value)
			continue
		}
		lines = append(lines, "      "+key+":")
		for row := range strings.SplitSeq(strings.TrimSuffix(rows, "]]"), "], [") {
			lines = append(lines, "        - ["+row+"]")
		}
	}
	return strings.Join(lines, "\n")
}

// stepValues is the keys of a step with their values.
func stepValues(s patchwork.Step) []string {
	switch s.Do {
	case patchwork.Cut:
		return []string{"cut: " + s.Role, "size: " + sizeText(s.Size)}
	case patchwork.Sew:
		if s.Whole {
			return []string{"sew: " + s.Of}
		}
		return []string{"sew: " + gridText(s.Rows, cellText)}
	case patchwork.Recut:
		return slices.Concat([]string{"recut: " + s.Of}, cutsValue("upright", s.Upright, "left ", "right "), cutsValue("level", s.Level, "top ", "bottom "))
	case patchwork.Turn:
		values := []string{"turn: " + s.Of}
		if s.Turns != nil {
			values = append(values, "by: "+gridText(s.Turns, func(degrees int) string { return fmt.Sprint(degrees) }))
		}
		if s.Exchange != nil {
			values = append(values, "exchange: "+exchangeText(s.Exchange))
		}
		return values
	case patchwork.Trim:
		return []string{"trim: " + s.Of, "size: " + sizeText(s.Size)}
	case patchwork.Subcut:
		return []string{"subcut: " + s.Of, "every: " + s.Every.String()}
	case patchwork.HalfSquare:
		return append([]string{"half-square: " + rolesText(s.Roles), fmt.Sprintf("at-a-time: %d", s.AtATime)}, triangleSizes(s)...)
	default:
		return append([]string{"quarter-square: " + rolesText(s.Roles)}, triangleSizes(s)...)
	}
}

func rolesText(roles [2]string) string { return "[" + roles[0] + ", " + roles[1] + "]" }

// triangleSizes are the squares and the trimmed size, those that are given.
func triangleSizes(s patchwork.Step) []string {
	var values []string
	if s.Size.Width != 0 {
		values = append(values, "size: "+sizeText(s.Size))
	}
	if s.TrimTo != 0 {
		values = append(values, "trim: "+s.TrimTo.String())
	}
	return values
}

// sizeText is a size exactly: of a square its side.
func sizeText(s measure.Size) string {
	if s.Width == s.Height {
		return s.Width.String()
	}
	return s.Width.String() + " x " + s.Height.String()
}

func cellText(c patchwork.Cell) string {
	if quarters := c.Quarters & 3; quarters != 0 {
		return fmt.Sprintf("%s@%d", c.Of, 90*quarters)
	}
	return c.Of
}

// gridText is a list of rows.
func gridText[T any](rows [][]T, text func(T) string) string {
	lines := make([]string, len(rows))
	for i, row := range rows {
		cells := make([]string, len(row))
		for j, cell := range row {
			cells[j] = text(cell)
		}
		lines[i] = "[" + strings.Join(cells, ", ") + "]"
	}
	return "[" + strings.Join(lines, ", ") + "]"
}

func exchangeText(pairs [][2]int) string {
	texts := make([]string, len(pairs))
	for i, pair := range pairs {
		texts[i] = fmt.Sprintf("[%d, %d]", pair[0], pair[1])
	}
	return "[" + strings.Join(texts, ", ") + "]"
}

// cutsValue is the cuts of one way, none where nothing is cut that way.
func cutsValue(key string, cuts []patchwork.From, near, far string) []string {
	switch {
	case len(cuts) == 0:
		return nil
	case slices.Equal(cuts, patchwork.Halves()):
		return []string{key + ": halves"}
	case slices.Equal(cuts, patchwork.Thirds()):
		return []string{key + ": thirds"}
	}
	texts := make([]string, len(cuts))
	for i, cut := range cuts {
		texts[i] = cut.Distance.String()
		switch cut.Edge {
		case patchwork.Near:
			texts[i] = near + texts[i]
		case patchwork.Far:
			texts[i] = far + texts[i]
		}
	}
	return []string{key + ": [" + strings.Join(texts, ", ") + "]"}
}
