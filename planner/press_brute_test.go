package planner

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// pressedBlock is a block as it lies: its build, how it is pressed and turned.
type pressedBlock struct {
	build *patchwork.Build
	way   int // number of the way: bit i tells how choice i is taken
	turn  int // quarter turns clockwise
}

func wayOf(n, choices int) patchwork.Way {
	w := make(patchwork.Way, choices)
	for i := range w {
		w[i] = n>>i&1 == 1
	}
	return w
}

// joinCounter counts joins one by one, from the edges of two blocks, and
// remembers what it has looked at.
type joinCounter struct {
	seam  measure.Length
	edges map[pressedBlock]*[4][]patchwork.Crossing
	known [2]map[[2]*[4][]patchwork.Crossing]patchwork.Tally // side by side, one above the other
}

func newJoinCounter(seam measure.Length) *joinCounter {
	j := &joinCounter{seam: seam, edges: map[pressedBlock]*[4][]patchwork.Crossing{}}
	for i := range j.known {
		j.known[i] = map[[2]*[4][]patchwork.Crossing]patchwork.Tally{}
	}
	return j
}

// edgesOf is what crosses the four sides of a block as it lies.
func (j *joinCounter) edgesOf(b pressedBlock) *[4][]patchwork.Crossing {
	edges, ok := j.edges[b]
	if !ok {
		edges = new([4][]patchwork.Crossing)
		for side := range edges {
			edges[side] = patchwork.Crossings(b.build.Block().Turned(b.turn), patchwork.Side(side), j.seam, wayOf(b.way, len(b.build.Choices)))
		}
		j.edges[b] = edges
	}
	return edges
}

// between is the tally of two blocks side by side, or one above the other.
func (j *joinCounter) between(a, b pressedBlock, above bool) patchwork.Tally {
	both := [2]*[4][]patchwork.Crossing{j.edgesOf(a), j.edgesOf(b)}
	known := j.known[boolean(above)]
	t, ok := known[both]
	if !ok {
		one, other := patchwork.RightSide, patchwork.LeftSide
		if above {
			one, other = patchwork.BottomSide, patchwork.TopSide
		}
		t = patchwork.Meet(both[0][one], both[1][other], a.build.Block().Size.Width, j.seam) // blocks are square here
		known[both] = t
	}
	return t
}

// count is the tally of all joins of a grid of blocks.
func (j *joinCounter) count(grid [][]pressedBlock) (columns, rows patchwork.Tally) {
	for r := range grid {
		for c := range grid[r] {
			if c > 0 {
				columns = columns.Plus(j.between(grid[r][c-1], grid[r][c], false))
			}
			if r > 0 {
				rows = rows.Plus(j.between(grid[r-1][c], grid[r][c], true))
			}
		}
	}
	return columns, rows
}

// smallTop is a job whose whole decision space can be tried.
type smallTop struct {
	file string
	same bool // all its blocks look the same after half a turn
	rule bool // pairs are pressed toward the print, which lies on their left
}

func drawSmallTop(t *rapid.T) smallTop {
	across, down := rapid.IntRange(1, 3).Draw(t, "across"), rapid.IntRange(1, 3).Draw(t, "down")
	turn := rapid.SampledFrom([]string{"[[0]]", "[[90]]", "[[0, 90], [90, 0]]", "[[0, 180, 90]]"}).Draw(t, "turn")
	directional := rapid.Bool().Draw(t, "directional")
	rule := rapid.SampledFrom([]string{"best", "print"}).Draw(t, "rule")
	n := across * down
	first := rapid.IntRange(1, max(1, n-1)).Draw(t, "first")
	kind := rapid.SampledFrom([]string{"recut", "nine", "both", "sets"}).Draw(t, "kind")
	if n == 1 && kind == "both" {
		kind = "nine"
	}
	colourways := map[string]string{
		"recut": fmt.Sprintf("tide: {make: four-patch recut, offset: 1 1/4, square: 7 1/4, blocks: %d, print: Heron, ground: Foam}", n),
		"nine":  fmt.Sprintf("tide: {make: nine-patch, square: 5, blocks: %d, corner: Heron, side: Foam, centre: Heron}", n),
		"both": fmt.Sprintf("tide: {make: nine-patch, square: 5, blocks: %d, corner: Heron, side: Foam, centre: Heron}, "+
			"dune: {make: four-patch, square: 7 1/4, blocks: %d, print: Heron, ground: Foam}", first, n-first),
		"sets": fmt.Sprintf("tide: {%s, blocks: %d, red: Heron, white: Foam}", stripSets, n),
	}
	return smallTop{
		file: fmt.Sprintf(`
job: small
fabrics: {Heron: {form: yardage, directional: %t}, Foam: {form: yardage}}
block: {}
colourways: {%s}
layout: {across: %d, down: %d, turn: %s}
press: %s
`, directional, colourways[kind], across, down, turn, rule),
		// Four-patches have as much of the print upside down as upright.
		same: kind == "recut" || !directional,
		rule: rule == "print",
	}
}

