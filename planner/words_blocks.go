package planner

import (
	"maps"
	"slices"
	"strings"
	"sync"
)

// blockWords is the built-in blocks under the names that people give them,
// folded as foldBlock does.
var blockWords = sync.OnceValue(func() map[string]string {
	return map[string]string{
		"plain square":            "plain square",
		"square":                  "plain square",
		"plain block":             "plain square",
		"four patch":              "four-patch",
		"fourpatch":               "four-patch",
		"nine patch":              "nine-patch",
		"ninepatch":               "nine-patch",
		"rail":                    "rail",
		"rail fence":              "rail",
		"half square triangle":    "half-square triangle",
		"hst":                     "half-square triangle",
		"pinwheel":                "pinwheel",
		"hourglass":               "hourglass",
		"hour glass":              "hourglass",
		"quarter square triangle": "hourglass",
		"qst":                     "hourglass",
		"four patch recut":        "four-patch recut",
		"fourpatch recut":         "four-patch recut",
		"split four patch":        "four-patch recut",
		"d4p":                     "four-patch recut",
		"nine patch recut":        "nine-patch recut",
		"ninepatch recut":         "nine-patch recut",
		"d9p":                     "nine-patch recut",
		"pinwheel recut":          "pinwheel recut",
		"hourglass recut":         "hourglass recut",
		"hour glass recut":        "hourglass recut",
	}
})

// BuiltInCalled finds the built-in that a name of the trade stands for:
// "disappearing 4-patch" is the four-patch recut.
func BuiltInCalled(text string) (BuiltIn, bool) {
	return BuiltInNamed(blockWords()[foldBlock(text)])
}

// patchDigits spells out the numbers that people write as digits.
var patchDigits = sync.OnceValue(func() *strings.Replacer {
	return strings.NewReplacer(
		"4 patch", "four patch", "4patch", "four patch",
		"9 patch", "nine patch", "9patch", "nine patch",
	)
})

// foldBlock brings a block's name into the form of blockWords: digits as words,
// one block and not several, and the cutting again said once, at the end.
func foldBlock(text string) string {
	name := singular(foldWords(text))
	name = strings.TrimSuffix(name, " block")
	name = patchDigits().Replace(name)
	for _, before := range []string{"disappearing ", "recut "} {
		if base, ok := strings.CutPrefix(name, before); ok {
			return base + " recut"
		}
	}
	return name
}

// singular takes the plural's ending off; an hourglass is none.
func singular(name string) string {
	switch {
	case strings.HasSuffix(name, "sses"):
		return strings.TrimSuffix(name, "es")
	case strings.HasSuffix(name, "ss"):
		return name
	default:
		return strings.TrimSuffix(name, "s")
	}
}

// NearBuiltIn is the built-in's name that somebody most likely meant, "" where
// none is close. What people call it counts as well as its own name.
func NearBuiltIn(text string) string {
	if near := nearest(text, blockNames()); near != "" {
		return near
	}
	called := []string{"disappearing four patch", "disappearing nine patch", "disappearing pinwheel", "disappearing hourglass"}
	called = append(called, slices.Sorted(maps.Keys(blockWords()))...)
	if b, ok := BuiltInCalled(nearest(strings.ReplaceAll(text, "-", " "), called)); ok {
		return b.Name
	}
	return ""
}
