package cli

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

func TestSizesAreReadAsTyped(t *testing.T) {
	in, cm := measure.Inch, measure.Centimetre
	one := func(count int, width, height measure.Length) tracker.MeasuredSize {
		return tracker.MeasuredSize{Count: count, Size: measure.Size{Width: width, Height: height}}
	}
	for _, c := range []struct {
		text string
		unit measure.Unit
		want []tracker.MeasuredSize
	}{
		{"12 1/8", measure.Inches, []tracker.MeasuredSize{one(1, in*97/8, 0)}},
		{"12⅛ x 12", measure.Inches, []tracker.MeasuredSize{one(1, in*97/8, 12*in)}},
		{"32 cm", measure.Inches, []tracker.MeasuredSize{one(1, 32*cm, 0)}},
		{"30 of 6 1/2, 2 of 6 1/4", measure.Inches, []tracker.MeasuredSize{one(30, in*13/2, 0), one(2, in*25/4, 0)}},
		{"6 1/2, 6 1/4,", measure.Inches, []tracker.MeasuredSize{one(1, in*13/2, 0), one(1, in*25/4, 0)}},
		{"20,5, 2 of 20,3 x 20,4", measure.Centimetres, []tracker.MeasuredSize{one(1, cm*41/2, 0), one(2, cm*203/10, cm*204/10)}},
	} {
		sizes, err := parseSizes(c.text, c.unit)
		require.NoError(t, err, c.text)
		assert.Equal(t, c.want, sizes, c.text)
	}
	for _, text := range []string{"", ",", "0 of 3", "-1 of 3", "two of 3", "3 of", "3 x 4 x 5", "≈ 3", "12000 of 3"} {
		_, err := parseSizes(text, measure.Inches)
		assert.Error(t, err, text)
	}
}

func FuzzParseSizes(f *testing.F) {
	for _, seed := range []string{"12 1/8", "30 of 6 1/2, 2 of 6 1/4", "20,5, 3", "3 x 4", " of ", ", , "} {
		f.Add(seed, false)
	}
	f.Fuzz(func(t *testing.T, text string, metric bool) {
		u := measure.Inches
		if metric {
			u = measure.Centimetres
		}
		sizes, err := parseSizes(text, u)
		if err != nil {
			return
		}
		for _, s := range sizes {
			if s.Count < 1 || s.Size.Width <= 0 || s.Size.Height < 0 {
				t.Errorf("%q gives %+v", text, s)
			}
		}
	})
}

func TestValuesAreParted(t *testing.T) {
	assert.Equal(t, []string{"5", "6 1/2", "7"}, parted("5 or 6 1/2 or 7", measure.Inches))
	assert.Equal(t, []string{"5", "6", "7"}, parted("5,6, 7", measure.Inches))
	assert.Equal(t, []string{"12,5", "13"}, parted("12,5, 13", measure.Centimetres), "a decimal comma parts nothing")
	assert.Equal(t, []string{"[Kelp, Foam]"}, parted("[Kelp, Foam]", measure.Inches))
}

func TestAlternativesAreEveryValueWithEveryOther(t *testing.T) {
	opts := compareOptions{}
	require.NoError(t, opts.fill([]string{"square=5", "or", "6", "across=2,3"}))
	all, err := opts.alternatives(measure.Inches)
	require.NoError(t, err)
	assert.Equal(t, [][]planner.Change{
		{{Key: "square", Value: "5"}, {Key: "across", Value: "2"}}, {{Key: "square", Value: "5"}, {Key: "across", Value: "3"}},
		{{Key: "square", Value: "6"}, {Key: "across", Value: "2"}}, {{Key: "square", Value: "6"}, {Key: "across", Value: "3"}},
	}, all)
}
