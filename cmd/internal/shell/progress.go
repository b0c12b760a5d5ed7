package shell

import (
	"fmt"
	"io"
	"os"
)

// Progress returns a function that tells stages on a terminal, one line that
// overwrites itself, and one that clears it. In a pipe both are silent.
func Progress(stderr io.Writer) (say func(string), done func()) {
	f, ok := stderr.(*os.File)
	if !ok {
		return func(string) {}, func() {}
	}
	if info, err := f.Stat(); err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return func(string) {}, func() {}
	}
	const wipe = "\r\x1b[K"
	return func(stage string) { fmt.Fprintf(f, "%s%s ...", wipe, stage) }, func() { fmt.Fprint(f, wipe) }
}
