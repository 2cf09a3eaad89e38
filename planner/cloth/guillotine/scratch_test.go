package guillotine
import ("testing";"os";"encoding/csv";"strconv";"fmt";"time";"strings";"syscall")
func load(t testing.TB, name string) [][]string {
	f, err := os.Open("../testdata/"+name); if err != nil { t.Fatal(err) }
	defer f.Close()
	r := csv.NewReader(f); r.Comment='#'; r.FieldsPerRecord=-1
	rows, err := r.ReadAll(); if err != nil { t.Fatal(err) }
	return rows[1:]
}
func sets(t testing.TB) map[string][]Piece {
	m := map[string][]Piece{}
	for _, r := range load(t, "strip_pieces.csv") {
		w,_ := strconv.Atoi(r[1]); h,_ := strconv.Atoi(r[2]); n,_ := strconv.Atoi(r[3])
		m[r[0]] = append(m[r[0]], Piece{w,h,n,false})
	}
	return m
}
func envf(s string, d float64) float64 { if v,err := strconv.ParseFloat(os.Getenv(s),64); err==nil { return v }; return d }
func check(t *testing.T, n *Node, ps []Piece, got []int) {
	if n.Cut == None { if n.Piece >= 0 { got[n.Piece]++; s := ps[n.Piece].lying(n.Turned); if s.w!=n.W||s.h!=n.H {t.Fatal("size")} }; return }
	sum := 0
	for _, p := range n.Parts {
		if n.Cut == Across { if p.W != n.W {t.Fatal("w")}; sum += p.H } else { if p.H != n.H {t.Fatal("h")}; sum += p.W }
		check(t, p, ps, got)
	}
	if n.Cut==Across && sum!=n.H || n.Cut==Upright && sum != n.W { t.Fatal("sum", n.Cut, sum, n.W, n.H) }
}
func TestScratch(t *testing.T) {
	ss := sets(t)
	style := os.Getenv("STYLE")
	LEAN, DEEP = envf("LEAN",0), envf("DEEP",0)
	share := int(envf("SHARE",100))
	for _, free := range []bool{false,true} {
	if os.Getenv("FIX")!="" && free {continue}
	sum := [4]float64{}; cnt := [4]int{}; var worst [4]float64; ksum, kcnt, kworst := 0.0, 0, 0.0; var slow time.Duration; proven := [4]int{}
	for _, r := range load(t, "strip_heights.csv") {
		if f:=os.Getenv("ONLY"); f!="" && !strings.HasPrefix(r[0],f) {continue}
		if strings.HasPrefix(r[0],"BW") && !strings.HasPrefix(r[0],"BW4") && os.Getenv("BW")=="" { continue }
		var ps []Piece; n:=0
		W,_ := strconv.Atoi(r[2])
		for _, p := range ss[r[1]] { if r[3]=="1" { p.W,p.H=p.H,p.W }; p.Free=free; ps=append(ps,p); n+=p.N }
		if n<int(envf("MIN",0)) || n>int(envf("MAX",1000)) { continue }
		t0 := cpu()
		var s Strip
		opt := 0
		if style == "nested" { s = Nested(W, ps, share); opt,_ = strconv.Atoi(r[5]) } else { s = Simple(W, ps, share); opt,_ = strconv.Atoi(r[4]) }
		d := cpu()-t0
		got := make([]int, len(ps))
		check(t, s.Root, ps, got)
		for i := range ps { if got[i]!=ps[i].N { t.Fatal("count") } }
		h := s.Length
		mark := ""
		if opt>0 && !free {
			gap := float64(h-opt)/float64(opt)*100
			ksum += gap; kcnt++; kworst=max(kworst,gap)
			if h!=opt { mark="***" }
			if s.Style > opt { mark = "BOUND WRONG" }
		}
		gap := float64(h-s.Style)/float64(s.Style)*100
		slow = max(slow, d)
		c := 0; if n>20 {c=1}; if n>50 {c=2}; if n>120 {c=3}
		sum[c]+=gap;cnt[c]++;worst[c]=max(worst[c],gap); if h==s.Style {proven[c]++}
		if os.Getenv("V")!="" { fmt.Printf("%-20s n=%3d free=%v opt=%4d got=%5d style=%d bound=%d gap=%.2f %v %s\n", r[0], n, free, opt, h, s.Style, s.Bound, gap, d.Round(time.Microsecond), mark) }
	}
	for c := range sum { sum[c] /= float64(cnt[c]) }
	fmt.Printf("mean free=%v %.2f worst %.1f n %v proven %v known: mean %.3f worst %.3f %d slowest %v\n", free, sum, worst, cnt, proven, ksum/float64(kcnt), kworst, kcnt, slow)
	}
}

func cpu() time.Duration { var u syscall.Rusage; syscall.Getrusage(syscall.RUSAGE_SELF, &u); return time.Duration(u.Utime.Nano()) }
