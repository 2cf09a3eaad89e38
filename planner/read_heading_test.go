package planner

import (
	"strings"
	"testing"
)

func TestHeadingFaults(t *testing.T) {
	assertFaults(t, []faultCase{
		{
			"an id with blanks and capitals", "job: estuary-lap",
			"job: Estuary Lap",
			[]string{`1:6: "Estuary Lap" cannot be a job's id: ids are small letters a to z, digits and hyphens, at most 64, and begin with no hyphen; such as estuary-lap`},
		},
		{
			"an id that looks like an option", "job: estuary-lap",
			"job: -lap",
			[]string{`1:6: "-lap" cannot be a job's id: ids are small letters a to z, digits and hyphens, at most 64, and begin with no hyphen; such as lap`},
		},
		{
			"an id of another script", "job: estuary-lap",
			"job: 藍",
			[]string{`1:6: "藍" cannot be a job's id: ids are small letters a to z, digits and hyphens, at most 64, and begin with no hyphen`},
		},
		{
			"an id that is too long", "job: estuary-lap",
			"job: " + strings.Repeat("a", 65),
			[]string{`1:6: "` + strings.Repeat("a", 65) + `" cannot be a job's id: ids are small letters a to z, digits and hyphens, at most 64, and begin with no hyphen`},
		},
		{
			"a date that no calendar has", "due: 2027-02-12",
			"due: 2027-02-30",
			[]string{`4:6: "2027-02-30" is not a calendar date; write year-month-day, such as 2027-02-12`},
		},
		{
			"a date in another order", "due: 2027-02-12",
			"due: 12.2.2027",
			[]string{`4:6: "12.2.2027" is not a calendar date; write year-month-day, such as 2027-02-12`},
		},
		{
			"due before received", "due: 2027-02-12",
			"due: 2026-10-12",
			[]string{"4:6: the job is due on 2026-10-12, before it was received on 2026-11-02; correct one of the two dates"},
		},
		{
			"a quantity of none", "quantity: 1",
			"quantity: 0",
			[]string{`5:11: "quantity" is 0; it must be at least 1`},
		},
		{
			"a count with a zero in front", "quantity: 1",
			"quantity: 010",
			[]string{`5:11: "quantity" should be a whole number, not "010"; leave out the zero in front: 10`},
		},
		{
			"a count that is not whole", "quantity: 1",
			"quantity: 1.5",
			[]string{`5:11: "quantity" should be a whole number, not "1.5"; write digits, such as 8`},
		},
		{
			"a count below zero", "quantity: 1",
			"quantity: -2",
			[]string{`5:11: "quantity" should be a whole number, not "-2"; write digits, such as 8`},
		},
		{
			"a count in words", "quantity: 1",
			"quantity: two",
			[]string{`5:11: "quantity" should be a whole number, not "two"; write digits, such as 8`},
		},
		{
			"a count past all sense", "quantity: 1",
			"quantity: 99999999999999999999",
			[]string{`5:11: "quantity" is "99999999999999999999", more than any quilt needs; check the number`},
		},
		{
			"units that are not offered", "seam: 1/4",
			"seam: 1/4\nunits: mm",
			[]string{`7:8: "units" cannot be "mm"; did you mean "cm"?`},
		},
		{
			"a seam of nothing", "seam: 1/4",
			"seam: 0",
			[]string{`6:7: "seam" cannot be "0"; a measure must be more than 0, such as 8 1/2 or 20.5 cm`},
		},
		{
			"a negative seam", "seam: 1/4",
			"seam: -1/4",
			[]string{`6:7: "seam" cannot be "-1/4"; a measure cannot be negative; write it without the minus sign`},
		},
		{
			"a measure that is none", "seam: 1/4",
			"seam: scant",
			[]string{`6:7: "seam" cannot be "scant"; a measure begins with a number, such as 8, 8.5 or 8 1/2`},
		},
		{
			"a yes or no that is neither", "seam: 1/4",
			"seam: 1/4\nprewash: maybe",
			[]string{`7:10: "prewash" cannot be "maybe"; it can be yes or no`},
		},
		{
			"a title over two lines", "title: Estuary lap quilt",
			"title: |\n  Estuary\n  lap",
			[]string{`2:8: "title" runs over more than one line`},
		},
		{
			"a title past all length", "title: Estuary lap quilt",
			"title: " + strings.Repeat("a", 401),
			[]string{`2:8: "title" is longer than 400 characters`},
		},
	})
}
