package cli

import (
	"strings"

	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

// checkJob refuses a file where a booked job's id is meant.
func checkJob(arg string) error {
	if isFile(arg) {
		return wrong("%q is a file, not the id of a booked job", arg).
			hint("the id stands in the job file, after job:")
	}
	return nil
}

// bookedID is the booked job that was typed: its id or a beginning that no
// other booked job has. Between two it never guesses.
func bookedID(opened *store.Store, typed string) (string, error) {
	ids, err := opened.Jobs()
	if err != nil {
		return "", err
	}
	var found []string
	for _, id := range ids {
		if id == typed {
			return id, nil
		}
		if typed != "" && strings.HasPrefix(id, typed) {
			found = append(found, id)
		}
	}
	switch len(found) {
	case 1:
		return found[0], nil
	case 0:
		return "", tracker.NoSuchJob(typed, ids)
	}
	return "", failed("%q may be any of %s", typed, strings.Join(found, ", ")).hint("type enough of the id to tell them apart")
}

// bookedState is the booked job that was typed.
func bookedState(opened *store.Store, typed string) (tracker.State, error) {
	id, err := bookedID(opened, typed)
	if err != nil {
		return tracker.State{}, err
	}
	return stateOf(opened, id)
}

// stateOf folds one job's entries.
func stateOf(opened *store.Store, id string) (tracker.State, error) {
	events, err := opened.Events(id)
	if err != nil {
		return tracker.State{}, err
	}
	return folded(id, events)
}

// folded adds up one job's entries. What does not add up is damage that a look
// at single entries cannot find.
func folded(id string, events []tracker.Event) (tracker.State, error) {
	return through(id, tracker.State{}, events)
}

// through is folded from a state that some of the entries have led to already.
func through(id string, known tracker.State, events []tracker.Event) (tracker.State, error) {
	state, err := known.Through(events)
	if err != nil {
		return tracker.State{}, failed("the entries of %s cannot be read: %v", id, err).
			hint("try: quiltrun check")
	}
	return state, nil
}

// allStates folds every booked job, in order of their ids.
func allStates(opened *store.Store) ([]tracker.State, error) {
	ids, err := opened.Jobs()
	if err != nil {
		return nil, err
	}
	states := make([]tracker.State, len(ids))
	for i, id := range ids {
		if states[i], err = stateOf(opened, id); err != nil {
			return nil, err
		}
	}
	return states, nil
}
