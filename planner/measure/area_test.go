package measure_test

import (
	"fmt"
	"math"
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

// ends are the lengths at which a product's words and signs turn over.
var ends = []measure.Length{
	math.MinInt64, math.MinInt64 + 1, -1 << 32, -1, 0, 1, 2, 1 << 32, 1<<32 - 1, math.MaxInt64 - 1, math.MaxInt64,
}

// product is what an area should hold, in square ticks.
func product(a, b measure.Length) *big.Int {
	return new(big.Int).Mul(big.NewInt(int64(a)), big.NewInt(int64(b)))
}

func TestAreaKeepsEveryProduct(t *testing.T) {
	for _, a := range ends {
		for _, b := range ends {
			assertTicks(t, product(a, b), measure.Mul(a, b))
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		a, b := everyInt64().Draw(t, "a"), everyInt64().Draw(t, "b")
		assertTicks(t, product(a, b), measure.Mul(a, b))
	})
}

func TestAreaOrderIsThatOfTheProducts(t *testing.T) {
	check := func(t assert.TestingT, a, b, c, d measure.Length) {
		want := product(a, b).Cmp(product(c, d))
		x, y := measure.Mul(a, b), measure.Mul(c, d)
		assert.Equal(t, want, x.Cmp(y))
		assert.Equal(t, want == 0, x == y)
		assert.Equal(t, product(a, b).Sign(), x.Sign())
		assert.Equal(t, product(a, b).Sign() == 0, x == measure.Area{})
	}
	for _, a := range ends {
		for _, b := range ends {
			for _, c := range ends {
				check(t, a, b, c, 1)
				check(t, a, b, b, c)
			}
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		l := everyInt64()
		check(t, l.Draw(t, "a"), l.Draw(t, "b"), l.Draw(t, "c"), l.Draw(t, "d"))
	})
}

func TestAreaSumsAgreeWithUnboundedArithmetic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := everyInt64()
		a, b, c, d := l.Draw(t, "a"), l.Draw(t, "b"), l.Draw(t, "c"), l.Draw(t, "d")
		x, y := measure.Mul(a, b), measure.Mul(c, d)
		p, q := product(a, b), product(c, d)

		// Two products of int64s reach 2¹²⁷ together only where all four are
		// the smallest one.
		if sum := new(big.Int).Add(p, q); sum.BitLen() < 128 {
			assertTicks(t, sum, x.Add(y))
		}
		assertTicks(t, new(big.Int).Sub(p, q), x.Sub(y))
		assertTicks(t, new(big.Int).Neg(p), measure.Area{}.Sub(x))
		// Rsh rounds towards minus infinity, as Half does.
		assertTicks(t, new(big.Int).Rsh(p, 1), x.Half())
	})
}

func TestAreaTimesAgreesWithUnboundedArithmetic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		// Up to a square kilometre a million times over.
		side := rapid.Int64Range(-int64(measure.Longest), int64(measure.Longest))
		a, b := measure.Length(side.Draw(t, "a")), measure.Length(side.Draw(t, "b"))
		n := rapid.IntRange(-1_000_000, 1_000_000).Draw(t, "n")
		want := product(a, b)
		want.Mul(want, big.NewInt(int64(n)))
		assertTicks(t, want, measure.Mul(a, b).Times(n))
	})
}

// assertTicks compares an area with a count of square ticks.
func assertTicks(t assert.TestingT, want *big.Int, got measure.Area) {
	assert.Equal(t, want.String(), got.Ticks().String())
}

func TestAreaOfWhatAQuilterKnows(t *testing.T) {
	// Hand-worked: a yard of 44 in cloth; a 5 in charm square is 12.7 cm each
	// way; a seam across 13 1/2 in takes 6 3/4 sq in of both pieces together.
	assert.Equal(t, "1584", measure.Mul(44*in, yd).Decimal(measure.Inches, 4))
	assert.Equal(t, "161.29", measure.Mul(5*in, 5*in).Decimal(measure.Centimetres, 4))
	assert.Equal(t, "6.75", measure.Mul(13*in+in/2, in/4).Times(2).Decimal(measure.Inches, 4))
	assert.InDelta(t, 1584.0, measure.Mul(44*in, yd).In(measure.Inches), 1e-9)
	assert.InDelta(t, -0.25, measure.Mul(-in/2, in/2).In(measure.Inches), 1e-12)
}

func TestTwelvePatchesFillTheirUnit(t *testing.T) {
	// Hand-worked: 12 squares of 1/3 in by 1/4 in fill one square inch.
	var sum measure.Area
	for range 12 {
		sum = sum.Add(measure.Mul(in/3, in/4))
	}
	assert.Equal(t, measure.Mul(in, in), sum)
	assert.Equal(t, measure.Area{}, sum.Sub(measure.Mul(in, in)))
}

func TestAreaTriangleIsHalfItsSquare(t *testing.T) {
	// Hand-worked: legs of 3 7/8 in, (3.875)²/2 = 7.5078125.
	leg := 3*in + 7*in/8
	triangle := measure.Mul(leg, leg).Half()
	assert.Equal(t, "7.5078", triangle.Decimal(measure.Inches, 4))
	assert.Equal(t, measure.Mul(leg, leg), triangle.Add(triangle))
}

func TestOddAreaHalvesDownwards(t *testing.T) {
	for _, c := range []struct{ ticks, half measure.Length }{{3, 1}, {-3, -2}, {1, 0}, {-1, -1}} {
		t.Run(fmt.Sprint(int64(c.ticks)), func(t *testing.T) {
			assert.Equal(t, measure.Mul(c.half, 1), measure.Mul(c.ticks, 1).Half())
		})
	}
}
