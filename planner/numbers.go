package planner

// number gives each key of a route its number: by tens the first time, and
// never a new one after that. A key that is new beside numbers on the wall
// takes a free number between its neighbours; where none is free, the next ten
// after the last.
func number(keys []string, prior map[string]int) map[string]int {
	numbers := make(map[string]int, len(keys))
	if len(prior) == 0 {
		for i, k := range keys {
			numbers[k] = 10 * (i + 1)
		}
		return numbers
	}
	used := make(map[int]bool, len(prior))
	last := 0
	for _, n := range prior {
		used[n] = true
		last = max(last, n)
	}
	before := 0
	for i, k := range keys {
		n, old := prior[k]
		if !old {
			n = between(before, nextKnown(keys[i+1:], prior, last+20), used)
			if n == 0 {
				n = last/10*10 + 10
			}
			used[n] = true
			last = max(last, n)
		}
		numbers[k] = n
		before = max(before, n)
	}
	return numbers
}

// nextKnown is the number of the first later key that has one.
func nextKnown(later []string, prior map[string]int, otherwise int) int {
	for _, k := range later {
		if n, ok := prior[k]; ok {
			return n
		}
	}
	return otherwise
}

// between is the free number nearest to the middle of low and high, both
// excluded; 0 where none is free.
func between(low, high int, used map[int]bool) int {
	middle := (low + high) / 2
	for d := 0; middle-d > low || middle+d < high; d++ {
		for _, n := range []int{middle - d, middle + d} {
			if n > low && n < high && !used[n] {
				return n
			}
		}
	}
	return 0
}
