package cli

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// revisedBy plans the mat, books it, and revises it by another file.
func revisedBy(t *testing.T, file string) []string {
	plan := func(text string, prior planner.Prior) planner.Plan {
		f := jobFile{"mat.yaml", []byte(text)}
		job, err := f.parse()
		require.NoError(t, err)
		made, err := f.plan(job, prior)
		require.NoError(t, err)
		return made
	}
	before := plan(mat, planner.Prior{})
	old := tracker.Freeze(before)
	then := plan(file, old.Prior())
	now := tracker.Refreeze(old, then)
	state, err := tracker.Fold([]tracker.Event{
		{Schema: 1, ID: "booking", Seq: 1, Kind: tracker.Booked, Revision: 1, Ledger: &old},
		{Schema: 1, ID: "revision", Seq: 2, Kind: tracker.Revised, Revision: 2, Ledger: &now},
	})
	require.NoError(t, err)
	return changes(old, now, state, &plans{old: before, now: then, after: state})
}

func TestNothingChangedIsNoSentence(t *testing.T) {
	assert.Empty(t, revisedBy(t, mat))
}

func TestRenamedColourwayKeepsItsRows(t *testing.T) {
	assert.Equal(t, []string{"colourways: ebb, was tide"}, revisedBy(t, `job: cove-mat
received: 2026-11-02
fabrics: {Kelp: {form: yardage, width: 42}}
block: {make: four-patch, square: 5, print: Kelp, ground: Kelp}
colourways: {ebb: {was: tide, blocks: 2}}
layout: {across: 2, down: 1}
`))
}

func TestChangesOfTheJobComeBeforeItsBlocks(t *testing.T) {
	said := revisedBy(t, `job: cove-mat
title: Harbour mat
client: Saltmarsh Surgery
received: 2026-11-03
due: 2026-12-18
fabrics: {Kelp: {form: yardage, width: 42}, Foam: {form: yardage, width: 42}}
block: {make: four-patch, square: 5, print: Kelp, ground: Foam}
colourways: {tide: {blocks: 2}}
layout: {across: 2, down: 1}
`)
	assert.Regexp(t, "^work: about .*, was about ", said[0])
	assert.Equal(t, []string{
		"buy Foam: 1/4 yd, was none", // hand-worked: one strip of 5 in for four squares, bought by the eighth
		"title: Harbour mat, was cove-mat",
		"client: Saltmarsh Surgery, was not given",
		"received: 2026-11-03, was 2026-11-02",
		"due: 2026-12-18, was not given",
		"fabrics: Kelp, Foam, was Kelp",
		"2 blocks of other fabrics",
	}, said[1:8])
}

// Hand-worked: a block of four squares of 5 in is 9 1/2 in raw, of 6 1/2 in
// 12 1/2 in; two of them are 24 × 12 in flat, and were 18 × 9 in.
func TestOtherSizesAreSaidFirst(t *testing.T) {
	said := revisedBy(t, strings.ReplaceAll(mat, "square: 5", "square: 6 1/2"))
	assert.Equal(t, []string{
		"quilt, flat: 24 × 12 in, was 18 × 9 in",
		"blocks, raw: 12 1/2 in square, was 9 1/2 in square",
		"tide: square 6 1/2 in, was 5 in",
	}, said[:3])
	assert.Contains(t, said, "pieces of Kelp: 8 of 6 1/2 in square, was 8 of 5 in square")
}

// What nothing else is said about, such as a colour, still makes another sheet.
func TestAnotherSheetIsNeverCalledTheSame(t *testing.T) {
	assert.Equal(t, []string{"the job sheet says something else: quiltrun plan cove-mat shows it"},
		revisedBy(t, strings.ReplaceAll(mat, "width: 42}", "width: 42, colour: teal}")))
	assert.Empty(t, revisedBy(t, "# a note\n"+mat))
}

func TestFabricsWithTheSameDifferenceShareASentence(t *testing.T) {
	var all alike
	all.add("Kelp", "none", "1/4 yd")
	all.add("Foam", "1/4 yd", "none")
	all.add("Dune", "none", "1/4 yd")
	all.add("Gorse", "1 yd", "1 yd")
	assert.Equal(t, []string{"buy Kelp, Dune, each: 1/4 yd, was none", "buy Foam: none, was 1/4 yd"}, all.said("buy "))
}
