package planner

import (
	"fmt"
	"slices"
	"strings"

	"quiltrun/planner/english"
	"quiltrun/planner/measure"
	"quiltrun/planner/thread"
)

// Keys of operations that do not come from a step's name.
const (
	keyPrepare  = "prepare"
	keySeamTest = "seam-test"
	keyTest     = "test"
	keyCut      = "cut" // pieces for blocks
	keyCutBord  = "cut-borders"
	keyCutBind  = "cut-binding"
	keyCutSet   = "cut-setting-triangles"
	keyCutSash  = "cut-sashing"

	keyCutStones = "cut-cornerstones"
	keyKit       = "kit"
	keySquareUp  = "square-up"
)

// firstQuilt is the lot of what is done once for the whole run.
var firstQuilt = Lot{QuiltLot, "quilt-1"}

// readyStages are the stages before any block is sewn: cloth made ready, the
// seam test, and cutting.
func (m *maker) readyStages() []stage {
	var stages []stage
	for _, n := range m.plan.Fabrics {
		if m.used(n) {
			stages = append(stages, m.prepare(n))
		}
	}
	stages = append(stages, m.seamTest())
	for _, c := range cuttings {
		for _, n := range m.plan.Fabrics {
			if count := cutPieces(n, c.purpose); count > 0 {
				stages = append(stages, m.cut(n, c, count))
			}
		}
	}
	return stages
}

// cutting is a cut operation: what it is for, and how it is called. Long strips
// come off first; each purpose is counted by itself, so that a strip for the
// binding is never taken for a patch.
type cutting struct{ purpose, key, name string }

var cuttings = []cutting{
	{forBorder, keyCutBord, "cut border strips"},
	{forBinding, keyCutBind, "cut binding strips"},
	{forTriangles, keyCutSet, "cut setting triangles"},
	{forSashing, keyCutSash, "cut sashing"},
	{forCornerstones, keyCutStones, "cut cornerstones"},
	{forBlocks, keyCut, "cut"},
}

// used reports whether the run takes anything of a fabric.
func (m *maker) used(n FabricNeed) bool {
	return len(n.Pieces) > 0 || m.job.Backing != nil && m.job.Backing.Fabric == n.Fabric.Name
}

func fabricLot(n FabricNeed) Lot { return Lot{FabricLot, n.Fabric.Name} }

func (m *maker) prepare(n FabricNeed) stage {
	f := n.Fabric
	time := span(rateCloth, 1)
	doing := "Press flat and straighten one end."
	switch {
	case f.Form == PreCutSquares || f.Form == PreCutStrips:
		time = span(ratePreCut, 1)
		doing = "Measure a few and count them; do not wash them, they fray and shrink."
	case f.Form.Sheets():
		time = span(rateSheet, float64(n.Sheets))
		doing = "Press flat and measure one of them."
	default:
		time = time.plus(span(rateClothYard, n.Length.In(measure.Inches)/36))
	}
	if m.job.Prewash && f.Form != PreCutSquares && f.Form != PreCutStrips {
		time = time.plus(span(ratePrewash, 1))
		doing = "Wash and dry; then " + strings.ToLower(doing[:1]) + doing[1:]
	}
	return stage{
		key: keyPrepare, name: "prepare the fabric", lot: fabricLot(n), in: inFabrics, count: 1,
		place: Iron, unit: time, doing: doing,
	}
}

// seamTest is the standard first piece, three strips sewn side by side.
func (m *maker) seamTest() stage {
	test := SeamTests(m.job.Units)[0]
	return stage{
		key: keySeamTest, name: "seam test", lot: firstQuilt, in: inUnits, count: 1, place: Machine,
		unit: span(rateSeamTest, 1), seam: test.Long.Times(test.Strips - 1), stitch: thread.Piecing,
		doing: fmt.Sprintf("Sew %s side by side and press. The unit must measure %s across, raw edge to raw edge. Wider: sew a wider seam; narrower: a narrower one.",
			test.Words(m.job.Units), m.show(test.Wide(m.job.Seam))),
	}
}

// cutPieces counts the pieces that have to be cut for a purpose: a pre-cut
// square of the right size needs no cutting.
func cutPieces(n FabricNeed, purpose string) int {
	count := 0
	for _, p := range n.Pieces {
		if p.For == purpose && !readyCut(n.Fabric, p) {
			count += p.Count
		}
	}
	return count
}

// cutRow is the row in which a fabric's pieces for a purpose are cut; what comes as it
// is used waits for the fabric alone.
func (m *maker) cutRow(fabric, key, purpose string) Ref {
	for _, n := range m.plan.Fabrics {
		if n.Fabric.Name == fabric && cutPieces(n, purpose) == 0 {
			key = keyPrepare
		}
	}
	return Ref{Key: key, Lot: Lot{FabricLot, fabric}}
}

// readyCut reports pieces that come as they are used.
func readyCut(f Fabric, p PieceCount) bool {
	preCut := f.Form == PreCutSquares || f.Form == PreCutStrips
	return preCut && (p.Size == f.Size || p.Size == f.Size.Turned())
}

