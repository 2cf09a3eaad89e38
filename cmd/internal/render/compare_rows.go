package render

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

// figure is a row about anything but fabrics.
func figure(name string, show func(Compared) string, minus func(base, other Compared) string) compareRow {
	return compareRow{name: name, show: show, minus: minus}
}

// counts is the change of a whole number, lengths that of a length.
func counts(of func(Compared) int) func(base, other Compared) string {
	return func(base, other Compared) string { return moreCount(of(other) - of(base)) }
}

// moreCount is a difference of whole numbers, with the sign that lengths have.
func moreCount(n int) string {
	return strings.Replace(fmt.Sprintf("%+d", n), "-", "−", 1)
}

func lengths(of func(Compared) measure.Length) func(base, other Compared) string {
	return func(base, other Compared) string { return signed(of(other)-of(base), base.Plan.Job.Units) }
}

// compareRows are the figures in the order in which a maker asks for them.
func compareRows(base Compared, others []Compared) []compareRow {
	rows := sizeRows(base)
	rows = append(rows, figure("work", func(c Compared) string { return spell(c.Plan.Minutes) }, func(b, o Compared) string {
		return moreTime(b.Plan.Minutes, o.Plan.Minutes)
	}))
	rows = append(rows, leftRows(base)...)
	rows = append(rows, clothRows(base, others)...)
	return append(rows, layerRows(base)...)
}

// sizeRows are how large the quilt is, and of how many blocks.
func sizeRows(base Compared) []compareRow {
	u := base.Plan.Job.Units
	quilt := func(c Compared) measure.Size { return c.Plan.Quilt.Finished }
	block := func(c Compared) measure.Size { return c.Plan.Colourways[0].Finished }
	blocks := func(c Compared) int { return len(c.Plan.Blocks) }
	rows := []compareRow{
		figure("quilt, flat", func(c Compared) string { return quilt(c).Show(u) }, sizes(quilt)),
		figure("layout", func(c Compared) string { return fmt.Sprintf("%d × %d", c.Plan.Quilt.Across, c.Plan.Quilt.Down) }, noChange),
		figure("blocks", func(c Compared) string { return fmt.Sprint(blocks(c)) }, counts(blocks)),
		figure("block, finished", func(c Compared) string { return block(c).Show(u) }, sizes(block)),
	}
	if len(base.Plan.Colourways) == 1 {
		return rows
	}
	for _, c := range base.Plan.Colourways {
		of := func(o Compared) int { return blocksIn(o.Plan, c.Name) }
		rows = append(rows, figure("blocks of "+c.Name, func(o Compared) string { return fmt.Sprint(of(o)) }, counts(of)))
	}
	return rows
}

// sizes is the change of a size.
func sizes(of func(Compared) measure.Size) func(base, other Compared) string {
	return func(base, other Compared) string {
		return signedSize(of(base), of(other), base.Plan.Job.Units)
	}
}

func noChange(_, _ Compared) string { return "" }

// moreTime is the difference of two times as they are shown, to the minute.
func moreTime(was, is planner.Minutes) string {
	more := math.Round(float64(is)) - math.Round(float64(was))
	if more < 0 {
		return "−" + spell(planner.Minutes(-more))
	}
	return "+" + spell(planner.Minutes(more))
}

// blocksIn is how many blocks of a colourway the run has.
func blocksIn(plan planner.Plan, colourway string) int {
	n := 0
	for _, b := range plan.Blocks {
		if b.Colourway == colourway {
			n++
		}
	}
	return n
}

// leftRows are what would be left of a booked job on which work is logged.
func leftRows(base Compared) []compareRow {
	if base.Left == nil || !slices.ContainsFunc(base.Left.Rows(), func(r tracker.Row) bool { return r.Done > 0 }) {
		return nil
	}
	blocks := func(c Compared) int { return c.Left.Blocks(tracker.Lot{}) - c.Left.FinishedBlocks(tracker.Lot{}) }
	spare := func(c Compared) int { return spareBlocks(*c.Left) }
	return []compareRow{
		figure("blocks left", func(c Compared) string { return fmt.Sprint(blocks(c)) }, counts(blocks)),
		figure("blocks over", func(c Compared) string { return fmt.Sprint(spare(c)) }, counts(spare)),
		figure("work left", func(c Compared) string { return spell(remainingMinutes(*c.Left)) }, func(b, o Compared) string {
			return moreTime(remainingMinutes(*b.Left), remainingMinutes(*o.Left))
		}),
	}
}

// spareBlocks is how many blocks are squared up beyond those that the job has.
func spareBlocks(s tracker.State) int {
	n := 0
	for _, row := range s.Rows() {
		if row.Key == "square-up" {
			n += row.Spare
		}
	}
	return n
}

