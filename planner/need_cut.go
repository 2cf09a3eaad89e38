package planner

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
)

// need is what the run needs of one fabric, with all its pieces cut together.
// Borders are cut on the grain that buys less.
func (m *maker) need(f Fabric, pieces []PieceCount) FabricNeed {
	across, plans := m.borderPieces(f, Crosswise)
	best := m.cutAll(f, slices.Concat(pieces, across))
	if m.tooLong(f) {
		along, other := m.borderPieces(f, Lengthwise)
		for i, p := range plans {
			p.Considered = other[i].Grain != p.Grain
			plans[i] = p
		}
		if m.widest(along) <= m.stripLength(f) {
			best = m.better(best, m.cutAll(f, slices.Concat(pieces, along)), plans, other)
		}
	}
	for _, p := range plans {
		m.plan.Materials.Borders = append(m.plan.Materials.Borders, p)
	}
	return best
}

func (m *maker) widest(pieces []PieceCount) measure.Length {
	width := measure.Length(0)
	for _, p := range pieces {
		width = max(width, p.Size.Width)
	}
	return width
}

// better is the need of the grain that buys less, takes less, or is crosswise, and
// says in the borders' plans what it saves.
func (m *maker) better(across, along FabricNeed, plans, other map[int]BorderCut) FabricNeed {
	turn := along.LengthBuy < across.LengthBuy || along.LengthBuy == across.LengthBuy && along.Length < across.Length
	saves, best := along.LengthBuy-across.LengthBuy, across
	if turn {
		saves, best = -saves, along
		best.Plain = across.Plain
	}
	for i, p := range plans {
		if !p.Considered {
			continue
		}
		if turn {
			p = other[i]
		}
		p.Considered, p.Saves = true, saves
		plans[i] = p
	}
	return best
}

// cutAll plans the cutting of a fabric's pieces and what that comes to.
func (m *maker) cutAll(f Fabric, pieces []PieceCount) FabricNeed {
	n := FabricNeed{Fabric: f, Pieces: sortedPieces(slices.Clone(pieces))}
	plan, err := m.cutting(n, m.job.Cutting.Style)
	if err != nil {
		m.refuseCut(f, err)
		return n
	}
	n.take(plan)
	n.plain()
	if f.Form.Sheets() {
		n.countSheets()
	} else {
		m.measureLength(&n)
		m.apart(&n)
	}
	return n
}

// take enters a plan.
func (n *FabricNeed) take(plan cloth.Plan) {
	n.Cutting, n.Cuts, n.Strips = plan, plan.Cuts, len(plan.Levels)
	for i := range n.Pieces {
		n.Pieces[i].Cuts = 0
		if i < len(plan.CutsOf) {
			n.Pieces[i].Cuts = plan.CutsOf[i]
		}
	}
}

// cutting plans a fabric's pieces in a style, from what is on hand in pieces and
// from the form in which it is bought. Fabrics that need the same share the plan.
func (m *maker) cutting(n FabricNeed, style cloth.Style) (cloth.Plan, error) {
	s := cutSettings(m.job, n.Fabric, style)
	key := cutKey(n, s)
	if plan, ok := m.cuttings[key]; ok {
		return plan, nil
	}
	plan, err := planCut(n, n.handPieces(), s)
	if err == nil {
		if m.cuttings == nil {
			m.cuttings = map[string]cloth.Plan{}
		}
		m.cuttings[key] = plan
	}
	return plan, err
}

// cutKey is the same for needs that are cut alike.
func cutKey(n FabricNeed, s cloth.Settings) string {
	var b strings.Builder
	add := func(numbers ...int64) {
		for _, k := range numbers {
			b.WriteString(strconv.FormatInt(k, 36))
			b.WriteByte(' ')
		}
	}
	b.WriteString(string(s.Style) + " " + string(n.Fabric.Form) + " " + strconv.FormatBool(n.Fabric.Directional) + " ")
	sheet := n.Fabric.Sheet()
	add(int64(n.Fabric.Across()), int64(sheet.Width), int64(sheet.Height))
	for _, hand := range n.handPieces() {
		add(int64(hand.Size.Width), int64(hand.Size.Height))
	}
	for _, p := range n.Pieces {
		b.WriteString(p.For + strconv.FormatBool(p.Long) + " ")
		add(int64(p.Size.Width), int64(p.Size.Height), int64(p.Count))
	}
	return b.String()
}

// refuseCut reports pieces that no cloth holds.
func (m *maker) refuseCut(f Fabric, err error) {
	path := "fabrics." + f.Name
	var large *cloth.TooLarge
	switch {
	case !errors.As(err, &large):
		m.refuse(path, f.Name+": "+err.Error(), "")
	case f.Form.Sheets():
		m.refuse(path, fmt.Sprintf("a piece of %s cannot be cut from %s, which is %s", large.Want.Size.Show(m.job.Units), f.Name, f.Sheet().Show(m.job.Units)), "")
	default:
		m.refuse(path, fmt.Sprintf("a piece of %s does not fit the usable width of %s, %s", large.Want.Size.Show(m.job.Units), f.Name, m.show(f.Across())), "")
	}
}

