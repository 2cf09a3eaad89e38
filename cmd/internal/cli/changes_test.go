package cli

import (
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
	old := tracker.Freeze(plan(mat, planner.Prior{}))
	now := tracker.Refreeze(old, plan(file, old.Prior()))
	state, err := tracker.Fold([]tracker.Event{
		{Schema: 1, ID: "booking", Seq: 1, Kind: tracker.Booked, Revision: 1, Ledger: &old},
		{Schema: 1, ID: "revision", Seq: 2, Kind: tracker.Revised, Revision: 2, Ledger: &now},
	})
	require.NoError(t, err)
	return changes(old, now, state.Rows())
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

func TestChangesOfTheJobComeFirst(t *testing.T) {
	assert.Equal(t, []string{
		"title: Harbour mat, was cove-mat",
		"client: Saltmarsh Surgery, was not given",
		"received: 2026-11-03, was 2026-11-02",
		"due: 2026-12-18, was not given",
		"fabrics: Kelp, Foam, was Kelp",
		"2 blocks of other fabrics",
	}, revisedBy(t, `job: cove-mat
title: Harbour mat
client: Saltmarsh Surgery
received: 2026-11-03
due: 2026-12-18
fabrics: {Kelp: {form: yardage, width: 42}, Foam: {form: yardage, width: 42}}
block: {make: four-patch, square: 5, print: Kelp, ground: Foam}
colourways: {tide: {blocks: 2}}
layout: {across: 2, down: 1}
`)[:6])
}
