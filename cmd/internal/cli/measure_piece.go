package cli

import (
	"errors"
	"slices"
	"strings"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
	"quiltrun/planner/english"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

// measuring is a measure on its way to become an entry and an answer.
type measuring struct {
	opts   measureOptions
	event  tracker.Event
	plan   planner.Plan
	was    tracker.State
	now    planner.Plan // with the measured seam, where that was asked for
	answer render.Measure
}

// decide makes the entry that keeps a measure, and plans the job anew where that
// was asked for.
func (m *measuring) decide(state tracker.State) (tracker.Event, error) {
	if stored, ok := state.Repeated(m.event.ID); ok {
		then, err := state.Before(m.event.ID)
		if err != nil {
			return stored, err
		}
		sent, _ := m.entry(then)
		return stored, stored.SentAgain(sent)
	}
	return m.entry(state)
}

// entry is the event of a measure in a job as it is.
func (m *measuring) entry(state tracker.State) (tracker.Event, error) {
	var err error
	m.was = state
	if m.plan, err = bookedPlan(state); err != nil {
		return tracker.Event{}, err
	}
	kept, err := m.look(state)
	if err != nil {
		return tracker.Event{}, err
	}
	kept.Machine, kept.Moved = m.opts.machine, m.opts.moved
	if kept.Machine == "" {
		kept.Machine = state.LastMachine(m.event.By)
	}
	if m.opts.replan {
		return m.replanned(state, kept)
	}
	event, err := state.Measure(kept, m.event.ID, m.event.At, m.event.By)
	event.Reason = m.opts.reason
	return event, err
}

// replanned plans the job with the seam that was measured.
func (m *measuring) replanned(state tracker.State, kept tracker.Measurement) (tracker.Event, error) {
	u := m.plan.Job.Units
	switch {
	case kept.Seam == 0:
		return tracker.Event{}, failed("no seam is in %s, so that there is none to plan with", kept.Name).
			hint("measure the three strips: quiltrun measure %s three-strips SIZE", m.plan.Job.ID)
	case kept.Seam == m.plan.Job.Seam:
		return tracker.Event{}, failed("the seam is %s as planned: there is nothing to plan anew", planner.SeamMeasured(kept.Seam, u))
	}
	file := bookedFile(state)
	job, err := file.parse()
	if err != nil {
		return tracker.Event{}, err
	}
	job.Received = state.Ledger.Received
	prior := state.Prior()
	prior.Amend.Seam = kept.Seam
	if m.now, err = planner.Make(job, prior); err != nil {
		return tracker.Event{}, unmakeable(kept.Seam, u, err)
	}
	ledger := tracker.Refreeze(state.Dealt(), m.now)
	event, err := state.Amend(tracker.Amendment{Seam: kept.Seam}, &kept, ledger, m.event.ID, m.event.At, m.event.By)
	event.Reason = m.opts.reason
	return event, err
}

// unmakeable words why a job cannot be made with a measured seam.
func unmakeable(seam measure.Length, u measure.Unit, err error) error {
	f := failed("with a seam of %s the job cannot be made", planner.SeamMeasured(seam, u))
	var problems planner.Problems
	if !errors.As(err, &problems) {
		return err
	}
	for _, p := range problems {
		f.hint("%s", p.What)
	}
	return f.hint("move needle or guide instead, and measure again")
}

// look works out what the measure says of the plan.
func (m *measuring) look(state tracker.State) (tracker.Measurement, error) {
	u := m.plan.Job.Units
	colourway, blocks, err := m.whose(state)
	if err != nil {
		return tracker.Measurement{}, err
	}
	piece, err := m.piece(state, colourway)
	if err != nil {
		return tracker.Measurement{}, err
	}
	sizes, err := parseSizes(m.opts.sizes, u)
	if err != nil {
		return tracker.Measurement{}, err
	}
	if sizes, err = m.named(sizes, blocks); err != nil {
		return tracker.Measurement{}, err
	}
	tolerance := planner.DefaultTolerance(u)
	if m.opts.tolerance != "" {
		if tolerance, err = measure.Parse(m.opts.tolerance, u); err != nil {
			return tracker.Measurement{}, asWrong(err)
		}
	}
	kept := tracker.Measurement{
		Step: piece.Step, Operation: piece.Operation, Name: piece.Name, Colourways: piece.Colourways,
		Unit: u.String(), Should: piece.Size, Sizes: sizes, Planned: m.plan.Job.Seam,
	}
	first, err := planner.ReadPiece(m.plan, piece, kept.MeanSize(), tolerance)
	var none *planner.NoSeam
	if errors.As(err, &none) {
		return kept, failed("%s", none.What).hint("is it the piece of that step? W x H gives both sides")
	}
	if err != nil {
		return kept, err
	}
	kept.Seam, kept.Seams = first.Seam, first.Ways[0].Seams
	m.answer = render.Measure{Job: m.plan.Job, Kept: kept, First: first}
	return kept, m.uneven(kept, colourway, tolerance)
}

// whose is the colourway and the blocks that were named.
func (m *measuring) whose(state tracker.State) (colourway string, blocks []string, err error) {
	if m.opts.lot != nil {
		colourway = m.opts.lot.Name
		known := slices.ContainsFunc(m.plan.Colourways, func(c planner.ColourwayPlan) bool { return c.Name == colourway })
		if !known {
			return "", nil, noColourway(colourway, state.Ledger.Colourways)
		}
	}
	for _, typed := range m.opts.blocks {
		id, err := state.BlockTyped(typed)
		if err != nil {
			return "", nil, err
		}
		if slices.Contains(blocks, id) {
			return "", nil, failed("block %s is named twice", id)
		}
		blocks = append(blocks, id)
	}
	return colourway, blocks, nil
}

// piece is what was measured: a test, a step of the recipe or an operation.
func (m *measuring) piece(state tracker.State, colourway string) (planner.Piece, error) {
	step := strings.ToLower(strings.TrimSpace(m.opts.step))
	names := planner.Measurable(m.plan)
	if !slices.Contains(names, step) {
		if near := beginning(names, step); len(near) == 1 {
			step = near[0]
		} else if key, err := state.OperationTyped(m.opts.step); err == nil {
			step = key
		}
	}
	piece, err := planner.PieceAt(m.plan, step, colourway)
	var none *planner.NoPiece
	if !errors.As(err, &none) {
		return piece, err
	}
	f := failed("%s", none.What)
	if none.Hint != "" {
		f.hint("%s", none.Hint)
	}
	if len(none.Steps) > 0 {
		f.hint("to measure: %s", strings.Join(none.Steps, ", "))
	}
	return piece, f
}

// beginning is the names that begin with what was typed.
func beginning(names []string, typed string) []string {
	return slices.DeleteFunc(slices.Clone(names), func(name string) bool { return !strings.HasPrefix(name, typed) })
}

// named gives one measure to the blocks that were named.
func (m *measuring) named(sizes []tracker.MeasuredSize, blocks []string) ([]tracker.MeasuredSize, error) {
	switch {
	case len(blocks) == 0:
		return sizes, nil
	case len(sizes) > 1:
		return nil, wrong("--block goes with one size: which block has which is not said").hint("measure them one after the other")
	}
	sizes[0].Count, sizes[0].Blocks = len(blocks), blocks
	return sizes, nil
}

// uneven adds the ways out where blocks came out of several sizes, or some too
// small.
func (m *measuring) uneven(kept tracker.Measurement, colourway string, tolerance measure.Length) error {
	if !m.answer.First.Piece.Block || kept.Pieces() < 2 && len(kept.Sizes[0].Blocks) == 0 {
		return nil // one block that nobody named stands for all
	}
	var counts []planner.SizeCount
	for _, s := range kept.Sizes {
		size := s.Size
		if size.Height == 0 {
			size.Height = size.Width + kept.Should.Height - kept.Should.Width
		}
		counts = append(counts, planner.SizeCount{Size: size, Count: s.Count})
	}
	if most := len(m.plan.Blocks); kept.Pieces() > most {
		return failed("the run has %s, and %d are measured", english.Count(most, "block"), kept.Pieces())
	}
	uneven, err := planner.BlocksOf(m.plan, counts, kept.Sizes[0].Blocks, colourway, tolerance)
	if err != nil {
		return unmakeable(m.plan.Job.Seam, m.plan.Job.Units, err)
	}
	if uneven.Short > 0 || len(counts) > 1 {
		m.answer.Uneven = &uneven
	}
	return nil
}

// report is the answer to a measure that is stored.
func (m *measuring) report(made entry) render.Measure {
	r := m.answer
	r.Event, r.Repeated, r.Kept = made.event, made.repeated, *made.event.Measure
	for _, x := range made.after.Series() {
		if x.By == made.event.By && x.Machine == r.Kept.Machine && x.Step == r.Kept.Step {
			r.Readings = len(x.Readings)
			if d, drifts := x.Drift(); drifts {
				r.Drift = &d
			}
		}
	}
	if made.event.Ledger != nil {
		r.Revision = made.event.Ledger.Revision
		r.Changes = changes(m.was.Dealt(), *made.event.Ledger, made.after, &plans{old: m.plan, now: m.now, after: made.after})
	}
	return r
}
