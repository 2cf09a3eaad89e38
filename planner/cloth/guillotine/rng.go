package guillotine

// rng is a small fixed generator (xorshift64; Marsaglia 2003, J. Stat. Softw.
// 8(14)): the same sequence every time.
type rng uint64

func newRng() *rng {
	g := rng(88172645463325252)
	return &g
}

// next is a number from 0 to n−1.
func (g *rng) next(n int) int {
	x := uint64(*g)
	x ^= x << 13
	x ^= x >> 7
	x ^= x << 17
	*g = rng(x)
	return int((x >> 33) % uint64(n))
}
