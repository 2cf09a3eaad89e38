package guillotine

import "math"

// column is a pattern: what it costs and how often it takes each row's piece.
type column struct {
	cost float64
	take []int
}

// master is the covering problem "least cost that takes every row as often as
// wanted", solved in fractions by the revised simplex method with columns made
// on demand (Gilmore & Gomory 1961, Oper. Res. 9, 849-859).
type master struct {
	basis []column
	inv   [][]float64
	x     []float64 // how often each basic column is used
	dual  []float64 // what one more of each row costs
	below [][]int   // below[i] are rows that can be served in row i's place
	work  int
}

// newMaster starts with one column a row, which must take that row alone.
func newMaster(want []int, start []column) *master {
	m := &master{basis: start, x: make([]float64, len(want)), dual: make([]float64, len(want))}
	for i, c := range start {
		row := make([]float64, len(want))
		row[i] = 1 / float64(c.take[i])
		m.inv = append(m.inv, row)
		m.x[i] = float64(want[i]) / float64(c.take[i])
		m.dual[i] = c.cost / float64(c.take[i])
	}
	return m
}

// saving is how much one use of a column would lower the cost.
func (m *master) saving(c column) float64 {
	v := -c.cost
	for i, n := range c.take {
		if n != 0 {
			v += float64(m.dual[i] * float64(n))
		}
	}
	return v
}

// enter takes a column into the basis if it saves anything.
func (m *master) enter(c column) bool {
	saving := m.saving(c)
	if saving <= 1e-7*(1+c.cost) {
		return false
	}
	d := m.direction(c)
	r := m.leaving(d)
	if r < 0 {
		return false
	}
	m.pivot(r, d)
	m.basis[r] = c
	for i, v := range m.inv[r] {
		m.dual[i] -= float64(saving * v)
	}
	return true
}

// direction is how much of each basic column one use of the new one replaces.
func (m *master) direction(c column) []float64 {
	var rows []int
	for k, n := range c.take {
		if n != 0 {
			rows = append(rows, k)
		}
	}
	d := make([]float64, len(m.x))
	for i, row := range m.inv {
		for _, k := range rows {
			d[i] += float64(row[k] * float64(c.take[k]))
		}
	}
	m.work += (2 + len(rows)) * len(d)
	return d
}

// leaving is the row whose basic column the entering one drives out first, or
// −1 where none is.
func (m *master) leaving(d []float64) int {
	const eps = 1e-9
	r, least := -1, math.Inf(1)
	for i, v := range d {
		if v <= eps {
			continue
		}
		if ratio := m.x[i] / v; ratio < least-eps || ratio < least+eps && v > d[r] {
			r, least = i, min(least, ratio)
		}
	}
	return r
}

// pivot brings a column with direction d into row r.
func (m *master) pivot(r int, d []float64) {
	row := m.inv[r]
	var filled []int
	for k := range row {
		if row[k] != 0 {
			row[k] /= d[r]
			filled = append(filled, k)
		}
	}
	m.x[r] = max(0, m.x[r]/d[r])
	for i, v := range d {
		if i == r || v == 0 {
			continue
		}
		other := m.inv[i]
		for _, k := range filled {
			other[k] -= float64(v * row[k])
		}
		m.work += len(filled)
		m.x[i] = max(0, m.x[i]-float64(v*m.x[r]))
	}
}

// relax lets a row be taken more often than wanted where that is cheaper, or a
// row be served in the place of another; it returns false where neither helps.
func (m *master) relax() bool {
	take := make([]int, len(m.dual))
	for i, y := range m.dual {
		if y < -1e-7 {
			take[i] = -1
			return m.enter(column{0, take})
		}
	}
	most, at, in := 1e-6, -1, -1
	for i, rows := range m.below {
		for _, j := range rows {
			if v := m.dual[j] - m.dual[i]; v > most {
				most, at, in = v, i, j
			}
		}
	}
	if at < 0 {
		return false
	}
	take[at], take[in] = -1, 1
	return m.enter(column{0, take})
}

// dualScale turns the fractional prices of the master into whole numbers.
const dualScale = 1 << 20

// prices are what each row is worth, in units of 1/dualScale.
type prices []int64

// prices are the master's dual values as whole numbers, none negative.
func (m *master) prices() prices {
	out := make(prices, len(m.dual))
	for i, y := range m.dual {
		out[i] = max(0, int64(float64(y*dualScale)))
	}
	return out
}

func (p prices) of(counts []int) int64 {
	sum := int64(0)
	for i, n := range counts {
		sum += p[i] * int64(n)
	}
	return sum
}
