package planner

import "quiltrun/planner/measure"

// Sewn is what a job measures with one seam all through: a block, and one quilt
// with its borders.
type Sewn struct {
	Seam  measure.Length
	Raw   measure.Size // of a block
	Block measure.Size // finished
	Quilt measure.Size // finished
	Top   measure.Size // raw
}

// sewnWith makes a job's blocks and sizes its top with a seam in place of its
// own; cut sizes stay. The error is Problems: what cannot be made so.
func sewnWith(j Job, seam measure.Length) (Sewn, error) {
	m := &maker{job: j.resewn(seam)}
	m.checkSeam()
	m.colourways()
	if len(m.problems) == 0 {
		m.quilt()
	}
	if len(m.problems) > 0 {
		return Sewn{}, m.problems.sorted()
	}
	c := m.plan.Colourways[0]
	return Sewn{Seam: seam, Raw: c.Raw, Block: c.Finished, Quilt: m.plan.Quilt.Finished, Top: m.plan.Quilt.Top}, nil
}
