package tracker

import (
	"strings"

	"quiltrun/planner"
)

// Setup is what work has in common that is done without setting up anew: the
// place, and there the thread, the foot or the tool.
type Setup struct {
	Place planner.Place
	Kind  string // such as piecing, binding, pressing
}

// SharedSetup is the set-up that an operation needs. At the machine thread and foot decide: piecing,
// quilting, binding. At the cutting table the tool does.
func (o Operation) SharedSetup() Setup { return Setup{o.Place, setupKind(o)} }

// placeKinds are the places where all work shares one set-up.
var placeKinds = map[planner.Place]string{
	planner.Iron: "pressing", planner.DesignWall: "laying out", planner.Frame: "layering",
}

// setupKind is what is set up for an operation at its place.
func setupKind(o Operation) string {
	if kind, one := placeKinds[o.Place]; one {
		return kind
	}
	begins := func(keys ...string) bool {
		for _, key := range keys {
			if o.Key == key || strings.HasPrefix(o.Key, key+"-") {
				return true
			}
		}
		return false
	}
	switch o.Place {
	case planner.Machine:
		switch {
		case begins("quilt"):
			return "quilting"
		case strings.HasSuffix(o.Key, "-binding"):
			return "binding"
		}
		return "piecing"
	case planner.CuttingTable:
		switch {
		case begins("kit"):
			return "kitting"
		case begins(blockIsMade, "trim", "square"):
			return "squaring up"
		case begins("test", "measure"):
			return "measuring"
		}
		return "cutting"
	case planner.Hand:
		if strings.HasSuffix(o.Key, "-binding") {
			return "hand sewing"
		}
		return "handing over"
	}
	return o.deed().verb
}
