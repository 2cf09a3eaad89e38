package render

import (
	"fmt"
	"strings"
	"time"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// moment is a time with its day: "Mon 9 Nov 17:00".
func moment(t time.Time) string { return tie(t.Format("Mon 2 Jan 15:04")) }

// shortDay is a date with its weekday: "Mon 9 Nov".
func shortDay(d planner.Date) string {
	return fmt.Sprintf("%.3s %d %.3s", d.Weekday(), d.Day, d.Month)
}

// tie keeps words on one line.
func tie(text string) string { return strings.ReplaceAll(text, " ", tied) }

// span is a sitting's ends; the day of the second is left out where it is the
// first's.
func span(s tracker.Sitting) string {
	switch {
	case s.Running():
		return moment(s.From) + tied + "–"
	case planner.DateOf(s.From) == planner.DateOf(s.To):
		return moment(s.From) + "–" + s.To.Format("15:04")
	}
	return moment(s.From) + "–" + tie(s.To.Format("Mon 15:04"))
}

// atRow is a row by its key and lot, as it stands on the wall: "80 chain-sew pairs
// of tide".
func atRow(s tracker.State, key string, lot tracker.Lot) string {
	o := operationOf(s, key)
	if o.Number == 0 {
		return fmt.Sprintf("%s of %s", o.Name, lot.Name)
	}
	return fmt.Sprintf("%d%s%s of %s", o.Number, tied, o.Name, lot.Name)
}

// spentOn is what a sitting went into: rows that got no time are left out, unless
// none did.
func spentOn(s tracker.State, sitting tracker.Sitting) string {
	var rows, idle []string
	for _, share := range sitting.Shares {
		words := atRow(s, share.Operation, share.Lot)
		if share.Count > 0 {
			words += fmt.Sprintf(" (%s)", countedBy(share.Count, operationOf(s, share.Operation)))
		}
		if share.Minutes > 0 {
			rows = append(rows, words)
		} else {
			idle = append(idle, words)
		}
	}
	if len(rows) == 0 {
		rows = idle
	}
	return enumerate(rows)
}

// DoubtWords says why a sitting is not counted, and what can be done about it, in
// a sentence each.
func DoubtWords(s tracker.State, sitting tracker.Sitting) (what, do string) {
	job, row := s.Ledger.Job, atRow(s, sitting.Shares[0].Operation, sitting.Shares[0].Lot)
	settle := fmt.Sprintf("quiltrun time %s %d", job, sitting.Seq)
	whose := ""
	if sitting.By != "" {
		whose = " of " + sitting.By
	}
	if sitting.Doubt == tracker.ClockSetBack {
		return fmt.Sprintf("%s: the computer's clock was set back after %s, during work%s at %s: that time is not counted",
				job, moment(sitting.From), whose, row),
			"say how long it took, such as: " + settle + " 45m"
	}
	quiet := ", with nothing logged"
	if sitting.Quiet.After(sitting.From) {
		quiet += " after " + moment(sitting.Quiet)
	}
	offer := sitting.Offer.Format("15:04")
	if sitting.Running() {
		return fmt.Sprintf("%s: the clock%s has run since %s, for %s: %s%s, and is not counted",
				job, whose, moment(sitting.From), row, spell(sitting.Minutes()), quiet),
			"say when work ended, such as: " + settle + " --end " + offer
	}
	return fmt.Sprintf("%s: the clock%s ran from %s to %s, for %s: %s%s, and is not counted",
			job, whose, moment(sitting.From), moment(sitting.To), row, spell(sitting.Minutes()), quiet),
		fmt.Sprintf("say when work ended, such as: %s --end %s, or that it was so: %s %s", settle, offer, settle, typedSpan(sitting.Minutes()))
}

// typedSpan is a time as it is typed: "15h40m".
func typedSpan(m planner.Minutes) string {
	return strings.NewReplacer(" ", "", "min", "m").Replace(spell(m))
}
