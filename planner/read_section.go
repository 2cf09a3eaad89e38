package planner

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// section is a group of keys, each of which has a name of its own here.
type section struct {
	r     *jobReader
	node  *fileNode
	what  string // for the person, "the layout"
	known []string
	by    map[string]filePair
	order []string // the keys given, in file order
	meant []string // keys that are not given, and that a mistyped one stands for
}

// section reads a group of keys. Keys that are not known and keys given twice
// are reported; the trade's other words count as the key that they stand for.
func (r *jobReader) section(n *fileNode, what string, known ...string) section {
	s := section{r: r, node: n, what: what, known: known}
	if n == nil {
		return s
	}
	s.by = make(map[string]filePair, len(n.pairs))
	s.order = make([]string, 0, len(n.pairs))
	r.at[n.path] = n.at
	if n.kind != fields && n.kind != nothing {
		r.fault(n, fmt.Sprintf("%s should hold keys with values, not %s", what, n.holds()), n.hint())
		s.node = nil
		return s
	}
	for _, pair := range n.pairs {
		s.add(pair)
	}
	return s
}

// add takes one key in, or reports why not. Of a key given twice the first counts
// for what else is checked.
func (s *section) add(pair filePair) {
	key, ok := keyNamed(pair.key, s.known)
	if !ok {
		s.meant = append(s.meant, nearest(pair.key, s.known))
		pair.value.under(s.node, pair.key)
		s.r.report(pair.at, pair.value.path, fmt.Sprintf("%s is not a key of %s", said(pair.key), s.what),
			s.unknownHint(pair))
		return
	}
	pair.value.under(s.node, key)
	if first, twice := s.by[key]; twice {
		s.r.report(pair.at, pair.value.path, twiceGiven(pair.key, first.key),
			fmt.Sprintf("the first is on line %d; keep one", first.at.Line))
		return
	}
	s.r.at[pair.value.path] = pair.value.at
	s.by[key] = pair
	s.order = append(s.order, key)
}

// unknownHint says what an unknown key may have been meant for.
func (s *section) unknownHint(pair filePair) string {
	if first, _, more := strings.Cut(pair.key, " "); more && pair.value.kind == nothing {
		if key, ok := keyNamed(first, s.known); ok {
			return "a colon is missing after " + said(key)
		}
	}
	return cmp.Or(didYouMean(pair.key, s.known), "the keys here are "+listed(s.known, "and"))
}

// twiceGiven words a key that comes again, perhaps under another word.
func twiceGiven(again, first string) string {
	if again == first {
		return said(again) + " is given twice"
	}
	return said(again) + " and " + said(first) + " mean the same key"
}

// get is the value at a key, nil where the file does not give it.
func (s section) get(key string) *fileNode { return s.by[key].value }

// need is the value at a key that must be there; its absence is reported, unless a
// mistyped key that was reported stands for it.
func (s section) need(key string) *fileNode {
	n := s.get(key)
	if n == nil && s.node != nil && !slices.Contains(s.meant, key) {
		s.r.report(s.node.at, s.path(key), fmt.Sprintf("%s has no %s", s.what, said(key)), writeAs(keyExamples()[key]))
	}
	return n
}

// path is that of a key, given or not.
func (s section) path(key string) string {
	var n fileNode
	n.under(s.node, key)
	return n.path
}

// named reads a group whose keys are names that people give: fabrics,
// colourways. Each name comes once, with its value; faulty ones are reported
// and left out. The example is a value that such a name may have.
func (r *jobReader) named(n *fileNode, kind, example string) []filePair {
	if n == nil {
		return nil
	}
	r.at[n.path] = n.at
	if n.kind != fields {
		r.fault(n, fmt.Sprintf("%s should hold names with values, not %s", said(n.label), n.holds()), n.hint())
		return nil
	}
	if len(n.pairs) == 0 {
		r.fault(n, said(n.label)+" is empty", n.hint())
	}
	var good []filePair
	first := map[string]Position{}
	for _, pair := range n.pairs {
		pair.value.under(n, pair.key)
		pair.value.example = pair.key + ": " + example
		at, twice := first[pair.key]
		what := nameFault(pair.key)
		switch {
		case what != "":
			r.report(pair.at, pair.value.path, "the name of "+kind+" "+what, "")
		case twice:
			r.report(pair.at, pair.value.path, said(pair.key)+" is given twice",
				fmt.Sprintf("the first is on line %d; keep one", at.Line))
		default:
			first[pair.key] = pair.at
			r.at[pair.value.path] = pair.value.at
			good = append(good, pair)
		}
	}
	return slices.Clip(good)
}

// items is the values of a list; anything else is reported. What the list is, and
// what of, is for the person: "a row of turn", "degrees".
func (r *jobReader) items(n *fileNode, what, of string) []*fileNode {
	if n == nil {
		return nil
	}
	r.at[n.path] = n.at
	if n.kind != list {
		r.fault(n, fmt.Sprintf("%s should be a list of %s, not %s", what, of, n.holds()), n.hint())
		return nil
	}
	if len(n.items) == 0 {
		r.fault(n, what+" is an empty list", n.hint())
	}
	for i, item := range n.items {
		item.itemOf(n, i)
		r.at[item.path] = item.at
	}
	return n.items
}
