package cli

import "github.com/spf13/cobra"

// nearest is the names that were probably meant, as cobra finds them for
// mistyped commands: a few letters apart, or a beginning.
func nearest(typed string, names []string) []string {
	words := &cobra.Command{SuggestionsMinimumDistance: likely}
	for _, name := range names {
		words.AddCommand(&cobra.Command{Use: name, Run: func(*cobra.Command, []string) {}})
	}
	return words.SuggestionsFor(typed)
}
