package cli

import (
	"cmp"
	"strings"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// Options of log that read their own value, so that a wrong one is found
// together with other faults of the command line, before the store is opened.

// tookValue is the option --took: how long the whole entry took, set-up
// included. A bare number is refused: 35 may be minutes or seconds.
type tookValue struct{ to **planner.Minutes }

// String and Type are what help shows: no default, and a word for the value.
func (v tookValue) String() string { return "" }
func (v tookValue) Type() string   { return "TIME" }

// Set reads the time.
func (v tookValue) Set(text string) error {
	minutes, err := someTime("--took", text, longestWork, "leave --took out where nobody timed it")
	if err != nil {
		return err
	}
	*v.to = &minutes
	return nil
}

// lotValue is the option --lot: any lot by its name, with its kind before it
// where lots of several kinds are called so.
type lotValue struct{ to **tracker.Lot }

func (v lotValue) String() string { return "" }
func (v lotValue) Type() string   { return "LOT" }

// Set reads the lot. Whether the job has it is not to be known yet.
func (v lotValue) Set(text string) error {
	kind, name, found := strings.Cut(text, ":")
	switch {
	case text != "" && !found:
		return setLot(v.to, tracker.Lot{Name: text})
	case name == "":
		return wrong("--lot %q names no lot", text).hint("write it like Kelp, or colourway:tide, fabric:Kelp or quilt:quilt-1")
	}
	switch planner.LotKind(kind) {
	case planner.FabricLot, planner.ColourwayLot, planner.QuiltLot:
		return setLot(v.to, tracker.Lot{Kind: planner.LotKind(kind), Name: name})
	}
	return wrong("--lot %q: there are no lots of the kind %q", text, kind).hint("kinds are fabric, colourway and quilt")
}

// colourwayValue is the option --colourway, short for a colourway's lot.
type colourwayValue struct{ to **tracker.Lot }

func (v colourwayValue) String() string { return "" }
func (v colourwayValue) Type() string   { return "NAME" }

// Set notes the colourway.
func (v colourwayValue) Set(name string) error {
	if name == "" {
		return wrong("--colourway needs a name")
	}
	return setLot(v.to, tracker.Lot{Kind: planner.ColourwayLot, Name: name})
}

// setLot notes the lot that counts are for. Naming the same one twice is
// harmless, two different ones are a mistake.
func setLot(to **tracker.Lot, lot tracker.Lot) error {
	if had := *to; had != nil {
		oneKind := had.Kind == lot.Kind || had.Kind == "" || lot.Kind == ""
		if had.Name != lot.Name || !oneKind {
			return wrong("two lots are named, %s and %s", lotWords(*had), lotWords(lot)).
				hint("name one with --lot or --colourway; counts per colourway go like tide=12 dune=8")
		}
		lot.Kind = cmp.Or(lot.Kind, had.Kind)
	}
	*to = &lot
	return nil
}

// lotWords is a lot with its kind, where one was typed.
func lotWords(lot tracker.Lot) string {
	return strings.TrimSpace(string(lot.Kind) + " " + lot.Name)
}
