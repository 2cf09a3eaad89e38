package planner

import (
	"strings"
	"testing"
)

func TestFabricFaults(t *testing.T) {
	assertFaults(t, []faultCase{
		{
			"a form that is not known, with the near word", "{form: fat quarter, on-hand: 4}",
			"{form: fat quater}",
			[]string{`9:16: "form" cannot be "fat quater"; did you mean "fat quarter"?`},
		},
		{
			"a form like none", "{form: fat quarter, on-hand: 4}",
			"{form: scrap bag}",
			[]string{`9:16: "form" cannot be "scrap bag"; it can be yardage, fat quarter, fat eighth, pre-cut squares or pre-cut strips`},
		},
		{
			"a length of sheets", "{form: fat quarter, on-hand: 4}",
			"{form: fat quarter, on-hand: 4 yd}",
			[]string{`9:38: fat quarters on hand are counted; "4 yd" is a length; write it as in on-hand: 4 (on-hand: 1 1/2 yd for yardage)`},
		},
		{
			"sheets not counted in whole numbers", "{form: fat quarter, on-hand: 4}",
			"{form: fat quarter, on-hand: 3.5}",
			[]string{`9:38: "on-hand" should be a whole number, not "3.5"; write digits, such as 8`},
		},
		{
			"a width of sheets", "{form: fat quarter, on-hand: 4}",
			"{form: fat quarter, width: 42}",
			[]string{`9:36: fabric "Kelp" comes as fat quarters, which have a size and no width; write it as in size: 18 x 22`},
		},
		{
			"a size of yardage", "{form: yardage, width: 42}",
			"{form: yardage, size: 18 x 22}",
			[]string{`10:31: fabric "Foam" is yardage, which has a width and no size; write it as in width: 42`},
		},
		{
			"pre-cut squares without their size", "{form: fat quarter, on-hand: 4}",
			"{form: pre-cut squares}",
			[]string{`9:9: fabric "Kelp" has no "size", which pre-cut squares need; write it as in size: 5`},
		},
		{
			"pre-cut strips without their size", "{form: fat quarter, on-hand: 4}",
			"{form: pre-cut strips}",
			[]string{`9:9: fabric "Kelp" has no "size", which pre-cut strips need; write it as in size: 2 1/2 x 42`},
		},
		{
			"pre-cut squares that are not square", "{form: fat quarter, on-hand: 4}",
			"{form: pre-cut squares, size: 5 x 6}",
			[]string{`9:39: pre-cut squares are square, and "5 x 6" is not; give one side, or describe the sheets as fat quarters with their size`},
		},
		{
			"a size that is none", "{form: fat quarter, on-hand: 4}",
			"{form: fat quarter, size: 18 x}",
			[]string{`9:35: "size" cannot be "18 x"; a size is a width and a height, such as 18 x 22`},
		},
		{
			"a width of nothing", "{form: yardage, width: 42}",
			"{form: yardage, width: 0}",
			[]string{`10:32: "width" cannot be "0"; a measure must be more than 0, such as 8 1/2 or 20.5 cm`},
		},
		{
			"yardage on hand without its unit", "{form: yardage, width: 42}",
			"{on-hand: 2}",
			[]string{"10:19: yardage on hand needs its unit: 2 yd, not 2"},
		},
		{
			"yardage on hand that is no length", "{form: yardage, width: 42}",
			"{on-hand: lots}",
			[]string{`10:19: "on-hand" cannot be "lots"; a measure begins with a number, such as 8, 8.5 or 8 1/2`},
		},
		{
			"a named colour with a slip", "{form: yardage, width: 42}",
			"{colour: slatgray}",
			[]string{`10:18: "slatgray" is not a colour; did you mean "slategray"?`},
		},
		{
			"a colour with a digit too few", "{form: yardage, width: 42}",
			`{colour: "#12345"}`,
			[]string{`10:18: "#12345" is not a colour; write it as in colour: "#2e6f57" or colour: slategray`},
		},
		{
			"a colour that YAML takes for a comment", "{form: yardage, width: 42}",
			"{colour: #2e6f57}",
			[]string{`10:18: a # after a blank begins a comment, so no colour is given here; put it in quotes: "#2e6f57"`},
		},
		{
			"the same in a block of lines", "Foam: {form: yardage, width: 42}",
			"Foam:\n    color: #fff # white",
			[]string{`11:12: a # after a blank begins a comment, so no colour is given here; put it in quotes: "#fff"`},
		},
		{
			"a name that is blank", "  Foam: {",
			"  '': {}\n  Foam: {",
			[]string{"10:3: the name of a fabric is blank"},
		},
		{
			"a name with a control character", "  Foam: {",
			"  \"Fo\\am\": {}\n  Foam: {",
			[]string{`10:3: the name of a fabric holds a control character: "Fo\u0007m"`},
		},
		{
			"a name over two lines", "  Foam: {",
			"  \"Fo\\nam\": {}\n  Foam: {",
			[]string{"10:3: the name of a fabric runs over more than one line"},
		},
		{
			"a name with a character that was lost", "  Foam: {",
			"  \"Fo�am\": {}\n  Foam: {",
			[]string{"10:3: the name of a fabric holds a character that cannot be read (U+FFFD)"},
		},
		{
			"a name past all length", "  Foam: {",
			"  " + strings.Repeat("f", 101) + ": {}\n  Foam: {",
			[]string{"10:3: the name of a fabric is longer than 100 characters"},
		},
		{
			"a name given twice, but for blanks", "  Foam: {",
			"  \" Foam \": {}\n  Foam: {",
			[]string{`11:3: "Foam" is given twice; the first is on line 10; keep one`},
		},
		{
			"a fabric not described, with the near name", "    print: Kelp",
			"    print: Klep",
			[]string{`20:12: the fabric "Klep" is not described under fabrics; did you mean "Kelp"?`},
		},
		{
			"a fabric not described, like none", "    print: Kelp",
			"    print: Seaweed",
			[]string{`20:12: the fabric "Seaweed" is not described under fabrics; the fabrics are Kelp and Foam`},
		},
		{
			"every place that names a fabric", "borders:\n  - {width: 3, fabric: Foam}\nbacking: {fabric: Foam}",
			"borders:\n  - {width: 3, fabric: Fom}\nbacking: {fabric: Fom}",
			[]string{
				`31:24: the fabric "Fom" is not described under fabrics; did you mean "Foam"?`,
				`32:19: the fabric "Fom" is not described under fabrics; did you mean "Foam"?`,
			},
		},
		{
			"fabrics of list, counts and binding", "    print: [Foam]\n    ground: Kelp",
			"    print: [Foam, Moss]\n    ground: {Kelp: 1, Moss: 1}",
			[]string{
				`24:19: the fabric "Moss" is not described under fabrics; the fabrics are Kelp and Foam`,
				`25:23: the fabric "Moss" is not described under fabrics; the fabrics are Kelp and Foam`,
			},
		},
	})
}
