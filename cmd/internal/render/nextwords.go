package render

import (
	"fmt"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/english"
	"quiltrun/tracker"
)

// nextWords is the next sensible thing to do in a job: "chain-sew tide pairs: 14
// left, about 20 min", or what all of it waits for.
func nextWords(s tracker.State, today planner.Date) string {
	next := s.NextDoable(today)
	if len(next) == 0 {
		_, held := s.Prospect(today)
		if len(held) == 0 {
			return "nothing"
		}
		return "nothing can go on: " + held[0].Why
	}
	return fmt.Sprintf("%s: %s, %s", taskWords(next), roomWords(next), about(minutesOf(next)))
}

// taskWords is what is done to which lots. The lot stands before what is counted
// where the operation's name ends in that: "chain-sew tide pairs".
func taskWords(tasks []tracker.Doable) string {
	first := tasks[0]
	names := make([]string, len(tasks))
	for i, t := range tasks {
		names[i] = t.Lot.Name
	}
	verb, thing, _ := strings.Cut(first.Name, " ")
	if one := string(first.CountedIn); len(tasks) == 1 && first.Lot.Kind != planner.QuiltLot && (thing == one || thing == english.Plural(one)) {
		return verb + " " + together(names[0]) + " " + thing
	}
	return fmt.Sprintf("%s (%s)", first.Name, fewNames(names))
}

// roomWords is how much of it is left, and how much of that can be made now.
func roomWords(tasks []tracker.Doable) string {
	room, left := 0, 0
	var tests []string
	for _, t := range tasks {
		room, left = room+t.Room, left+t.Left
		tests = append(tests, t.Tests...)
	}
	switch one := string(tasks[0].CountedIn); {
	case len(tests) > 0:
		return fmt.Sprintf("%s for %s", counted(room, one), testWords(tests))
	case room < left:
		return fmt.Sprintf("%d of %s left can be made", room, counted(left, one))
	}
	return fmt.Sprintf("%d left", left)
}

// testWords names test blocks, one by its id.
func testWords(ids []string) string {
	if len(ids) == 1 {
		return "the test block " + together(ids[0])
	}
	return "test blocks"
}

// minutesOf is the expected time of all that can be made of tasks.
func minutesOf(tasks []tracker.Doable) planner.Minutes {
	var sum planner.Minutes
	for _, t := range tasks {
		sum += t.Minutes(t.Room)
	}
	return sum
}
