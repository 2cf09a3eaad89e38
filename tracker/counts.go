package tracker

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"sync"
)

// MostCounted is the largest count that an entry may name. No job comes near
// it: a king-size quilt has a few thousand pieces.
const MostCounted = 1_000_000

// CountAsked is how much was done, as it was typed. Number is in the
// operation's own counts, or in blocks where Blocks is set; Unit is the word that
// was typed with it, which has to be the operation's own, "" for none; All is the
// rest of the lot. Lot is the name of the colourway, fabric or quilt that it is about,
// "" where none was named.
type CountAsked struct {
	Lot    string
	Number int
	Blocks bool
	Unit   string
	All    bool
}

// How a count is written. The last pattern parts what one argument holds for
// several lots, whose names may have blanks in them.
var (
	wholeCount  = compiled(`^([1-9][0-9]*)(?: ([[:alpha:]]+))?$`)
	endOfAnItem = compiled(`=(?:[0-9]+(?: ` + unitWords + `)?|all)( )[^=]+=`)
	bareCount   = compiled(`(?:^|=) ?[0-9]+$`)
	unitWord    = compiled(`^[[:alpha:]]+$`)
)

// unitWords are the words for what is counted that are told from the beginning
// of a name where one argument holds counts for several lots.
const unitWords = `(?:block|fabric|piece|pair|unit|seam|cut|join|row|border|panel|strip|quilt)s?`

// ParseCounts reads the words of a COUNT: "12", "12 pairs", "4 blocks", "all", or for each
// lot such as "tide=12" "dune=8", each of these in one argument or several. No
// words are no counts. What is not a whole number from 1 to MostCounted is
// refused with its text quoted: signs, 0, fractions, leading zeros.
func ParseCounts(args []string) ([]CountAsked, error) { return parseCounts(args, false) }

// ParseFound reads the words of what was found by counting anew: as ParseCounts,
// and 0 too, since nothing may be there.
func ParseFound(args []string) ([]CountAsked, error) { return parseCounts(args, true) }

func parseCounts(args []string, none bool) ([]CountAsked, error) {
	items := countItems(args)
	counts := make([]CountAsked, 0, len(items))
	seen := map[string]bool{}
	for _, item := range items {
		c, err := parseCount(item, none)
		if err != nil {
			return nil, err
		}
		if seen[c.Lot] && c.Lot != "" {
			return nil, fmt.Errorf("%s has two counts: write one for each name", quoted(c.Lot))
		}
		seen[c.Lot] = true
		counts = append(counts, c)
	}
	if len(counts) > 1 && seen[""] {
		return nil, fmt.Errorf("%s is more than one count: write one, or one for each name, such as tide=12 dune=8",
			quoted(strings.Join(items, " ")))
	}
	return counts, nil
}

// countItems is the arguments with one count in each: "4" "blocks" belong
// together and so do "2" "pairs", "tide=12 dune=8" do not.
func countItems(args []string) []string {
	var items []string
	for _, arg := range args {
		arg = strings.Join(strings.Fields(arg), " ")
		if last := len(items) - 1; last >= 0 && arg != "all" && unitWord().MatchString(arg) && bareCount().MatchString(items[last]) {
			items[last] += " " + arg
			continue
		}
		for {
			end := endOfAnItem().FindStringSubmatchIndex(arg)
			if end == nil {
				break
			}
			items = append(items, arg[:end[2]])
			arg = arg[end[3]:]
		}
		items = append(items, arg)
	}
	return items
}

// parseCount reads one count with or without the name of its lot, which ends
// at the last equals sign.
func parseCount(item string, none bool) (CountAsked, error) {
	c := CountAsked{}
	text := item
	if at := strings.LastIndexByte(item, '='); at >= 0 {
		c.Lot, text = strings.TrimSpace(item[:at]), strings.TrimSpace(item[at+1:])
		if c.Lot == "" {
			return c, fmt.Errorf("%s has no name before the equals sign: write it such as tide=12", quoted(item))
		}
	}
	if text == "all" {
		c.All = true
		return c, nil
	}
	parts := wholeCount().FindStringSubmatch(text)
	if none && text == "0" {
		return c, nil
	}
	if parts == nil {
		return c, fmt.Errorf("%s is not a count: write a whole number such as 12, or 4 blocks, or all", quoted(item))
	}
	n, err := strconv.Atoi(parts[1])
	if err != nil || n > MostCounted {
		return c, fmt.Errorf("%s is more than any job has: the most is %d", quoted(item), MostCounted)
	}
	c.Number = n
	switch word := strings.ToLower(parts[2]); word {
	case "block", "blocks":
		c.Blocks = true
	default:
		c.Unit = word
	}
	return c, nil
}

// compiled is a pattern that costs nothing until it is first asked for: most
// commands never read a count.
func compiled(pattern string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(pattern) })
}