// clothRows are what each fabric needs, and what is to be bought of it. Fabrics
// with the same figures in every plan share a row.
func clothRows(base Compared, others []Compared) []compareRow {
	u := base.Plan.Job.Units
	fabrics := base.Plan.Fabrics
	var rows []compareRow
	for _, f := range []struct {
		what string
		of   func(planner.FabricNeed) (measure.Length, int)
	}{
		{"need", func(n planner.FabricNeed) (measure.Length, int) { return n.Length, n.Sheets }},
		{"buy", func(n planner.FabricNeed) (measure.Length, int) { return n.LengthBuy, n.SheetBuy }},
	} {
		cell := func(c Compared, name string) string { return amountWords(needIn(c.Plan, name), f.of, u) }
		alike := grouped(len(fabrics), func(i int) string {
			key := cell(base, fabrics[i].Fabric.Name)
			for _, o := range others {
				key += "|" + cell(o, fabrics[i].Fabric.Name)
			}
			return key
		})
		for _, group := range alike {
			name := fabrics[group[0]].Fabric.Name
			label := f.what + ", " + enumerate(picked(group, func(i int) string { return fabrics[i].Fabric.Name }))
			if len(group) > 1 {
				label += ", each"
			}
			rows = append(rows, compareRow{name: label, fabric: true, show: func(c Compared) string { return cell(c, name) }, minus: func(b, o Compared) string {
				wasLength, wasSheets := f.of(needIn(b.Plan, name))
				length, sheets := f.of(needIn(o.Plan, name))
				if length == wasLength {
					return moreCount(sheets - wasSheets)
				}
				return soldMore(wasLength, length, u)
			}})
		}
	}
	return rows
}

func needIn(plan planner.Plan, fabric string) planner.FabricNeed {
	for _, n := range plan.Fabrics {
		if n.Fabric.Name == fabric {
			return n
		}
	}
	return planner.FabricNeed{}
}

// amountWords is a length of yardage, or a number of sheets.
func amountWords(n planner.FabricNeed, of func(planner.FabricNeed) (measure.Length, int), u measure.Unit) string {
	length, sheets := of(n)
	if n.Fabric.Form.Sheets() {
		return fmt.Sprint(sheets)
	}
	if length == 0 {
		return "none"
	}
	return sold(length, u)
}

// soldMore is by how much a length of cloth differs from another, each as shops
// sell it: what the two figures beside it differ by.
func soldMore(was, is measure.Length, u measure.Unit) string {
	step := u.ShopStep()
	if less := was.RoundUp(step) - is.RoundUp(step); less > 0 {
		return "−" + less.ShowYardage(u)
	}
	return "+" + (is.RoundUp(step) - was.RoundUp(step)).ShowYardage(u)
}

// layerRows are what goes behind and round a quilt, and thread.
func layerRows(base Compared) []compareRow {
	u := base.Plan.Job.Units
	m := base.Plan.Materials
	var rows []compareRow
	if m.Backing != nil {
		length := func(c Compared) measure.Length { return c.Plan.Materials.Backing.Length }
		rows = append(rows,
			figure("backing", func(c Compared) string { return c.Plan.Materials.Backing.Size.Show(u) },
				sizes(func(c Compared) measure.Size { return c.Plan.Materials.Backing.Size })),
			figure("backing off the bolt", func(c Compared) string { return sold(length(c), u) },
				func(b, o Compared) string { return soldMore(length(b), length(o), u) }))
	}
	if m.Batting != nil {
		rows = append(rows, figure("batting", func(c Compared) string { return c.Plan.Materials.Batting.Choice }, noChange))
	}
	if m.Binding != nil {
		edge := func(c Compared) measure.Length { return edgeOf(c.Plan) }
		strips := func(c Compared) int { return c.Plan.Materials.Binding.Strips }
		rows = append(rows,
			figure("edge to bind", func(c Compared) string { return edge(c).Show(u) }, lengths(edge)),
			figure("binding strips", func(c Compared) string { return fmt.Sprint(strips(c)) }, counts(strips)))
	}
	return append(rows, threadRows(u)...)
}

// threadRows are the run's thread.
func threadRows(u measure.Unit) []compareRow {
	thread := func(c Compared) measure.Length { return c.Plan.Materials.Thread.Total }
	bobbins := func(c Compared) int { return c.Plan.Materials.Thread.Bobbins }
	return []compareRow{
		figure("thread", func(c Compared) string { return spool(thread(c), u) }, func(b, o Compared) string {
			if less := thread(b) - thread(o); less > 0 {
				return "−" + spool(less, u)
			}
			return "+" + spool(thread(o)-thread(b), u)
		}),
		figure("bobbins", func(c Compared) string { return fmt.Sprint(bobbins(c)) }, counts(bobbins)),
	}
}

// edgeOf is the length round one quilt.
func edgeOf(plan planner.Plan) measure.Length {
	s := plan.Quilt.Finished
	return 2 * (s.Width + s.Height)
}
