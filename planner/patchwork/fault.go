package patchwork

// Fault says what in a recipe cannot be made. What is worded for the maker
// with measures in the job's unit; Hint says what to do and may be empty.
type Fault struct {
	Step string // name of the step, "" where no one step is at fault

	// Key is which of the step's values is at fault, by its name in a job file
	// ("sew", "size", "upright", "by" …), "" for the step as a whole. Row and
	// Column are its place in a list or grid of values, from 1; 0 for the whole.
	Key    string
	Row    int
	Column int

	What string
	Hint string
}

// Error is "step NAME: what; hint".
func (f *Fault) Error() string {
	text := f.What
	if f.Step != "" {
		text = "step " + f.Step + ": " + text
	}
	if f.Hint != "" {
		text += "; " + f.Hint
	}
	return text
}
