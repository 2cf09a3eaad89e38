package render

import (
	"encoding/json"
	"fmt"
	"io"
	"strconv"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/measure"
)

// schema is the version of everything that --json shows. Fields may be added
// under it; a field removed or given another meaning raises it.
const schema = 1

// Decimals shown at most.
const (
	lengthPlaces  = 6
	areaPlaces    = 4
	minutesPlaces = 2
	chancePlaces  = 3
)

// number is a JSON number in plain decimals: no exponent, no −0.
type number string

// MarshalJSON writes the digits as they stand. An empty number is an error: a
// value that is not known is a nil *number.
func (n number) MarshalJSON() ([]byte, error) {
	if n == "" {
		return nil, fmt.Errorf("a value to show is not a number")
	}
	return []byte(n), nil
}

// length is a length in u, which the output names once as its unit.
func length(l measure.Length, u measure.Unit) number { return number(l.Decimal(u, lengthPlaces)) }

// area is an area in the square of u.
func area(a measure.Area, u measure.Unit) number { return number(a.Decimal(u, areaPlaces)) }

// minutes is a time of one person's work.
func minutes(m planner.Minutes) number { return decimal(float64(m), minutesPlaces) }

// decimal rounds the shortest decimal form of x to the given places, half away
// from zero, so that 0.125 becomes 0.13 and what reads 1.005 becomes 1.01
// whichever side of it the float lies. Infinities and NaN give the empty
// number, which does not marshal.
func decimal(x float64, places int) number {
	digits := strconv.FormatFloat(x, 'f', -1, 64)
	sign := ""
	if rest, negative := strings.CutPrefix(digits, "-"); negative {
		sign, digits = "-", rest
	}
	if digits[0] < '0' || digits[0] > '9' {
		return ""
	}
	whole, part, _ := strings.Cut(digits, ".")
	if len(part) > places {
		up := part[places] >= '5'
		part = part[:places]
		if up {
			whole, part = nextUp(whole, part)
		}
	}
	if part = strings.TrimRight(part, "0"); part != "" {
		whole += "." + part
	}
	if whole == "0" {
		return "0"
	}
	return number(sign + whole)
}

// nextUp adds one to the last digit of whole.part.
func nextUp(whole, part string) (string, string) {
	digits := []byte("0" + whole + part)
	for i := len(digits) - 1; ; i-- {
		if digits[i] != '9' {
			digits[i]++
			break
		}
		digits[i] = '0'
	}
	end := len(digits) - len(part)
	return strings.TrimPrefix(string(digits[:end]), "0"), string(digits[end:])
}

// date is a calendar date, or null where none is known.
func date(d planner.Date) *string { return known(d.String()) }

// known is the text, or null where there is none.
func known(text string) *string {
	if text == "" {
		return nil
	}
	return &text
}

// list is the items, and [] rather than null where there are none.
func list[T, U any](items []T, show func(T) U) []U {
	out := make([]U, 0, len(items))
	for _, item := range items {
		out = append(out, show(item))
	}
	return out
}

// writeJSON writes one value as one line. Nothing is written where it fails.
func writeJSON(w io.Writer, value any) error {
	var out strings.Builder
	encode := json.NewEncoder(&out)
	encode.SetEscapeHTML(false)
	if err := encode.Encode(value); err != nil {
		return fmt.Errorf("writing JSON: %w", err)
	}
	_, err := io.WriteString(w, out.String())
	return err
}
