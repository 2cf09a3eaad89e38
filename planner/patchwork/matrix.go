package patchwork

import "math/bits"

// matrix tells which of a number of things are beside each other.
type matrix struct {
	words int
	bits  []uint64
}

func newMatrix(size int) matrix {
	words := (size + 63) / 64
	return matrix{words, make([]uint64, size*words)}
}

func (m matrix) line(i int) []uint64 { return m.bits[i*m.words : (i+1)*m.words] }

func (m matrix) set(i, j int) { m.line(i)[j/64] |= 1 << (j % 64) }

func (m matrix) count(i int) int {
	n := 0
	for _, word := range m.line(i) {
		n += bits.OnesCount64(word)
	}
	return n
}

// row is what is beside a thing, rising.
func (m matrix) row(i int) []int {
	row := make([]int, 0, m.count(i))
	for w, word := range m.line(i) {
		for ; word != 0; word &= word - 1 {
			row = append(row, w*64+bits.TrailingZeros64(word))
		}
	}
	return row
}

// remove takes a thing out and puts all that was beside it beside each other.
func (m matrix) remove(i int, row []int) {
	gone := m.line(i)
	for _, j := range row {
		line := m.line(j)
		for w := range line {
			line[w] |= gone[w]
		}
		line[i/64] &^= 1 << (i % 64)
		line[j/64] &^= 1 << (j % 64)
	}
}
