package shelf

import (
	"fmt"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/measure"
)

// WhyNot says of items that bear a needed fabric's name why what is free of them
// does not serve it: a clause for each, none where nothing of that name is free.
func (s Shelf) WhyNot(n Need) []string {
	var why []string
	for _, i := range s.Items {
		if n.Short == 0 || n.Material != planner.ClothMaterial || i.Material != n.Material || !strings.EqualFold(i.Name, n.Name) || i.Free == 0 || i.Form == planner.Pieces {
			continue
		}
		why = append(why, "item "+i.ID+" "+i.whyNot(n))
	}
	return why
}

func (i Item) whyNot(n Need) string {
	unit := measure.Inches
	if n.Metric {
		unit = measure.Centimetres
	}
	_, serves := i.serves(n.Job, n.StockNeed)
	switch {
	case i.Form != n.Form:
		return fmt.Sprintf("is %s, and %s is wanted", i.Form, n.Form)
	case serves:
		return "is too short for what is to be cut in one"
	case n.Form.Counted():
		return fmt.Sprintf("is %s, and %s is wanted", i.Size().Words(unit), measure.Size{Width: n.Width, Height: n.Height}.Words(unit))
	}
	return fmt.Sprintf("is %s wide, and %s is wanted", i.Width.Show(unit), n.Width.Show(unit))
}
