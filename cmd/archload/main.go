// Command archload computes how a carved, arched top carries the strings
// through a floating bridge, and says it in a maker's words.
package main

import (
	"context"
	"io"
	"runtime/debug"

	"archload/cmd/internal/shell"
)

func main() { shell.Main(run) }

// slack is how much of what is in use may lie about unused before it is collected, %. A solve's memory is
// a few large tables of numbers, which cost nothing to look through: 40 instead of Go's 100 takes a
// quarter off the most that it takes, and no measurable time.
const slack = 40

// run carries out one command line and returns the exit code.
func run(ctx context.Context, args []string, stdout, stderr io.Writer) int {
	debug.SetGCPercent(slack)
	return shell.Execute(ctx, newRoot(), args, stdout, stderr)
}
