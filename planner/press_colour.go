package planner

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"
)

// luminance is how light a colour is, from 0 (black) to 1 (white): the relative
// luminance of W3C, Web Content Accessibility Guidelines 2.2, section "relative
// luminance". The colour is one that isColour takes.
func luminance(colour string) float64 {
	hex := hexOf(colour)
	return 0.2126*linear(hex[0:2]) + 0.7152*linear(hex[2:4]) + 0.0722*linear(hex[4:6])
}

// linear takes sRGB's bend out of one of its three parts.
func linear(hex string) float64 {
	n, err := strconv.ParseUint(hex, 16, 8)
	if err != nil {
		return 0
	}
	c := float64(n) / 255
	if c <= 0.04045 {
		return c / 12.92
	}
	return math.Pow((c+0.055)/1.055, 2.4)
}

// hexOf is a colour as six hexadecimal digits.
func hexOf(colour string) string {
	digits, isHex := strings.CutPrefix(colour, "#")
	switch {
	case !isHex:
		return colourValues()[strings.ToLower(colour)]
	case len(digits) == 3:
		r, g, b := digits[0:1], digits[1:2], digits[2:3]
		return r + r + g + g + b + b
	}
	return digits
}

// colourValues is the named colours with their values, as six hexadecimal digits.
var colourValues = sync.OnceValue(func() map[string]string {
	words := strings.Fields(colourTable)
	values := make(map[string]string, len(words)/2)
	for pair := range slices.Chunk(words, 2) {
		values[pair[0]] = pair[1]
	}
	return values
})