// cut is the cutting of a fabric's pieces for one purpose. All its pieces are cut
// together: each purpose has its share of the ruler cuts, and the blocks' pieces
// have that of the spare ones too.
func (m *maker) cut(n FabricNeed, c cutting, count int) stage {
	in, rulerCuts, purposes := inPieces, 0, []string{c.purpose}
	switch {
	case c.purpose == forBlocks:
		purposes = append(purposes, forSpare)
	case c.purpose == forBorder, c.purpose == forBinding && m.plan.Materials.Binding.Square == 0:
		in = inStrips
	}
	for _, p := range n.Pieces {
		if slices.Contains(purposes, p.For) {
			rulerCuts += p.Cuts
		}
	}
	return stage{
		key: c.key, name: c.name, lot: fabricLot(n), in: in, count: count, place: CuttingTable,
		after: []Ref{{Key: keyPrepare, Lot: fabricLot(n)}},
		setup: span(rateCutSetup, 1), unit: span(rateRulerCut, float64(rulerCuts)/float64(count)), doing: m.cutWords(n, c.purpose, purposes),
	}
}

// cutWords gives the cuts in order, as the fabric's cutting plan has them.
func (m *maker) cutWords(n FabricNeed, purpose string, purposes []string) string {
	earlier := cutBefore(n, purpose)
	if len(earlier) == 0 {
		purposes = append(purposes, forBacking) // no operation of its own cuts it
	}
	lines := FabricCut{n, n.Cutting}.wordsFor(m.job.Units, earlier, purposes)
	text := english.Capital(strings.Join(lines, "; then ")) + "."
	switch {
	case n.Fabric.Directional:
		text += " One layer at a time, the print upright."
	case purpose == forTriangles:
		text += m.triangleWords()
	case purpose == forBlocks || purpose == forSashing || purpose == forCornerstones:
		text += fmt.Sprintf(" Up to %d layers at once.", layers(m.job, n.Fabric))
	case purpose == forBorder:
		text += " Leave them long: they are cut to length when the top has been measured."
	}
	return text
}

// cutBefore are the purposes for which a fabric is cut before another.
func cutBefore(n FabricNeed, purpose string) []string {
	var before []string
	for _, c := range cuttings {
		if c.purpose == purpose {
			break
		}
		if cutPieces(n, c.purpose) > 0 {
			before = append(before, c.purpose)
		}
	}
	if len(before) > 0 {
		before = append(before, forBacking)
	}
	return before
}

// triangleWords says how squares become setting triangles, and how many are over.
func (m *maker) triangleWords() string {
	t, text := m.plan.Triangles, ""
	if t.SideSquares > 0 {
		text = fmt.Sprintf(" Cut the %s of %s twice, corner to corner both ways: %d side triangles, %d over.",
			counted(t.SideSquares, "square"), m.show(t.SideSquare), 4*t.SideSquares, t.Over)
	}
	return text + fmt.Sprintf(" Cut the %s of %s once, corner to corner: %d corner triangles. The straight grain then lies at the quilt's edge. All are a little too large, and the edge is trimmed when the top is joined; lift them flat, their cut sides are on the bias.",
		counted(t.CornerSquares, "square"), m.show(t.CornerSquare), 2*t.CornerSquares)
}

// testStages adds a check of block 01 for each colourway whose measures
// differ from those before it. The check comes after that block is squared up;
// it stands early in the route because it is done before the rest is cut.
func (m *maker) testStages(ready *[]stage, blocks [][]stage) {
	at := slices.IndexFunc(*ready, func(s stage) bool { return s.place == CuttingTable })
	if at < 0 {
		at = len(*ready)
	}
	var tests []stage
	for i, c := range m.plan.Colourways {
		if m.sameRecipeBefore(i) || plain(c.Build) {
			continue
		}
		lot := Lot{ColourwayLot, c.Name}
		tests = append(tests, stage{
			key: keyTest, name: "test block", lot: lot, in: inBlocks, count: 1, place: CuttingTable,
			after: []Ref{{Key: keySquareUp, Lot: lot}}, unit: span(rateTest, 1), doing: m.testWords(c),
		})
	}
	*ready = slices.Insert(*ready, at, tests...)
}

func (m *maker) sameRecipeBefore(i int) bool {
	for _, before := range m.plan.Colourways[:i] {
		if before.Build == m.plan.Colourways[i].Build {
			return true
		}
	}
	return false
}

func (m *maker) testWords(c ColourwayPlan) string {
	first := ""
	if pooled := pooledNames(c.Build); pooled != nil {
		first = fmt.Sprintf("make as much of %s as one block takes, then ", listed(pooled, "and"))
	}
	return fmt.Sprintf("Before the rest is cut, %ssew %s through all its steps, measure it and log this: %s raw, %s finished.",
		first, m.firstBlock(c.Name), m.sized(c.Raw), m.sized(c.Finished))
}

func (m *maker) firstBlock(colourway string) string {
	for _, b := range m.plan.Blocks {
		if b.Colourway == colourway {
			return b.ID
		}
	}
	return colourway
}
