package render

import (
	"fmt"
	"io"

	"quiltrun/tracker"
)

// LeftBlocks writes how far every block is and where it lies in the top, by place.
func LeftBlocks(w io.Writer, states []tracker.State, look Look) error {
	p := &page{look: look}
	if len(states) == 0 {
		p.para(0, "No job is booked.")
	}
	for i, s := range states {
		if i > 0 {
			p.gap()
		}
		p.leftBlocks(s)
	}
	return p.writeTo(w)
}

// leftBlocks is one job's blocks. Those of one place in the work that lie side by
// side are not put together: a maker looks a block up by its id.
func (p *page) leftBlocks(s tracker.State) {
	p.jobHead(s)
	p.fact("Made", factAt, fmt.Sprintf("%d of %s%s", s.FinishedBlocks(tracker.Lot{}), counted(s.Blocks(tracker.Lot{}), "block"), inHand(s)))
	p.gap()
	g := &grid{columns: []column{{title: "Block"}, {title: "In the top"}, {title: "Waits for", flexible: true}, {title: "Made", right: true}}}
	for _, b := range s.BlockStands() {
		g.add(b.ID, placeWords(s, b), waitWords(b), madeWords(b))
	}
	p.records(0, g)
}

// placeWords is where a block lies: "row 2, column 3".
func placeWords(s tracker.State, b tracker.BlockStand) string {
	place := fmt.Sprintf("row%s%d, column%s%d", tied, b.Row, tied, b.Column)
	if s.Ledger.Quantity > 1 {
		place = fmt.Sprintf("quilt%s%d, %s", tied, b.Quilt, place)
	}
	return place
}

// waitWords is the operation that a block waits for.
func waitWords(b tracker.BlockStand) string {
	switch {
	case b.Made:
		return "made"
	case b.Waits == nil:
		return "nothing of its colourway"
	}
	return b.Waits.Title()
}

// madeWords is how much of that operation is made at the block.
func madeWords(b tracker.BlockStand) string {
	if b.Waits == nil {
		return ""
	}
	return fmt.Sprintf("%d of %d", b.Done, b.Waits.PerBlock)
}

// LeftBlocksJSON writes the blocks of one job for scripts.
func LeftBlocksJSON(w io.Writer, s tracker.State) error { return writeJSON(w, blockStandsOf(s)) }

// LeftBlocksAllJSON writes the blocks of every booked job for scripts.
func LeftBlocksAllJSON(w io.Writer, states []tracker.State) error {
	return writeJSON(w, struct {
		Schema int               `json:"schema"`
		Jobs   []jsonBlockStands `json:"jobs"`
	}{schema, list(states, blockStandsOf)})
}

// jsonBlockStands is how far the blocks of one job are.
type jsonBlockStands struct {
	Schema int              `json:"schema"`
	Job    string           `json:"job"`
	Blocks []jsonBlockStand `json:"blocks"`
}

// jsonBlockStand is one block. Waits_for is null of a block that is made.
type jsonBlockStand struct {
	ID        string    `json:"id"`
	Quilt     int       `json:"quilt"`
	Colourway string    `json:"colourway"`
	Row       int       `json:"row"`
	Column    int       `json:"column"`
	Turn      int       `json:"turn"`
	Begun     bool      `json:"begun"`
	Made      bool      `json:"made"`
	WaitsFor  *jsonWait `json:"waits_for"`
}

// jsonWait is an operation with how many of its counts are made at the block.
type jsonWait struct {
	Number    int    `json:"number"`
	Key       string `json:"key"`
	Name      string `json:"name"`
	CountedIn string `json:"counted_in"`
	Count     int    `json:"count"`
	Done      int    `json:"done"`
}

// blockStandsOf is the blocks of a job as scripts read them.
func blockStandsOf(s tracker.State) jsonBlockStands {
	return jsonBlockStands{schema, s.Ledger.Job, list(s.BlockStands(), func(b tracker.BlockStand) jsonBlockStand {
		out := jsonBlockStand{ID: b.ID, Quilt: b.Quilt, Colourway: b.Colourway, Row: b.Row, Column: b.Column, Turn: b.Turn, Begun: b.Begun, Made: b.Made}
		if o := b.Waits; o != nil {
			out.WaitsFor = &jsonWait{o.Number, o.Key, o.Name, string(o.CountedIn), o.PerBlock, b.Done}
		}
		return out
	})}
}
