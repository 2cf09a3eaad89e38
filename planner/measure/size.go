package measure

import (
	"errors"
	"strings"
)

// Size is the width and height of a rectangle: a sheet, a block, a quilt.
type Size struct{ Width, Height Length }

// Turned returns the size after a quarter turn.
func (s Size) Turned() Size { return Size{s.Height, s.Width} }

// Show returns the size for reading, rounded and marked as a length is:
// "8 1/2 × 9 in", "≈ 21.6 × 22.9 cm".
func (s Size) Show(u Unit) string {
	width, shownWidth := s.Width.near(u)
	height, shownHeight := s.Height.near(u)
	changed := width != s.Width || height != s.Height
	return rounded(changed) + shownWidth + " × " + shownHeight + " " + u.String()
}

// Words returns the size as a quilter says it, rounded as by Show: a square by its
// side, "4 1/2 in square", anything else as "8 1/2 × 9 in".
func (s Size) Words(u Unit) string {
	if s.Width == s.Height {
		return s.Width.Show(u) + " square"
	}
	return s.Show(u)
}

var (
	errSizes = errors.New("a size is a width and a height, such as 18 x 22")
	errMixed = errors.New("the second measure has no unit though the first has; write both, as in 1 yd x 42 in")
)

// ParseSize reads a width and a height, each as Parse takes it, with x, × or by
// between them, or one measure for a square: "18 x 22", "18 × 22 in", "5".
//
// A unit after the last measure holds for both where the first has none. A unit
// after the first alone must be the one that a bare number has anyway, since
// "1 yd x 42" may mean either. The error is a *SyntaxError.
func ParseSize(text string, bare Unit) (Size, error) {
	first, last, err := readSides(text)
	if err != nil {
		return Size{}, &SyntaxError{text, err.Error()}
	}
	if first.named() && !last.named() && first.unit != bare.length() {
		return Size{}, &SyntaxError{text, errMixed.Error()}
	}
	if !first.named() {
		first.unit = last.unit
	}
	width, err := first.checked(text, bare, first.positive(bare))
	if err != nil {
		return Size{}, err
	}
	height, err := last.checked(text, bare, last.positive(bare))
	if err != nil {
		return Size{}, err
	}
	return Size{width, height}, nil
}

// readSides reads the two measures of a size, or one as both.
func readSides(text string) (first, last written, err error) {
	sides := splitSides(text)
	if len(sides) > 2 {
		return first, last, errSizes
	}
	first, err = read(sides[0])
	if err == nil {
		last, err = read(sides[len(sides)-1])
	}
	if errors.Is(err, errEmpty) {
		err = errSizes
	}
	return first, last, err
}

// betweenSides is what people write between two sides. None of it occurs within a
// measure.
var betweenSides = strings.NewReplacer("×", "x", "X", "x", "by", "x", "BY", "x", "By", "x")

func splitSides(text string) []string { return strings.Split(betweenSides.Replace(text), "x") }
