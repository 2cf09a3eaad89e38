package planner

import (
	"errors"
	"fmt"
	"slices"

	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// Make plans a job. Prior is what an earlier plan of the same job has put on
// the wall; the zero Prior plans it for the first time. The same job and prior
// make the same plan, byte for byte. The error is Problems: what cannot be
// sewn or cut, with the place in the job file that causes it.
func Make(j Job, prior Prior) (Plan, error) {
	m := &maker{job: j.resewn(prior.Amend.Seam), prior: prior}
	m.checkSeam()
	m.colourways()
	if len(m.problems) == 0 {
		m.quilt()
	}
	if len(m.problems) == 0 {
		m.layOut()
		m.cloth()
	}
	if len(m.problems) > 0 {
		return Plan{}, m.problems.sorted()
	}
	m.warnings()
	m.warnPressed()
	m.route()
	if len(m.problems) > 0 {
		return Plan{}, m.problems.sorted()
	}
	for _, o := range m.plan.Operations {
		m.plan.Minutes += o.Minutes()
	}
	m.swap()
	return m.plan, nil
}

// maker gathers a plan and what is wrong with it.
type maker struct {
	job      Job
	prior    Prior
	plan     Plan
	frame    frame
	layout   []place    // of one quilt, in the order of its blocks
	own      [][]*Block // each colourway's blocks, in their order
	pressed  pressedTop
	cuttings map[string]cloth.Plan // by what is cut and how
	problems Problems

	colourwayOf []int // of each block, by its place in plan.Colourways
}

func (m *maker) refuse(path, what, hint string) {
	m.problems = append(m.problems, &Problem{
		File: m.job.File, At: m.job.At.Nearest(path), Path: path, What: what, Hint: hint,
	})
}

func (m *maker) warn(code, path, format string, args ...any) {
	m.plan.Warnings = append(m.plan.Warnings, Warning{Code: code, Path: path, Message: fmt.Sprintf(format, args...)})
}

func (m *maker) show(l measure.Length) string { return l.Show(m.job.Units) }

// sized is a size in the units of the job.
func (m *maker) sized(s measure.Size) string { return s.Words(m.job.Units) }

// colourways makes one block of each colourway. Colourways of the same
// measures share the build: geometry is done once.
func (m *maker) colourways() {
	m.plan.Job = m.job
	m.plan.Colourways = make([]ColourwayPlan, 0, len(m.job.Colourways))
	var all []*made
	for _, c := range m.job.Colourways {
		recipe := m.asCut(recipeFor(c.Block))
		i := slices.IndexFunc(all, func(b *made) bool { return b.recipe.Equal(recipe) })
		if i < 0 {
			i = len(all)
			all = append(all, m.build(c, recipe))
		}
		if b := all[i]; b.build != nil {
			m.plan.Colourways = append(m.plan.Colourways, b.colourway(c, m.job.Seam))
		}
	}
	switch {
	case len(m.problems) > 0:
	case m.job.SeamAsked != 0:
		m.evenUp()
	default:
		m.sameSize()
	}
}

// made is one recipe's build, nil where it cannot be made. How it is pressed
// depends on the top too.
type made struct {
	recipe patchwork.Recipe
	build  *patchwork.Build
}

func (m *maker) build(c Colourway, recipe patchwork.Recipe) *made {
	build, err := m.make(recipe)
	if err != nil {
		var fault *patchwork.Fault
		if !errors.As(err, &fault) {
			fault = &patchwork.Fault{What: err.Error()}
		}
		m.refuseFault(c, fault)
		return &made{recipe: recipe}
	}
	return &made{recipe: recipe, build: build}
}

// make makes a recipe with the job's seam: the file's, for which it was designed,
// or one that was measured.
func (m *maker) make(recipe patchwork.Recipe) (*patchwork.Build, error) {
	if m.job.SeamAsked != 0 {
		return patchwork.Remake(recipe, m.job.Seam, m.job.Units)
	}
	return patchwork.Make(recipe, m.job.Seam, m.job.Units)
}

func (b *made) colourway(c Colourway, seam measure.Length) ColourwayPlan {
	block := b.build.Block()
	return ColourwayPlan{
		Name: c.Name, Blocks: c.Blocks, Recipe: b.recipe, Build: b.build,
		Raw: block.Size, Finished: less(block.Size, 2*seam),
		Areas: block.AreaByRole(seam), SeamLength: b.build.SeamLength(),
	}
}

func less(s measure.Size, by measure.Length) measure.Size {
	return measure.Size{Width: s.Width - by, Height: s.Height - by}
}

// sameSize refuses blocks that would not fit together.
func (m *maker) sameSize() {
	first := m.plan.Colourways[0]
	for _, c := range m.plan.Colourways[1:] {
		if c.Finished == first.Finished {
			continue
		}
		m.refuse("colourways."+c.Name, fmt.Sprintf("blocks of %s finish %s, those of %s finish %s; all blocks of a quilt must finish the same size",
			c.Name, c.Finished.Show(m.job.Units), first.Name, first.Finished.Show(m.job.Units)),
			"an offset does not change a block's size, a square does")
	}
}

// quilt sizes one quilt: blocks and what lies between them, then borders.
func (m *maker) quilt() {
	l := m.job.Layout
	m.frame = frameOf(&m.job, m.plan.Colourways[0].Finished)
	if m.checkSetting(); len(m.problems) > 0 {
		return
	}
	rows, columns := m.frame.grid()
	if m.frame.onPoint() {
		columns = 0
		for row := range rows {
			first, last := l.span(row)
			columns = max(columns, last-first+1)
		}
	}
	m.borderPlans()
	m.plan.Sashing, m.plan.Triangles = m.sashingPlan(), m.trianglesPlan()
	size := m.frame.finished()
	m.plan.Quilt = Quilt{
		Blocks: m.frame.count(), Across: l.Across, Down: l.Down, Rows: rows, Columns: columns,
		Inside: m.frame.inner(), Finished: size, Top: less(size, -2*m.job.Seam),
	}
}

// deal gives every place of the run its block.
func (m *maker) deal() {
	m.layout = m.places()
	m.plan.Blocks = blocksOf(m.job, m.layout, m.prior)
	index := make(map[string]int, len(m.plan.Colourways))
	for i, c := range m.plan.Colourways {
		index[c.Name] = i
	}
	m.own = make([][]*Block, len(m.plan.Colourways))
	for i, c := range m.plan.Colourways {
		m.own[i] = make([]*Block, 0, c.Blocks*m.job.Quantity)
	}
	m.colourwayOf = make([]int, len(m.plan.Blocks))
	for i := range m.plan.Blocks {
		b := &m.plan.Blocks[i]
		c := index[b.Colourway]
		m.colourwayOf[i] = c
		m.own[c] = append(m.own[c], b)
	}
}

// layOut deals the blocks out and finds where they meet.
func (m *maker) layOut() {
	m.checkRenamed()
	m.deal()
	if block := m.plan.Colourways[0].Raw; block.Width != block.Height {
		for _, b := range m.plan.Blocks {
			if b.Turn%180 != 0 {
				m.refuse("layout.turn", fmt.Sprintf("block %s is %s raw and cannot be turned by %d° in its place",
					b.ID, block.Show(m.job.Units), b.Turn), "turn it by half a turn (180), or make square blocks")
				return
			}
		}
	}
	m.press()
}
