package render

import (
	"fmt"
	"os"
	"quiltrun/planner"
	"quiltrun/tracker"
	"quiltrun/tracker/forecast"
	"strconv"
	"strings"
	"testing"
	"time"
)

func scratch(t testing.TB, name string) planner.Plan {
	data, err := os.ReadFile("../../../examples/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	job, err := planner.Parse(name+".yaml", data)
	if err != nil {
		t.Fatal(err)
	}
	p, err := planner.Make(job, planner.Prior{})
	if err != nil {
		t.Fatal(err)
	}
	return p
}
func sl() Look {
	w, _ := strconv.Atoi(os.Getenv("W"))
	return Look{Width: w, Unicode: os.Getenv("ASCII") == "", Colour: os.Getenv("COL") != ""}
}
func TestScratch(t *testing.T) { fmt.Println(Sheet(os.Stdout, scratch(t, os.Getenv("JOB")), sl())) }
func TestLeft(t *testing.T) {
	at := time.Date(2026, 11, 20, 18, 0, 0, 0, time.UTC)
	l := tracker.Freeze(scratch(t, os.Getenv("JOB")))
	ev := []tracker.Event{{Schema: 1, ID: "b1", Seq: 1, At: at, Kind: tracker.Booked, Revision: 1, Ledger: &l}}
	fmt.Println(Booked(os.Stdout, ev[0], false, sl()))
	BookedJSON(os.Stdout, ev[0], true)
	s, err := tracker.Fold(ev)
	if err != nil {
		t.Fatal(err)
	}
	for i, what := range []string{"prepare all", "cut all", "kit all", "sew-pairs " + l.Colourways[0] + "=4"} {
		f := strings.Fields(what)
		c, err := tracker.ParseCounts(f[1:])
		if err != nil {
			t.Fatal(err)
		}
		took := planner.Minutes(35)
		lots := []*tracker.Lot{nil}
		if f[1] == "all" {
			lots = nil
			for _, o := range l.Operations {
				if o.Key == f[0] {
					lots = append(lots, &tracker.Lot{Kind: o.Lot.Kind, Name: o.Lot.Name})
				}
			}
		}
		for j, lot := range lots {
			e, err := s.Log(tracker.LogRequest{Operation: f[0], Counts: c, Lot: lot, Took: &took, ID: fmt.Sprint("e", i, ".", j), At: at, By: "me"})
			if err != nil {
				t.Log(f, lot, err)
				continue
			}
			e.Seq = uint64(len(s.Entries) + 2)
			s2, err := s.With(e)
			if err != nil {
				t.Fatal(err)
			}
			s = s2
			if j == len(lots)-1 {
				Logged(os.Stdout, s, e, false, sl())
				LoggedJSON(os.Stdout, s, e, false)
			}
		}
	}
	Left(os.Stdout, []tracker.State{s, s}, sl())
	LeftJSON(os.Stdout, s)
	u, err := s.Undo("", "u1", at, "me")
	if err != nil {
		t.Fatal(err)
	}
	u.Seq = 999
	s, _ = s.With(u)
	Undone(os.Stdout, s, u, false, sl())
	UndoneJSON(os.Stdout, s, u, false)
	_ = forecast.Answer{}
}
