package tracker

import (
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
			What: fmt.Sprintf("%s comes after %s: write %s..%s", first, last, last, first)}
	}
	return keys[a : b+1], nil
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

// operation finds one operation by its number, its key, or the beginning of one
// key only.
func (s State) operation(typed string) (string, error) {
	text := strings.ToLower(strings.TrimSpace(typed))
	keys := s.keys()
	if slices.Contains(keys, text) {
		return text, nil
	}
	if n, err := strconv.Atoi(text); err == nil {
		return s.numbered(n)
	}
	var begin []string
	for _, key := range keys {
		if text != "" && strings.HasPrefix(key, text) {
			begin = append(begin, key)
		}
	}
	switch len(begin) {
	case 1:
		return begin[0], nil
	case 0:
		return "", s.noOperation(typed, text, keys)
	}
	return "", &Refusal{Kind: Ambiguous, Near: begin,
		What: fmt.Sprintf("%s begins %s", quoted(typed), andList(begin)), Hint: "type more of it, or its number"}
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
		name := fmt.Sprintf("%d %s", o.Number, o.Key)
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

// noOperation is a text that no key begins with. Where no key is like it, the
// ends of the route show what keys look like.
func (s State) noOperation(typed, text string, keys []string) *Refusal {
	if number, ok := s.Ledger.Retired[text]; ok {
		return retiredOperation(text, number)
	}
	r := &Refusal{Kind: UnknownOperation, Near: Nearest(text, keys), Hint: "type its number, its key, or the beginning of its key"}
	if len(r.Near) > 0 {
		r.What = fmt.Sprintf("there is no operation %s; %s", quoted(typed), thereIs(r.Near))
	} else {
		r.What = fmt.Sprintf("there is no operation %s: the route goes from %s to %s", quoted(typed), keys[0], keys[len(keys)-1])
	}
	return r
}
