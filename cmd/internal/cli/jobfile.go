package cli

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"quiltrun/planner"
)

// longestFile bounds a job file, in bytes. A file of a hundred fabrics and a
// mapped layout of thousands of blocks stays far below.
const longestFile = 4 << 20

// jobFile is a job file's bytes under the name that the maker gave.
type jobFile struct {
	name string
	data []byte
}

// isFile tells a job file from the id of a booked job: ids have neither
// slashes nor dots, so that no job can be taken for a file.
func isFile(arg string) bool {
	return arg == "-" || strings.ContainsRune(arg, '/') || strings.ContainsRune(arg, filepath.Separator) ||
		strings.HasSuffix(arg, ".yaml") || strings.HasSuffix(arg, ".yml")
}

// readJobFile reads a job file, or standard input where the name is "-". What is
// wrong on standard input is said to be there: "-:3:1" would tell nobody.
func (e *Env) readJobFile(name string) (jobFile, error) {
	if name == "-" {
		data, err := readBounded(e.In)
		if err != nil {
			return jobFile{}, failed("standard input cannot be read: %v", err)
		}
		return checkSize(jobFile{"standard input", data})
	}
	file, err := os.Open(name)
	if err != nil {
		return jobFile{}, unreadable(name, err)
	}
	defer file.Close()
	data, err := readBounded(file)
	if err != nil {
		return jobFile{}, unreadable(name, err)
	}
	return checkSize(jobFile{name, data})
}

// readBounded reads one byte more than is allowed, so that checkSize can tell.
func readBounded(r io.Reader) ([]byte, error) {
	return io.ReadAll(io.LimitReader(r, longestFile+1))
}

// checkSize refuses what cannot be a job file, such as a photograph.
func checkSize(file jobFile) (jobFile, error) {
	if len(file.data) > longestFile {
		return jobFile{}, failed("%s is too long for a job file", file.name).hint("is it the right file?")
	}
	return file, nil
}

// unreadable words why a file cannot be read, without the system's own repeat
// of its name.
func unreadable(name string, err error) error {
	if errors.Is(err, fs.ErrNotExist) {
		return failed("there is no file %s", name).hint("is it in another folder, or spelt differently?")
	}
	return failed("%s cannot be read: %v", name, cause(err))
}

// parse reads the file as a job. Its error is a fileError where the file is to
// blame.
func (f jobFile) parse() (planner.Job, error) {
	job, err := planner.Parse(f.name, f.data)
	return job, f.located(err)
}

// plan works the job out, with the numbers and block ids of earlier bookings.
// Geometry and cloth find their own faults, and these point into the file too.
func (f jobFile) plan(job planner.Job, prior planner.Prior) (planner.Plan, error) {
	plan, err := planner.Make(job, prior)
	return plan, f.located(err)
}

// located gives the problems of a job file the file's text to point into.
func (f jobFile) located(err error) error {
	var problems planner.Problems
	if errors.As(err, &problems) {
		return &fileError{f, problems}
	}
	return err
}

// received is the job with the date that it came in, if its file gives none.
// A date due before then is the file's fault even so.
func (f jobFile) received(job planner.Job, date planner.Date) (planner.Job, error) {
	if !job.Received.IsZero() {
		return job, nil
	}
	job.Received = date
	if !job.Due.IsZero() && job.Due.Before(date) {
		return job, &fileError{f, planner.Problems{{
			File: f.name, At: job.At.Nearest("due"), Path: "due",
			What: "the job is due " + job.Due.String() + ", before " + date.String() + ", when it is received",
			Hint: "is the year right? If the job came in earlier, give its received: date",
		}}}
	}
	return job, nil
}
