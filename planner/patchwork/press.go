package patchwork

import "slices"

// Way is how every choice of a build is taken: false the first way, true the
// second. Choices beyond its end are taken the first way.
type Way []bool

// second reports whether a choice is taken the second way.
func (w Way) second(choice int) bool { return choice < len(w) && w[choice] }

// pressed is the lean with its choice taken as w says.
func (s Signed) pressed(w Way) int8 {
	if w.second(s.Choice) {
		return -s.Along
	}
	return s.Along
}

// Tally counts match points by what becomes of them, and near misses.
type Tally struct {
	Nest, Clash, Open, Near int
}

// Plus is the sum of two tallies.
func (t Tally) Plus(u Tally) Tally {
	return Tally{t.Nest + u.Nest, t.Clash + u.Clash, t.Open + u.Open, t.Near + u.Near}
}

// Times is the tally of n like joins.
func (t Tally) Times(n int) Tally {
	return Tally{n * t.Nest, n * t.Clash, n * t.Open, n * t.Near}
}

// TallyMatches tallies match points pressed as w says: a clash where any two
// seams lean the same way along the join, else a nest where any two are
// opposed, else open.
func TallyMatches(matches []Match, w Way) Tally {
	var t Tally
	for _, m := range matches {
		switch {
		case m.Near:
			t.Near++
		case m.clashes(w):
			t.Clash++
		case m.opposed(w):
			t.Nest++
		default:
			t.Open++
		}
	}
	return t
}

// leaning counts the seams that lean back and forth along the join.
func (m Match) leaning(w Way) (back, forth int) {
	for _, lean := range m.Leans {
		switch lean.pressed(w) {
		case -1:
			back++
		case +1:
			forth++
		}
	}
	return back, forth
}

func (m Match) clashes(w Way) bool {
	back, forth := m.leaning(w)
	return back > 1 || forth > 1
}

func (m Match) opposed(w Way) bool {
	back, forth := m.leaning(w)
	return back > 0 && forth > 0
}

// Tally counts the match points of some joins of a step, in one unit of it.
func (b *Build) Tally(joins []SewnJoin, w Way) Tally {
	var t Tally
	for _, join := range joins {
		t = t.Plus(TallyMatches(join.Matches, w))
	}
	return t
}

// BlockTally counts the match points of all joins inside one block, those of a
// step as often as the block has its unit.
func (b *Build) BlockTally(w Way) Tally {
	var t Tally
	for _, made := range b.Steps {
		t = t.Plus(b.Tally(made.Joins, w).Times(made.Copies))
	}
	return t
}

// Direction is the word at the iron for a choice taken as w says: left or
// right for the seams of a row, up or down for a join between rows. Triangles
// are pressed toward one of their roles ("toward print"), and the long seam of
// quarter-square triangles, with the first role at the top and the seam from the
// top left, to the left or right half. It is empty for a choice that the build
// does not have.
func (b *Build) Direction(c Choice, w Way) string {
	i := slices.Index(b.Choices, c)
	if i < 0 {
		return ""
	}
	words := b.directions(c)
	if w.second(i) {
		return words[1]
	}
	return words[0]
}

// directions is the words for both ways of taking a choice.
func (b *Build) directions(c Choice) [2]string {
	i := slices.IndexFunc(b.Steps, func(m Made) bool { return m.Step.Name == c.Step })
	if i >= 0 && !c.Between {
		switch step := b.Steps[i].Step; step.Do {
		case HalfSquare, QuarterSquare:
			return [2]string{"toward " + step.Roles[0], "toward " + step.Roles[1]}
		}
	}
	if c.Between && (i < 0 || b.Steps[i].Step.Do != QuarterSquare) {
		return [2]string{"up", "down"}
	}
	return [2]string{"left", "right"}
}
