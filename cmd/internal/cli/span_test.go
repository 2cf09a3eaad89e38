package cli

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
)

func TestSpansPeopleType(t *testing.T) {
	// Hand-worked sums.
	for text, want := range map[string]planner.Minutes{
		"35m":        35,
		"35 min":     35,
		" 35 Min ":   35,
		"1h20m":      80,
		"1 h 20 min": 80,
		"1 hour":     60,
		"2 hours":    120,
		"90s":        1.5,
		"1m30s":      1.5,
		"1.5h":       90,
		"1,5 h":      90,
		"0.5h":       30,
		"0m":         0,
		"0":          0,
		"16h40m":     1000,
	} {
		got, err := parseSpan(text, 1000)
		require.NoError(t, err, text)
		assert.Equal(t, want, got, text)
	}
}

func TestSpansThatAreRefused(t *testing.T) {
	for text, want := range map[string]spanError{
		"35":       {`"35" has no unit`, "say 35m for minutes", false},
		"1.5":      {`"1.5" has no unit`, "say 1.5m for minutes", false},
		"":         {`"" is not a length of time`, "write it like 35m, 1h20m or 90s", false},
		"soon":     {`"soon" is not a length of time`, "write it like 35m, 1h20m or 90s", false},
		"-35m":     {`"-35m" is not a length of time`, "write it like 35m, 1h20m or 90s", false},
		"1:20":     {`"1:20" is not a length of time`, "write it like 35m, 1h20m or 90s", false},
		"20m1h":    {`"20m1h" is not a length of time`, "write it like 35m, 1h20m or 90s", false},
		"5m5m":     {`"5m5m" is not a length of time`, "write it like 35m, 1h20m or 90s", false},
		"1h20":     {`"1h20" is not a length of time`, "write it like 35m, 1h20m or 90s", false},
		"3d":       {`"3d" is not a length of time`, "write it like 35m, 1h20m or 90s", false},
		"m":        {`"m" is not a length of time`, "write it like 35m, 1h20m or 90s", false},
		"1.2.3m":   {`"1.2.3m" is not a length of time`, "write it like 35m, 1h20m or 90s", false},
		"1e3m":     {`"1e3m" is not a length of time`, "write it like 35m, 1h20m or 90s", false},
		"NaNm":     {`"NaNm" is not a length of time`, "write it like 35m, 1h20m or 90s", false},
		"20h1m":    {`"20h1m" is more than 20 hours`, "is there a digit too many?", true},
		"9999999h": {`"9999999h" is more than 20 hours`, "is there a digit too many?", true},
	} {
		_, err := parseSpan(text, 20*60)
		var got *spanError
		require.ErrorAs(t, err, &got, text)
		assert.Equal(t, want, *got, text)
	}
}

func FuzzSpanStaysWithinItsLimit(f *testing.F) {
	for _, text := range []string{"35m", "1h20m", "1 h 20 min", "90s", "1,5h", "35", "", "0", "999999999999h", "h1", ".m"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		minutes, err := parseSpan(text, 1000)
		if err != nil {
			var words *spanError
			require.ErrorAs(t, err, &words)
			return
		}
		assert.True(t, minutes >= 0 && minutes <= 1000, "%q gave %v", text, minutes)
	})
}
