// Command bare is the least that a cobra program can be: what quiltrun's own
// start is measured against.
package main

import (
	"os"

	"github.com/spf13/cobra"
)

func main() {
	root := &cobra.Command{Use: "bare", Version: "0", Run: func(*cobra.Command, []string) {}}
	if root.Execute() != nil {
		os.Exit(1)
	}
}