// plain works out what pieces take without planning: strips, or sheets, of each
// size of their own, and long pieces side by side.
func (n *FabricNeed) plain() {
	var short []cloth.Pieces
	for _, p := range n.Pieces {
		if p.Long {
			n.Plain += p.Size.Height.Times((p.Count + measure.FloorDiv(n.Fabric.Across(), p.Size.Width) - 1) / measure.FloorDiv(n.Fabric.Across(), p.Size.Width))
			continue
		}
		short = append(short, cloth.Pieces{Size: p.Size, Count: p.Count})
	}
	if n.Fabric.Form.Sheets() {
		if cut, _, ok := cloth.FromSheets(short, n.Fabric.Sheet(), n.Fabric.Directional); ok {
			n.PlainSheets = cut.Sheets
		}
		return
	}
	if cut, _, ok := cloth.FromYardage(short, n.Fabric.Across(), n.Fabric.Directional); ok {
		n.Plain += cut.Length
	}
}

// countSheets counts what comes in sheets.
func (n *FabricNeed) countSheets() {
	hand := 0
	for _, c := range n.Cutting.Cloths {
		if c.Hand {
			hand++
		}
	}
	n.Sheets = n.Cutting.Sheets - hand
	n.SheetBound = max(0, n.Cutting.SheetBound-hand)
	n.SheetBuy = n.Sheets
	if stock := n.Fabric.OnHand; stock != nil {
		n.SheetBuy = max(0, n.Sheets-stock.Sheets)
	}
}

// measureLength measures what comes off a bolt. Where a length on hand does not
// come out even with the cuts, what is lost of it is needed too.
func (m *maker) measureLength(n *FabricNeed) {
	f, step := n.Fabric, m.job.Units.ShopStep()
	n.Length = f.unwashed(n.Cutting.Length)
	n.LengthBound = min(n.Length, f.unwashed(n.Cutting.Bound))
	if f.OnHand == nil || f.OnHand.Length == 0 {
		n.LengthBuy = n.Length.RoundUp(step)
		return
	}
	stock := f.OnHand.Length
	short := n.Cutting.Length - f.washed(stock)
	n.LengthBuy = f.unwashed(max(0, short)).RoundUp(step)
	if short <= 0 {
		return
	}
	if lost := n.Cutting.Lost(f.washed(stock)); f.washed(n.LengthBuy) < short+lost {
		n.Joint = lost
		n.Length = stock + f.unwashed(short+lost)
		n.LengthBuy = (n.Length - stock).RoundUp(step)
	}
}

// apart cuts the length on hand by itself where a plan that goes on from it into what
// is bought loses so much at the joint that it buys more.
func (m *maker) apart(n *FabricNeed) {
	if n.Joint == 0 {
		return
	}
	f, step := n.Fabric, m.job.Units.ShopStep()
	if least := n.Cutting.Bound - f.washed(f.OnHand.Length); f.unwashed(max(0, least)).RoundUp(step) >= n.LengthBuy {
		return // the two together are a plan as well
	}
	hand := append(n.handPieces(), cloth.Sheet{
		Name: cloth.LengthOnHand, Size: measure.Size{Width: f.Across(), Height: f.washed(f.OnHand.Length)}, Count: 1,
	})
	plan, err := planCut(*n, hand, cutSettings(m.job, f, n.Cutting.Style))
	if err != nil {
		return
	}
	length := f.unwashed(plan.Length)
	if buy := length.RoundUp(step); buy < n.LengthBuy {
		n.take(plan)
		n.Joint, n.Length, n.LengthBuy = 0, f.OnHand.Length+length, buy
		n.LengthBound = min(n.LengthBound, n.Length)
	}
}

// saveNested works out what cutting in any order would save of what is bought,
// where the bound leaves room for that.
func (m *maker) saveNested(n *FabricNeed) {
	least := *n
	least.Cutting.Length = n.Cutting.Bound
	least.Cutting.Levels = nil
	if n.Cutting.Style == cloth.Nested || n.Fabric.Form.Sheets() && n.SheetBound == n.Sheets {
		return
	}
	if !n.Fabric.Form.Sheets() {
		if m.measureLength(&least); least.LengthBuy == n.LengthBuy {
			return
		}
	}
	other := FabricNeed{Fabric: n.Fabric, Pieces: slices.Clone(n.Pieces)}
	plan, err := m.cutting(other, cloth.Nested)
	if err != nil {
		return
	}
	other.take(plan)
	saving := NestedSaving{Cuts: plan.Cuts}
	if n.Fabric.Form.Sheets() {
		other.countSheets()
		saving.Sheets = n.SheetBuy - other.SheetBuy
	} else {
		m.measureLength(&other)
		m.apart(&other)
		saving.Length = n.LengthBuy - other.LengthBuy
	}
	if saving.Length > 0 || saving.Sheets > 0 {
		n.Nested = &saving
	}
}
