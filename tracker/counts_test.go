package tracker

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestCountsAreReadAsTyped(t *testing.T) {
	for text, want := range map[string][]CountAsked{
		"":                           {},
		"12":                         {{Number: 12}},
		"4 blocks":                   {{Number: 4, Blocks: true}},
		"1 block":                    {{Number: 1, Blocks: true}},
		"all":                        {{All: true}},
		"1000000":                    {{Number: 1_000_000}},
		"tide=12|dune=8":             {{Lot: "tide", Number: 12}, {Lot: "dune", Number: 8}},
		"tide=12 dune=8":             {{Lot: "tide", Number: 12}, {Lot: "dune", Number: 8}},
		"tide=3 blocks dune=all":     {{Lot: "tide", Number: 3, Blocks: true}, {Lot: "dune", All: true}},
		"tide=3|blocks|dune=4":       {{Lot: "tide", Number: 3, Blocks: true}, {Lot: "dune", Number: 4}},
		"Sea glass=4 🧵 rose=2 NO=1":  {{Lot: "Sea glass", Number: 4}, {Lot: "🧵 rose", Number: 2}, {Lot: "NO", Number: 1}},
		"it's=4":                     {{Lot: "it's", Number: 4}},
		"a=b=4":                      {{Lot: "a=b", Number: 4}},
		"  tide = 4 ":                {{Lot: "tide", Number: 4}},
		"blocks=2":                   {{Lot: "blocks", Number: 2}},
		"4\u00a0blocks":              {{Number: 4, Blocks: true}},
		"12 pairs":                   {{Number: 12, Unit: "pairs"}},
		"2|Pairs":                    {{Number: 2, Unit: "pairs"}},
		"tide=2 pairs dune=1 pair":   {{Lot: "tide", Number: 2, Unit: "pairs"}, {Lot: "dune", Number: 1, Unit: "pair"}},
		"tide=2|pairs|dune=1|pair":   {{Lot: "tide", Number: 2, Unit: "pairs"}, {Lot: "dune", Number: 1, Unit: "pair"}},
		"tide=12 rose glass=8":       {{Lot: "tide", Number: 12}, {Lot: "rose glass", Number: 8}},
		"tide=3 blocks|dune=2|block": {{Lot: "tide", Number: 3, Blocks: true}, {Lot: "dune", Number: 2, Blocks: true}},
	} {
		var args []string
		if text != "" {
			args = strings.Split(text, "|")
		}
		got, err := ParseCounts(args)
		assert.NoError(t, err, text)
		assert.Equal(t, want, got, text)
	}
}

func TestWhatIsNoCountIsRefusedWithItsTextQuoted(t *testing.T) {
	const form = " is not a count: write a whole number such as 12, or 4 blocks, or all"
	for text, want := range map[string]string{
		"-3":                      `"-3"` + form,
		"0":                       `"0"` + form,
		"1.5":                     `"1.5"` + form,
		"1/2":                     `"1/2"` + form,
		"½":                       `"½"` + form,
		"010":                     `"010"` + form,
		"+5":                      `"+5"` + form,
		"1e3":                     `"1e3"` + form,
		"1_000":                   `"1_000"` + form,
		"0x10":                    `"0x10"` + form,
		"१२":                      `"१२"` + form,
		"twelve":                  `"twelve"` + form,
		"12 pairs more":           `"12 pairs more"` + form,
		"twelve pairs":            `"twelve pairs"` + form,
		"12|pairs|8":              `"12 pairs 8" is more than one count: write one, or one for each name, such as tide=12 dune=8`,
		"all blocks":              `"all blocks"` + form,
		"blocks":                  `"blocks"` + form,
		"tide=-3":                 `"tide=-3"` + form,
		"tide=":                   `"tide="` + form,
		"=4":                      `"=4" has no name before the equals sign: write it such as tide=12`,
		"1000001":                 `"1000001" is more than any job has: the most is 1000000`,
		"99999999999999999999999": `"99999999999999999999999" is more than any job has: the most is 1000000`,
		"tide=4|tide=5":           `"tide" has two counts: write one for each name`,
		"4|5":                     `"4 5" is more than one count: write one, or one for each name, such as tide=12 dune=8`,
		"4|tide=5":                `"4 tide=5" is more than one count: write one, or one for each name, such as tide=12 dune=8`,
		"":                        `""` + form,
	} {
		_, err := ParseCounts(strings.Split(text, "|"))
		assert.EqualError(t, err, want, text)
	}
}

func FuzzParseCounts(f *testing.F) {
	for _, seed := range []string{"12", "4 blocks", "tide=12 dune=8", "a=b=4", "-3", "=", "all=all all=all", "=1 =1 ="} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		counts, err := ParseCounts([]string{text})
		if err != nil {
			assert.Nil(t, counts)
			return
		}
		for _, c := range counts {
			assert.True(t, c.All != (c.Number > 0), "a count is a number or all of it")
			assert.LessOrEqual(t, c.Number, MostCounted)
			assert.False(t, c.All && (c.Blocks || c.Unit != ""))
			assert.False(t, c.Blocks && c.Unit != "")
		}
	})
}
