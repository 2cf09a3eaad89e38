package tracker

import "testing"

// BenchmarkProspect looks what can go on in a job of 400 blocks that is half kitted.
func BenchmarkProspect(b *testing.B) {
	s := accepted(b, book(b, madeLedger(1, colourwayRun{"tide", 200}, colourwayRun{"dune", 200})), caughtUp(request(b, State{}, "kit", "tide=100")))
	for b.Loop() {
		s.Prospect(today)
	}
}

// BenchmarkAgenda fills eight hours with work of it.
func BenchmarkAgenda(b *testing.B) {
	s := accepted(b, book(b, madeLedger(1, colourwayRun{"tide", 200}, colourwayRun{"dune", 200})), caughtUp(request(b, State{}, "kit", "tide=100")))
	for b.Loop() {
		NewAgenda([]State{s}, AgendaRequest{For: 480, Today: today})
	}
}
