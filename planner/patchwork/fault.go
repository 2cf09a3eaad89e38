package patchwork

// Fault says what in a recipe cannot be made. What is worded for the maker
// with measures in the job's unit; Hint says what to do and may be empty.
type Fault struct {
	Step string // name of the step, "" where no one step is at fault
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
