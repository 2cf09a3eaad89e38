package planner

import (
	"bytes"
	"cmp"
	"slices"
	"strings"
	"unicode/utf8"

	"quiltrun/planner/measure"
)

// Parse reads a job file. The file's name is used in the errors alone.
//
// The error is Problems: everything found wrong, in the order of the file. Text
// that is no YAML, or that uses more of YAML than a job file does, is reported
// before anything else is looked at. With an error the Job is empty.
//
// Parse checks all that the file says on its own: names, kinds, sizes, counts
// and whether they add up. What needs geometry or cloth, Make finds.
func Parse(file string, data []byte) (Job, error) {
	const mostForeseen = 500
	keys := bytes.Count(data, []byte(":"))
	r := &jobReader{file: file, at: make(Positions, min(keys, mostForeseen))}
	if root := r.tree(data); root != nil {
		r.readJob(root)
		r.check()
	}
	if len(r.problems) > 0 {
		return Job{}, r.found()
	}
	r.job.File, r.job.At = file, r.at
	return r.job, nil
}

// PositionOf is where the job file says what the path names, or the nearest
// thing around it that it does say: "colourways.tide.offset".
func (j Job) PositionOf(path string) Position { return j.At.Nearest(path) }

// jobReader gathers the job and the problems of one file.
type jobReader struct {
	file     string
	text     string // as cleanText leaves it
	problems Problems
	at       Positions
	job      Job

	selvage   measure.Length // each, of yardage whose full width is given
	shrinkage Shrinkage      // of cloth that says nothing itself

	uses   []fabricUse // where the file names fabrics, looked up at the end
	blocks blockReader
	mapped *fileNode // an order that is a map of rows
}

// fabricUse is a place of the file that names a fabric.
type fabricUse struct {
	fabric string
	node   *fileNode
}

// report adds a problem.
func (r *jobReader) report(at Position, path, what, hint string) {
	r.problems = append(r.problems, &Problem{File: r.file, At: at, Path: path, What: what, Hint: hint})
}

// fault adds a problem with a value.
func (r *jobReader) fault(n *fileNode, what, hint string) { r.report(n.at, n.path, what, hint) }

// found is the problems in file order, each once: what colourways share is read
// for each of them, and its faults would come again and again.
func (r *jobReader) found() Problems {
	type sentence struct {
		at   Position
		what string
	}
	seen := map[sentence]bool{}
	r.keepInside()
	return slices.DeleteFunc(r.problems.sorted(), func(p *Problem) bool {
		s := sentence{p.At, p.What}
		again := seen[s]
		seen[s] = true
		return again
	})
}

// keepInside moves places that the file does not have to the end of their line:
// the library miscounts after a broken escape in a quoted text.
func (r *jobReader) keepInside() {
	lines := strings.Split(r.text, "\n")
	for _, p := range r.problems {
		if p.At.Line <= len(lines) {
			p.At.Column = min(p.At.Column, utf8.RuneCountInString(lines[p.At.Line-1])+1)
		}
	}
}

// keysOfJobs are the keys of a job file itself.
func keysOfJobs() []string {
	return []string{
		"job", "title", "client", "received", "due", "quantity", "units", "seam", "prewash",
		"cutting", "spares", "fabrics", "block", "colourways", "press", "layout",
		"borders", "backing", "batting", "binding", "quilting",
	}
}

// readJob reads the whole file. Units and seam come first, since a bare measure
// means nothing without them.
func (r *jobReader) readJob(root *fileNode) {
	s := r.section(root, "the job file", keysOfJobs()...)
	r.readUnits(s)
	r.readHeading(s)
	r.readCutting(s.get("cutting"))
	r.readSpares(s.get("spares"))
	r.readFabrics(s.need("fabrics"))
	r.readColourways(s.need("block"), s.need("colourways"))
	r.readPress(s.get("press"))
	r.readLayout(s.need("layout"))
	r.readFinishing(s)
}

// readUnits reads what gives every bare measure its meaning. After a faulty seam the
// reading goes on with the default one, so that the rest is checked too.
func (r *jobReader) readUnits(s section) {
	if n := s.get("units"); n != nil {
		if word, ok := r.choose(n, unitWords); ok && word == "cm" {
			r.job.Units = measure.Centimetres
		}
	}
	r.job.Seam = r.defaults().seam
	if n := s.get("seam"); n != nil {
		r.job.Seam = cmp.Or(r.length(n), r.job.Seam)
	}
}

// readHeading reads who the job is for and when.
func (r *jobReader) readHeading(s section) {
	if n := s.need("job"); n != nil {
		r.job.ID = r.id(n)
	}
	r.job.Title = cmp.Or(r.line(s.get("title")), r.job.ID)
	r.job.Client = r.line(s.get("client"))
	r.job.Received = r.date(s.get("received"))
	r.job.Due = r.date(s.get("due"))
	r.job.Quantity = 1
	if n := s.get("quantity"); n != nil {
		r.job.Quantity = r.count(n, 1)
	}
	r.job.Prewash = r.yes(s.get("prewash"))
}
