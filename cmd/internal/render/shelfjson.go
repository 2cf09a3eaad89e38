package render

import (
	"io"
	"strconv"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
	"quiltrun/tracker/shelf"
)

// jsonItem is one item of the shelf. Amounts are lengths in the item's unit, or
// counts where counted is set.
type jsonItem struct {
	Item     string      `json:"item"`
	Material string      `json:"material"`
	Name     string      `json:"name"`
	Form     string      `json:"form"`
	Unit     string      `json:"unit"`
	Counted  bool        `json:"counted"`
	Width    *number     `json:"width"`  // usable width, or of one sheet
	Height   *number     `json:"height"` // of one sheet, else null
	Assumed  bool        `json:"assumed"`
	DyeLot   *string     `json:"dye_lot"`
	Where    *string     `json:"where"`
	LeftOf   *string     `json:"left_of"` // the job whose leftover it is
	Since    string      `json:"since"`
	Put      number      `json:"put"`
	Found    number      `json:"found"` // by counting anew; below 0: missing
	Used     number      `json:"used"`
	Kept     number      `json:"kept"`
	Free     number      `json:"free"`
	Scrapped number      `json:"scrapped"`
	Taken    number      `json:"taken"`
	KeptFor  []jsonClaim `json:"kept_for"`
	UsedBy   []jsonClaim `json:"used_by"`
}

// jsonClaim is what one job takes of an item.
type jsonClaim struct {
	Job    string  `json:"job"`
	For    *string `json:"for"` // backing, or what a thread sews
	Amount number  `json:"amount"`
}

// jsonStockNeed is what a booked job takes of one thing.
type jsonStockNeed struct {
	Job      string  `json:"job"`
	Material string  `json:"material"`
	Name     *string `json:"name"`
	Form     string  `json:"form"`
	For      *string `json:"for"`
	Unit     string  `json:"unit"`
	Counted  bool    `json:"counted"`
	Left     number  `json:"left"`  // still to be used: kept + own + short
	Kept     number  `json:"kept"`  // on the shelf
	Own      number  `json:"own"`   // of what the job file says is on hand
	Short    number  `json:"short"` // nowhere
	DyeLots  int     `json:"dye_lots"`
}

func stockNumber(a planner.Amount, form planner.Form, u measure.Unit) number {
	if form.Counted() {
		return number(strconv.FormatInt(int64(a), 10))
	}
	return length(measure.Length(a), u)
}

func jsonItemOf(i shelf.Item) jsonItem {
	u := measure.Inches
	if i.Metric {
		u = measure.Centimetres
	}
	n := func(a planner.Amount) number { return stockNumber(a, i.Form, u) }
	claims := func(c shelf.Claim) jsonClaim { return jsonClaim{c.Job, known(c.For), n(c.Amount)} }
	out := jsonItem{
		Item: i.ID, Material: string(i.Material), Name: i.Name, Form: string(i.Form), Unit: u.String(), Counted: i.Form.Counted(),
		Assumed: i.Assumed, DyeLot: known(i.DyeLot), Where: known(i.Place), LeftOf: known(i.Job), Since: planner.DateOf(i.Since).String(),
		Put: n(i.Put), Found: n(i.Found), Used: n(i.Used), Kept: n(i.Kept), Free: n(i.Free), Scrapped: n(i.Scrapped), Taken: n(i.TakenOff),
		KeptFor: list(i.For, claims), UsedBy: list(i.By, claims),
	}
	if i.Width > 0 {
		out.Width = some(length(i.Width, u))
	}
	if i.Height > 0 {
		out.Height = some(length(i.Height, u))
	}
	return out
}

func jsonStockNeedOf(n shelf.Need) jsonStockNeed {
	u := needUnit(n)
	a := func(a planner.Amount) number { return stockNumber(a, n.Form, u) }
	return jsonStockNeed{
		Job: n.Job, Material: string(n.Material), Name: known(n.Name), Form: string(n.Form), For: known(n.StockNeed.For),
		Unit: u.String(), Counted: n.Form.Counted(), Left: a(n.Stock.Left), Kept: a(n.Kept), Own: a(n.FromOwn), Short: a(n.Short), DyeLots: n.Lots,
	}
}

// ShelfJSON shows the shelf for scripts: every item that ever was on it.
func ShelfJSON(w io.Writer, s shelf.Shelf) error {
	return writeJSON(w, struct {
		Schema int             `json:"schema"`
		Items  []jsonItem      `json:"items"`
		Own    []jsonItem      `json:"own"` // what job files say their jobs have
		Needs  []jsonStockNeed `json:"needs"`
		Silent []string        `json:"silent"` // jobs whose booking says nothing of their cloth
	}{schema, list(s.Items, jsonItemOf), list(s.Own, jsonItemOf), list(s.Needs, jsonStockNeedOf), list(s.Silent, func(j string) string { return j })})
}

// ShelvedJSON shows an entry of the shelf and its item as it is now for scripts.
func ShelvedJSON(w io.Writer, s shelf.Shelf, ev tracker.Event, repeated bool) error {
	out := struct {
		Schema   int       `json:"schema"`
		ID       string    `json:"id"`
		Seq      uint64    `json:"seq"`
		Repeated bool      `json:"repeated"`
		Do       string    `json:"do"` // put, recount, scrap, take or undo
		Target   *string   `json:"target"`
		Item     *jsonItem `json:"item"` // null where its putting was taken back
	}{Schema: schema, ID: ev.ID, Seq: ev.Seq, Repeated: repeated, Do: "undo", Target: known(ev.Target)}
	entry, item := enteredItem(s, ev)
	if ev.Kind == tracker.Shelved {
		out.Do = string(entry.Do)
	}
	if item != nil {
		shown := jsonItemOf(*item)
		out.Item = &shown
	}
	return writeJSON(w, out)
}
