package tracker

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// noted keeps a note.
func noted(t *testing.T, s State, text, id string) State {
	ev, err := s.Note(text, id, monday, "Runa")
	require.NoError(t, err)
	return after(t, s, ev)
}

func TestANoteIsTakenBackWhereItIsNamed(t *testing.T) {
	s := noted(t, book(t, estuary()), "needle 80", "needle")
	s = logged(t, s, "prepare", "Kelp=1")
	s = noted(t, s, "needle 90, was wrong", "wrong")

	work, err := s.Undo("", "x", monday, "Runa")
	require.NoError(t, err)
	assert.NotEqual(t, "wrong", work.Target, "undo without a name means work")

	for _, typed := range []string{"wrong", "4", "#4", "wro"} {
		undo, err := s.Undo(typed, "u", monday, "Runa")
		require.NoError(t, err, typed)
		assert.Equal(t, "wrong", undo.Target)
	}
	undo, err := s.Undo("wrong", "u", monday, "Runa")
	require.NoError(t, err)
	s = after(t, s, undo)
	note, ok := s.NewestNote()
	assert.True(t, ok)
	assert.Equal(t, "needle 80", note.Reason)
	all, err := Fold(s.events)
	require.NoError(t, err)
	sameState(t, all, s)

	again, err := s.Undo("wrong", "u", monday, "Runa")
	require.NoError(t, err)
	assert.Equal(t, undo.Target, again.Target, "sent twice it is one")
	_, err = s.Undo("wrong", "v", monday, "Runa")
	assert.Equal(t, "entry 4 (note) is taken back already", asRefusal(t, err).What)

	told, err := s.History(HistoryRequest{})
	require.NoError(t, err)
	assert.Equal(t, "u", told[3].UndoneBy.ID)
}
