package guillotine
import ("testing";"os";"strconv";"fmt";"time";"strings")
func TestNestedScratch(t *testing.T) {
	ss := sets(t)
	if v,_ := strconv.Atoi(os.Getenv("WID")); v>0 { beamWidth=v }
	if v,_ := strconv.Atoi(os.Getenv("LIM")); v>0 { beamLimit=v }
	if v,_ := strconv.Atoi(os.Getenv("EX")); v>0 { exactLimit=v }
	all := os.Getenv("ALL")!=""
	for _, free := range []bool{false,true} {
	sum, cnt, worst := 0.0,0,0.0
	sumb, cntb, worstb := 0.0,0,0.0
	for _, r := range load(t, "strip_heights.csv") {
		if f:=os.Getenv("ONLY"); f!="" && !strings.HasPrefix(r[0],f) {continue}
		if r[5]=="" && r[6]=="" && !all { continue }
		var ps []Piece; n:=0
		W,_ := strconv.Atoi(r[2])
		for _, p := range ss[r[1]] { if r[3]=="1" { p.W,p.H=p.H,p.W }; p.Free=free; ps=append(ps,p); n+=p.N }
		b := newBench(W, ps)
		s := b.simple(200000)
		ub := total(s.levels)
		lb := b.raise(ceilDiv(areaOf(ps),W), ub)
		t0 := time.Now()
		p := b.nested(ub, lb)
		d := time.Since(t0)
		opt,_ := strconv.Atoi(r[5])
		mark := ""
		if !free && opt>0 {
			gap := float64(p.h-opt)/float64(opt)*100
			sum += gap; cnt++; worst=max(worst,gap)
			if p.h!=opt { mark="***" }
		}
		gap := float64(p.h-p.bound)/float64(p.bound)*100
		sumb += gap; cntb++; worstb=max(worstb,gap)
		if d > 60*time.Millisecond { mark += " SLOW" }
		if p.h!=p.bound { mark+=" open"}
		fmt.Printf("%-20s n=%3d free=%v opt=%4d got=%5d bound=%5d gap=%.2f %v work=%dk %s %s\n", r[0], n, free, opt, p.h, p.bound, gap, d.Round(time.Microsecond), p.work/1000, mark, p.info)
	}
	fmt.Printf("free=%v opt: mean %.3f worst %.3f %d; bound: mean %.3f worst %.3f %d\n", free, sum/float64(cnt), worst, cnt, sumb/float64(cntb), worstb, cntb)
	}
}
