//go:build unix

package disk

import (
	"io/fs"
	"os"
	"syscall"
)

// shared says whether a file has a second name, or another owner than what
// this program makes.
func shared(info fs.FileInfo) bool {
	s, ok := info.Sys().(*syscall.Stat_t)
	return ok && (s.Nlink > 1 || int(s.Uid) != os.Geteuid())
}
