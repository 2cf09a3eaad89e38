package draw

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/english"
	"quiltrun/planner/measure"
)

// The room for a top on its page: as wide as the ids of its blocks want, between
// two bounds, and at most so many hundredths of that high.
const (
	narrowTop = pageWidth - 2*margin - axisRoom
	wideTop   = 1600 * unit
	topHeight = 140
	axisRoom  = 26 * unit // for the numbers of rows and columns
)

// Top draws one quilt's top, counted from 1, in the colours of its fabrics: its
// blocks turned as they lie, each with its id, and all cloth round them. The error is
// for a quilt that the run does not have, or w's own.
func Top(w io.Writer, p planner.Plan, quilt int) error {
	blocks := blocksIn(p, quilt)
	if len(blocks) == 0 {
		return fmt.Errorf("there is no quilt %d to draw", quilt)
	}
	t := newTop(p, quilt, blocks)
	y := t.head(p.Job.Title, t.facts())
	y = t.paint(y)
	y = t.key(y)
	return t.writeTo(w, p.Job.Title+": "+topName(p, quilt), t.told(), y+margin)
}

// blocksIn is the blocks of one quilt of the run.
func blocksIn(p planner.Plan, quilt int) []planner.Block {
	var blocks []planner.Block
	for _, b := range p.Blocks {
		if b.Quilt == quilt {
			blocks = append(blocks, b)
		}
	}
	return blocks
}

// top is the drawing of one quilt's top.
type top struct {
	*drawing
	quilt   int
	blocks  []planner.Block
	parts   []planner.TopPart
	scale   scale
	size    measure.Size // finished, of one block
	labels  labelling
	letters map[string]string // of fabrics that ids alone do not tell apart
	columns map[string]span   // of the longest id of a colourway, as a terminal counts them
	arts    map[string]string // ids of the blocks' pictures, by what they show
}

// A mark drawn at its full size suits a block about so large.
const fullMarks = 150 * unit

// newTop chooses the page's width and the top's scale.
func newTop(p planner.Plan, quilt int, blocks []planner.Block) *top {
	t := &top{
		quilt: quilt, blocks: blocks, parts: p.Top(quilt), size: p.Colourways[0].Finished,
		letters: fabricLetters(p), arts: map[string]string{}, columns: idColumns(blocks),
	}
	ids, finished := slices.Max(slices.Collect(maps.Values(t.columns))), p.Quilt.Finished
	wanted := scale{wantedLabel * tagPercent(ids) * 108 / 100 / 100, t.size.Width}
	if p.Job.Layout.Setting == planner.OnPoint {
		wanted.width = wanted.width * 5 / 4 // a tag is set into the block's upper corner
	}
	room := min(max(wanted.of(finished.Width), narrowTop), wideTop)
	t.scale = scale{room, finished.Width}.fitted(finished, room, room*topHeight/100)
	width, height := t.scale.of(t.size.Width), t.scale.of(t.size.Height)
	t.drawing = newDrawing(p, fmt.Sprintf("top %d", quilt), room+2*margin+axisRoom, int(min(max(min(width, height)*100/fullMarks, 40), 100)))
	t.labels = newLabelling(ids, width, height, t.onPoint())
	return t
}

func (t *top) onPoint() bool { return t.plan.Job.Layout.Setting == planner.OnPoint }

// topName is what the drawing of a quilt's top shows.
func topName(p planner.Plan, quilt int) string {
	if p.Job.Quantity > 1 {
		return fmt.Sprintf("the top of quilt %d", quilt)
	}
	return "the top"
}

// facts is what there is to know of the top in one line.
func (t *top) facts() string {
	q := t.plan.Quilt
	across := fmt.Sprintf("%d across and %d down", q.Across, q.Down)
	if t.onPoint() {
		across += " on point"
	}
	return fmt.Sprintf("%s · %s, %s · %s finished, flat", english.Capital(topName(t.plan, t.quilt)),
		english.Count(q.Blocks, "block"), across, together(q.Finished.Words(t.plan.Job.Units)))
}

// paint draws the top and returns its bottom.
func (t *top) paint(y span) span {
	width, height := t.scale.of(t.plan.Quilt.Finished.Width), t.scale.of(t.plan.Quilt.Finished.Height)
	c := &t.body
	c.open("g", shifted(margin+axisRoom, y+axisRoom))
	t.cloth(c)
	t.pictures(c)
	t.names(c)
	c.void("rect", at("width", width), at("height", height), is("fill", "none"), is("stroke", ink), is("stroke-width", "1.4"))
	t.axes(c)
	c.shut("g")
	return y + axisRoom + height + panelGap
}

// told is the top in words: its size, then its blocks row by row, then the cloth
// round them.
func (t *top) told() string {
	var out strings.Builder
	out.WriteString(strings.ReplaceAll(t.facts(), tied, " ") + ".")
	if t.onPoint() {
		out.WriteString(" Rows run diagonally, up to the right.")
	}
	for row := 1; row <= t.plan.Quilt.Rows; row++ {
		var said []string
		for _, b := range t.blocks {
			if b.Row != row {
				continue
			}
			text := b.ID
			if b.Turn != 0 {
				text += fmt.Sprintf(" turned %d°", b.Turn)
			}
			said = append(said, text)
		}
		fmt.Fprintf(&out, " Row %d: %s.", row, strings.Join(said, ", "))
	}
	for _, r := range t.roundabout() {
		fmt.Fprintf(&out, " %s: %s.", english.Capital(r.name), r.said())
	}
	return out.String()
}
