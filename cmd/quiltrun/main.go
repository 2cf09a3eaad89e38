// Quiltrun plans the making of patchwork quilts in runs and follows the work:
// from a job file to a job sheet, a log, what remains and a date.
package main

import (
	"os"

	"quiltrun/cmd/internal/cli"
)

func main() {
	os.Exit(cli.Main(cli.System(), os.Args[1:]))
}
