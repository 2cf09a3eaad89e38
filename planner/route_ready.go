package planner

import (
	"fmt"
	"slices"
	"strings"

	"quiltrun/planner/measure"
	"quiltrun/planner/thread"
)

// Keys of operations that do not come from a step's name.
const (
	keyPrepare  = "prepare"
	keySeamTest = "seam-test"
	keyTest     = "test"
	keyCut      = "cut"
	keyKit      = "kit"
	keySquareUp = "square-up"
)

// firstQuilt is the lot of what is done once for the whole run.
var firstQuilt = Lot{QuiltLot, "quilt-1"}

// readyStages are the stages before any block is sewn: cloth made ready, the
// seam test, and cutting.
func (m *maker) readyStages() []stage {
	var stages []stage
	for _, n := range m.plan.Fabrics {
		stages = append(stages, m.prepare(n))
	}
	stages = append(stages, m.seamTest())
	for _, n := range m.plan.Fabrics {
		if count := cutPieces(n); count > 0 {
			stages = append(stages, m.cut(n, count))
		}
	}
	return stages
}

func fabricLot(n FabricNeed) Lot { return Lot{FabricLot, n.Fabric.Name} }

func (m *maker) prepare(n FabricNeed) stage {
	time := span(rateCloth, 1)
	doing := "Press flat and square one end off the grain."
	if m.job.Prewash {
		time = time.plus(span(ratePrewash, 1))
		doing = "Wash, dry, press flat and square one end off the grain."
	}
	if n.Fabric.Form.Sheets() {
		doing = strings.Replace(doing, "square one end off the grain", "measure one sheet", 1)
	}
	return stage{
		key: keyPrepare, name: "prepare the fabric", lot: fabricLot(n), in: inFabrics, count: 1,
		place: Iron, unit: time, doing: doing,
	}
}

// seamTest is three strips sewn side by side. Source: Quiltcentric, "Testing
// your scant quarter inch seam": three strips 1 1/2 x 5 in make 3 1/2 in.
func (m *maker) seamTest() stage {
	strip, long := measure.Inch*3/2, measure.Inch*5
	if m.job.Units == measure.Centimetres {
		strip, long = measure.Centimetre*4, measure.Centimetre*12
	}
	wide := strip.Times(3) - m.job.Seam.Times(4)
	return stage{
		key: keySeamTest, name: "seam test", lot: firstQuilt, in: inUnits, count: 1, place: Machine,
		unit: span(rateSeamTest, 1), seam: long.Times(2), stitch: thread.Piecing,
		doing: fmt.Sprintf("Sew three strips %s × %s side by side and press. The unit must measure %s across, raw edge to raw edge. Wider: sew a wider seam; narrower: a narrower one.",
			m.show(strip), m.show(long), m.show(wide)),
	}
}

// cutPieces counts the pieces that have to be cut: a pre-cut square of the
// right size needs no cutting.
func cutPieces(n FabricNeed) int {
	count := 0
	for _, p := range n.Pieces {
		if !readyCut(n.Fabric, p) {
			count += p.Count
		}
	}
	return count
}

func readyCut(f Fabric, p PieceCount) bool {
	return f.Form == PreCutSquares && p.Size == f.Size
}

func (m *maker) cut(n FabricNeed, count int) stage {
	cuts := span(rateRulerCut, float64(n.Cuts)/float64(count))
	return stage{
		key: keyCut, name: "cut", lot: fabricLot(n), in: inPieces, count: count, place: CuttingTable,
		after: []Ref{{Key: keyPrepare, Lot: fabricLot(n)}},
		setup: span(rateCutSetup, 1), unit: cuts, doing: m.cutWords(n),
	}
}

func (m *maker) cutWords(n FabricNeed) string {
	var parts []string
	for _, p := range n.Pieces {
		if !readyCut(n.Fabric, p) {
			parts = append(parts, fmt.Sprintf("%d of %s for %s", p.Count, m.sized(p.Size), p.For))
		}
	}
	how := fmt.Sprintf("Longest first, in stacks of %d", layers(n.Fabric))
	if n.Fabric.Directional {
		how = "Longest first, one layer at a time, the print upright"
	}
	return how + ": " + strings.Join(parts, "; ") + "."
}

// testStages adds a check of block 01 for each colourway whose measures
// differ from those before it. The check comes after that block is squared up;
// it stands early in the route because it is done before the rest is cut.
func (m *maker) testStages(ready *[]stage, blocks [][]stage) {
	at := slices.IndexFunc(*ready, func(s stage) bool { return s.key == keyCut })
	if at < 0 {
		at = len(*ready)
	}
	var tests []stage
	for i, c := range m.plan.Colourways {
		if m.sameRecipeBefore(i) {
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
	return fmt.Sprintf("Before the rest is cut, %ssew %s through all its steps, logging them with --block, and measure it: %s raw, %s finished.",
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
