package guillotine
import ("testing";"os";"encoding/csv";"strconv";"fmt";"time";"strings")
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
func TestSimpleScratch(t *testing.T) {
	ss := sets(t)
	for _, free := range []bool{false,true} {
	g1,n1,g2,n2 := 0.0,0,0.0,0
	for _, r := range load(t, "strip_heights.csv") {
		if f:=os.Getenv("ONLY"); f!="" && !strings.HasPrefix(r[0],f) {continue}
		var ps []Piece; n:=0
		W,_ := strconv.Atoi(r[2])
		for _, p := range ss[r[1]] { if r[3]=="1" { p.W,p.H=p.H,p.W }; p.Free=free; ps=append(ps,p); n+=p.N }
		t0 := time.Now()
		b := newBench(W, ps)
		s := b.simple(500000)
		d := time.Since(t0)
		h := total(s.levels)
		opt,_ := strconv.Atoi(r[4])
		ref := opt; if free||ref==0 { ref = s.bound }
		gap := float64(h-ref)/float64(ref)*100
		if n<=20 { g1+=gap;n1++ } else {g2+=gap;n2++}
		mark := ""
		if opt>0 && !free && h!=opt { mark="***" }
		if d > 100*time.Millisecond { mark += " SLOW" }
		if h!=s.bound { mark+=" open"}
		fmt.Printf("%-20s n=%3d free=%v opt=%4d got=%5d bound=%5d gap=%.2f %v steps=%d lp=%d %d lpb=%d %s\n", r[0], n, free, opt, h, s.bound, gap, d.Round(time.Microsecond), s.steps, s.work, s.rounds,s.lpb,mark)
	}
	fmt.Printf("free=%v <=20: %.3f%% (%d)  >20: %.3f%% (%d)\n", free, g1/float64(n1),n1, g2/float64(n2),n2)
	}
}
