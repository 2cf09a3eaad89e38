package cli

import (
	"strings"
	"testing"

	"github.com/clipperhouse/displaywidth"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/planner/measure"
)

// The commands under shelf explain themselves as all others do.
func TestEveryDeedOfTheShelfExplainsItself(t *testing.T) {
	env, _, _ := calm(t)
	deeds := newShelf(&env).Commands()
	require.Len(t, deeds, 5)
	for _, cmd := range deeds {
		assert.True(t, strings.HasPrefix(cmd.Long, "shelf "+cmd.Name()+" "), cmd.Name())
		assert.Contains(t, cmd.Example, "quiltrun shelf "+cmd.Name())
		assert.NotNil(t, cmd.Args)
		assert.NotNil(t, cmd.Flags().Lookup("id"), "what writes takes an id")
		env, out, _ := calm(t)
		require.Equal(t, exitDone, Main(env, []string{"shelf", cmd.Name(), "--help"}))
		for _, line := range strings.Split(out.String(), "\n") {
			assert.LessOrEqual(t, displaywidth.String(line), 80, line)
		}
	}
}

// The amount is the end of the words; a name needs no quotes and may have numbers
// in it.
func TestAmountsAreToldFromNames(t *testing.T) {
	inch := func(n int) planner.Amount { return planner.Amount(measure.Inch.Times(n)) }
	for _, c := range []struct {
		typed    string
		material planner.Material
		name     string
		want     stockAmount
	}{
		{"Foam 3 yd", planner.ClothMaterial, "Foam", stockAmount{planner.Yardage, inch(108), false}},
		{"Foam 1 1/2 yd", planner.ClothMaterial, "Foam", stockAmount{planner.Yardage, inch(54), false}},
		{"Low tide 5 2 yd", planner.ClothMaterial, "Low tide 5", stockAmount{planner.Yardage, inch(72), false}},
		{"Reed 1.2 m", planner.ClothMaterial, "Reed", stockAmount{planner.Yardage, planner.Amount(measure.Centimetre.Times(120)), true}},
		{"Sea holly 4 fat quarters", planner.ClothMaterial, "Sea holly", stockAmount{planner.FatQuarter, 4, false}},
		{"Kelp 1 Fat Eighth", planner.ClothMaterial, "Kelp", stockAmount{planner.FatEighth, 1, false}},
		{"Dunes 42 precut squares", planner.ClothMaterial, "Dunes", stockAmount{planner.PreCutSquares, 42, false}},
		{"Dunes 42 squares", planner.ClothMaterial, "Dunes", stockAmount{planner.PreCutSquares, 42, false}},
		{"Foam 2 pieces", planner.ClothMaterial, "Foam", stockAmount{planner.Pieces, 2, false}},
		{"Cotton 1 package", planner.BattingMaterial, "Cotton", stockAmount{planner.Package, 1, false}},
		{"Cotton 2 yd", planner.BattingMaterial, "Cotton", stockAmount{planner.Roll, inch(72), false}},
		{"Ecru 3 x 500 m", planner.ThreadMaterial, "Ecru", stockAmount{planner.Spool, planner.Amount(1500 * measure.Metre), true}},
		{"Ecru 1422 yd", planner.ThreadMaterial, "Ecru", stockAmount{planner.Spool, planner.Amount(1422 * measure.Yard), false}},
	} {
		name, got, err := parseStock(strings.Fields(c.typed), c.material)
		require.NoError(t, err, c.typed)
		assert.Equal(t, c.name, name)
		assert.Equal(t, c.want, got, c.typed)
	}
	for _, typed := range []string{"Foam", "Foam 3", "Foam -1 yd", "Foam 0 yd", "Foam yd", "Foam 1/0 yd", "Kelp 4 fat halves"} {
		_, _, err := parseStock(strings.Fields(typed), planner.ClothMaterial)
		assert.Error(t, err, typed)
	}
}

// FuzzStock: whatever is typed, an amount is more than nothing and bounded, and
// nothing of the words is lost.
func FuzzStock(f *testing.F) {
	for _, seed := range []string{"Foam 3 yd", "Kelp 4 fat quarters", "Ecru 3 x 500 m", "a 1/2 yd", "½ 2½ yd"} {
		f.Add(seed, 0)
	}
	materials := []planner.Material{planner.ClothMaterial, planner.BattingMaterial, planner.ThreadMaterial}
	f.Fuzz(func(t *testing.T, typed string, which int) {
		m := materials[(which%3+3)%3]
		name, a, err := parseStock([]string{typed}, m)
		if err != nil {
			return
		}
		assert.GreaterOrEqual(t, a.amount, planner.Amount(0))
		assert.NotEmpty(t, name)
		assert.True(t, strings.HasPrefix(textOf([]string{typed}), name))
	})
}
