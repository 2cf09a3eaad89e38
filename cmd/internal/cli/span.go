package cli

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode"

	"quiltrun/planner"
)

// spanUnits are the words for a unit of time, in seconds.
var spanUnits = map[string]float64{
	"h": 3600, "hr": 3600, "hrs": 3600, "hour": 3600, "hours": 3600,
	"m": 60, "min": 60, "mins": 60, "minute": 60, "minutes": 60,
	"s": 1, "sec": 1, "secs": 1, "second": 1, "seconds": 1,
}

// spanError says why a text is no length of time, and what would be.
type spanError struct {
	what, say string
	over      bool // it is one, beyond the limit
}

// Error is what is wrong, without what to say instead.
func (e *spanError) Error() string { return e.what }

// parseSpan reads a length of time as people type it: 35m, 1h20m, 1 h 20 min,
// 90s, 1.5h. Units go from long to short, each at most once. A number without
// a unit is refused, because 35 may be minutes or seconds; only 0 needs none.
// The result is at least 0 and at most limit.
func parseSpan(text string, limit planner.Minutes) (planner.Minutes, error) {
	rest := strings.TrimSpace(strings.ToLower(text))
	if rest == "0" {
		return 0, nil
	}
	if isNumber(rest) {
		return 0, &spanError{what: fmt.Sprintf("%q has no unit", text), say: "say " + rest + "m for minutes"}
	}
	notTime := &spanError{what: fmt.Sprintf("%q is not a length of time", text), say: "write it like 35m, 1h20m or 90s"}
	if rest == "" {
		return 0, notTime
	}
	seconds, last := 0.0, float64(1<<20)
	for rest != "" {
		number, unit, after := cutSpan(rest)
		n, err := strconv.ParseFloat(number, 64)
		size, known := spanUnits[unit]
		if err != nil || !known || size >= last {
			return 0, notTime
		}
		seconds, last, rest = seconds+n*size, size, after
	}
	if minutes := planner.Minutes(seconds / 60); minutes <= limit {
		return minutes, nil
	}
	return 0, &spanError{what: fmt.Sprintf("%q is more than %g hours", text, limit/60), say: "is there a digit too many?", over: true}
}

// spanOption is parseSpan for an option or a word of the command line, which the
// error names.
func spanOption(what, text string, limit planner.Minutes) (planner.Minutes, error) {
	minutes, err := parseSpan(text, limit)
	var reason *spanError
	if errors.As(err, &reason) {
		return 0, wrong("%s %s", what, reason.what).hint("%s", reason.say)
	}
	return minutes, err
}

// someTime is spanOption where no time at all makes no sense; instead says what to
// do then.
func someTime(what, text string, limit planner.Minutes, instead string) (planner.Minutes, error) {
	minutes, err := spanOption(what, text, limit)
	if err == nil && minutes == 0 {
		return 0, wrong("%s %q is no time at all", what, text).hint("%s", instead)
	}
	return minutes, err
}

// cutSpan takes the first number and its unit off the text. The number comes
// with a decimal point, so that a decimal comma reads the same.
func cutSpan(text string) (number, unit, rest string) {
	number, rest = cutWhile(text, func(r rune) bool { return r >= '0' && r <= '9' || r == '.' || r == ',' })
	unit, rest = cutWhile(strings.TrimSpace(rest), unicode.IsLetter)
	return strings.ReplaceAll(number, ",", "."), unit, strings.TrimSpace(rest)
}

// cutWhile parts a text after the runes of its beginning that hold.
func cutWhile(text string, holds func(rune) bool) (head, tail string) {
	at := strings.IndexFunc(text, func(r rune) bool { return !holds(r) })
	if at < 0 {
		return text, ""
	}
	return text[:at], text[at:]
}

// isNumber tells a number whose unit was forgotten from other nonsense.
func isNumber(text string) bool {
	number, rest := cutWhile(text, func(r rune) bool { return r >= '0' && r <= '9' || r == '.' || r == ',' })
	return number != "" && rest == ""
}
