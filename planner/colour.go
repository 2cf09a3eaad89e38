package planner

import "strings"

// Hex is the fabric's colour as six hexadecimal digits, red, green and blue, in
// small letters; "" where the job file gives none.
func (f Fabric) Hex() string {
	if f.Colour == "" {
		return ""
	}
	return strings.ToLower(hexOf(f.Colour))
}
