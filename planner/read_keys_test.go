package planner

import "testing"

// What stands where: unknown, missing, double and misplaced keys, wrong kinds.
func TestKeysAndKindsAreRefusedInWords(t *testing.T) {
	assertFaults(t, []faultCase{
		{
			"a key that is not known, with the near name", "title:",
			"titel:",
			[]string{`2:1: "titel" is not a key of the job file; did you mean "title"?`},
		},
		{
			"a key like none: the keys that may stand there", "across:",
			"zebra:",
			[]string{
				`27:1: the layout has no "across"; write it as in across: 4`,
				`28:3: "zebra" is not a key of the layout; the keys here are across, down, setting, order, turn, sashing and triangles`,
			},
		},
		{
			"a required key that is mistyped: one mistake is told once", "colourways:",
			"colorwais:",
			[]string{
				`17:1: "colorwais" is not a key of the job file; did you mean "colourways"?`,
			},
		},
		{
			"a near name for a key in capitals", "layout:",
			"Layout:",
			[]string{
				`27:1: "Layout" is not a key of the job file; did you mean "layout"?`,
			},
		},
		{
			"a key of another place", "  down: 2",
			"  down: 2\n  quantity: 2",
			[]string{`30:3: "quantity" is not a key of the layout; the keys here are across, down, setting, order, turn, sashing and triangles`},
		},
		{
			"a key given twice", "seam: 1/4",
			"seam: 1/4\nseam: 3/8",
			[]string{`7:1: "seam" is given twice; the first is on line 6; keep one`},
		},
		{
			"a key given under two words", "    ground: Foam",
			"    ground: Foam\n    background: Kelp",
			[]string{`22:5: "background" and "ground" mean the same key; the first is on line 21; keep one`},
		},
		{
			"a colon forgotten within brackets", "{form: yardage, width: 42}",
			"{form yardage, width: 42}",
			[]string{`10:10: "form yardage" is not a key of fabric "Foam"; a colon is missing after "form"`},
		},
		{
			"a list where one value is meant", "across: 4",
			"across: [4]",
			[]string{`28:11: "across" should be a whole number, not a list; write it as in across: 4`},
		},
		{
			"keys where one value is meant", "seam: 1/4",
			"seam: {width: 1/4}",
			[]string{`6:7: "seam" should be a measure, not keys with values; write it as in seam: 1/4`},
		},
		{
			"one value where keys are meant", "backing: {fabric: Foam}",
			"backing: Foam",
			[]string{`32:10: the backing should hold keys with values, not "Foam"; write it as in backing: {fabric: Foam, extra: 4}`},
		},
		{
			"one value where a fabric's keys are meant", "Foam: {form: yardage, width: 42}",
			"Foam: yardage",
			[]string{`10:9: fabric "Foam" should hold keys with values, not "yardage"; write it as in Foam: {form: fat quarter}`},
		},
		{
			"a list where keys are meant", "batting: {extra: 4}",
			"batting: [4]",
			[]string{"33:10: the batting should hold keys with values, not a list; write it as in batting: {extra: 4}"},
		},
		{
			"keys where a list is meant", "  - {width: 3, fabric: Foam}",
			"  width: 3",
			[]string{`30:1: "borders" should be a list of borders, not keys with values; write it as in borders: [{width: 3, fabric: Foam}]`},
		},
		{
			"no value", "  across: 4",
			"  across:",
			[]string{`28:3: nothing is given for "across"; write it as in across: 4`},
		},
		{
			"a blank value", "title: Estuary lap quilt",
			`title: " "`,
			[]string{`2:8: nothing is given for "title"; write it as in title: Estuary lap quilt`},
		},
		{
			"no key of a group that must be there", "backing: {fabric: Foam}",
			"backing:",
			[]string{`32:1: the backing has no "fabric"; write it as in fabric: Foam`},
		},
		{
			"no layout at all", "layout:\n  across: 4\n  down: 2\n",
			"",
			[]string{`1:1: the job file has no "layout"; write it as in layout: {across: 4, down: 2}`},
		},
		{
			"no fabrics", "fabrics:\n  Kelp: {form: fat quarter, on-hand: 4}\n  Foam: {form: yardage, width: 42}\n",
			"fabrics: {}\n",
			[]string{`8:10: "fabrics" is empty; write it as in fabrics: {Kelp: {form: fat quarter, on-hand: 4}}`},
		},
		{
			"no colourways", "colourways:\n  tide:\n    blocks: 6\n    print: Kelp\n    ground: Foam\n  dune:\n    blocks: 2\n    print: [Foam]\n    ground: Kelp\n",
			"colourways:\n",
			[]string{`17:1: "colourways" should hold names with values, not nothing; write it as in colourways: {tide: {blocks: 8, print: Kelp, ground: Foam}}`},
		},
		{
			"several faults, in file order", "title: Estuary lap quilt\nreceived: 2026-11-02\ndue: 2027-02-12\nquantity: 1",
			"titel: Estuary lap quilt\nreceived: soon\ndue: 2027-02-30\nquantity: 010",
			[]string{
				`2:1: "titel" is not a key of the job file; did you mean "title"?`,
				`3:11: "soon" is not a calendar date; write year-month-day, such as 2027-02-12`,
				`4:6: "2027-02-30" is not a calendar date; write year-month-day, such as 2027-02-12`,
				`5:11: "quantity" should be a whole number, not "010"; leave out the zero in front: 10`,
			},
		},
	})
}
