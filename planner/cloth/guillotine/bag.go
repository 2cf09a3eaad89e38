package guillotine

import "math/bits"

// bag counts pieces of every kind in packed fields.
type bag [2]uint64

// packer knows where each kind's field lies. Every field has a spare bit on
// top, which shows when there are more than there is.
type packer struct {
	word, shift []uint
	full        bag // all there is
	spare       bag // the spare bits
}

// newPacker returns false where the counts do not go into a bag.
func newPacker(counts []int) (*packer, bool) {
	k := &packer{}
	word, shift := uint(0), uint(0)
	for _, n := range counts {
		width := uint(bits.Len(uint(n))) + 1
		if shift+width > 64 {
			word, shift = word+1, 0
		}
		if word == uint(len(k.full)) {
			return nil, false
		}
		k.word, k.shift = append(k.word, word), append(k.shift, shift)
		k.full[word] |= uint64(n) << shift
		k.spare[word] |= 1 << (shift + width - 1)
		shift += width
	}
	return k, true
}

// one is a single piece of a kind.
func (k *packer) one(kind int) bag {
	var b bag
	b[k.word[kind]] = 1 << k.shift[kind]
	return b
}

// both adds two bags, and returns false where that is more than there is. A
// spare bit stays set in full + spare − sum as long as its field is no more
// than full.
func (k *packer) both(a, b bag) (bag, bool) {
	for w := range a {
		a[w] += b[w]
		if ((k.full[w]|k.spare[w])-a[w])&k.spare[w] != k.spare[w] {
			return a, false
		}
	}
	return a, true
}
