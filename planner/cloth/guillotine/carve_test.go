package guillotine
import ("testing";"os";"strconv";"fmt";"time";"strings")
func envf(s string, d float64) float64 { if v,err := strconv.ParseFloat(os.Getenv(s),64); err==nil { return v }; return d }
func sumUp(t *testing.T, solve func(W int, ps []Piece, simple []level, lb int) (int, string)) {
	ss := sets(t)
	for _, free := range []bool{false,true} {
	if os.Getenv("FIX")!="" && free {continue}
	sum := [4]float64{}; cnt := [4]int{}; var worst [4]float64; ksum, kcnt, kworst := 0.0, 0, 0.0
	for _, r := range load(t, "strip_heights.csv") {
		if f:=os.Getenv("ONLY"); f!="" && !strings.HasPrefix(r[0],f) {continue}
		if strings.HasPrefix(r[0],"BW") && !strings.HasPrefix(r[0],"BW4") && os.Getenv("BW")=="" { continue }
		var ps []Piece; n:=0
		W,_ := strconv.Atoi(r[2])
		for _, p := range ss[r[1]] { if r[3]=="1" { p.W,p.H=p.H,p.W }; p.Free=free; ps=append(ps,p); n+=p.N }
		if n<int(envf("MIN",0)) || n>int(envf("MAX",1000)) { continue }
		b := newBench(W, ps)
		s := b.simple(50000)
		ub := total(s.levels)
		lb := b.raise(ceilDiv(areaOf(ps),W), ub)
		t0 := time.Now()
		h, info := solve(W, ps, s.levels, lb)
		d := time.Since(t0)
		opt,_ := strconv.Atoi(r[5])
		if opt>0 && !free {
			gap := float64(h-opt)/float64(opt)*100
			ksum += gap; kcnt++; kworst=max(kworst,gap)
		}
		if opt==0||free { opt=lb }
		gap := float64(h-opt)/float64(opt)*100
		c := 0; if n>20 {c=1}; if n>50 {c=2}; if n>120 {c=3}
		sum[c]+=gap;cnt[c]++;worst[c]=max(worst[c],gap)
		if os.Getenv("V")!="" { fmt.Printf("%-20s n=%3d free=%v opt=%4d simple=%d got=%5d gap=%.2f %v %s\n", r[0], n, free, opt, ub, h, gap, d.Round(time.Microsecond), info) }
	}
	for c := range sum { sum[c] /= float64(cnt[c]) }
	fmt.Printf("mean free=%v %.2f worst %.1f %v known: mean %.3f worst %.3f %d\n", free, sum, worst, cnt, ksum/float64(kcnt), kworst, kcnt)
	}
}
// tight is the least rectangle that a node needs.
func (n *Node) tight() (int, int) {
	if n.Cut == None {
		if n.Piece == Offcut { return 0, 0 }
		return n.W, n.H
	}
	w, h := 0, 0
	for _, p := range n.Parts {
		a, b := p.tight()
		if n.Cut == Across { w = max(w, a); h += b } else { w += a; h = max(h, b) }
	}
	return w, h
}
func flat(n *Node) []*Node {
	if n.Cut != Across { if _, h := n.tight(); h == 0 { return nil }; return []*Node{n} }
	var out []*Node
	for _, p := range n.Parts { out = append(out, flat(p)...) }
	return out
}
func heights(ns []*Node) int { t := 0; for _, n := range ns { _, h := n.tight(); t += h }; return t }

func TestLNSScratch(t *testing.T) {
	limit := int(envf("LIM", 5e6))
	amb := int(envf("AMB",0))
	eps := envf("EPS", 0.3)
	maxn := int(envf("POOL", 40))
	sumUp(t, func(W int, ps []Piece, simple []level, lb int) (int, string) {
		work := 0
		g := rng(88172645463325252)
		var segs []*Node
		for _, l := range simple { segs = append(segs, l.node(W, ps)) }
		b := newBench(W, ps)
		c := newCarver(W, ps)
		for i, p := range ps { c.value[i] = int64(p.W*p.H)*1024 }
		for _, mode := range []bool{false,true} {
			c.load(counts(ps)); c.draw = true
			h, nodes := c.strip(b, mode)
			work += c.work
			if h < heights(segs) { segs = nodes }
		}
		first := heights(segs)
		best := first
		tries, wins := 0, 0
		area := func(n *Node) int { a := 0; n.leaves(func(l *Node) { a += l.W*l.H }); return a }
		for work < limit && best > lb {
			tries++
			// choose segments
			n := len(segs)
			pick := map[int]bool{}
			pool := make([]int, len(ps)); cnt := 0; T := 0; A := 0
			want := 2 + g.next(maxn-1)
			for x := 0; x < 4*n && cnt < want && len(pick) < n; x++ {
				s := g.next(n)
				if pick[s] { continue }
				_, h := segs[s].tight()
				// prefer the wasteful
				waste := 1 - float64(area(segs[s]))/float64(W*h)
				if float64(g.next(1000))/1000 > 0.15 + 4*waste { continue }
				m := 0
				segs[s].leaves(func(*Node) { m++ })
				if cnt > 0 && cnt+m > want+8 { continue }
				pick[s] = true
				segs[s].leaves(func(l *Node) { pool[l.Piece]++ })
				cnt += m; T += h; A += area(segs[s])
			}
			work += 200
			if cnt < 2 || W*(T-1) < A { continue }
			d := 1+g.next(1+T*amb/1000)
			if W*(T-d) < A { d = 1 }
			eps := eps/4*float64(1+g.next(6))
			for i, p := range ps { if pool[i] > 0 { c.value[i] = int64(float64(p.W*p.H)*1024*(1+eps*(float64(g.next(2001))/1000-1))) } }
			c.work = 0
			c.load(pool)
			c.draw = false
			c.most = W*(T-d)-A
			c.fill(W, T-d)
			work += c.work + cnt*5
			if c.left > 0 { continue }
			c.load(pool)
			c.draw = true
			node := c.fill(W, T-d)
			wins++
			var keep []*Node
			for s := range segs { if !pick[s] { keep = append(keep, segs[s]) } }
			segs = append(keep, flat(node)...)
			best = heights(segs)
		}
		return best, fmt.Sprintf("first=%d tries=%d wins=%d", first, tries, wins)
	})
}
