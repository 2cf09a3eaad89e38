package patchwork

// nearby is a cheap way, found choice by choice: each is taken the way that costs
// less beside those taken before it; then single choices are taken the other way
// as long as that saves something.
func (n net) nearby() Way {
	way, taken := make(Way, len(n.links)), make([]bool, len(n.links))
	for i := range n.links {
		way[i] = n.saves(i, way, taken)
		taken[i] = true
	}
	for saved := true; saved; {
		saved = false
		for i := range n.links {
			if n.saves(i, way, taken) {
				way[i] = !way[i]
				saved = true
			}
		}
	}
	return way
}

// saves reports whether taking a choice the other way costs less beside the
// choices that are taken.
func (n net) saves(choice int, way Way, taken []bool) bool {
	now, other := n.alone[choice][side(way[choice])], n.alone[choice][1-side(way[choice])]
	for _, link := range n.links[choice] {
		switch {
		case !taken[link.to]:
		case way[link.to] == way[choice]:
			now.main += link.cost
		default:
			other.main += link.cost
		}
	}
	return other.less(now)
}
