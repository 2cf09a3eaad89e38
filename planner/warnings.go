package planner

import (
	"slices"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// Codes of warnings. They may grow.
const (
	warnSmall       = "small-patch"
	warnOffGrid     = "off-the-ruler"
	warnDirectional = "directional-turned"
	warnAssumed     = "assumed-size"
	warnClash       = "clash"
	warnBias        = "bias-edges"
	warnUnused      = "unused-fabric"
	warnTight       = "nothing-spare"
	warnBulk        = "bulk"
	warnLoose       = "loose-allowance"
)

// warnings says what is unwise but can be made.
func (m *maker) warnings() {
	for _, n := range m.plan.Fabrics {
		if !m.used(n) {
			m.warn(warnUnused, "fabrics."+n.Fabric.Name, "%s is described but nothing uses it", n.Fabric.Name)
			continue
		}
		if n.Fabric.Assumed {
			m.warnAssumed(n)
		}
		m.warnTight(n)
	}
	m.warnTriangles()
	m.warnStrips()
	for i, c := range m.plan.Colourways {
		m.warnDirectional(i)
		if !m.sameRecipeBefore(i) {
			m.warnSmall(c)
			m.warnOffGrid(c)
			m.warnBias(c)
			m.warnLoose(c)
		}
	}
}

// straightening is what straightening the ends of a length takes.
// Source: common practice, no source.
const straightening = measure.Inch

// warnTight finds yardage of which less than an inch would be left for
// straightening the ends: what is on hand and bought is exactly what is cut.
func (m *maker) warnTight(n FabricNeed) {
	if n.Fabric.Form.Sheets() {
		return
	}
	have := n.LengthBuy
	if n.Fabric.OnHand != nil {
		have += n.Fabric.OnHand.Length
	}
	if spare := have - n.Length; spare >= 0 && spare < straightening {
		left := "nothing"
		if spare > 0 {
			left = m.show(spare)
		}
		m.warn(warnTight, "fabrics."+n.Fabric.Name, "%s: %s is left to straighten the ends; have %s more cut",
			n.Fabric.Name, left, m.job.Units.ShopStep().ShowYardage(m.job.Units))
	}
}

func (m *maker) warnAssumed(n FabricNeed) {
	f := n.Fabric
	what := "usable width " + m.show(f.Width)
	if f.Form.Sheets() {
		what = "size " + f.Size.Show(m.job.Units)
	}
	m.warn(warnAssumed, "fabrics."+f.Name, "%s: %s is assumed; measure the cloth and say so in the job file", f.Name, what)
}

// warnSmall finds patches that finish under 1/2 in: they are hard to sew well.
func (m *maker) warnSmall(c ColourwayPlan) {
	block := c.Build.Block()
	smallest := measure.Longest
	for _, p := range block.Patches {
		smallest = min(smallest, narrowest(p, block.Size, m.job.Seam))
	}
	if smallest < measure.Inch/2 {
		m.warn(warnSmall, "colourways."+c.Name, "%s: the smallest patch finishes only %s across", c.Name, m.show(smallest))
	}
}

// narrowest is the shorter side of a patch's outline within the finished block.
func narrowest(p patchwork.Patch, size measure.Size, seam measure.Length) measure.Length {
	var xs, ys []measure.Length
	for _, at := range p.Corners {
		xs = append(xs, min(max(at.X, seam), size.Width-seam))
		ys = append(ys, min(max(at.Y, seam), size.Height-seam))
	}
	return min(slices.Max(xs)-slices.Min(xs), slices.Max(ys)-slices.Min(ys))
}

// warnOffGrid finds cut sizes between the ruler's lines: 1/8 in, or 1 mm.
// Source: The Spruce Crafts, conversion chart for quilters (1/8 in steps, avoid
// 1/16); the millimetre is common practice, no source.
func (m *maker) warnOffGrid(c ColourwayPlan) {
	line, name := m.rulerGrid()
	for _, s := range c.Build.Steps {
		var cuts []measure.Length
		switch s.Step.Do {
		case patchwork.Cut:
			cuts = []measure.Length{s.Step.Size.Width, s.Step.Size.Height}
		case patchwork.Recut:
			cuts = slices.Concat(s.Cuts[0], s.Cuts[1])
		case patchwork.HalfSquare, patchwork.QuarterSquare:
			cuts = []measure.Length{s.Square, s.Unit.Size.Width}
		case patchwork.Subcut:
			cuts = []measure.Length{s.Step.Every}
		}
		for _, cut := range cuts {
			if cut%line != 0 {
				m.warn(warnOffGrid, "colourways."+c.Name, "%s: %s at step %q lies between the ruler's %s lines", c.Name, m.show(cut), s.Step.Name, name)
				break
			}
		}
	}
}

// rulerGrid is the distance of the ruler's lines, and what it is called.
func (m *maker) rulerGrid() (line measure.Length, name string) {
	if m.job.Units == measure.Centimetres {
		return measure.Millimetre, "1 mm"
	}
	return measure.Inch / 8, "1/8 in"
}

// warnStrips finds sashing and borders that are cut between the ruler's lines.
func (m *maker) warnStrips() {
	line, name := m.rulerGrid()
	if s := m.plan.Sashing; s != nil && s.Cut%line != 0 {
		m.warn(warnOffGrid, "layout.sashing", "the sashing, cut %s wide, lies between the ruler's %s lines", m.show(s.Cut), name)
	}
	for i, b := range m.plan.Borders {
		if b.Blocks == 0 && b.Cut%line != 0 {
			m.warn(warnOffGrid, borderAt(i), "border %d, cut %s wide, lies between the ruler's %s lines", i+1, m.show(b.Cut), name)
		}
	}
}

// warnBias finds triangles whose outer edges lie on the bias: four at a time, from
// squares cut apart on both diagonals.
func (m *maker) warnBias(c ColourwayPlan) {
	for _, s := range c.Build.Steps {
		if s.Step.Do == patchwork.HalfSquare && s.Step.AtATime == 4 {
			m.warn(warnBias, "colourways."+c.Name, "%s: made four at a time, %s have bias edges on all four sides; starch the squares, and press without pushing",
				c.Name, s.Step.Name)
		}
	}
}

// warnLoose finds recuts that run inside the allowance of an older seam.
func (m *maker) warnLoose(c ColourwayPlan) {
	for _, s := range c.Build.Steps {
		for _, cut := range s.LooseCuts(m.job.Seam) {
			way, edge := "level", "top"
			if cut.Upright {
				way, edge = "upright", "left"
			}
			m.warn(warnLoose, "colourways."+c.Name, "%s: at step %q the %s cut %s from the %s edge lies %s beside a seam, inside its allowance of %s, and leaves that loose; move the cut at least that far from the seam",
				c.Name, s.Step.Name, way, m.show(cut.At), edge, m.show(cut.Off), m.job.SeamShown())
		}
	}
}

// warnDirectional finds one-way prints in a role that the block or the layout
// turns.
func (m *maker) warnDirectional(colourway int) {
	var turned map[string]bool // roles; found out where a fabric has a direction
	var said []string
	for _, role := range m.job.Colourways[colourway].Roles {
		for _, f := range role.Fabrics {
			if slices.Contains(said, f.Fabric) || !m.fabric(f.Fabric).Directional {
				continue
			}
			if turned == nil {
				turned = m.turnedRoles(colourway)
			}
			if turned[role.Role] {
				said = append(said, f.Fabric)
				m.warn(warnDirectional, "fabrics."+f.Fabric, "%s has a direction, and as %s of %s some of it is turned: it will not all stand upright",
					f.Fabric, role.Role, m.job.Colourways[colourway].Name)
			}
		}
	}
}

// warnTriangles finds a one-way print in setting triangles: of four from a square two
// lie sideways and one stands on its head.
func (m *maker) warnTriangles() {
	if f := m.job.Layout.Triangles; m.frame.onPoint() && m.fabric(f).Directional {
		m.warn(warnDirectional, "layout.triangles", "%s has a direction, and of the triangles that a square gives each lies another way: cut more squares and choose, or take another fabric", f)
	}
}

// turnedRoles are the roles of which some patch does not lie in the top as it was
// cut. Of the units that two squares give, half have each triangle the other way up,
// whatever becomes of them.
func (m *maker) turnedRoles(colourway int) map[string]bool {
	turned := map[string]bool{}
	b := m.plan.Colourways[colourway].Build
	for _, p := range b.Block().Patches {
		turned[p.Role] = turned[p.Role] || p.Quarters != 0
	}
	laid := slices.ContainsFunc(m.own[colourway], func(b *Block) bool { return b.Turn%360 != 0 })
	for _, s := range b.Steps {
		if s.Step.Do == patchwork.HalfSquare || s.Step.Do == patchwork.QuarterSquare || laid {
			for _, cloth := range s.Cloth() {
				turned[cloth.Role] = true
			}
		}
	}
	return turned
}
