package render

import (
	"fmt"
	"io"
	"math"

	"quiltrun/planner"
	"quiltrun/tracker"
	"quiltrun/tracker/forecast"
)

// weeksShown is how far ahead the working hours are shown.
const weeksShown = 53

// Hours writes the working hours of the weeks ahead; weeks alike share a row.
func Hours(w io.Writer, today planner.Date, c forecast.Calendar, look Look) error {
	p := &page{look: look}
	p.prose(strong, 0, "", "Working hours, hours:minutes a day")
	p.rule()
	g := &grid{columns: []column{{title: "Weeks from"}, {title: "Mon", right: true}, {title: "Tue", right: true},
		{title: "Wed", right: true}, {title: "Thu", right: true}, {title: "Fri", right: true},
		{title: "Sat", right: true}, {title: "Sun", right: true}, {title: "A week", right: true}}}
	for _, s := range stretches(today, c) {
		cells := []string{s.from.String()}
		for _, m := range s.week {
			cells = append(cells, clockTime(m))
		}
		g.add(append(cells, clockTime(s.total()))...)
	}
	if err := p.table(g); err != nil {
		return err
	}
	return p.writeTo(w)
}

// clockTime is a working time as hours and minutes, a dash for none.
func clockTime(m planner.Minutes) string {
	whole := int(math.Round(float64(m)))
	if whole == 0 {
		return "–"
	}
	return fmt.Sprintf("%d:%02d", whole/60, whole%60)
}

// weekStretch is weeks on end with the same hours, from a Monday to a Sunday.
type weekStretch struct {
	from, to planner.Date
	week     [7]planner.Minutes // Monday first
}

func (s weekStretch) total() planner.Minutes {
	var sum planner.Minutes
	for _, m := range s.week {
		sum += m
	}
	return sum
}

// stretches are the weeks ahead, this one first.
func stretches(today planner.Date, c forecast.Calendar) []weekStretch {
	var out []weekStretch
	monday := today.AddDays(-(int(today.Weekday()) + 6) % 7)
	for i := range weeksShown {
		s := weekStretch{from: monday.AddDays(7 * i), to: monday.AddDays(7*i + 6)}
		for d := range s.week {
			s.week[d] = c.On(s.from.AddDays(d))
		}
		if n := len(out); n > 0 && out[n-1].week == s.week {
			out[n-1].to = s.to
			continue
		}
		out = append(out, s)
	}
	return out
}

// jsonHours are the weeks ahead, this one first; weeks alike are one item.
type jsonHours struct {
	AsOf  string     `json:"as_of"`
	Weeks []jsonWeek `json:"weeks"`
}

// jsonWeek is one or more weeks on end with the same hours.
type jsonWeek struct {
	From    string    `json:"from"` // a Monday
	To      string    `json:"to"`   // a Sunday
	Days    []jsonDay `json:"days"` // Monday first
	Minutes number    `json:"minutes"`
}

// jsonDay is the working time on a day of such a week.
type jsonDay struct {
	Day     string `json:"day"`
	Minutes number `json:"minutes"`
}

// hoursOf is the calendar as scripts read it.
func hoursOf(today planner.Date, c forecast.Calendar) jsonHours {
	return jsonHours{today.String(), list(stretches(today, c), func(s weekStretch) jsonWeek {
		week := jsonWeek{From: s.from.String(), To: s.to.String(), Minutes: minutes(s.total())}
		for d, m := range s.week {
			week.Days = append(week.Days, jsonDay{s.from.AddDays(d).Weekday().String(), minutes(m)})
		}
		return week
	})}
}

// HoursJSON writes the working hours for scripts.
func HoursJSON(w io.Writer, today planner.Date, c forecast.Calendar) error {
	return writeJSON(w, struct {
		Schema int `json:"schema"`
		jsonHours
	}{schema, hoursOf(today, c)})
}

// HoursSetJSON writes the entry that set the working hours, and what they are
// with it.
func HoursSetJSON(w io.Writer, today planner.Date, c forecast.Calendar, ev tracker.Event, repeated bool) error {
	return writeJSON(w, struct {
		Schema   int    `json:"schema"`
		ID       string `json:"id"`
		Seq      uint64 `json:"seq"`
		Repeated bool   `json:"repeated"`
		jsonHours
	}{schema, ev.ID, ev.Seq, repeated, hoursOf(today, c)})
}
