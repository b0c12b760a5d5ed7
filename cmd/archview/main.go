// Command archview shows how a carved, arched top carries the strings: the
// load, the movement and the stress as a drawing that answers the hand.
package main

import (
	"context"
	"io"

	"archload/cmd/internal/shell"
)

func main() { shell.Main(run) }

// run carries out one command line and returns the exit code. It must be
// called on the goroutine of main: the window wants that thread.
func run(ctx context.Context, args []string, stdout, stderr io.Writer) int {
	return shell.Execute(ctx, newRoot(), args, stdout, stderr)
}
