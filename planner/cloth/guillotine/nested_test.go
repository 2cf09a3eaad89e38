package guillotine
import ("testing";"os";"strconv";"fmt";"time";"strings")
func TestNestedScratch(t *testing.T) {
	ss := sets(t)
	for _, free := range []bool{false,true} {
	sum, cnt, worst := 0.0,0,0.0
	for _, r := range load(t, "strip_heights.csv") {
		if f:=os.Getenv("ONLY"); f!="" && !strings.HasPrefix(r[0],f) {continue}
		if r[5]=="" && r[6]=="" { continue }
		var ps []Piece; n:=0
		W,_ := strconv.Atoi(r[2])
		for _, p := range ss[r[1]] { if r[3]=="1" { p.W,p.H=p.H,p.W }; p.Free=free; ps=append(ps,p); n+=p.N }
		t0 := time.Now()
		b := newBench(W, ps)
		s := b.simple(200000)
		ub := total(s.levels)
		lb := b.raise(ceilDiv(areaOf(ps),W), ub)
		k, ok := newPacker(counts(ps))
		opt,_ := strconv.Atoi(r[5])
		info := ""
		if ok {
			lim, _ := strconv.Atoi(os.Getenv("LIM")); if lim==0 {lim=5000000}
			wid, _ := strconv.Atoi(os.Getenv("WID")); if wid==0 {wid=40}
			spent := 0
			grow := 1
			for target := lb; target < ub; {
				bb := newBuilder(W, target, ps, k)
				bb.limit = lim-spent
				found := bb.run()
				spent += bb.work
				info += fmt.Sprintf(" [%d blocks=%d work=%dk cut=%v]", target, len(bb.blocks), bb.work/1000, bb.cut)
				if bb.cut { break }
				if found { ub = bb.blocks[bb.best].h; lb = ub; break }
				lb = target+1
				grow = max(1, grow*2)
				target = min(lb+grow-1, ub-1)
				if lb >= ub { break }
			}
			if lb < ub {
				lo := lb
				for try := 0; try < 5 && lo<ub; try++ {
				target := (lo+ub)/2
				bb := newBuilder(W, target, ps, k)
				bb.width = wid
				bb.grain = max(1, bb.area/64)
				bb.wait = make([][]block, bb.area/bb.grain+1)
				bb.limit = lim
				found := bb.run()
				info += fmt.Sprintf(" [beam %d blocks=%d work=%dk cut=%v found=%v]", target, len(bb.blocks), bb.work/1000, bb.cut, found)
				if found { ub = bb.blocks[bb.best].h } else {lo=target+1}
				}
			}
		}
		d := time.Since(t0)
		ref := opt; if free||ref==0 { ref = lb }
		gap := float64(ub-ref)/float64(ref)*100
		sum += gap; cnt++; worst=max(worst,gap)
		mark := ""
		if opt>0 && !free && ub!=opt { mark="***" }
		if d > 100*time.Millisecond { mark += " SLOW" }
		if ub!=lb { mark+=" open"}
		fmt.Printf("%-20s n=%3d free=%v opt=%4d got=%5d bound=%5d gap=%.2f %v %s %s\n", r[0], n, free, opt, ub, lb, gap, d.Round(time.Microsecond), info, mark)
	}
	fmt.Printf("free=%v mean %.3f worst %.3f %d\n", free, sum/float64(cnt), worst, cnt)
	}
}
