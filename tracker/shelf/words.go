package shelf

import (
	"fmt"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/english"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

// leftover is what a job's cutting has left, as if it had been put on the shelf.
func leftover(n *need, l planner.StockLeft, lot string, metric bool) tracker.Shelf {
	return tracker.Shelf{
		Material: planner.ClothMaterial, Name: n.Name, Form: planner.Pieces,
		Width: l.Width, Height: l.Height, DyeLot: lot, Metric: metric,
	}
}

// Words is an amount of the item, such as "1 1/2 yd" or "3 fat quarters".
func (i Item) Words(a planner.Amount) string { return AmountWords(a, i.Form, i.units()) }

// AmountWords is an amount of a form in words. Cloth is told by the yard or metre
// where that is exact, else as it is measured.
func AmountWords(a planner.Amount, form planner.Form, u measure.Unit) string {
	switch {
	case form.Counted():
		return english.Count(int(a), form.One())
	case form == planner.Spool:
		return threadWords(measure.Length(a), u)
	}
	l := measure.Length(a)
	if text := l.ShowYardage(u); !strings.HasPrefix(text, "≈") {
		return text
	}
	return l.Show(u)
}

// threadWords is a length of thread to the whole yard or metre below: thread
// that is not there is not promised.
func threadWords(l measure.Length, u measure.Unit) string {
	if u == measure.Centimetres {
		return fmt.Sprintf("%d m", measure.FloorDiv(l, measure.Metre))
	}
	return fmt.Sprintf("%d yd", measure.FloorDiv(l, measure.Yard))
}

// Called is the item's name and what it is: "Foam, yardage 42 in wide".
func (i Item) Called() string {
	name := i.Name
	if name == "" {
		name = string(i.Material)
	}
	switch {
	case i.Material == planner.ThreadMaterial:
		return name
	case i.Form.Counted():
		return fmt.Sprintf("%s, %s %s", name, i.Form, i.Size().Words(i.units()))
	}
	return fmt.Sprintf("%s, %s %s wide", name, i.Form, i.Width.Show(i.units()))
}
