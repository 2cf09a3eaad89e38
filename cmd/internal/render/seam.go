package render

import "quiltrun/planner"

// seamWords is what a seam takes, and where it was measured what the job file
// has.
func seamWords(job planner.Job) string {
	text := job.SeamShown() + " from each side, the fold included"
	if job.SeamAsked != 0 {
		text += "; that was measured, the job file has " + planner.SeamMeasured(job.SeamAsked, job.Units)
	}
	return text
}
