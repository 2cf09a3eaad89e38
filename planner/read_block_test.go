package planner

import "testing"

func TestBlockAndColourwayFaults(t *testing.T) {
	assertFaults(t, []faultCase{
		{
			"a block that is not known", "make: four-patch recut",
			"make: log cabin",
			[]string{`13:9: "log cabin" is not a block that is known here; the blocks are plain square, four-patch, nine-patch, rail, half-square triangle, pinwheel, hourglass, four-patch recut, nine-patch recut, pinwheel recut and hourglass recut`},
		},
		{
			"a block with a slip", "make: four-patch recut",
			"make: for patch recut",
			[]string{`13:9: "for patch recut" is not a block that is known here; did you mean "four-patch recut"?`},
		},
		{
			"no block named", "  make: four-patch recut\n",
			"",
			[]string{`12:1: the block has no "make"; write it as in make: four-patch recut`},
		},
		{
			"a measure missing everywhere", "  offset: 1 1/4\n",
			"",
			[]string{`12:1: the block has no "offset", which a four-patch recut needs; write it as in offset: 1 1/4`},
		},
		{
			"a measure missing in one colourway", "  offset: 1 1/4\n\ncolourways:\n  tide:\n",
			"colourways:\n  tide:\n    offset: 1\n",
			[]string{`21:3: colourway "dune" has no "offset", which a four-patch recut needs; write it as in offset: 1 1/4`},
		},
		{
			"a measure missing in a colourway with its own block", "    print: Kelp",
			"    make: rail\n    print: Kelp",
			[]string{
				`18:3: colourway "tide" has no "strip", which a rail needs; write it as in strip: 2 1/2`,
				`18:3: colourway "tide" has no "length", which a rail needs; write it as in length: 6 1/2`,
				`18:3: colourway "tide" has no fabric for its "strips"; write it as in strips: [Kelp, Foam, Cormorant]`,
				`21:12: a rail has no role "print"; its roles: strips`,
				`22:13: a rail has no role "ground"; its roles: strips`,
			},
		},
		{
			"a measure of another block", "    blocks: 6",
			"    blocks: 6\n    strip: 2",
			[]string{`20:12: a four-patch recut takes no "strip"; its measures: square and offset`},
		},
		{
			"a shared measure that no colourway takes", "  offset: 1 1/4",
			"  offset: 1 1/4\n  length: 4",
			[]string{`16:11: a four-patch recut takes no "length"; its measures: square and offset`},
		},
		{
			"a role of another block", "    blocks: 6",
			"    blocks: 6\n    corner: Foam",
			[]string{`20:13: a four-patch recut has no role "corner"; its roles: print and ground`},
		},
		{
			"a role without a fabric", "    ground: Foam\n",
			"",
			[]string{`18:3: colourway "tide" has no fabric for its "ground"; write it as in ground: Foam`},
		},
		{
			"a method of a block without triangles", "    blocks: 6",
			"    blocks: 6\n    method: two",
			[]string{`20:13: a four-patch recut takes no "method"; its measures: square and offset`},
		},
		{
			"a size of nothing", "square: 7",
			"square: 0",
			[]string{`14:11: "square" cannot be "0"; a measure must be more than 0, such as 8 1/2 or 20.5 cm`},
		},
		{
			"a negative size", "square: 7",
			"square: -7",
			[]string{`14:11: "square" cannot be "-7"; a measure cannot be negative; write it without the minus sign`},
		},
		{
			"a finished size where the cut size is meant", "square: 7",
			"square: 7 finished",
			[]string{`14:11: "square" is a raw size, with its seam allowances; this one is said to be finished; what is 7 in inside its seams is cut 7 1/2 in`},
		},
		{
			"a colourway that does not say how many blocks", "    blocks: 6\n",
			"",
			[]string{`18:3: colourway "tide" does not say how many blocks it has; write it as in blocks: 8`},
		},
		{
			"a colourway without blocks", "blocks: 6",
			"blocks: 0",
			[]string{`19:13: colourway "tide" has no blocks; give it at least 1, or take the colourway out`},
		},
		{
			"counts that do not add up", "    print: Kelp",
			"    print: {Kelp: 4, Foam: 1}",
			[]string{`20:12: the fabrics of "print" are for 5 blocks, but the colourway has 6; make the counts add up, or write a list to deal from`},
		},
		{
			"a count of none", "    print: Kelp",
			"    print: {Kelp: 6, Foam: 0}",
			[]string{`20:28: "Foam" is 0; it must be at least 1`},
		},
		{
			"no fabric in a list", "    print: Kelp",
			"    print: []",
			[]string{`20:12: "print" is an empty list; write it as in print: [Kelp, Cormorant]`},
		},
		{
			"no fabric in counts", "    print: Kelp",
			"    print: {}",
			[]string{`20:12: "print" is empty; write it as in print: [Kelp, Cormorant]`},
		},
		{
			"a list within a list of fabrics", "    print: Kelp",
			"    print: [[Kelp]]",
			[]string{`20:13: "print" should be a fabric, not a list; write it as in print: [Kelp, Cormorant]`},
		},
		{
			"a turn grid of the wrong shape", "  offset: 1 1/4",
			"  offset: 1 1/4\n  turn: [[0, 180], [180, 0]]",
			[]string{"16:9: this turns 2 rows of 2 pieces, but a four-patch recut has 3 rows of 3 pieces; give one number of degrees for each piece, row by row"},
		},
		{
			"a turn grid with a short row", "  offset: 1 1/4",
			"  offset: 1 1/4\n  turn: [[0, 180, 0], [180, 0], [0, 180, 0]]",
			[]string{`16:23: this row of "turn" has 2, the first row has 3; make all rows the same length`},
		},
		{
			"a turn that is no quarter turn", "  offset: 1 1/4",
			"  offset: 1 1/4\n  turn: [[0, 180, 0], [180, 45, 180], [0, 180, 0]]",
			[]string{`16:29: "45" is not a turn by quarter turns; turns are 0, 90, 180 or 270, in degrees clockwise`},
		},
		{
			"a turn the other way", "  offset: 1 1/4",
			"  offset: 1 1/4\n  turn: [[0, 180, 0], [180, -90, 180], [0, 180, 0]]",
			[]string{`16:29: "-90" is not a turn by quarter turns; turns are 0, 90, 180 or 270, in degrees clockwise`},
		},
		{
			"a turn that is no grid", "  offset: 1 1/4",
			"  offset: 1 1/4\n  turn: 180",
			[]string{`16:9: "turn" should be a list of rows, not "180"; write it as in turn: [[0, 90], [90, 0]]`},
		},
		{
			"a turn that is one row", "  offset: 1 1/4",
			"  offset: 1 1/4\n  turn: [0, 180]",
			[]string{
				`16:10: a row of "turn" should be a list of degrees, not "0"; write it as in turn: [[0, 90], [90, 0]]`,
				`16:13: a row of "turn" should be a list of degrees, not "180"; write it as in turn: [[0, 90], [90, 0]]`,
			},
		},
		{
			"a turn grid with nothing in it", "  offset: 1 1/4",
			"  offset: 1 1/4\n  turn: [[]]",
			[]string{`16:10: a row of "turn" is an empty list; write it as in turn: [[0, 90], [90, 0]]`},
		},
		{
			"a turn of a block that is not recut", "    print: Kelp",
			"    make: four-patch\n    turn: [[0]]\n    print: Kelp",
			[]string{"21:11: a four-patch is not recut, so it has no pieces to turn; take the line out; layout has a turn of its own"},
		},
		{
			"colourways that differ in capitals alone", "  dune:",
			"  Tide:",
			[]string{`22:3: the colourways "tide" and "Tide" would have block ids that look alike; give one of them another name`},
		},
		{
			"a colourway named like a block of another", "  dune:",
			"  tide-02:",
			[]string{`22:3: the colourway "tide-02" reads like a block of "tide"; give one of them another name`},
		},
		{
			"a colourway given twice", "  dune:",
			"  tide:",
			[]string{`22:3: "tide" is given twice; the first is on line 18; keep one`},
		},
		{
			"a name that it had all along", "    blocks: 6",
			"    blocks: 6\n    was: tide",
			[]string{`20:10: the colourway "tide" was "tide" all along; take "was" out`},
		},
		{
			"an old name that is still there", "    blocks: 6",
			"    blocks: 6\n    was: dune",
			[]string{`20:10: "tide" says that it was "dune", but there is still a colourway of that name; a renamed colourway leaves its old name free`},
		},
		{
			"two with one old name", "    blocks: 6\n    print: Kelp\n    ground: Foam\n  dune:\n",
			"    blocks: 6\n    was: kelp\n    print: Kelp\n    ground: Foam\n  dune:\n    was: kelp\n",
			[]string{`24:10: both "tide" and "dune" say that they were "kelp"; keep one`},
		},
	})
}
