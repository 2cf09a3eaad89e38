package measure

import (
	"errors"
	"strings"
)

// Parse reads a measure that must be more than 0 and at most Longest, as
// quilters write it; a bare number is in the given unit:
//
//	8  8.5  8,5  1/2  8 1/2  8-1/2  8½  8 ½       the number
//	8"  8″  8”  8 in  8 inches                    its unit, after a blank or not
//	20 cm  205 mm  0.5 m  1 1/4 yd  2 yards
//
// Unit names may be in full, in the plural and in capitals. Blanks may be of
// any width, and the stroke a fraction slash. A value that is not a whole
// number of ticks goes to the nearest tick, a half up.
//
// The error is a *SyntaxError.
func Parse(text string, bare Unit) (Length, error) {
	w, err := read(text)
	if err == nil {
		err = w.positive(bare)
	}
	return w.checked(text, bare, err)
}

// ParseAllowZero reads a measure as Parse does where 0 makes sense too, as an
// allowance that somebody does without.
func ParseAllowZero(text string, bare Unit) (Length, error) {
	w, err := read(text)
	return w.checked(text, bare, err)
}

// ParseNamed reads a measure as Parse does whose unit must be written, because
// a bare number would be a guess: "2 yd", not "2".
func ParseNamed(text string) (Length, error) {
	w, err := read(text)
	if err == nil && !w.named() {
		err = errNoUnit
	}
	if err == nil {
		err = w.positive(Inches)
	}
	return w.checked(text, Inches, err)
}

var (
	errZero   = errors.New("a measure must be more than 0, such as 8 1/2 or 20.5 cm")
	errNoUnit = errors.New("the unit is missing; write it, as in 2 yd, 60 in or 1.5 m")
	errTooBig = errors.New("this is longer than 1000 m; check the number and its unit")
	errFeet   = errors.New("feet are not taken; write inches or yards, such as 12 in")
)

// written is a measure as the text has it; unit is 0 where it names none.
type written struct {
	amount
	unit Length
}

func (w written) named() bool { return w.unit != 0 }

func (w written) length(bare Unit) Length {
	if w.named() {
		return w.of(w.unit)
	}
	return w.of(bare.length())
}

// positive refuses a measure of 0, or of so little that it is no whole tick.
func (w written) positive(bare Unit) error {
	if w.length(bare) == 0 {
		return errZero
	}
	return nil
}

// checked returns the length, or err with the text.
func (w written) checked(text string, bare Unit, err error) (Length, error) {
	if err == nil && w.length(bare) > Longest {
		err = errTooBig
	}
	if err != nil {
		return 0, &SyntaxError{text, err.Error()}
	}
	return w.length(bare), nil
}

// read takes a text apart: blanks, a number, blanks, a unit, blanks.
func read(text string) (written, error) {
	s := scanner{strings.TrimSpace(text)}
	a, err := s.amount()
	if err != nil {
		return written{}, err
	}
	s.blanks()
	if s.rest == "" {
		return written{amount: a}, nil
	}
	unit, ok := unitOf(s.rest)
	if !ok {
		return written{}, s.noUnit()
	}
	return written{a, unit}, nil
}

// noUnit says what stands where a unit should.
func (s *scanner) noUnit() error {
	switch strings.ToLower(s.rest) {
	case "'", "′", "’", "ft", "ft.", "foot", "feet":
		return errFeet
	}
	word := s.rest
	if s.one(strokes) {
		return errStroke
	}
	if s.one(minuses) {
		s.blanks()
	}
	if _, ok := s.vulgar(); ok || isDigit(s.peek()) {
		return errTwo
	}
	return errors.New(quoted(word) + " is not a unit; write in, yd, mm, cm or m, as in 8 1/2 in or 20.5 cm")
}