// follows reports whether a way keeps to the rule: the choice of pairs is taken
// the first way.
func (s smallTop) follows(b *patchwork.Build, way int) bool {
	for i, c := range b.Choices {
		if s.rule && c.Step == "pairs" && way>>i&1 == 1 {
			return false
		}
	}
	return true
}

// onePool reports whether two ways press alike what is made for the lot: nobody
// knows yet which block a slice of a set goes into.
func onePool(b *patchwork.Build, one, other int) bool {
	for i, c := range b.Choices {
		if (c.Step == "set" || c.Step == "other") && (one^other)>>i&1 == 1 {
			return false
		}
	}
	return true
}

// variants are all pairs of ways of one build, and all ways with half a turn.
func (s smallTop) variants(b *patchwork.Build, pattern Pattern) [][2]pressedBlock {
	var all [][2]pressedBlock
	for one := range 1 << len(b.Choices) {
		if !s.follows(b, one) {
			continue
		}
		first := pressedBlock{build: b, way: one}
		if pattern == AllAlike {
			all = append(all, [2]pressedBlock{first, first})
			continue
		}
		if s.same {
			all = append(all, [2]pressedBlock{first, {build: b, way: one, turn: 2}})
		}
		for other := range 1 << len(b.Choices) {
			if s.follows(b, other) && onePool(b, one, other) {
				all = append(all, [2]pressedBlock{first, {build: b, way: other}})
			}
		}
	}
	return all
}

// fewest is the fewest clashes of a pattern, all pairs of variants of all builds
// tried, every join counted.
func (s smallTop) fewest(job Job, builds []*patchwork.Build, pattern Pattern) int {
	spots := dealtPlaces(&job, frameOf(&job, measure.Size{}))
	counter := newJoinCounter(job.Seam)
	inside := map[*patchwork.Build][]int{}
	for _, b := range builds {
		for way := range 1 << len(b.Choices) {
			inside[b] = append(inside[b], b.BlockTally(wayOf(way, len(b.Choices))).Clash)
		}
	}
	fewest := -1
	grid := make([][]pressedBlock, job.Layout.Down)
	for r := range grid {
		grid[r] = make([]pressedBlock, job.Layout.Across)
	}
	try := func(chosen [][2]pressedBlock) {
		clashes := 0
		for _, p := range spots {
			b := chosen[p.colourway][boolean(pattern.second(p.row, p.column))]
			b.turn = (b.turn + p.turn/90) % 4
			grid[p.row][p.column] = b
			clashes += inside[b.build][b.way]
		}
		columns, rows := counter.count(grid)
		if clashes += columns.Clash + rows.Clash; fewest < 0 || clashes < fewest {
			fewest = clashes
		}
	}
	first := s.variants(builds[0], pattern)
	for _, one := range first {
		if len(builds) == 1 {
			try([][2]pressedBlock{one})
			continue
		}
		for _, other := range s.variants(builds[1], pattern) {
			try([][2]pressedBlock{one, other})
		}
	}
	return fewest
}

