package render

import (
	"fmt"
	"io"

	"quiltrun/planner"
	"quiltrun/tracker/forecast"
)

// When writes the finishing dates of all booked jobs, in the order in which
// they are worked off.
func When(w io.Writer, asOf planner.Date, answers []forecast.Answer, look Look) error {
	p := &page{look: look}
	if len(answers) == 0 {
		p.para(0, "No job is booked.")
		return p.writeTo(w)
	}
	p.prose(strong, 0, "", "When the work will be done, as of "+day(asOf))
	p.rule()
	g := &grid{columns: []column{
		{title: "Job", flexible: true}, {title: "Due"}, {title: "50 %"}, {title: "Promise"},
		{title: "95 %"}, {title: "On time", right: true}, {title: "Likely", right: true},
	}}
	for _, a := range answers {
		g.add(a.Job, orDash(a.Due.String()), orDash(a.P50.String()), orDash(a.P80.String()), orDash(a.P95.String()),
			chanceWords(a.Chance), hoursLeft(a.Minutes.P50))
	}
	if err := p.table(g); err != nil {
		return err
	}
	p.gap()
	for _, a := range answers {
		if a.Reason != "" {
			p.para(0, a.Job+": "+a.Reason)
		}
	}
	p.para(0, whenMeans)
	return p.writeTo(w)
}

// whenMeans explains the figures.
const whenMeans = "Promise holds in 80 of 100 runs; on time is the chance to be in the client's hands when due; likely is the work left at even odds (left shows the mean). Until your own batches set the pace, makers differ by a factor of three."

// orDash shows that there is nothing to show.
func orDash(text string) string {
	if text == "" {
		return "–"
	}
	return text
}

// chanceWords is a chance in whole percents. Only a certainty is shown as 0 or
// 100 %.
func chanceWords(chance *float64) string {
	switch {
	case chance == nil:
		return "–"
	case *chance > 0 && *chance < 0.01:
		return "< 1 %"
	case *chance > 0.99 && *chance < 1:
		return "> 99 %"
	}
	return fmt.Sprintf("%.0f %%", 100**chance)
}

// hoursLeft is a time to the hour, which is all that a forecast is worth.
func hoursLeft(m planner.Minutes) string {
	if m == 0 {
		return "–"
	}
	if m < 60 {
		return spell(m)
	}
	return fmt.Sprintf("%.0f h", float64(m)/60)
}

// WhenJSON writes the same for scripts.
func WhenJSON(w io.Writer, asOf planner.Date, answers []forecast.Answer) error {
	return writeJSON(w, struct {
		Schema int        `json:"schema"`
		AsOf   string     `json:"as_of"`
		Jobs   []jsonWhen `json:"jobs"`
	}{schema, asOf.String(), list(answers, whenOf)})
}

// jsonWhen is when one job will be done: dates at three confidences, null where
// none exists, which reason explains.
type jsonWhen struct {
	Job          string        `json:"job"`
	Due          *string       `json:"due"`
	P50          *string       `json:"p50"`
	P80          *string       `json:"p80"`
	P95          *string       `json:"p95"`
	ChanceOnTime *number       `json:"chance_on_time"`
	MinutesLeft  jsonQuantiles `json:"minutes_left"`
	Reason       *string       `json:"reason"`
}

// jsonQuantiles are a job's own remaining minutes at the same confidences.
type jsonQuantiles struct {
	P50 number `json:"p50"`
	P80 number `json:"p80"`
	P95 number `json:"p95"`
}

// whenOf is an answer as scripts read it.
func whenOf(a forecast.Answer) jsonWhen {
	out := jsonWhen{
		Job: a.Job, Due: date(a.Due), P50: date(a.P50), P80: date(a.P80), P95: date(a.P95),
		MinutesLeft: jsonQuantiles{minutes(a.Minutes.P50), minutes(a.Minutes.P80), minutes(a.Minutes.P95)},
		Reason:      known(a.Reason),
	}
	if a.Chance != nil {
		out.ChanceOnTime = some(decimal(*a.Chance, chancePlaces))
	}
	return out
}
