package tracker

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// run is the keys of the operations that were typed, in the route's order: one,
// or all from a to b of a run a..b.
func (s State) run(typed string) ([]string, error) {
	from, to, isRun := strings.Cut(typed, "..")
	first, err := s.operation(from)
	if err != nil || !isRun {
		return []string{first}, err
	}
	last, err := s.operation(to)
	if err != nil {
		return nil, err
	}
	keys := s.keys()
	a, b := slices.Index(keys, first), slices.Index(keys, last)
	if a > b {
		return nil, &Refusal{Kind: Ambiguous, Near: []string{last + ".." + first},
			What: fmt.Sprintf("%s comes after %s: write %s..%s", s.board.titleOf(first), s.board.titleOf(last), last, first)}
	}
	return keys[a : b+1], nil
}

// Meant is what a text may mean as OP, by title: an operation, a run of them, or
// the several that it may be the beginning of. None is nothing.
func (s State) Meant(typed string) []string {
	if !s.Booked() {
		return nil
	}
	run, err := s.run(typed)
	var refusal *Refusal
	switch {
	case err == nil:
		return []string{s.board.runTitle(run)}
	case errors.As(err, &refusal) && refusal.Kind == Ambiguous:
		return s.board.titles(refusal.Near)
	}
	return nil
}

// keys is the route's keys in order of their numbers.
func (s State) keys() []string {
	var keys []string
	for _, o := range s.Ledger.Operations {
		if len(keys) == 0 || keys[len(keys)-1] != o.Key {
			keys = append(keys, o.Key)
		}
	}
	return keys
}

// operation finds one operation by its number, its key, its name on the wall, or
// a beginning that only one has.
func (s State) operation(typed string) (string, error) {
	key := strings.ToLower(strings.TrimSpace(typed))
	if slices.Contains(s.keys(), key) {
		return key, nil
	}
	if n, err := strconv.Atoi(key); err == nil {
		return s.numbered(n)
	}
	text := plainName(typed)
	if key := s.board.asTitle(text); key != "" {
		return key, nil
	}
	switch found := s.board.found(text); len(found) {
	case 1:
		return found[0], nil
	case 0:
		return "", s.noOperation(typed, key)
	default:
		return "", &Refusal{Kind: Ambiguous, Near: found,
			What: fmt.Sprintf("%s may be any of %s", quoted(typed), andList(s.board.titles(found))), Hint: "type more of it, or its number"}
	}
}

// numbered finds an operation by the number on the wall. A retired one keeps its
// number for ever, so whoever reads it off an old sheet is told why.
func (s State) numbered(n int) (string, error) {
	for _, o := range s.Ledger.Operations {
		if o.Number == n {
			return o.Key, nil
		}
	}
	for key, number := range s.Ledger.Retired {
		if number == n {
			return "", retiredOperation(key, n)
		}
	}
	near := s.numbersNear(n)
	return "", &Refusal{Kind: UnknownOperation, Near: near,
		What: fmt.Sprintf("no operation has the number %d: near it %s %s", n, isOrAre(len(near)), andList(near))}
}

// numbersNear is the operations on either side of a number.
func (s State) numbersNear(n int) []string {
	var below, above string
	for _, o := range s.Ledger.Operations {
		name := o.Title()
		if o.Number < n {
			below = name
		} else if above == "" {
			above = name
		}
	}
	return slices.DeleteFunc([]string{below, above}, func(name string) bool { return name == "" })
}

// retiredOperation is one that a revision took out of the route.
func retiredOperation(key string, number int) *Refusal {
	return &Refusal{Kind: UnknownOperation, What: fmt.Sprintf("%s (%d) is no longer in the route: the job was revised without it", key, number)}
}

// noOperation is a text that no key and no name begins with. Where none is like
// it, the ends of the route show what operations are called.
func (s State) noOperation(typed, key string) *Refusal {
	if number, ok := s.Ledger.Retired[key]; ok {
		return retiredOperation(key, number)
	}
	r := &Refusal{Kind: UnknownOperation, Near: s.board.near(plainName(typed)), Hint: "type its number, its name, or a beginning that only one has"}
	if len(r.Near) > 0 {
		r.What = fmt.Sprintf("there is no operation %s; %s", quoted(typed), thereIs(s.board.titles(r.Near)))
	} else {
		rows := s.board.rows
		r.What = fmt.Sprintf("there is no operation %s: the route goes from %s to %s", quoted(typed), rows[0].Title(), rows[len(rows)-1].Title())
	}
	return r
}
