package planner

import (
	"fmt"
	"time"
)

// Date is a calendar date without a clock or a time zone. The zero Date means
// that no date was given.
type Date struct {
	Year  int
	Month time.Month
	Day   int
}

// ParseDate reads a date written as YYYY-MM-DD. A date that no calendar has,
// such as 2026-02-30, is refused.
func ParseDate(text string) (Date, error) {
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return Date{}, fmt.Errorf("%q is not a calendar date: write it as year-month-day, such as 2027-02-12", text)
	}
	return DateOf(t), nil
}

// DateOf is the calendar date that t shows in its own time zone.
func DateOf(t time.Time) Date {
	y, m, d := t.Date()
	return Date{Year: y, Month: m, Day: d}
}

// IsZero reports that no date was given.
func (d Date) IsZero() bool { return d == Date{} }

// String is YYYY-MM-DD, and the empty string for the zero Date.
func (d Date) String() string {
	if d.IsZero() {
		return ""
	}
	return fmt.Sprintf("%04d-%02d-%02d", d.Year, int(d.Month), d.Day)
}

// MarshalText writes the date as String does.
func (d Date) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads what MarshalText wrote.
func (d *Date) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*d = Date{}
		return nil
	}
	parsed, err := ParseDate(string(text))
	if err != nil {
		return err
	}
	*d = parsed
	return nil
}

// noon is the date as an instant far from every change of day, for arithmetic.
func (d Date) noon() time.Time {
	return time.Date(d.Year, d.Month, d.Day, 12, 0, 0, 0, time.UTC)
}

// AddDays is the date n days later, or earlier where n is negative.
func (d Date) AddDays(n int) Date { return DateOf(d.noon().AddDate(0, 0, n)) }

// Weekday is the day of the week.
func (d Date) Weekday() time.Weekday { return d.noon().Weekday() }

// Before reports whether d comes before other.
func (d Date) Before(other Date) bool { return d.noon().Before(other.noon()) }

// DaysUntil counts the days from d to other; negative where other is earlier.
func (d Date) DaysUntil(other Date) int {
	return int(other.noon().Sub(d.noon()).Hours() / 24)
}
