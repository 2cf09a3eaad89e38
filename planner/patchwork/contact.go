package patchwork

// contact is all match points of one kind of join, or inside a block.
type contact struct {
	pairs []pair
	set   Tally // those that no choice can change
}

// pair is match points where the seams of two choices meet.
type pair struct {
	first, second end
	alike         bool // they clash where both choices are taken the same way, else nest
	times         int
}

// end is a choice of the one block or the other.
type end struct {
	other  bool
	choice int
}

// add adds a match point, so many times. Choices from split on are the other
// block's.
func (c *contact) add(m Match, split, times int) {
	var leaning [2]Signed
	n := 0
	for _, lean := range m.Leans {
		if lean.Along != 0 {
			leaning[min(n, 1)] = lean
			n++
		}
	}
	switch {
	case m.Near:
		c.set.Near += times
	case n > 2: // two of three always lean the same way
		c.set.Clash += times
	case n < 2:
		c.set.Open += times
	case leaning[0].Choice != leaning[1].Choice:
		c.pairs = append(c.pairs, pair{
			endOf(leaning[0].Choice, split), endOf(leaning[1].Choice, split), leaning[0].Along == leaning[1].Along, times,
		})
	case leaning[0].Along == leaning[1].Along:
		c.set.Clash += times
	default:
		c.set.Nest += times
	}
}

func endOf(choice, split int) end {
	if choice >= split {
		return end{true, choice - split}
	}
	return end{false, choice}
}

// tally counts the match points where blocks pressed one way meet blocks pressed
// another.
func (c contact) tally(first, other Way) Tally {
	t, of := c.set, [2]Way{first, other}
	for _, p := range c.pairs {
		one, two := of[side(p.first.other)].second(p.first.choice), of[side(p.second.other)].second(p.second.choice)
		if (one == two) == p.alike {
			t.Clash += p.times
		} else {
			t.Nest += p.times
		}
	}
	return t
}

// tie ties the choices of two blocks by their numbers.
func (c contact) tie(t *ties, first, other []int, clash int64) {
	of := [2][]int{first, other}
	for _, p := range c.pairs {
		u, v := of[side(p.first.other)][p.first.choice], of[side(p.second.other)][p.second.choice]
		cost := clash * int64(p.times)
		if !p.alike {
			cost = -cost
		}
		if u != v {
			t.add(u, v, cost)
		}
	}
}
