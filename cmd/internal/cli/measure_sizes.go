package cli

import (
	"strconv"
	"strings"

	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

// mostPieces bounds how many pieces one measure speaks of.
const mostPieces = 10_000

// parseSizes reads what pieces measured: one size or several, parted by a comma
// and a blank, each with its count before `of`. A width alone leaves the height
// at 0.
func parseSizes(text string, u measure.Unit) ([]tracker.MeasuredSize, error) {
	var sizes []tracker.MeasuredSize
	for part := range strings.SplitSeq(text, ", ") {
		one, err := parseSize(strings.TrimSpace(strings.TrimSuffix(part, ",")), u)
		if err != nil {
			return nil, err
		}
		sizes = append(sizes, one)
	}
	return sizes, nil
}

func parseSize(text string, u measure.Unit) (tracker.MeasuredSize, error) {
	one := tracker.MeasuredSize{Count: 1}
	if count, size, found := strings.Cut(text, " of "); found {
		n, err := strconv.Atoi(strings.TrimSpace(count))
		if err != nil || n < 1 || n > mostPieces {
			return one, wrong("%q is not a count of pieces", count).hint("write it like 30 of 6 1/2, 2 of 6 1/4")
		}
		one.Count, text = n, size
	}
	if width, err := measure.Parse(text, u); err == nil {
		one.Size.Width = width
		return one, nil
	}
	size, err := measure.ParseSize(text, u)
	if err != nil {
		return one, asWrong(err)
	}
	one.Size = size
	return one, nil
}

// checkSizes finds what is wrong with sizes in any unit, before a job is looked
// at.
func checkSizes(text string) error {
	_, err := parseSizes(text, measure.Inches)
	return err
}