// The whole decision space of small tops, every pair of ways in every pattern and
// every half turn, join by join: no way is better than the plan's, pattern by
// pattern.
func TestNoPressingOfASmallTopIsBetterThanThePlan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSmallTop(t)
		job, err := Parse("job.yaml", []byte(s.file))
		require.NoError(t, err)
		p, err := Make(job, Prior{})
		require.NoError(t, err)
		var builds []*patchwork.Build
		for _, c := range p.Colourways {
			builds = append(builds, c.Build)
		}
		best := -1
		for _, c := range p.Press.Patterns {
			fewest := s.fewest(job, builds, c.Pattern)
			require.True(t, c.Exact)
			require.Equal(t, fewest, c.Inside.Clash+c.Between.Clash, "%s\n%s", c.Pattern, s.file)
			if best < 0 || fewest < best {
				best = fewest
			}
		}
		chosen := patternOf(p.Press, p.Press.Chosen)
		require.Equal(t, best, chosen.Inside.Clash+chosen.Between.Clash)
		requireJoinsOfItsBlocks(t, p)
	})
}

// What the plan says of its joins is what its blocks come to, as they are pressed
// and turned in it, wherever two of them share an edge of the top.
func requireJoinsOfItsBlocks(t require.TestingT, p Plan) {
	byName := map[string]ColourwayPlan{}
	for _, c := range p.Colourways {
		byName[c.Name] = c
	}
	lies := func(b Block) pressedBlock {
		c := byName[b.Colourway]
		way := c.Press
		if b.Press == "b" {
			way = c.PressB
		}
		number := 0
		for i, second := range way {
			number |= boolean(second) << i
		}
		return pressedBlock{c.Build, number, b.Turn / 90}
	}
	counter := newJoinCounter(p.Job.Seam)
	met := map[string]patchwork.Tally{}
	var all patchwork.Tally
	for _, m := range meetingBlocks(p) {
		tally := counter.between(lies(m.first), lies(m.second), m.above)
		met[m.join] = met[m.join].Plus(tally)
		all = all.Plus(tally)
	}
	for _, j := range p.Joins {
		switch j.Between {
		case joinColumns, joinRows, joinBorder:
			require.Equal(t, met[j.Between], j.Matches, j.Between)
		case joinOnBorder:
			require.Equal(t, met[j.Between].Plus(p.Press.Top.ring), j.Matches, j.Between)
		}
	}
	require.Equal(t, all, patternOf(p.Press, p.Press.Chosen).Between)
}

// meetingBlock is two blocks of a top that share an edge.
type meetingBlock struct {
	first, second Block
	above         bool
	join          string
}

// meetingBlocks finds them by the outlines of the top's parts.
func meetingBlocks(p Plan) []meetingBlock {
	edges := map[[2]patchwork.Point]TopPart{}
	var found []meetingBlock
	for _, part := range p.Top(1) {
		if part.Kind != BlockPart {
			continue
		}
		for i, a := range part.Corners {
			b := part.Corners[(i+1)%4]
			other, ok := edges[[2]patchwork.Point{b, a}] // its neighbour goes along the edge the other way
			if !ok {
				edges[[2]patchwork.Point{a, b}] = part
				continue
			}
			found = append(found, meetingOf(p, other, part))
		}
	}
	return found
}

func meetingOf(p Plan, first, second TopPart) meetingBlock {
	m := meetingBlock{first: first.Block, second: second.Block, above: first.Block.Row != second.Block.Row, join: joinColumns}
	last := [2]int{1, p.Quilt.Rows} // of the outermost border's rows
	ends := m.above && (first.Block.Row == last[0] || second.Block.Row == last[1])
	switch {
	case first.Border != second.Border || first.Border > 0 && ends:
		m.join = joinOnBorder
	case first.Border > 0:
		m.join = joinBorder
	case m.above:
		m.join = joinRows
	}
	return m
}

func TestTheExamplesJoinsAreThoseOfTheirBlocks(t *testing.T) {
	for name, job := range examples(t) {
		p, err := Make(job, Prior{})
		require.NoError(t, err, name)
		requireJoinsOfItsBlocks(t, p)
	}
}
