package tracker

import (
	"fmt"
	"strings"
)

// deed is the way to say what an operation does to the things that it counts, and
// what they are then.
type deed struct{ verb, done string }

// deeds are those of operations whose key says more than a first word does.
var deeds = map[string]deed{
	"seam-test":   {"test", "tested"},
	"sew-pairs":   {"chain-sew", "chain-sewn"},
	"square-up":   {"square up", "squared up"},
	"lay-out-top": {"lay out", "laid out"},
	"hand-over":   {"hand over", "handed over"},
	"send-out":    {"send out", "sent out"},
	"stay-stitch": {"stay-stitch", "stay-stitched"},
}

// participles are what things are after the verb that a name or key begins with.
var participles = map[string]string{
	"add": "added", "attach": "attached", "chain-sew": "chain-sewn", "collect": "collected", "cut": "cut",
	"finish": "finished", "join": "sewn", "kit": "kitted", "lay": "laid out", "layer": "layered", "make": "made",
	"measure": "measured", "prepare": "prepared", "press": "pressed", "quilt": "quilted", "recut": "recut",
	"sew": "sewn", "square": "squared", "subcut": "cut", "test": "tested", "trim": "trimmed", "turn": "turned",
}

// deed is what an operation does: by its key, by the first word of its name, else
// by the first word of its key.
func (o Operation) deed() deed {
	if d, known := deeds[o.Key]; known {
		return d
	}
	named, _, _ := strings.Cut(o.Name, " ")
	key, _, _ := strings.Cut(o.Key, "-")
	for _, verb := range []string{named, key} {
		if done, known := participles[verb]; known {
			return deed{verb, done}
		}
	}
	return deed{key, "done"}
}

// already says that a row is done: "tide: all 10 pairs are chain-sewn already",
// "Gorse is prepared already".
func (b *board) already(row int) string {
	o := b.rows[row]
	done, of := o.deed().done, ""
	if o.CountedIn == "cut" { // cuts are made, not recut
		done = "made"
	}
	if b.oneOfSeveral(row) {
		of = " of " + o.Title()
	}
	switch {
	case o.Count == 1 && of == "" && string(o.CountedIn) == string(o.Lot.Kind):
		return fmt.Sprintf("%s is %s already", o.Lot.Name, done)
	case o.Count == 1:
		return fmt.Sprintf("%s: the one %s%s is %s already", o.Lot.Name, o.CountedIn, of, done)
	}
	return fmt.Sprintf("%s: all %s%s are %s already", o.Lot.Name, things(o.Count, o.CountedIn), of, done)
}

// doing is "to chain-sew", or the operation's title where the lot goes through
// several operations that would be called so.
func (b *board) doing(row int) string {
	if b.oneOfSeveral(row) {
		return "in " + b.rows[row].Title()
	}
	return "to " + b.rows[row].deed().verb
}

// oneOfSeveral reports that a lot goes through other operations that do the same
// to the like things.
func (b *board) oneOfSeveral(row int) bool {
	o := b.rows[row]
	for _, other := range b.rows {
		if other.Key != o.Key && other.Lot == o.Lot && other.CountedIn == o.CountedIn && other.deed() == o.deed() {
			return true
		}
	}
	return false
}
