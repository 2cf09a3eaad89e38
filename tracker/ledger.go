package tracker

import "quiltrun/planner"

// Ledger is what booking freezes of a plan: whatever a newer program would
// plan, counts and ids stay as they were promised.
type Ledger struct {
	Job        string            `json:"job"`
	Title      string            `json:"title"`
	Client     string            `json:"client,omitempty"`
	Received   planner.Date      `json:"received"`
	Due        planner.Date      `json:"due"`
	Revision   int               `json:"revision"` // from 1
	Quantity   int               `json:"quantity"`
	Fabrics    []string          `json:"fabrics"`    // lots, in file order
	Colourways []string          `json:"colourways"` // lots, in file order
	Operations []Operation       `json:"operations"` // by number, then lot
	Blocks     []Block           `json:"blocks"`
	Retired    map[string]int    `json:"retired,omitempty"` // keys of operations no longer in the route, with their numbers
	Renamed    map[string]string `json:"renamed,omitempty"` // colourway: the name it was booked under

	Cloth []planner.StockNeed `json:"cloth,omitempty"` // cloth, batting and thread; none where an older program booked it
}

// Lot names the like things that go through one operation together.
type Lot struct {
	Kind planner.LotKind `json:"kind"`
	Name string          `json:"name"`
}

// Operation is one row of the frozen route.
type Operation struct {
	Number    int               `json:"number"`
	Key       string            `json:"key"`
	Name      string            `json:"name"`
	Lot       Lot               `json:"lot"`
	CountedIn planner.CountUnit `json:"counted_in"`
	PerBlock  int               `json:"per_block,omitempty"` // 0 outside colourway lots
	Count     int               `json:"count"`
	After     []Ref             `json:"after,omitempty"`
	Place     planner.Place     `json:"place"`
	Setup     planner.Span      `json:"setup"`
	Unit      planner.Span      `json:"unit"`
	Wait      int               `json:"wait_days,omitempty"`
}

// Ref points at one row of the route that comes before another. Takes says how
// many of its counts are used up where the earlier row is a pool, of a fabric's
// cut pieces or of units made for the lot; it is empty elsewhere.
type Ref struct {
	Key   string `json:"key"`
	Lot   Lot    `json:"lot"`
	Takes []Take `json:"takes,omitempty"`
	Makes int    `json:"makes,omitempty"` // counts of the later row that come of one that is taken; 0: in proportion
}

// Take is what one block takes from a pool; without a block, what the whole later
// row takes.
type Take struct {
	Block string `json:"block,omitempty"`
	Count int    `json:"count"`
}

// Block is one block of the run, with the place that it was planned for.
type Block struct {
	ID        string               `json:"id"`
	Quilt     int                  `json:"quilt"` // from 1
	Colourway string               `json:"colourway"`
	Fabrics   []planner.RoleFabric `json:"fabrics"`
	Row       int                  `json:"row"` // from 1
	Column    int                  `json:"column"`
	Turn      int                  `json:"turn"`
	Retired   bool                 `json:"retired,omitempty"`
}
