package planner

// cautions are what can hurt at a place of work. Sources: rotary cutter and
// iron, 4-H "Duds to Dazzle" contest safety guide; machine, school sewing lab
// rules; posture, OSHA Sewing Station Design and California Department of
// Public Health, "Sewing machine operators".
func cautions(p Place) []string {
	switch p {
	case CuttingTable:
		return []string{"Rotary cutter: close the blade whenever it is not cutting, cut away from the body, fingers off the ruler's edge, shoes on."}
	case Iron:
		return []string{"Iron: touch only the handle, keep face and fingers out of the steam and the cord out of reach, switch off at the plug when leaving."}
	case Machine:
		return []string{"Machine: foot off the pedal to thread or change the needle, fingers beside the foot and never in front, pins out before the needle reaches them."}
	case Frame, Hand:
		return []string{"Pins and needles: count them out and count them back in."}
	}
	return nil
}
