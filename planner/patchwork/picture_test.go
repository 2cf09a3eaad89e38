package patchwork

import (
	"cmp"
	"fmt"
	"slices"
)

// picture is what a unit looks like: its size and its patches, each by its role
// and its true corners from the topmost leftmost on, in one order. Which way up
// a fabric lies is no part of it.
func picture(u Unit) []string {
	list := []string{fmt.Sprint(u.Size)}
	for _, p := range u.Patches {
		list = append(list, fmt.Sprint(p.Role, trueCorners(p.Corners)))
	}
	slices.Sort(list[1:])
	return list
}

// trueCorners leaves out corners that lie on a side or twice in one place.
func trueCorners(corners []Point) []Point {
	var kept []Point
	for i, p := range corners {
		before, after := corners[(i+len(corners)-1)%len(corners)], corners[(i+1)%len(corners)]
		if p == after {
			continue
		}
		for j := 2; before == p; j++ {
			before = corners[(i+len(corners)*j-j)%len(corners)]
		}
		in, out := Seam{A: before, B: p}.run(), Seam{A: p, B: after}.run()
		if in != out {
			kept = append(kept, p)
		}
	}
	first := 0
	for i, p := range kept {
		if cmp.Or(cmp.Compare(p.Y, kept[first].Y), cmp.Compare(p.X, kept[first].X)) < 0 {
			first = i
		}
	}
	return append(slices.Clone(kept[first:]), kept[:first]...)
}

// pressing is the seams of a unit with their leans, all the same way round, but
// for those of some choices.
func pressing(u Unit, but func(choice int) bool) []string {
	var list []string
	for _, s := range u.Seams {
		if but(s.Choice) {
			continue
		}
		if cmp.Or(cmp.Compare(s.A.Y, s.B.Y), cmp.Compare(s.A.X, s.B.X)) > 0 {
			s.A, s.B = s.B, s.A
		}
		list = append(list, fmt.Sprint(s))
	}
	slices.Sort(list)
	return list
}
