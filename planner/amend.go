package planner

import "quiltrun/planner/measure"

// Amendments are what the making itself has changed about a job, beside its job
// file. The zero value changes nothing.
type Amendments struct {
	Seam  measure.Length `json:"seam,omitempty"`  // as it was measured at the machine; 0: the job file's
	Swaps []Swap         `json:"swaps,omitempty"` // in the order in which they were made
}

// Swap is two blocks that have changed places in the top.
type Swap struct {
	A string `json:"a"` // block ids
	B string `json:"b"`
}
