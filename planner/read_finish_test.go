package planner

import "testing"

func TestFinishingFaults(t *testing.T) {
	assertFaults(t, []faultCase{
		{
			"a border without its width", "{width: 3, fabric: Foam}",
			"{fabric: Foam}",
			[]string{`31:5: border 1 has no "width"; write it as in width: 3`},
		},
		{
			"a border with its width mistyped: one mistake is told once", "{width: 3, fabric: Foam}",
			"{widht: 3, fabric: Foam}",
			[]string{`31:6: "widht" is not a key of border 1; did you mean "width"?`},
		},
		{
			"a border without its fabric", "{width: 3, fabric: Foam}",
			"{width: 3}",
			[]string{`31:5: border 1 has no "fabric"; write it as in fabric: Foam`},
		},
		{
			"a border with both widths", "{width: 3, fabric: Foam}",
			"{width: 3, cut: 3 1/2, fabric: Foam}",
			[]string{`31:21: border 1 has both "width" and "cut"; keep the finished width or the cut width`},
		},
		{
			"a border cut to its seams", "{width: 3, fabric: Foam}",
			"{cut: 1/2, fabric: Foam}",
			[]string{"31:11: border 1, cut 1/2 in wide, has nothing left inside its two seams; cut it wider than 1/2 in"},
		},
		{
			"a raw size where the finished size is meant", "{width: 3, fabric: Foam}",
			"{width: 3 1/2 raw, fabric: Foam}",
			[]string{`31:13: "width" is a finished size; this one is said to be raw, with its seam allowances; for the size to cut, write cut: 3 1/2 in`},
		},
		{
			"a finished size where the cut size is meant", "{width: 3, fabric: Foam}",
			"{cut: 3 finished, fabric: Foam}",
			[]string{`31:11: "cut" is a raw size, with its seam allowances; this one is said to be finished; what is 3 in inside its seams is cut 3 1/2 in`},
		},
		{
			"a border that is a name", "{width: 3, fabric: Foam}",
			"Foam",
			[]string{`31:5: border 1 should hold keys with values, not "Foam"; write it as in borders: [{width: 3, fabric: Foam}]`},
		},
		{
			"a negative extra", "batting: {extra: 4}",
			"batting: {extra: -4}",
			[]string{`33:18: "extra" cannot be "-4"; a measure cannot be negative; write it without the minus sign`},
		},
		{
			"a strip of nothing", "strip: 2 1/2",
			"strip: 0",
			[]string{`34:32: "strip" cannot be "0"; a measure must be more than 0, such as 8 1/2 or 20.5 cm`},
		},
		{
			"a finish that is not known", "strip: 2 1/2",
			"finish: glue",
			[]string{`34:33: "finish" cannot be "glue"; it can be machine or hand`},
		},
		{
			"a density that is not known", "density: medium",
			"density: loose",
			[]string{`35:31: "density" cannot be "loose"; it can be dense, medium or open`},
		},
		{
			"quilting by somebody unknown", "by: self",
			"by: elves",
			[]string{`35:16: "by" cannot be "elves"; it can be self or sent out`},
		},
		{
			"quilting sent out without its days", "by: self",
			"by: sent out",
			[]string{`35:11: the quilting has no "lead-days"; write it as in lead-days: 42`},
		},
		{
			"days of quilting that stays", "by: self",
			"by: self, lead-days: 42",
			[]string{`35:33: "lead-days" is for quilting that is sent out; write by: sent out, or take the days out`},
		},
		{
			"days that are no count", "by: self",
			"by: sent out, lead-days: 6 weeks",
			[]string{`35:37: "lead-days" should be a whole number, not "6 weeks"; write digits, such as 8`},
		},
	})
}
