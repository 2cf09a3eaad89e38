package tick

import (
	"fmt"
	"math"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/planner/thread"
	"quiltrun/tracker"
)

// byPlan marks what is the table's figure and nobody's own.
const byPlan = "by the plan"

// perCount is the minutes of one count: by the ticks of this sitting, else the
// plan's, and then own is false.
func (s *Screen) perCount(row tracker.Row) (each planner.Minutes, own bool) {
	if each, counts := s.pace(); counts > 0 {
		return each, true
	}
	return row.Unit.Mean, false
}

// pace is that of the row on the screen, by the gap that the job's log goes by.
func (s *Screen) pace() (each planner.Minutes, counts int) {
	gap, _ := s.state.Limits()
	row, ok := s.row()
	if !ok {
		return 0, 0
	}
	return s.marks.pace(row.Operation, gap)
}

// paceWords is how fast the chain goes: "54 pairs an hour, 1.1 min each".
func (s *Screen) paceWords(row tracker.Row) string {
	each, own := s.perCount(row)
	words := rate(each, row.CountedIn)
	switch {
	case own:
		_, counts := s.pace()
		return fmt.Sprintf("%s (%d timed in this sitting)", words, counts)
	case words == "":
		return "no pace yet"
	}
	return "no pace yet; " + words + " " + byPlan
}

// rate is a pace both ways round, "" for none.
func rate(each planner.Minutes, one planner.CountUnit) string {
	if each <= 0 {
		return ""
	}
	hour := float64(60 / each)
	if hour < 1 {
		return render.Spell(each) + " each"
	}
	return fmt.Sprintf("%s an hour, %s each", render.Counted(int(math.Round(hour)), one), shortTime(each))
}

// shortTime is a time of a few minutes to its tenth, or its seconds.
func shortTime(m planner.Minutes) string {
	switch {
	case m < 1:
		return fmt.Sprintf("%d s", max(1, int(math.Round(float64(m*60)))))
	case m < 10:
		return fmt.Sprintf("%.1f min", m)
	}
	return render.Spell(m)
}

// restWords is when the chain will be through, "" where it is.
func (s *Screen) restWords(row tracker.Row) string {
	if row.Left() == 0 {
		return ""
	}
	each, own := s.perCount(row)
	rest := planner.Minutes(row.Left()) * each
	if own {
		return "about " + render.Spell(rest) + " at this pace"
	}
	if row.Done == 0 {
		rest += row.Setup.Mean
	}
	return "about " + render.Spell(rest) + " " + byPlan
}

// bobbinWords is how far the bobbin lasts, "" where nothing is sewn.
func (s *Screen) bobbinWords(row tracker.Row) string {
	each := s.guide.rows[s.at].below
	if each <= 0 {
		return ""
	}
	parts, known := s.state.SinceBobbin()
	if !known {
		return fmt.Sprintf("press b when a full one goes in; it sews about %s, %s", render.Counted(int(thread.BobbinHolds/each), row.CountedIn), byPlan)
	}
	rest := thread.BobbinHolds
	for _, p := range parts {
		rest -= s.guide.rows[place{p.Operation, p.Lot}].below * measure.Length(p.Count)
	}
	n := int(rest / each)
	if n <= 0 {
		return "should be empty by now, " + byPlan
	}
	pace, _ := s.perCount(row)
	return fmt.Sprintf("lasts for about %s, %s, %s", render.Counted(n, row.CountedIn), render.Spell(planner.Minutes(n)*pace), byPlan)
}
