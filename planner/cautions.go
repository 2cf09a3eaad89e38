package planner

// cautions are what can hurt at a place of work. Sources: rotary cutter and
// iron, 4-H "Duds to Dazzle" contest safety guide; machine, school sewing lab
// rules; posture, OSHA Sewing Station Design and California Department of
// Public Health, "Sewing machine operators".
func cautions(p Place) []string {
	switch p {
	case CuttingTable:
		return []string{"Rotary cutter: blade shut between cuts, cut away from you, fingers back from the ruler's edge, shoes on."}
	case Iron:
		return []string{"Iron: hold it by the handle alone, stay clear of its steam, lay the cord where nobody catches it, pull the plug when you leave."}
	case Machine:
		return []string{"Machine: foot off the pedal to thread or change the needle, fingers beside the foot and never in front, pins out before the needle reaches them."}
	case Frame, Hand:
		return []string{"Pins and needles: count them out and count them back in."}
	}
	return nil
}
