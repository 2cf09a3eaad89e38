package measure_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

// unitNames are the words and marks of each unit (common practice).
var unitNames = map[measure.Length][]string{
	in: {"in", "in.", "inch", "inches", `"`, "″", "”", "“", "''", "’’", "′′"},
	yd: {"yd", "yd.", "yds", "yds.", "yard", "yards"},
	mm: {"mm", "millimetre", "millimetres", "millimeter", "millimeters"},
	cm: {"cm", "centimetre", "centimetres", "centimeter", "centimeters"},
	m:  {"m", "metre", "metres", "meter", "meters"},
}

func TestEveryUnitNameFollowsEveryNumber(t *testing.T) {
	for unit, names := range unitNames {
		for _, name := range names {
			for _, number := range []string{"2.5", "2,5", "2 1/2", "2-1/2", "2½", "5/2"} {
				for _, text := range []string{number + name, number + " " + name, number + strings.ToUpper(name)} {
					got, err := measure.Parse(text, measure.Centimetres)
					require.NoError(t, err)
					assert.Equal(t, 5*unit/2, got, text)
				}
			}
		}
	}
}

func TestEveryUnitNameReadsInASize(t *testing.T) {
	for unit, names := range unitNames {
		for _, name := range names {
			got, err := measure.ParseSize("2 x 3"+name, measure.Centimetres)
			require.NoError(t, err, name)
			assert.Equal(t, measure.Size{Width: 2 * unit, Height: 3 * unit}, got, name)
		}
	}
}

// TestWaysToWriteAFractionAgree draws a mixed fraction and writes it in each way
// that the characters at hand allow.
func TestWaysToWriteAFractionAgree(t *testing.T) {
	characters := map[string]string{
		"1/2": "½", "1/4": "¼", "3/4": "¾", "1/8": "⅛", "3/8": "⅜", "5/8": "⅝", "7/8": "⅞", "1/3": "⅓", "2/3": "⅔",
	}
	for plain, single := range characters {
		t.Run(plain, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				whole := fmt.Sprint(rapid.IntRange(1, 999).Draw(t, "whole"))
				want, err := measure.Parse(whole+" "+plain, measure.Inches)
				require.NoError(t, err)
				slash := strings.Replace(plain, "/", "\u2044", 1)
				for _, text := range []string{
					whole + single, whole + " " + single, whole + "-" + single, whole + "\u00a0" + single,
					whole + "-" + plain, whole + " " + slash, whole + "\u2009" + slash, whole + "\u2011" + plain,
					" " + whole + single + " in ", whole + single + "″", whole + " " + plain + `"`,
				} {
					got, err := measure.Parse(text, measure.Inches)
					require.NoError(t, err, text)
					assert.Equal(t, want, got, text)
				}
			})
		})
	}
}

// alphabet is every character that a measure may hold.
const alphabet = "0123456789.,/\u2044\u2215-\u2010\u2011\u2013½¼¾⅛⅜⅝⅞⅓⅔\"″”“'’′" + "inchesydarmtlINCHESYDARMTL"

func TestACharacterThatNoMeasureHoldsIsRefused(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stranger := rapid.Rune().Filter(func(r rune) bool {
			return !strings.ContainsRune(alphabet, r) && strings.TrimSpace(string(r)) != ""
		}).Draw(t, "stranger")
		for _, text := range []string{
			string(stranger) + "8 1/2 in", "8" + string(stranger) + "1/2 in", "8 1/2" + string(stranger) + "in", "8 1/2 in" + string(stranger),
		} {
			_, err := measure.Parse(text, measure.Inches)
			assert.Error(t, err, text)
		}
	})
}

func TestTextOfMeasuringCharactersNeverPanics(t *testing.T) {
	// Random bytes seldom look like a measure; these do.
	letters := rapid.SampledFrom([]rune(alphabet + "     xX×≈−+_e"))
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOf(letters).Draw(t, "text")
		if l, err := measure.Parse(text, measure.Inches); err == nil {
			assertReadsBack(t, l)
			assert.NotContains(t, text, "≈")
			assert.NotContains(t, text, "_")
		}
		if size, err := measure.ParseSize(text, measure.Inches); err == nil {
			assertReadsBack(t, size.Width)
			assertReadsBack(t, size.Height)
		}
	})
}
