package planner

// Prior is what an earlier plan of the same job has put on the wall: it is
// never renumbered. The zero Prior plans a job for the first time.
type Prior struct {
	Numbers map[string]int // of every operation key ever used, retired ones too
	Blocks  []PriorBlock   // every block id ever given, retired ones too
	Amend   Amendments     // what was changed at the machine and on the floor
}

// PriorBlock is a block id given earlier.
type PriorBlock struct {
	ID        string
	Quilt     int
	Colourway string
	Retired   bool
}
