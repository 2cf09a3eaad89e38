package planner

import (
	"fmt"
	"slices"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// seamProbe is by how much more every seam takes when a piece is made a second
// time, to see what its size loses: about a thousandth of an inch, and a
// multiple of all that halves and thirds divide by.
const seamProbe measure.Length = 144_000

// Piece is something that can be laid to the ruler once a step is done: its
// size, and how that depends on the seam. Loses is found by making the recipe
// again with another seam, never by a formula of the block: whatever is sewn,
// halved, recut or trimmed on the way is in it.
type Piece struct {
	Step       string       // a test's name, a recipe's step, or the key of an operation in the midst of one
	Operation  string       // the operation after which it is measured, "" where none is
	Name       string       // in words
	Colourways []string     // whose it is, in file order; none: nobody's, or the whole quilt's
	Size       measure.Size // raw, as planned; a Height of 0 has no one measure
	Loses      measure.Size // when every seam on the way takes seamProbe more
	Block      bool         // it is the block itself
	Top        bool         // it is the quilt's top
	AsCut      bool         // no seam is in its size: the ruler made it
}

// SeamsAcross and SeamsDown are over how many seams the size is measured that
// way. A piece cut out of a sewn one may have a part of a seam's loss.
func (p Piece) SeamsAcross() float64 { return seamsOf(p.Loses.Width) }

// SeamsDown is the same for the height.
func (p Piece) SeamsDown() float64 { return seamsOf(p.Loses.Height) }

// seamsOf is a loss in whole seams, each of which takes from both its sides.
func seamsOf(loses measure.Length) float64 { return float64(loses) / float64(2*seamProbe) }

// lost is what a size has become smaller by.
func lost(was, is measure.Size) measure.Size {
	return measure.Size{Width: was.Width - is.Width, Height: was.Height - is.Height}
}

// twice is a plan whose blocks are made with its seam and with a probe more.
type twice struct {
	plan Plan
	job  Job                   // as the plan was made
	at   [][2]*patchwork.Build // of each colourway; nil where it cannot be made so
}

// makeTwice makes every colourway's block twice.
func makeTwice(p Plan) twice {
	t := twice{plan: p, job: p.Job}
	for _, c := range p.Colourways {
		recipe := pinned(c.Recipe, c.Build)
		var pair [2]*patchwork.Build
		for i, seam := range []measure.Length{p.Job.Seam, p.Job.Seam + seamProbe} {
			if build, err := patchwork.Remake(recipe, seam, p.Job.Units); err == nil {
				pair[i] = build
			}
		}
		t.at = append(t.at, pair)
	}
	return t
}

// PieceAt finds the piece that is measured after a step: a test by its name, a
// recipe's step, or an operation by its key. A colourway of "" stands for all
// whose piece is the same. The error is for a person: what can be measured, or
// whose is meant.
func PieceAt(p Plan, step, colourway string) (Piece, error) {
	for _, test := range SeamTests(p.Job.Units) {
		if step == test.Key() || step == keySeamTest && test.Strips == 3 {
			return test.piece(p.Job), nil
		}
	}
	t := makeTwice(p)
	if piece, ok := t.ofTop(step); ok {
		return piece, nil
	}
	var found []Piece
	for i, c := range p.Colourways {
		if colourway != "" && c.Name != colourway {
			continue
		}
		piece, err := t.ofStep(i, step)
		if err != nil {
			return Piece{}, err
		}
		if piece.Step != "" {
			piece.Colourways = []string{c.Name}
			found = append(found, piece)
		}
	}
	return onePiece(found, step, p)
}

// onePiece is the piece that all colourways share.
func onePiece(found []Piece, step string, p Plan) (Piece, error) {
	if len(found) == 0 {
		return Piece{}, &NoPiece{What: fmt.Sprintf("nothing is measured after %s", said(step)), Steps: Measurable(p)}
	}
	first := found[0]
	for _, other := range found[1:] {
		if other.Size != first.Size || other.Loses != first.Loses {
			return Piece{}, &NoPiece{
				What: fmt.Sprintf("after %s the pieces of %s and %s differ: %s and %s", said(step),
					first.Colourways[0], other.Colourways[0], first.Size.Show(p.Job.Units), other.Size.Show(p.Job.Units)),
				Hint: "say whose it is: --colourway " + first.Colourways[0],
			}
		}
		first.Colourways = append(first.Colourways, other.Colourways...)
	}
	return first, nil
}

// NoPiece is a step after which no one piece can be measured. Steps are those
// after which one can.
type NoPiece struct {
	What, Hint string
	Steps      []string
}

func (n *NoPiece) Error() string { return n.What }

// Measurable lists what can be measured in a plan: the tests, each step that
// leaves one piece, and the top.
func Measurable(p Plan) []string {
	var names []string
	for _, test := range SeamTests(p.Job.Units) {
		names = append(names, test.Key())
	}
	for _, c := range p.Colourways {
		for i, s := range c.Build.Steps {
			if _, one := (reach{at: i}).size(c.Build); one && !slices.Contains(names, s.Step.Name) {
				names = append(names, s.Step.Name)
			}
		}
	}
	return append(names, keyMeasure)
}

// ofStep is a colourway's piece after a step or operation; the zero Piece where
// the colourway has none such.
func (t twice) ofStep(colourway int, step string) (Piece, error) {
	c := t.plan.Colourways[colourway]
	to, ok := t.reach(c, step)
	if !ok {
		return Piece{}, nil
	}
	size, one := to.size(c.Build)
	if !one {
		return Piece{}, &NoPiece{
			What:  fmt.Sprintf("the step %s leaves pieces of several sizes, which the ruler made", said(to.name)),
			Hint:  "measure what is sewn, before it or after",
			Steps: Measurable(t.plan),
		}
	}
	piece := Piece{Step: to.name, Name: to.words(), Operation: to.operation, Size: size,
		Block: to.at == len(c.Build.Steps)-1 && !to.partly()}
	switch {
	case to.partly():
		piece.Step = to.operation
	case piece.Block:
		piece.Name = "a block"
	}
	if made, probed := t.at[colourway][0], t.at[colourway][1]; made != nil && probed != nil {
		was, _ := to.size(made)
		is, _ := to.size(probed)
		piece.Loses = lost(was, is)
	}
	piece.AsCut = piece.Loses == measure.Size{}
	return piece, nil
}

// ofTop is the top of the quilt: measured through the middle before the borders
// go on, or with them.
func (t twice) ofTop(step string) (Piece, bool) {
	job, name := t.job, "the top, through the middle"
	switch step {
	case keyMeasure, keyJoinRows, keyPressTop:
		job.Borders = nil
	case keyBorders:
		name = "the top with its borders"
	default:
		return Piece{}, false
	}
	should, ok := rawTop(job, t.job.Seam)
	probed, well := rawTop(job, t.job.Seam+seamProbe)
	if !ok || !well {
		return Piece{}, false
	}
	if step != keyBorders {
		step = keyMeasure
	}
	return Piece{Step: step, Operation: step, Name: name, Top: true, Size: should, Loses: lost(should, probed)}, true
}

// rawTop is the raw top of a job whose blocks are sewn with a seam.
func rawTop(j Job, seam measure.Length) (measure.Size, bool) {
	size, err := sewnWith(j, seam)
	return size.Top, err == nil
}
