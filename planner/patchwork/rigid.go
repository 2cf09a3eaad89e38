package patchwork

// rigid is a net in which every clash that a choice can make is avoided at once.
// Choices that are tied by clashes then move together: what is left to decide is
// for each such set which way round it is taken, and that is a smaller net.
type rigid struct {
	net
	set  []int  // the set of each choice
	flip []bool // whether the choice is taken the other way round than its set
}

// rigid finds the sets; false where some clash cannot be avoided. A cost above
// half of clash comes from clashes.
func (n net) rigid(clash int64) (rigid, bool) {
	r := rigid{set: make([]int, len(n.links)), flip: make([]bool, len(n.links))}
	if clash == 0 {
		return r, false
	}
	for i := range r.set {
		r.set[i] = -1
	}
	sets := 0
	for i := range n.links {
		if r.set[i] < 0 {
			r.spread(n, i, sets, clash)
			sets++
		}
	}
	if !r.fits(n, clash) {
		return r, false
	}
	r.net = newNet(sets)
	for i, alone := range n.alone {
		set, first := &r.alone[r.set[i]], side(r.flip[i])
		set[0], set[1] = set[0].plus(alone[first]), set[1].plus(alone[1-first])
	}
	for i, links := range n.links {
		for _, link := range links {
			r.tie(i, link)
		}
	}
	return r, r.bindable(n, clash)
}

// spread puts all that hangs together by clashes into the set of a choice.
func (r *rigid) spread(n net, choice, set int, clash int64) {
	r.set[choice] = set
	for reached := []int{choice}; len(reached) > 0; reached = reached[1:] {
		for _, link := range n.links[reached[0]] {
			if r.set[link.to] < 0 && isClash(link.cost, clash) {
				r.set[link.to], r.flip[link.to] = set, r.flip[reached[0]] != (link.cost > 0)
				reached = append(reached, link.to)
			}
		}
	}
}

func isClash(cost, clash int64) bool { return 2*max(cost, -cost) > clash }

// fits reports whether every clash is avoided inside the sets.
func (r *rigid) fits(n net, clash int64) bool {
	for i, links := range n.links {
		for _, link := range links {
			if isClash(link.cost, clash) && (r.flip[i] != r.flip[link.to]) != (link.cost > 0) {
				return false
			}
		}
	}
	return true
}

// bindable reports whether what is decided beside the net pulls each set one way
// only.
func (r *rigid) bindable(n net, clash int64) bool {
	pulled := make([][2]bool, len(r.net.links))
	for i, alone := range n.alone {
		if cost := alone[1].main - alone[0].main; isClash(cost, clash) {
			pulled[r.set[i]][side(r.flip[i] != (cost < 0))] = true
		}
	}
	for _, p := range pulled {
		if p[0] && p[1] {
			return false
		}
	}
	return true
}

// tie ties two sets as a choice of each is tied.
func (r *rigid) tie(choice int, link tie) {
	one, other, cost := r.set[choice], r.set[link.to], link.cost
	if one == other || choice > link.to {
		return
	}
	if r.flip[choice] != r.flip[link.to] {
		cost = -cost
	}
	r.links[one] = added(r.links[one], tie{other, cost})
	r.links[other] = added(r.links[other], tie{one, cost})
}

// way is how every choice is taken when the sets are taken so.
func (r *rigid) way(sets Way) Way {
	way := make(Way, len(r.set))
	for i := range way {
		way[i] = sets[r.set[i]] != r.flip[i]
	}
	return way
}
