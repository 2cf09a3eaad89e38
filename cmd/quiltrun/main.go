// Quiltrun plans the making of patchwork quilts in runs and follows the work:
// from a job file to a job sheet, a log, what remains and a date.
package main

import (
	"os"
	"runtime/debug"

	"quiltrun/cmd/internal/cli"
)

// A command is over in milliseconds and needs a few megabytes: to collect
// garbage would take longer than the answer.
const garbagePercent = 400

func main() {
	debug.SetGCPercent(garbagePercent)
	os.Exit(cli.Main(cli.System(), os.Args[1:]))
}
