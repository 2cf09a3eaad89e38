package measure

import (
	"errors"
	"strconv"
	"strings"
)

// amount is a number as it was written: whole + part, not negative.
type amount struct {
	whole int64
	part  fraction
}

// of returns the amount of units, to the nearest tick. Beyond Longest it may
// be any length that is longer still.
func (a amount) of(unit Length) Length {
	whole := unit.Scale(a.whole, 1, Nearest)
	part := unit.Scale(a.part.num, a.part.den, Nearest)
	return min(whole, Longest+1) + min(part, Longest+1)
}

// Clauses for the person who wrote the text.
var (
	errEmpty    = errors.New("nothing is written here; write a measure such as 8 1/2 in or 20.5 cm")
	errNegative = errors.New("a measure cannot be negative; write it without the minus sign")
	errRounded  = errors.New("≈ marks a measure rounded for reading; write the exact one without it")
	errNoNumber = errors.New("a measure begins with a number, such as 8, 8.5 or 8 1/2")
	errLong     = errors.New("this has more digits than any measure needs; write at most 18")
	errNoDigit  = errors.New("a digit must follow the decimal mark; write 8 or 8.5")
	errThousand = errors.New("the comma could mark thousands or decimals; write a thousand as 1000 and decimals with a point, as 1.0")
	errTwoMarks = errors.New("there are two decimal marks; write thousands without a mark, as 1234.5")
	errStroke   = errors.New("a whole number must stand on both sides of a fraction's stroke, as in 1/2 or 8 1/2")
	errByZero   = errors.New("a fraction cannot have 0 below its stroke; write one such as 1/2")
	errImproper = errors.New("the fraction beside a whole number must be less than 1; write 8 1/2, or 17/2 alone")
	errTwo      = errors.New("a second number follows; write one measure, such as 8 1/2 or 8.5")
)

// amount takes a number from the text, in one of these forms:
//
//	8   8.5   8,5   .5   1/2   8 1/2   8-1/2   ½   8½   8 ½   8-½
func (s *scanner) amount() (amount, error) {
	if f, ok := s.vulgar(); ok {
		return amount{part: f}, nil
	}
	digits := s.digits()
	if mark := s.peek(); s.one(marks) {
		return s.decimal(digits, mark)
	}
	if digits == "" {
		return amount{}, s.noNumber()
	}
	n, err := integer(digits)
	if err != nil {
		return amount{}, err
	}
	if s.one(strokes) {
		f, err := s.below(n)
		return amount{part: f}, err
	}
	f, err := s.beside()
	return amount{n, f}, err
}

// noNumber says what stands where a number should.
func (s *scanner) noNumber() error {
	switch {
	case s.rest == "":
		return errEmpty
	case s.one(minuses):
		return errNegative
	case s.one("≈~"):
		return errRounded
	case s.one(strokes):
		return errStroke
	}
	return errNoNumber
}

// decimal takes what follows a decimal mark.
//
// A comma before exactly three digits may be meant to mark thousands, unless
// nothing but zero comes before it, so it is asked about rather than guessed.
func (s *scanner) decimal(whole string, mark rune) (amount, error) {
	parts := s.digits()
	thousands := mark == ',' && len(parts) == 3 && len(whole) <= 3 && strings.Trim(whole, "0") != ""
	switch {
	case parts == "" && whole == "":
		return amount{}, errNoNumber
	case parts == "":
		return amount{}, errNoDigit
	case s.one(marks):
		return amount{}, errTwoMarks
	case thousands:
		return amount{}, errThousand
	}

	n, err := integer(whole)
	if err != nil {
		return amount{}, err
	}
	parts = strings.TrimRight(parts, "0")
	num, err := integer(parts)
	if err != nil {
		return amount{}, err
	}
	return amount{n, fraction{num, int64(powerOfTen(len(parts)))}}, nil
}

// below takes what stands below a fraction's stroke.
func (s *scanner) below(num int64) (fraction, error) {
	digits := s.digits()
	if digits == "" || s.one(strokes+marks) {
		return fraction{}, errStroke
	}
	den, err := integer(digits)
	switch {
	case err != nil:
		return fraction{}, err
	case den == 0:
		return fraction{}, errByZero
	}
	return fraction{num, den}, nil
}

// beside takes the fraction that may stand beside a whole number: 1/2 after a
// blank or a hyphen, ½ also without. Where there is none it takes nothing.
func (s *scanner) beside() (fraction, error) {
	start := s.rest
	apart := s.one(hyphens) || s.blanks()
	if f, ok := s.vulgar(); ok {
		return f, nil
	}
	if digits := s.digits(); apart && digits != "" && s.one(strokes) {
		num, err := integer(digits)
		if err != nil {
			return fraction{}, err
		}
		f, err := s.below(num)
		if err == nil && f.num >= f.den {
			err = errImproper
		}
		return f, err
	}
	s.rest = start
	return fraction{0, 1}, nil
}

// integer reads a whole number; no digits at all are 0, as before a decimal
// mark. Every number of 18 digits fits an int64.
func integer(digits string) (int64, error) {
	if len(digits) > 18 {
		return 0, errLong
	}
	return strconv.ParseInt("0"+digits, 10, 64)
}
