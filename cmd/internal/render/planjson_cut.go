package render

import "quiltrun/planner"

// cutOf fills in what the cutting plan and a wash make of the need.
func (s shown) cutOf(out *jsonFabric, f planner.FabricNeed) {
	out.Joint, out.Pieced = s.length(f.Joint), []jsonSize{}
	out.Leftovers = list(leftovers(f.Cutting), func(o leftover) jsonLeftover {
		return jsonLeftover{s.length(o.size.Width), s.length(o.size.Height), o.count}
	})
	if f.Fabric.OnHand != nil {
		out.Pieced = list(f.Fabric.OnHand.Pieces, s.size)
	}
	if w := f.Fabric.Shrinkage; w != (planner.Shrinkage{}) {
		out.Shrinkage = &jsonSize{decimal(float64(w.Width)/100, 2), decimal(float64(w.Length)/100, 2)}
	}
	if f.Fabric.Form.Sheets() {
		out.CutSize, out.Plain = some(s.size(f.Fabric.Sheet())), count(f.PlainSheets)
		if f.Nested != nil {
			out.Nested = &jsonNested{count(f.Nested.Sheets), f.Nested.Cuts}
		}
		return
	}
	out.CutWidth, out.Plain = some(s.length(f.Fabric.Across())), s.length(f.Plain)
	if f.Nested != nil {
		out.Nested = &jsonNested{s.length(f.Nested.Length), f.Nested.Cuts}
	}
}

func (s shown) borderCut(b planner.BorderCut) jsonBorderCut {
	out := jsonBorderCut{
		Border: b.Nth, Fabric: b.Fabric, CutWidth: s.length(b.Cut), Sides: s.length(b.Sides), Ends: s.length(b.Ends),
		Grain: string(b.Grain), Strips: b.Strips, Joined: b.Joined,
	}
	if b.Considered {
		out.Saves = some(s.length(b.Saves))
	}
	return out
}

func (s shown) batting(b planner.BattingPlan) *jsonBatting {
	out := &jsonBatting{Width: s.length(b.Size.Width), Height: s.length(b.Size.Height), Choice: b.Choice, Left: list(b.Left, s.size), By: "self"}
	if b.Quilter {
		out.By = "quilter"
	}
	if b.Package != nil {
		out.Package, out.Packages = some(s.size(*b.Package)), b.Packages
	}
	if b.Roll > 0 {
		out.Roll = some(s.length(b.Roll))
	}
	if b.Length > 0 {
		out.Length = some(s.length(b.Length))
	}
	return out
}

func (s shown) binding(b planner.BindingPlan) *jsonBinding {
	out := &jsonBinding{Strips: b.Strips, Length: s.length(b.Length), FabricLength: s.length(b.FabricLength),
		Fabric: b.Fabric, StripWidth: s.length(b.Strip), Allowance: s.length(b.Allowance), Spare: s.length(b.Spare), Joins: string(b.Joints)}
	if b.Square > 0 {
		out.Square = some(s.length(b.Square))
	} else {
		out.Fewer = some(s.length(b.Fewer))
	}
	return out
}
