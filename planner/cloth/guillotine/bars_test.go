package guillotine
import ("testing";"fmt";"os")
func TestBarsScratch(t *testing.T) {
	sumUp(t, func(W int, ps []Piece, simple []level, lb int) (int, string) {
		lim := int(envf("LIM", 500000))
		b1 := newBars(W, ps, func(s side) (int, int) { return s.w, s.h }).need(lim)
		b2 := 0
		if os.Getenv("BOTH")!="" { b2 = leastLength(W, ps, total(simple), lim) }
		return max(b1,b2,lb), fmt.Sprintf("area=%d bars=%d both=%d gain=%.1f", lb, b1, b2, float64(max(b1,b2)-lb)/float64(lb)*100)
	})
}
