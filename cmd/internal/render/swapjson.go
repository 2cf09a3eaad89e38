package render

import (
	"io"

	"quiltrun/planner"
)

type jsonFloorBlock struct {
	ID     string `json:"id"`
	Quilt  int    `json:"quilt"`
	Row    int    `json:"row"`
	Column int    `json:"column"`
	Turn   int    `json:"turn"`
}

// jsonFloorRow is a row as it lies, its blocks in the order of picking up.
type jsonFloorRow struct {
	Quilt  int      `json:"quilt"`
	Name   string   `json:"name"`
	Label  string   `json:"label"`
	Blocks []string `json:"blocks"`
}

type jsonFloorJoin struct {
	Between [2]string   `json:"between"` // left and right, or upper and lower
	Rows    [2]int      `json:"rows"`
	Matches jsonMatches `json:"matches"`
}

type jsonRepress struct {
	Block string `json:"block"`
	Press string `json:"press"`
}

// jsonSwapEffect is null where the job's seams are not to be had.
type jsonSwapEffect struct {
	Before     jsonMatches     `json:"before"`
	After      jsonMatches     `json:"after"`
	Worse      []jsonFloorJoin `json:"worse"`
	PressAgain []jsonRepress   `json:"press_again"`
	Then       jsonMatches     `json:"then"`
	Overturned []string        `json:"overturned"` // blocks that a half turn of their new place shows
}

// SwappedJSON writes an exchange for scripts.
func SwappedJSON(w io.Writer, s SwappedBlocks) error {
	swap := s.Event.Amendment.Swap
	var blocks []jsonFloorBlock
	for _, id := range [...]string{swap.A, swap.B} {
		for _, b := range s.After.Ledger.Blocks {
			if b.ID == id {
				blocks = append(blocks, jsonFloorBlock{b.ID, b.Quilt, b.Row, b.Column, b.Turn})
			}
		}
	}
	return writeJSON(w, struct {
		jsonReceipt
		Blocks  []jsonFloorBlock `json:"blocks"` // as they lie now
		Rows    []jsonFloorRow   `json:"rows"`
		Matches *jsonSwapEffect  `json:"matches"` // over the joins round both places
	}{
		receiptOf(s.After.Ledger.Job, s.Event, s.Repeated), blocks,
		list(s.rows(), func(r floorRow) jsonFloorRow { return jsonFloorRow{r.quilt, r.name, r.label(), r.ids()} }),
		effectOf(s.Effect),
	})
}

func effectOf(e *planner.SwapEffect) *jsonSwapEffect {
	if e == nil {
		return nil
	}
	return &jsonSwapEffect{
		Before: jsonMatches(e.Before), After: jsonMatches(e.After), Then: jsonMatches(e.Left),
		Overturned: list(e.Overturned, same),
		Worse: list(e.Worse, func(j planner.BlockJoin) jsonFloorJoin {
			return jsonFloorJoin{[2]string{j.First, j.Second}, [2]int{j.At.Row, j.To.Row}, jsonMatches(j.Matches)}
		}),
		PressAgain: list(e.Repress, func(r planner.Repress) jsonRepress { return jsonRepress{r.Block, r.Card} }),
	}
}
