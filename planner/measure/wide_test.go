package measure

import (
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func (w wide) big() *big.Int {
	n := new(big.Int).Lsh(new(big.Int).SetUint64(w.hi), 64)
	return n.Add(n, new(big.Int).SetUint64(w.lo))
}

func anyWide() *rapid.Generator[wide] {
	return rapid.Custom(func(t *rapid.T) wide {
		return wide{rapid.Uint64().Draw(t, "hi"), rapid.Uint64().Draw(t, "lo")}
	})
}

func TestWideRootIsTheIntegerPart(t *testing.T) {
	check := func(t assert.TestingT, w wide) {
		assert.Equal(t, new(big.Int).Sqrt(w.big()).String(), wide{0, w.root()}.big().String())
	}
	// Squares, and one to either side of them, are where a root turns over.
	for _, r := range []uint64{1, 2, 3, 1 << 32, 1<<32 - 1, 1 << 63, 1<<64 - 1} {
		square := mulWide(r, r)
		check(t, square.sub(wide{0, 1}))
		check(t, square)
		check(t, square.add(wide{0, 1}))
	}
	check(t, wide{})
	check(t, wide{1<<64 - 1, 1<<64 - 1})
	rapid.Check(t, func(t *rapid.T) { check(t, anyWide().Draw(t, "w")) })
}

func TestWideDivisionLeavesTheRightRest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, d := anyWide().Draw(t, "w"), rapid.Uint64Min(1).Draw(t, "d")
		quotient, rest := w.div(d)
		wantQuotient, wantRest := new(big.Int).QuoRem(w.big(), wide{0, d}.big(), new(big.Int))
		assert.Equal(t, wantQuotient.String(), quotient.big().String())
		assert.Equal(t, wantRest.String(), wide{0, rest}.big().String())
	})
}

func TestWideDigitsAreThoseOfTheNumber(t *testing.T) {
	check := func(t assert.TestingT, w wide) { assert.Equal(t, w.big().String(), w.digits()) }
	// Where a block of nineteen digits fills, and where one is all zeros.
	ten := powerOfTen(19)
	for _, w := range []wide{{}, {0, 9}, {0, ten - 1}, {0, ten}, {1, 0}, {1<<64 - 1, 1<<64 - 1}, mulWide(ten, ten), mulWide(ten, 7)} {
		check(t, w)
	}
	rapid.Check(t, func(t *rapid.T) { check(t, anyWide().Draw(t, "w")) })
}

func TestWideHalfAndOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v, w := anyWide().Draw(t, "v"), anyWide().Draw(t, "w")
		assert.Equal(t, new(big.Int).Rsh(w.big(), 1).String(), w.half().big().String())
		assert.Equal(t, v.big().Cmp(w.big()) < 0, v.less(w))
		assert.Equal(t, v, v.add(w).sub(w))
	})
}
