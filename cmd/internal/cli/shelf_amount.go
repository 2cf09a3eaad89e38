package cli

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"sync"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker/shelf"
)

// stockAmount is an amount as it was typed.
type stockAmount struct {
	form   planner.Form
	amount planner.Amount
	metric bool
}

// mostOnShelf bounds a count of sheets.
const mostOnShelf = 100_000

// The forms that an amount can name, beside lengths.
var countedForms = map[planner.Material][]planner.Form{
	planner.ClothMaterial:   {planner.FatQuarter, planner.FatEighth, planner.PreCutSquares, planner.PreCutStrips, planner.Pieces},
	planner.BattingMaterial: {planner.Package, planner.Pieces},
}

var (
	metricUnit   = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`[0-9] ?(?:mm|cm|m|metres?|meters?)\b`) })
	threadAmount = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`^(?:([0-9]{1,4}) ?[x×] ?)?([0-9]{1,6}) ?(m|yd|yards?|metres?|meters?)$`)
	})
	countAmount = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^([0-9]{1,6}) ([a-z -]+)$`) })
)

// metric reports that a measure is written in metres or centimetres.
func metric(text string) bool { return metricUnit().MatchString(strings.ToLower(text)) }

// parseStock parts a name from an amount: the amount is the longest end of the
// words that is one. A name needs no quotes.
func parseStock(args []string, m planner.Material) (string, stockAmount, error) {
	words := strings.Fields(strings.Join(args, " "))
	for at := 1; at < len(words); at++ {
		if a, ok := parseAmount(strings.Join(words[at:], " "), m); ok {
			return strings.Join(words[:at], " "), a, nil
		}
	}
	f := wrong("%q does not end in an amount", strings.Join(words, " "))
	switch m {
	case planner.ThreadMaterial:
		return "", stockAmount{}, f.hint("write it such as: Ecru 500 m, or Ecru 3 x 500 m")
	case planner.BattingMaterial:
		return "", stockAmount{}, f.hint("write it such as: Cotton 1 package, or Cotton 2 1/2 yd")
	}
	return "", stockAmount{}, f.hint("write it such as: Foam 1 1/2 yd, or Kelp 4 fat quarters")
}

// parseAmount reads an amount of a material, false where the text is none.
func parseAmount(text string, m planner.Material) (stockAmount, bool) {
	if m == planner.ThreadMaterial {
		return parseThread(strings.ToLower(text))
	}
	if parts := countAmount().FindStringSubmatch(strings.ToLower(text)); parts != nil {
		if form, ok := countedForm(parts[2], m); ok {
			n, err := strconv.Atoi(parts[1])
			return stockAmount{form: form, amount: planner.Amount(n)}, err == nil && n <= mostOnShelf
		}
	}
	l, err := measure.ParseNamed(text)
	if err != nil {
		return stockAmount{}, false
	}
	form := planner.Yardage
	if m == planner.BattingMaterial {
		form = planner.Roll
	}
	return stockAmount{form, planner.Amount(l), metric(text)}, true
}

// countedForm finds the form that a word means.
func countedForm(word string, m planner.Material) (planner.Form, bool) {
	word = strings.TrimSuffix(strings.ReplaceAll(word, "precut", "pre-cut"), "s")
	for _, form := range countedForms[m] {
		whole := form.One()
		if word == whole || "pre-cut "+word == whole {
			return form, true
		}
	}
	return "", false
}

// parseThread reads a length of thread, which may be longer than any cloth, or
// several spools of one.
func parseThread(text string) (stockAmount, bool) {
	parts := threadAmount().FindStringSubmatch(text)
	if parts == nil {
		return stockAmount{}, false
	}
	spools, each, unit := 1, 0, measure.Length(measure.Yard)
	if parts[1] != "" {
		spools, _ = strconv.Atoi(parts[1])
	}
	each, _ = strconv.Atoi(parts[2])
	inMetres := strings.HasPrefix(parts[3], "m")
	if inMetres {
		unit = measure.Metre
	}
	if spools*each == 0 || int64(spools)*int64(each) > math.MaxInt64/int64(unit) {
		return stockAmount{}, false
	}
	return stockAmount{planner.Spool, planner.Amount(unit.Times(spools * each)), inMetres}, true
}

// parseOf reads an amount of an item that lies there already: "all", or so much in
// the item's own measure.
func parseOf(i shelf.Item, text string, all planner.Amount) (planner.Amount, error) {
	if strings.EqualFold(text, "all") {
		return all, nil
	}
	if text == "0" {
		return 0, nil
	}
	if i.Form.Counted() {
		number, _, _ := strings.Cut(text, " ")
		n, err := strconv.Atoi(number)
		a, named := parseAmount(text, i.Material)
		if err != nil || n < 0 || n > mostOnShelf || number != text && (!named || a.form != i.Form) {
			return 0, failed("%q is not a count of %s", text, i.Form.Several()).hint("item %s is %s: write how many", i.ID, i.Called())
		}
		return planner.Amount(n), nil
	}
	a, ok := parseAmount(text, i.Material)
	if !ok || a.form != i.Form {
		return 0, failed("%q is not a length with its unit", text).hint("item %s is %s: write it such as 1 1/2 yd, or 40 cm", i.ID, i.Called())
	}
	return a.amount, nil
}
