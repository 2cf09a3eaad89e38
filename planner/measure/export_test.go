package measure

import "math/big"

// Ticks gives the outside tests an area's exact count of square ticks.
func (a Area) Ticks() *big.Int {
	n := new(big.Int).Lsh(big.NewInt(a.hi), 64)
	return n.Add(n, new(big.Int).SetUint64(a.lo))
}
