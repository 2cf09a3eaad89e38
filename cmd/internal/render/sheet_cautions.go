package render

import "slices"

// cautions gives each caution once, in the order in which the route first comes
// to its place of work.
func (s *sheet) cautions() {
	var care []string
	for _, o := range s.plan.Operations {
		for _, c := range o.Care {
			if !slices.Contains(care, c) {
				care = append(care, c)
			}
		}
	}
	s.heading("Take care")
	for _, c := range append(care, posture) {
		s.hang(1, "! ", c)
	}
	s.gap()
	s.para(1, selling)
}

// posture holds at every place of work. Source: OSHA, Sewing Station Design:
// work at elbow height, feet supported, short breaks often.
const posture = "Posture and breaks: table at elbow height, feet on the floor, light on the work; get up and look far away every half hour, and change the kind of work when a hand or the neck begins to ache."

// selling reminds of rules that no program knows for every country.
const selling = "Before you sell: local rules on selling textiles, on goods for children and on electrical appliances apply (fibre and care labels, safety, testing of irons and machines). Ask where you sell."
