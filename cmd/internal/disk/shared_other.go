//go:build !unix

package disk

import "io/fs"

// shared cannot be told from a file's information on this system.
func shared(fs.FileInfo) bool { return false }
