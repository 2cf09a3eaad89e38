package planner

import (
	"cmp"
	"fmt"
	"slices"

	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// bindingAllowance is the length asked for beyond the edge. Published rules ask
// for 10, 12, 20 or 24 in; 10 in (monicacurryquiltdesign.com) is the least, and
// what is spare is said beside it.
func bindingAllowance(u measure.Unit) measure.Length {
	if u == measure.Centimetres {
		return 25 * measure.Centimetre
	}
	return 10 * measure.Inch
}

// layers is how many layers of cloth are cut at once: four, and one where the
// print has a direction. Common practice, no source.
func layers(f Fabric) int {
	if f.Directional {
		return 1
	}
	return 4
}

// cloth works out what the run needs of every fabric.
func (m *maker) cloth() {
	pieces := m.pieces()
	for _, f := range m.job.Fabrics {
		need := FabricNeed{Fabric: f, Pieces: sortedPieces(pieces[f.Name])}
		path := "fabrics." + f.Name
		if f.Form.Sheets() {
			m.fromSheets(&need, path)
		} else {
			m.fromYardage(&need, path)
		}
		m.plan.Fabrics = append(m.plan.Fabrics, need)
	}
}

// What pieces are cut for.
const (
	forBlocks       = "blocks"
	forBorder       = "border"
	forBinding      = "binding"
	forSashing      = "sashing"
	forCornerstones = "cornerstones"
	forTriangles    = "setting triangles"
)

// pieces is what the run needs of each fabric, in no order yet.
func (m *maker) pieces() map[string][]PieceCount {
	all := map[string][]PieceCount{}
	for i, c := range m.plan.Colourways {
		perBlock := blockPieces(c.Build)
		for _, b := range m.own[i] {
			for _, f := range b.Fabrics {
				for _, p := range perBlock[f.Role] {
					addPieces(all, f.Fabric, p)
				}
			}
		}
		for fabric, pieces := range m.poolsOf(i).pieces(c.Build) {
			for _, p := range pieces {
				addPieces(all, fabric, p)
			}
		}
	}
	for _, p := range slices.Concat(m.borderStrips(), m.sashingPieces(), m.trianglePieces()) {
		addPieces(all, p.fabric, p.PieceCount)
	}
	if b := m.bindingStrips(); b != nil {
		addPieces(all, b.fabric, PieceCount{Size: measure.Size{Width: stripLength(m.fabric(b.fabric)), Height: b.Strip}, Count: b.Strips * m.job.Quantity, For: forBinding})
	}
	return all
}

// blockPieces is what one block takes of cut pieces, by role. What goes into
// pooled steps is counted with those.
func blockPieces(b *patchwork.Build) map[string][]PieceCount {
	perRole := map[string][]PieceCount{}
	for _, s := range b.Steps {
		if s.Pooled && s.Step.Do != patchwork.Cut {
			continue
		}
		for _, cloth := range s.Cloth() {
			if p := forBlock(cloth, s.Copies/s.Yield); p.Count > 0 {
				addPieces(perRole, cloth.Role, p)
			}
		}
	}
	return perRole
}

func addPieces(all map[string][]PieceCount, fabric string, p PieceCount) {
	for i, have := range all[fabric] {
		if have.Size == p.Size && have.For == p.For {
			all[fabric][i].Count += p.Count
			return
		}
	}
	all[fabric] = append(all[fabric], p)
}

// sortedPieces puts the longest first, as they are cut.
func sortedPieces(ps []PieceCount) []PieceCount {
	slices.SortStableFunc(ps, func(a, b PieceCount) int {
		return cmp.Or(cmp.Compare(max(b.Size.Width, b.Size.Height), max(a.Size.Width, a.Size.Height)),
			cmp.Compare(min(b.Size.Width, b.Size.Height), min(a.Size.Width, a.Size.Height)),
			cmp.Compare(a.For, b.For))
	})
	return ps
}

func (m *maker) fabric(name string) Fabric {
	for _, f := range m.job.Fabrics {
		if f.Name == name {
			return f
		}
	}
	return Fabric{Name: name}
}

func clothPieces(ps []PieceCount) []cloth.Pieces {
	out := make([]cloth.Pieces, len(ps))
	for i, p := range ps {
		out[i] = cloth.Pieces{Size: p.Size, Count: p.Count}
	}
	return out
}

func (m *maker) fromYardage(need *FabricNeed, path string) {
	f := need.Fabric
	cut, tooWide, ok := cloth.FromYardage(clothPieces(need.Pieces), f.Width, f.Directional)
	if !ok {
		m.refuse(path, fmt.Sprintf("a piece of %s does not fit the usable width of %s, %s", tooWide.Show(m.job.Units), f.Name, m.show(f.Width)), "")
		return
	}
	for i, g := range cut.Groups {
		c := &need.Pieces[i].Cut
		*c = Cutting{Strips: g.Strips, StripWidth: g.Height, Each: g.PerFull, RulerCuts: g.RulerCuts(layers(f))}
		need.Strips += c.Strips
		need.Cuts += c.RulerCuts
	}
	need.Length, need.LengthBound = cut.Length, cut.Bound
	if back := m.backing(); back != nil && back.Fabric == f.Name {
		need.Length += back.Length.Times(m.job.Quantity)
		need.LengthBound += back.Length.Times(m.job.Quantity)
	}
	if f.OnHand != nil {
		need.LengthBuy = max(0, need.Length-f.OnHand.Length)
	} else {
		need.LengthBuy = need.Length
	}
	need.LengthBuy = need.LengthBuy.RoundUp(m.job.Units.ShopStep())
}

func (m *maker) fromSheets(need *FabricNeed, path string) {
	f := need.Fabric
	cut, tooBig, ok := cloth.FromSheets(clothPieces(need.Pieces), f.Size, f.Directional)
	if !ok {
		m.refuse(path, fmt.Sprintf("a piece of %s cannot be cut from %s, which is %s", tooBig.Show(m.job.Units), f.Name, f.Size.Show(m.job.Units)), "")
		return
	}
	need.Sheets, need.SheetBound, need.SheetBuy = cut.Sheets, cut.Bound, cut.Sheets
	if f.OnHand != nil {
		need.SheetBuy = max(0, cut.Sheets-f.OnHand.Sheets)
	}
	stacks := (cut.Sheets + layers(f) - 1) / layers(f)
	for i, p := range need.Pieces {
		if p.Size == f.Size {
			continue
		}
		across := measure.FloorDiv(f.Size.Width, p.Size.Width)
		c := &need.Pieces[i].Cut
		*c = Cutting{Each: cut.Per[i], RulerCuts: stacks * (across + 1 + cut.Per[i]/max(1, across) + 1)}
		need.Cuts += c.RulerCuts
	}
}

// stripLength is the longest strip that a fabric gives: across the usable
// width of yardage, along the longer side of a sheet. One that has a direction is not
// turned: its strips run across it.
func stripLength(f Fabric) measure.Length {
	if f.Form.Sheets() && f.Directional {
		return f.Size.Width
	}
	if f.Form.Sheets() {
		return max(f.Size.Width, f.Size.Height)
	}
	return f.Width
}
