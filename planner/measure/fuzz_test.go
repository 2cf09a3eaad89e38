package measure_test

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/measure"
)

func FuzzParse(f *testing.F) {
	for _, text := range []string{
		"8", "8.5", "8,5", "8 1/2", "8-1/2", "8½", "½", `8 1/2"`, "8½″", "8 1⁄2 in", "20,5 cm", "1 1/4 yd", "0.5 m",
		"1/2 10", "1/0", "5/2/2", "1 1/-2", "1/2,000", "-0", "NaN", "0x10", "1e9", "1_0", "1,000", "≈ 8", "1000 m", "\xff", "",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, bare := range []measure.Unit{measure.Inches, measure.Centimetres} {
			l, err := measure.Parse(text, bare)
			if err != nil {
				assertSyntaxError(t, err, text)
				continue
			}
			require.Positive(t, l)
			require.LessOrEqual(t, l, measure.Longest)
			assertReadsBack(t, l)

			same, err := measure.ParseAllowZero(text, bare)
			require.NoError(t, err)
			require.Equal(t, l, same)
		}
	})
}

func FuzzParseSize(f *testing.F) {
	for _, text := range []string{
		"18 x 22", "18×22 in", "50 x 55 cm", "5", "1 yd x 42", "18 by 22", "x", "18 x 22 x 3", "0x10", "x\xff", "1 in X 2 cm",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		size, err := measure.ParseSize(text, measure.Centimetres)
		if err != nil {
			assertSyntaxError(t, err, text)
			require.Zero(t, size)
			return
		}
		again, err := measure.ParseSize(size.Width.String()+" × "+size.Height.String(), measure.Inches)
		require.NoError(t, err)
		require.Equal(t, size, again)
	})
}

// assertSyntaxError holds for every refusal: the whole text and a reason.
func assertSyntaxError(t *testing.T, err error, text string) {
	t.Helper()
	var syntax *measure.SyntaxError
	require.True(t, errors.As(err, &syntax))
	assert.Equal(t, text, syntax.Text)
	assert.NotEmpty(t, syntax.Reason)
}
