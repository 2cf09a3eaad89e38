package patchwork

import "slices"

// Pressing is a number of blocks of one build that are pressed alike. Given are
// the choices that are not free.
type Pressing struct {
	Build  *Build
	Blocks int
	Given  []Given

	// OnePool says that the units which pooled steps make come from one pool with
	// those of the pressing before it, which is of the same build: they are pressed
	// before anyone knows whose block they go into, so both take them alike.
	OnePool bool
}

// Given is a choice that is taken one way whatever it costs.
type Given struct {
	Choice int
	Second bool
}

// numbered gives the choices of all pressings their numbers, rising, and tells
// how many there are; what two pressings take alike is one choice.
func numbered(pressings []Pressing) (numbers [][]int, next int) {
	numbers = make([][]int, len(pressings))
	for i, p := range pressings {
		numbers[i] = make([]int, len(p.Build.Choices))
		for choice := range numbers[i] {
			if p.OnePool && p.Build.pooled(choice) {
				numbers[i][choice] = numbers[i-1][choice]
				continue
			}
			numbers[i][choice] = next
			next++
		}
	}
	return numbers, next
}

// pooled reports whether a choice is one of units that are made for the lot.
func (b *Build) pooled(choice int) bool {
	return slices.ContainsFunc(b.Steps, func(m Made) bool { return m.Pooled && m.Step.Name == b.Choices[choice].Step })
}

// tie takes what is given, and lets every change of direction cost one for each
// block.
func (p Pressing) tie(t *ties, numbers []int) {
	for _, g := range p.Given {
		t.decide(numbers[g.Choice], g.Second)
	}
	for choice := 1; choice < len(p.Build.Choices); choice++ {
		if p.Build.consecutive(choice) {
			t.add(numbers[choice-1], numbers[choice], -int64(p.Blocks))
		}
	}
}
