package planner

import "fmt"

var pressWords = wordList{
	{string(PressBest), nil},
	{string(PressPrint), []string{"to the print", "toward the print", "towards the print"}},
	{string(PressDarker), []string{"dark", "to the dark", "toward the dark", "towards the dark", "toward the darker"}},
}

// readPress reads the rule for seams between two cloths. Pressing toward the
// darker one needs to know which that is.
func (r *jobReader) readPress(n *fileNode) {
	if n == nil {
		return
	}
	if word, ok := r.choose(n, pressWords); ok {
		r.job.Press = PressRule(word)
	}
	if r.job.Press == PressDarker {
		r.needColours()
	}
}

// needColours reports the fabrics of blocks whose colour the file does not give.
func (r *jobReader) needColours() {
	used := map[string]bool{}
	for _, c := range r.job.Colourways {
		for _, role := range c.Roles {
			for _, share := range role.Fabrics {
				used[share.Fabric] = true
			}
		}
	}
	for _, f := range r.job.Fabrics {
		path := "fabrics." + f.Name
		if used[f.Name] && f.Colour == "" {
			r.report(r.at.Nearest(path), path, fmt.Sprintf("%s has no colour, and press: darker needs the colour of every fabric in the blocks", said(f.Name)),
				writeAs(keyExamples()["colour"]))
		}
	}
}
