// Command archload computes how a carved, arched top carries the strings
// through a floating bridge, and says it in a maker's words.
package main

import (
	"context"
	"io"

	"archload/cmd/internal/shell"
)

func main() { shell.Main(run) }

// run carries out one command line and returns the exit code.
func run(ctx context.Context, args []string, stdout, stderr io.Writer) int {
	return shell.Execute(ctx, newRoot(), args, stdout, stderr)
}
