package planner

import (
	"slices"
	"strings"

	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
	"quiltrun/planner/thread"
)

// Shopping is what is to be bought for several jobs together.
type Shopping struct {
	Units    measure.Unit // of the first job
	Fabrics  []ShopFabric // in the order in which jobs name them
	Battings []ShopBatting
	Thread   ShopThread
	Needles  int // reminders, from the time at the machine
	Blades   int // and from the number of quilts
	Machine  Minutes
	Quilts   int
}

// Stocked is what lies on the shelf free for the jobs.
type Stocked struct {
	Cloth   func(Fabric) Have
	Batting []HaveBatting
	Thread  measure.Length
}

// A needle does for eight hours of sewing, a rotary blade for three quilts.
// Sources: Fabric Town, "Something I didn't know" (8 h or each project; another
// dealer the same); Kitchen Table Quilting, "Good habits for quilters: changing
// out your rotary blade" (about 3 quilts).
const (
	NeedleMinutes Minutes = 8 * 60
	BladeQuilts           = 3
)

// Shop joins what jobs want, less what they have and what lies free on the
// shelf. Cloth of one name, form, width and direction is planned together and
// rounded to the shop's step once. The error is that of pieces that cannot be
// planned.
func Shop(wanted []Wanted, there Stocked) (Shopping, error) {
	s := Shopping{}
	if len(wanted) > 0 {
		s.Units = wanted[0].Job.Units
	}
	for _, joined := range join(wanted) {
		var free Have
		if there.Cloth != nil {
			free = there.Cloth(joined.Fabric)
		}
		f, err := shopFabric(joined, free, s.Units)
		if err != nil {
			return Shopping{}, err
		}
		s.Fabrics = append(s.Fabrics, f)
	}
	s.Battings = shopBatting(wanted, there.Batting)
	s.Thread = shopThread(wanted, there.Thread)
	for _, w := range wanted {
		s.Machine += w.Machine
		s.Quilts += w.Quilts
	}
	s.Needles = ceilMinutes(s.Machine, NeedleMinutes)
	s.Blades = (s.Quilts + BladeQuilts - 1) / BladeQuilts
	return s, nil
}

func ceilMinutes(m, each Minutes) int {
	n := 0
	for Minutes(n)*each < m-1e-6 {
		n++
	}
	return n
}

// joinedFabric is one cloth as several jobs want it.
type joinedFabric struct {
	Fabric Fabric
	from   []WantedFabric
	jobs   []Job
}

// join puts alike cloths together, in the order in which they are first named.
func join(wanted []Wanted) []joinedFabric {
	var all []joinedFabric
	for _, w := range wanted {
		for _, f := range w.Fabrics {
			if f.none() {
				continue
			}
			at := slices.IndexFunc(all, func(j joinedFabric) bool { return sameCloth(j.Fabric, f.Fabric) })
			if at < 0 {
				at = len(all)
				all = append(all, joinedFabric{Fabric: f.Fabric})
			}
			all[at].from = append(all[at].from, f)
			all[at].jobs = append(all[at].jobs, w.Job)
		}
	}
	return all
}

func sameCloth(a, b Fabric) bool {
	return strings.EqualFold(a.Name, b.Name) && a.Form == b.Form && a.Width == b.Width &&
		a.Size == b.Size && a.Directional == b.Directional
}

// ShopBatting is batting of one kind. Buy packages of Package; a zero Package
// is batting that no usual package holds.
type ShopBatting struct {
	Package cloth.Package
	Size    measure.Size // the largest that it is for
	Jobs    []string
	Need    int
	Shelf   int // quilts that have theirs on the shelf
	Buy     int
}

// HaveBatting is batting that lies there: packages or pieces of one size, or a
// length off a roll as wide as the size.
type HaveBatting struct {
	Size  measure.Size // of a roll the width, and the length as its height
	Count int          // 0: a roll
}

// shopBatting finds each quilt a batting: the first on the shelf that holds it, a
// package else.
func shopBatting(wanted []Wanted, there []HaveBatting) []ShopBatting {
	there = slices.Clone(there)
	var all []ShopBatting
	for _, w := range wanted {
		if w.Batting == nil || w.Battings == 0 {
			continue
		}
		p, _ := cloth.BattingFor(w.Batting.Size, cloth.Packages)
		at := slices.IndexFunc(all, func(b ShopBatting) bool {
			return b.Package == p && (p.Name != "" || b.Size == w.Batting.Size)
		})
		if at < 0 {
			at = len(all)
			all = append(all, ShopBatting{Package: p})
		}
		b := &all[at]
		b.Jobs = append(b.Jobs, w.Job.ID)
		b.Size.Width, b.Size.Height = max(b.Size.Width, w.Batting.Size.Width), max(b.Size.Height, w.Batting.Size.Height)
		b.Need += w.Battings
		for range w.Battings {
			if takeBatting(there, w.Batting.Size) {
				b.Shelf++
			}
		}
		b.Buy = b.Need - b.Shelf
	}
	return all
}

// takeBatting takes a quilt's batting off what is there.
func takeBatting(there []HaveBatting, size measure.Size) bool {
	long, short := max(size.Width, size.Height), min(size.Width, size.Height)
	for i := range there {
		h := &there[i]
		switch roll := h.Count == 0; {
		case roll && h.Size.Width >= long && h.Size.Height >= short:
			h.Size.Height -= short
			return true
		case roll && h.Size.Width >= short && h.Size.Height >= long:
			h.Size.Height -= long
			return true
		case !roll && h.Count > 0 && max(h.Size.Width, h.Size.Height) >= long && min(h.Size.Width, h.Size.Height) >= short:
			if h.Count--; h.Count == 0 {
				h.Size = measure.Size{} // used up, and no roll
			}
			return true
		}
	}
	return false
}

// ShopThread is thread, both threads of the lockstitch.
type ShopThread struct {
	Need    ThreadPlan // Bobbins are those to wind
	Shelf   measure.Length
	Buy     measure.Length
	PerJobs []string
}

func shopThread(wanted []Wanted, there measure.Length) ShopThread {
	var t ShopThread
	for _, w := range wanted {
		t.Need.Piecing += w.Thread.Piecing
		t.Need.Quilting += w.Thread.Quilting
		t.Need.Binding += w.Thread.Binding
		t.Need.Total += w.Thread.Total
		if w.Thread.Total > 0 {
			t.PerJobs = append(t.PerJobs, w.Job.ID)
		}
	}
	t.Need.Bobbins = thread.Bobbins(t.Need.Total)
	t.Shelf = min(there, t.Need.Total)
	t.Buy = t.Need.Total - t.Shelf
	return t
}

// Spools is how many spools of a length do for what is to be bought.
func (t ShopThread) Spools(each measure.Length) int {
	if t.Buy <= 0 {
		return 0
	}
	return measure.CeilDiv(t.Buy, each)
}
