package shelf

import (
	"fmt"
	"strconv"
	"strings"

	"quiltrun/tracker"
)

// UnknownItem refuses an item that is not on the shelf.
const UnknownItem tracker.RefusalKind = "unknown item"

// Item is the item that was typed: its number, or the leftovers' id.
func (s Shelf) Item(typed string) (Item, error) {
	var ids []string
	for _, i := range s.Items {
		if i.ID == typed {
			return i, nil
		}
		if i.Lies() > 0 {
			ids = append(ids, i.ID)
		}
	}
	r := &tracker.Refusal{Kind: UnknownItem, What: fmt.Sprintf("there is no item %q on the shelf", typed), Near: tracker.Nearest(typed, ids)}
	if r.Hint = "quiltrun shelf shows every item with its number"; len(s.Items) == 0 {
		r.Hint = "nothing lies on the shelf yet: quiltrun shelf put"
	}
	return Item{}, r
}

// Check refuses an entry that cannot be as it is said: more than lies there, or
// taken off though a job has it kept. Scrapping what is kept is no choice, and
// is taken.
func (s Shelf) Check(e tracker.Shelf) error {
	if e.Do == tracker.PutOn {
		if e.Amount <= 0 {
			return &tracker.Refusal{Kind: tracker.MissingCount, What: "how much is put on the shelf?"}
		}
		return nil
	}
	i, err := s.Item(e.Item)
	switch {
	case err != nil:
		return err
	case e.Do == tracker.CountedAnew:
		return nil
	case e.Amount <= 0:
		return &tracker.Refusal{Kind: tracker.MissingCount, What: "how much of it?"}
	case e.Amount > i.Lies():
		return &tracker.Refusal{Kind: tracker.TooMany, What: fmt.Sprintf("only %s of %s lies there, not %s", i.Words(i.Lies()), i.label(), i.Words(e.Amount)),
			Hint: "if more lies there, count it anew first: quiltrun shelf recount " + i.ID + " AMOUNT"}
	case e.Do == tracker.TakenOff && e.Amount > i.Free:
		return &tracker.Refusal{Kind: tracker.TooMany,
			What: fmt.Sprintf("only %s of %s is free; %s", i.Words(i.Free), i.label(), i.KeptFor()),
			Hint: "what is spoilt or gone is told with: quiltrun shelf scrap " + i.ID + " AMOUNT"}
	}
	return nil
}

func (i Item) label() string { return "item " + i.ID + " (" + i.Called() + ")" }

// KeptFor says whom an item is kept for: "kept: 1 1/2 yd for estuary-lap".
func (i Item) KeptFor() string {
	var parts []string
	for _, c := range i.For {
		text := i.Words(c.Amount) + " for " + c.Job
		if c.For != "" {
			text += " (" + c.For + ")"
		}
		parts = append(parts, text)
	}
	if len(parts) == 0 {
		return "nothing is kept"
	}
	return "kept: " + strings.Join(parts, ", ")
}

// Undo is the entry that is to be taken back: the newest that stands where typed
// is "", else the one with that number, id or beginning of an id.
func (s Shelf) Undo(typed string) (Entry, error) {
	var found []Entry
	for i := len(s.Entries) - 1; i >= 0; i-- {
		e := s.Entries[i]
		switch {
		case typed == "" && e.UndoneBy == "":
			return e, nil
		case typed != "" && (e.ID == typed || strconv.FormatUint(e.Seq, 10) == typed):
			found = []Entry{e}
			i = 0
		case typed != "" && strings.HasPrefix(e.ID, typed):
			found = append(found, e)
		}
	}
	switch {
	case len(found) > 1:
		return Entry{}, &tracker.Refusal{Kind: tracker.Ambiguous, What: fmt.Sprintf("%q begins the ids of %d entries of the shelf", typed, len(found)), Hint: "type more of it"}
	case typed == "":
		return Entry{}, &tracker.Refusal{Kind: tracker.NothingToUndo, What: "nothing to undo: no entry of the shelf stands"}
	case len(found) == 0:
		return Entry{}, &tracker.Refusal{Kind: tracker.UnknownEntry, What: fmt.Sprintf("the shelf has no entry %q", typed), Hint: "every entry says its number and id"}
	case found[0].UndoneBy != "":
		return Entry{}, &tracker.Refusal{Kind: tracker.NothingToUndo, What: fmt.Sprintf("entry %d of the shelf is taken back already", found[0].Seq)}
	}
	return found[0], nil
}
