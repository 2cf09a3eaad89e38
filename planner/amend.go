package planner

import (
	"fmt"
	"slices"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

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

// resewn is the job as it comes out with a measured seam. Cut sizes stay and
// finished sizes follow: whatever the cutting list says is cut as the job file
// has it, so that cloth that is cut already is right, and a border's strip that
// was planned 3 in finished finishes wider where the seam takes less. Trims
// stay what they are. What is cut to a measure taken at the table, such as the
// length of sashing or of a border, follows. 0, or the job's own seam, changes nothing; a second seam
// goes on from the first.
func (j Job) resewn(seam measure.Length) Job {
	if seam == 0 || seam == j.Seam {
		return j
	}
	wider := 2 * (j.Seam - seam)
	if j.SeamAsked == 0 {
		j.SeamAsked = j.Seam
	}
	if j.Seam = seam; j.SeamAsked == seam {
		j.SeamAsked = 0
	}
	j.Borders = slices.Clone(j.Borders)
	for i, b := range j.Borders {
		if !b.ofBlocks() {
			j.Borders[i].Width += wider
		}
	}
	if j.Layout.Sashing != nil {
		sashing := *j.Layout.Sashing
		sashing.Width += wider
		j.Layout.Sashing = &sashing
	}
	return j
}

// checkSeam refuses a measured seam that leaves nothing of a border or of the sashing. What it
// does to the blocks their geometry finds.
func (m *maker) checkSeam() {
	if m.job.SeamAsked == 0 {
		return
	}
	for i, b := range m.job.Borders {
		if b.Width <= 0 && !b.ofBlocks() {
			m.refuse(fmt.Sprintf("borders[%d]", i), "with a seam of "+m.job.SeamShown()+" nothing is left of the border", "give it a wider strip")
		}
	}
	if s := m.job.Layout.Sashing; s != nil && s.Width <= 0 {
		m.refuse("layout.sashing", "with a seam of "+m.job.SeamShown()+" nothing is left of the sashing", "cut it wider")
	}
}

// evenUp trims the blocks of all colourways to the smallest, as it is done at the
// table: with another seam than the file's, a pieced block comes out of another
// size than the plain square beside it.
func (m *maker) evenUp() {
	size := m.plan.Colourways[0].Raw
	for _, c := range m.plan.Colourways[1:] {
		size.Width, size.Height = min(size.Width, c.Raw.Width), min(size.Height, c.Raw.Height)
	}
	trimmed := map[*patchwork.Build]*patchwork.Build{}
	for i := range m.plan.Colourways {
		c := &m.plan.Colourways[i]
		if c.Raw == size {
			continue
		}
		if trimmed[c.Build] == nil {
			trimmed[c.Build] = trimmedBuild(c.Build, size)
		}
		c.Build = trimmed[c.Build]
		c.Raw, c.Finished = size, less(size, 2*m.job.Seam)
		c.Areas = c.Build.Block().AreaByRole(m.job.Seam)
	}
}

// trimmedBuild is a build whose block is trimmed when it is squared up.
func trimmedBuild(b *patchwork.Build, size measure.Size) *patchwork.Build {
	cut := *b
	cut.Steps = slices.Clone(b.Steps)
	last := &cut.Steps[len(cut.Steps)-1]
	last.Unit = patchwork.TrimUnit(last.Unit, size)
	return &cut
}

// asCut is a recipe whose triangles are cut from the squares that the job
// file's own seam asks for: another seam at the machine cuts no square anew.
func (m *maker) asCut(recipe patchwork.Recipe) patchwork.Recipe {
	if m.job.SeamAsked == 0 {
		return recipe
	}
	build, err := patchwork.Make(recipe, m.job.SeamAsked, m.job.Units)
	if err != nil { // it cannot be made as planned either, and Make says why
		return recipe
	}
	return pinned(recipe, build)
}

// pinned is a recipe with its squares for triangles as a build has cut them.
func pinned(recipe patchwork.Recipe, build *patchwork.Build) patchwork.Recipe {
	recipe.Steps = slices.Clone(recipe.Steps)
	for i, made := range build.Steps {
		if made.Square != 0 {
			recipe.Steps[i].Size = squareSize(made.Square)
		}
	}
	return recipe
}

// squareSize is the size of a square.
func squareSize(side measure.Length) measure.Size { return measure.Size{Width: side, Height: side} }
