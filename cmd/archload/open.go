package main

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"archload/cases"
)

// disk is the file system as the shell sees it: relative to where the user
// stands, and free to climb out of it.
type disk struct{}

// Open opens a file by its path with forward slashes.
func (disk) Open(name string) (fs.File, error) { return os.Open(filepath.FromSlash(name)) }

// openCase loads a case by path or bundled name.
func openCase(arg string) (*cases.Case, error) {
	return cases.Open(disk{}, filepath.ToSlash(arg))
}

// fileStem makes a name for output files from a case argument.
func fileStem(arg string) string {
	base := filepath.Base(arg)
	return strings.TrimSuffix(base, filepath.Ext(base))
}

// needFew refuses more cases than a table can show side by side.
func needFew(args []string) error {
	const most = 8
	if len(args) > most {
		return usageError{fmt.Errorf("compare: want at most %d cases, found %d", most, len(args))}
	}
	return nil
}
