package planner

import "testing"

func TestLayoutFaults(t *testing.T) {
	assertFaults(t, []faultCase{
		{
			"more places than blocks", "across: 4",
			"across: 5",
			[]string{"28:11: the colourways have 8 blocks, but the layout holds 10 (5 across × 2 down); make 2 blocks more, or change across and down; nearest: 4 × 2 holds 8"},
		},
		{
			"more blocks than places", "across: 4",
			"across: 3",
			[]string{"28:11: the colourways have 8 blocks, but the layout holds 6 (3 across × 2 down); take 2 blocks out, or change across and down; nearest: 4 × 2 holds 8"},
		},
		{
			"a layout of no width", "across: 4",
			"across: 0",
			[]string{`28:11: "across" is 0; it must be at least 1`},
		},
		{
			"a quilt past the bound", "across: 4\n  down: 2",
			"across: 101\n  down: 100",
			[]string{"28:11: the run has 10100 blocks; quiltrun plans at most 10000; check across, down and quantity, or split the run into several jobs"},
		},
		{
			"a run past the bound", "quantity: 1",
			"quantity: 1251",
			[]string{"5:11: the run has 10008 blocks; quiltrun plans at most 10000; check across, down and quantity, or split the run into several jobs"},
		},
		{
			"on point, with its own count", "down: 2",
			"down: 2\n  setting: on point",
			[]string{
				`27:1: the layout has no "triangles"; write it as in triangles: Foam`,
				"28:11: the colourways have 8 blocks, but the layout holds 11 (4 across × 2 down on point, and 3 × 1 between); make 3 blocks more, or change across and down; on point, a layout holds across × down and (across − 1) × (down − 1) between them; nearest: 3 × 2 on point holds 8",
			},
		},
		{
			"a setting that is not known", "down: 2",
			"down: 2\n  setting: sideways",
			[]string{`30:12: "setting" cannot be "sideways"; it can be straight or on point`},
		},
		{
			"an order with a slip", "down: 2",
			"down: 2\n  order: diagnal",
			[]string{`30:10: "order" cannot be "diagnal"; did you mean "diagonal"?`},
		},
		{
			"a fill with a slip", "down: 2",
			"down: 2\n  order: {rows: full}",
			[]string{`30:17: "rows" cannot be "full"; did you mean "fill"?`},
		},
		{
			"a fill of what cannot be filled", "down: 2",
			"down: 2\n  order: {scatter: fill}",
			[]string{`30:11: "scatter" is not a key of "order"; the keys here are diagonal and rows`},
		},
		{
			"both fills", "down: 2",
			"down: 2\n  order: {diagonal: fill, rows: fill}",
			[]string{`30:10: "order" cannot be both diagonal and rows; keep one`},
		},
		{
			"no fill", "down: 2",
			"down: 2\n  order: {}",
			[]string{`30:10: "order" holds nothing; write it as in order: [[tide, dune], [dune, tide]]`},
		},
		{
			"a map with a short row", "down: 2",
			"down: 2\n  order: [[tide, tide, tide, dune], [dune, tide, tide]]",
			[]string{"30:37: row 2 of the map has 3 blocks, but the layout has 4 across; make the two agree"},
		},
		{
			"a map with too few rows", "down: 2",
			"down: 2\n  order: [[tide, tide, tide, dune]]",
			[]string{"30:10: the map has 1 row, but the layout has 2 down; make the two agree"},
		},
		{
			"a map with an unknown colourway", "down: 2",
			"down: 2\n  order: [[tide, tide, tide, dune], [dune, tide, tide, tied]]",
			[]string{`30:56: the map names the colourway "tied", which is not described; did you mean "tide"?`},
		},
		{
			"a map with other counts", "down: 2",
			"down: 2\n  order: [[tide, tide, tide, dune], [dune, tide, tide, dune]]",
			[]string{
				`30:10: the map has "tide" 5 times, but that colourway has 6 blocks; make the two agree`,
				`30:10: the map has "dune" 3 times, but that colourway has 2 blocks; make the two agree`,
			},
		},
		{
			"a map with a turn that is no quarter turn", "down: 2",
			"down: 2\n  order: [[tide, tide, tide, dune], [dune, tide, tide, tide@45]]",
			[]string{`30:56: "tide@45" is not turned by quarter turns; write the degrees clockwise, 0, 90, 180 or 270, as in tide@90`},
		},
		{
			"a map with a turn left out", "down: 2",
			"down: 2\n  order: [[tide, tide, tide, dune], [dune, tide, tide, tide@]]",
			[]string{`30:56: "tide@" is not turned by quarter turns; write the degrees clockwise, 0, 90, 180 or 270, as in tide@90`},
		},
		{
			"a map of one row of names", "down: 2",
			"down: 2\n  order: [tide, dune]",
			[]string{
				`30:11: a row of "order" should be a list of colourways, not "tide"; write it as in order: [[tide, dune], [dune, tide]]`,
				`30:17: a row of "order" should be a list of colourways, not "dune"; write it as in order: [[tide, dune], [dune, tide]]`,
			},
		},
		{
			"a map with an empty row", "down: 2",
			"down: 2\n  order: [[], [tide]]",
			[]string{
				`30:11: a row of "order" is an empty list; write it as in order: [[tide, dune], [dune, tide]]`,
				"30:11: row 1 of the map has 0 blocks, but the layout has 4 across; make the two agree",
				"30:15: row 2 of the map has 1 block, but the layout has 4 across; make the two agree",
			},
		},
		{
			"a turn that is no grid", "down: 2",
			"down: 2\n  turn: 90",
			[]string{`30:9: "turn" should be a list of rows, not "90"; write it as in turn: [[0, 90], [90, 0]]`},
		},
		{
			"a turn grid of uneven rows", "down: 2",
			"down: 2\n  turn: [[0, 90], [90]]",
			[]string{`30:19: this row of "turn" has 1, the first row has 2; make all rows the same length`},
		},
		{
			"sashing, with all that is wrong in it", "down: 2",
			"down: 2\n  sashing: {width: 2, cut: 3, cornerstones: Klep, edge: maybe}",
			[]string{
				`30:12: the sashing has no "fabric"; write it as in fabric: Foam`,
				`30:28: the sashing has both "width" and "cut"; keep the finished width or the cut width`,
				`30:45: the fabric "Klep" is not described under fabrics; did you mean "Kelp"?`,
				`30:57: "edge" cannot be "maybe"; it can be yes or no`,
			},
		},
	})
}
