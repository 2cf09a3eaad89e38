package planner

import (
	"slices"
	"strings"

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
	s.Battings = shopBatting(wanted, there.Batting, s.Units)
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
