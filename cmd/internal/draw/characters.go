package draw

import (
	"strings"

	"github.com/clipperhouse/displaywidth"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// letters are the signs that a block is drawn with.
type letters struct {
	joints  string // by which of the four ways a line goes on: up 1, down 2, left 4, right 8
	slopes  [2]rune
	fills   string // of the roles in order; a role beyond them begins anew
	leaning map[patchwork.Lean]rune
}

var inUnicode = letters{
	joints: " ││││┘┐┤│└┌├─┴┬┼",
	slopes: [2]rune{'╱', '╲'},
	fills:  "▒ ·░+▓:×",
	leaning: map[patchwork.Lean]rune{
		{X: -1}: '←', {X: 1}: '→', {Y: -1}: '↑', {Y: 1}: '↓', {}: '◇',
		{X: -1, Y: -1}: '↖', {X: 1, Y: -1}: '↗', {X: 1, Y: 1}: '↘', {X: -1, Y: 1}: '↙',
	},
}

var inASCII = letters{
	joints: " ||||+++|+++-+++",
	slopes: [2]rune{'/', '\\'},
	fills:  "# .:+%~x",
	leaning: map[patchwork.Lean]rune{
		{X: -1}: '<', {X: 1}: '>', {Y: -1}: '^', {Y: 1}: 'v', {}: 'o',
		{X: -1, Y: -1}: '<', {X: 1, Y: -1}: '>', {X: 1, Y: 1}: '>', {X: -1, Y: 1}: '<',
	},
}

// Characters draws a finished block for a terminal: every role in a sign of its
// own, seams as lines, and on each an arrow the way its allowance lies when the
// block is pressed as w says. No line is longer than width columns; nil where
// the block has not the room. The last lines name the signs of the roles.
// Distances are not to scale where they would leave nothing to see, and seams
// closer than half an allowance are drawn as one.
func Characters(b *patchwork.Build, w patchwork.Way, width int, unicode bool) []string {
	block := b.Block()
	block = patchwork.TrimUnit(block, measure.Size{Width: block.Size.Width - 2*b.Seam, Height: block.Size.Height - 2*b.Seam})
	columns, rows := latticeOf(block, b.Seam, width)
	if columns == nil {
		return nil
	}
	signs := inASCII
	if unicode {
		signs = inUnicode
	}
	t := newTile(columns, rows, signs)
	roles := rolesIn(block)
	t.fill(block, roles)
	t.lines(block)
	t.arrows(block, w)
	return append(t.text(), key(roles, signs, width)...)
}

// rolesIn is a unit's roles, in the order of its patches.
func rolesIn(u patchwork.Unit) []string {
	var roles []string
	known := map[string]bool{}
	for _, p := range u.Patches {
		if !known[p.Role] {
			known[p.Role] = true
			roles = append(roles, p.Role)
		}
	}
	return roles
}

// fillOf is the sign of a role.
func (l letters) fillOf(number int) rune {
	fills := []rune(l.fills)
	return fills[number%len(fills)]
}

// key names the signs of the roles, as many to a line as there is room for.
func key(roles []string, signs letters, width int) []string {
	var lines []string
	line := ""
	for i, role := range roles {
		sign := string(signs.fillOf(i))
		if sign == " " {
			sign = "(blank)"
		}
		entry := parted(sign+" "+role, width)
		if line != "" && displaywidth.String(line)+3+displaywidth.String(entry[0]) <= width {
			line += "   " + entry[0]
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		lines = append(lines, entry[:len(entry)-1]...)
		line = entry[len(entry)-1]
	}
	return append(lines, line)
}

// tile is the characters of a block, and which of them are lines.
type tile struct {
	columns, rows *lattice
	signs         letters
	cells         [][]rune
	joints        [][]uint8
	taken         map[[2]int]bool // by arrows
}

// newTile is a tile of blanks.
func newTile(columns, rows *lattice, signs letters) *tile {
	t := &tile{columns: columns, rows: rows, signs: signs, taken: map[[2]int]bool{}}
	for range rows.size() {
		t.cells = append(t.cells, []rune(strings.Repeat(" ", columns.size())))
		t.joints = append(t.joints, make([]uint8, columns.size()))
	}
	return t
}

// fill gives every character the sign of the role that lies there.
func (t *tile) fill(u patchwork.Unit, roles []string) {
	signs := make(map[string]rune, len(roles))
	for i, role := range roles {
		signs[role] = t.signs.fillOf(i)
	}
	for row := range t.cells {
		for column := range t.cells[row] {
			place := patchwork.Point{X: t.columns.length(column), Y: t.rows.length(row)}
			for _, p := range u.Patches {
				if holds(p.Corners, place) {
					t.cells[row][column] = signs[p.Role]
					break
				}
			}
		}
	}
}

// holds reports whether a point lies in a convex polygon whose corners run
// clockwise. Coordinates are made coarse, so that their products fit.
func holds(corners []patchwork.Point, p patchwork.Point) bool {
	const coarse = 1 << 12
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		if (b.X-a.X)/coarse*((p.Y-a.Y)/coarse) < (b.Y-a.Y)/coarse*((p.X-a.X)/coarse) {
			return false
		}
	}
	return true
}

// The ways in which a line goes on from a character.
const (
	goesUp uint8 = 1 << iota
	goesDown
	goesLeft
	goesRight
)

// lines draws the edge and the seams.
func (t *tile) lines(u patchwork.Unit) {
	lastColumn, lastRow := t.columns.size()-1, t.rows.size()-1
	t.level(0, 0, lastColumn)
	t.level(lastRow, 0, lastColumn)
	t.upright(0, 0, lastRow)
	t.upright(lastColumn, 0, lastRow)
	for _, s := range u.Seams {
		a, b := t.at(s.A), t.at(s.B)
		switch {
		case s.A.Y == s.B.Y:
			t.level(a[1], min(a[0], b[0]), max(a[0], b[0]))
		case s.A.X == s.B.X:
			t.upright(a[0], min(a[1], b[1]), max(a[1], b[1]))
		default:
			t.slope(s)
		}
	}
	joints := []rune(t.signs.joints)
	for row := range t.joints {
		for column, joint := range t.joints[row] {
			if joint != 0 {
				t.cells[row][column] = joints[joint]
			}
		}
	}
}

// at is the column and row of a point.
func (t *tile) at(p patchwork.Point) [2]int { return [2]int{t.columns.place(p.X), t.rows.place(p.Y)} }

// level and upright draw lines between two characters of a row or a column.
func (t *tile) level(row, from, to int) {
	for c := from; c < to; c++ {
		t.joints[row][c] |= goesRight
		t.joints[row][c+1] |= goesLeft
	}
}

func (t *tile) upright(column, from, to int) {
	for r := from; r < to; r++ {
		t.joints[r][column] |= goesDown
		t.joints[r+1][column] |= goesUp
	}
}

// slope draws a diagonal seam between its ends.
func (t *tile) slope(s patchwork.Seam) {
	a, b := s.A, s.B
	if a.Y > b.Y {
		a, b = b, a
	}
	sign := t.signs.slopes[0]
	if b.X > a.X {
		sign = t.signs.slopes[1]
	}
	for row := t.rows.place(a.Y) + 1; row < t.rows.place(b.Y); row++ {
		t.cells[row][t.onSlope(a, b, row)] = sign
	}
}

// onSlope is the column in which a diagonal between two points crosses a row.
func (t *tile) onSlope(a, b patchwork.Point, row int) int {
	x := t.rows.length(row) - a.Y
	if (b.X > a.X) != (b.Y > a.Y) {
		x = -x
	}
	return t.columns.place(a.X + x)
}

// arrows puts an arrow on every seam, in the middle of its longest free stretch
// or as near to it as no other arrow stands.
func (t *tile) arrows(u patchwork.Unit, w patchwork.Way) {
	for _, s := range u.Seams {
		from, to := stretch(u, s)
		a, b := t.at(from), t.at(to)
		const parts = 12
		for _, part := range []int{6, 5, 7, 4, 8, 3, 9, 2, 10} {
			cell := [2]int{a[0] + (b[0]-a[0])*part/parts, a[1] + (b[1]-a[1])*part/parts}
			if from.X != to.X && from.Y != to.Y {
				cell[0] = t.onSlope(from, to, cell[1])
			}
			if t.taken[cell] || cell == a || cell == b {
				continue
			}
			t.taken[cell] = true
			t.cells[cell[1]][cell[0]] = t.signs.leaning[lean(s, w)]
			break
		}
	}
}

func (t *tile) text() []string {
	lines := make([]string, len(t.cells))
	for i, cells := range t.cells {
		lines[i] = string(cells)
	}
	return lines
}
