package render

import (
	"fmt"
	"strconv"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/english"
)

// rowLabel is the width of the row numbers beside a map.
const rowLabel = 5

// board draws the map of one quilt, in strips of as many columns as fit.
func (s *sheet) board(blocks []planner.Block, m layoutMap) {
	if s.onPoint() {
		s.pointBoard(blocks, m)
		return
	}
	across, pitch := s.plan.Quilt.Columns, m.pitch
	places := make([][]string, s.plan.Quilt.Rows)
	for r := range places {
		places[r] = make([]string, across)
	}
	for _, b := range blocks {
		places[b.Row-1][b.Column-1] = s.look.text(m.cell(b))
	}
	strip := s.stripOf(across, m)
	for first := 0; first < across; first += strip {
		s.boardStrip(places, first, min(first+strip, across), pitch)
	}
}

// stripOf is how many columns of a map fit on the page.
func (s *sheet) stripOf(across int, m layoutMap) int {
	if room := s.look.room(rowLabel); room > 0 {
		return max(1, min(across, (room+m.gap)/m.pitch))
	}
	return across
}

// boardStrip draws the columns from first to before end.
func (s *sheet) boardStrip(places [][]string, first, end, pitch int) {
	head := strings.Repeat(" ", rowLabel)
	for c := first; c < end; c++ {
		head += padded(strconv.Itoa(c+1), pitch)
	}
	s.line(faint, head)
	for r, row := range places {
		line := fmt.Sprintf("%4d ", r+1)
		for c := first; c < end; c++ {
			line += padded(row[c], pitch)
		}
		s.line(ordinary, strings.TrimRight(line, " "))
	}
}

func (s *sheet) onPoint() bool { return s.plan.Job.Layout.Setting == planner.OnPoint }

// acrossDown says how the blocks lie.
func (s *sheet) acrossDown() string {
	q := s.plan.Quilt
	text := fmt.Sprintf("%d across and %d down", q.Across, q.Down)
	if s.onPoint() {
		text += fmt.Sprintf(" on point, %d between", (q.Across-1)*(q.Down-1))
	}
	return text
}

// pointBoard draws the map of blocks on point as the quilt hangs: the lines of the
// layout's rows, and between them those that stand half a place further in. Beside
// a line stands the diagonal row that begins at its left block; rows that begin at
// the lower edge have their numbers below.
func (s *sheet) pointBoard(blocks []planner.Block, m layoutMap) {
	across, down := s.plan.Quilt.Across, s.plan.Quilt.Down
	places := make([][]string, 2*down-1)
	for line := range places {
		places[line] = make([]string, across-line%2)
	}
	for _, b := range blocks {
		line, nth := s.plan.Hung(b)
		places[line][nth] = s.look.text(m.cell(b))
	}
	pitch := m.pitch + m.pitch%2
	strip := s.stripOf(across, layoutMap{pitch: pitch, gap: m.gap})
	for first := 0; first < across; first += strip {
		s.pointStrip(places, first, min(first+strip, across), pitch)
	}
}

// pointStrip draws the columns from first to before end.
func (s *sheet) pointStrip(places [][]string, first, end, pitch int) {
	for line, row := range places {
		text := strings.Repeat(" ", rowLabel)
		if line%2 == 0 && first == 0 {
			text = fmt.Sprintf("%4d ", line/2+1)
		}
		text += strings.Repeat(" ", line%2*pitch/2)
		for c := first; c < min(end, len(row)); c++ {
			text += padded(row[c], pitch)
		}
		s.line(ordinary, strings.TrimRight(text, " "))
	}
	foot := strings.Repeat(" ", rowLabel)
	for c := first; c < end; c++ {
		number := ""
		if c > 0 {
			number = strconv.Itoa(s.plan.Quilt.Down + c)
		}
		foot += padded(number, pitch)
	}
	if text := strings.TrimRight(foot, " "); text != "" {
		s.line(faint, text)
	}
}

// settingNotes says what lies between and round the blocks, and how to read the map.
func (s *sheet) settingNotes() {
	l := s.plan.Job.Layout
	if s.onPoint() {
		s.para(1, "The map is the quilt as it hangs. Rows are sewn along the diagonals, up to the right: a number stands where a row begins. A block's top goes to the upper left.")
		s.para(1, fmt.Sprintf("Round them lie the setting triangles, of %s.", l.Triangles))
	}
	if l.Sashing != nil {
		s.para(1, sashingWords(*l.Sashing, l.Sashing.Width.Show(s.plan.Job.Units)))
	}
	for i, b := range s.plan.Job.Borders {
		if len(b.Blocks) > 0 {
			s.para(1, fmt.Sprintf("Border %d is made of blocks; rows and columns are counted over the whole.", i+1))
		}
	}
}

// sashingWords says where the sashing lies.
func sashingWords(sash planner.Sashing, width string) string {
	where := "between the blocks"
	if sash.Edge {
		where = "between the blocks and all round"
	}
	text := fmt.Sprintf("Sashing of %s, %s finished, lies %s", sash.Fabric, width, where)
	if sash.Cornerstones != "" {
		return text + fmt.Sprintf(", with cornerstones of %s.", sash.Cornerstones)
	}
	return text + ": short pieces in the rows, long strips from side to side."
}

// pickups lists the rows with their blocks in the order in which they are picked up.
func (s *sheet) pickups(quilts int) {
	s.para(1, "Pick a row's blocks up from its left end, each under the one before, so that the first lies on top; pin a label to it, such as \"row 3, first at left\":")
	for quilt := 1; quilt <= quilts; quilt++ {
		if quilts > 1 {
			s.para(1, fmt.Sprintf("Rows of quilt %d", quilt))
		}
		all := s.plan.Pickups(quilt)
		widest := 0
		for _, p := range all {
			widest = max(widest, width(p.Name))
		}
		for _, p := range all {
			ids := make([]string, len(p.Blocks))
			for i, b := range p.Blocks {
				ids[i] = b.ID + turnMark(b.Turn)
			}
			s.hang(3, padded(english.Capital(p.Name), widest+2), strings.Join(ids, ", "))
		}
	}
}
