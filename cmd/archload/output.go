package main

import (
	"encoding/json"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"
)

// output is one thing to be written, in one file for each ending.
type output struct {
	stem    string // path without the ending
	endings []string
	write   func(w io.Writer, ending string) error
}

// writeAll writes every file, and tells of each to out. An interrupt stops it
// between two files.
func writeAll(cmd *cobra.Command, d *disk.Disk, out io.Writer, files []output) error {
	tell, done := shell.Progress(cmd.ErrOrStderr())
	defer done()
	for _, f := range files {
		if err := disk.Make(filepath.Dir(f.stem)); err != nil {
			return err
		}
		for _, e := range f.endings {
			if err := cmd.Context().Err(); err != nil {
				return err
			}
			tell("writing " + f.stem + "." + e)
			if err := d.Write(f.stem+"."+e, func(w io.Writer) error { return f.write(w, e) }); err != nil {
				return err
			}
		}
		done()
		if _, err := fmt.Fprintf(out, "wrote %s.%s\n", f.stem, strings.Join(f.endings, " and .")); err != nil {
			return err
		}
	}
	return nil
}

// writeTo writes to a file, or to stdout if its name is "-".
func writeTo(d *disk.Disk, name string, stdout io.Writer, write func(io.Writer) error) error {
	if name == "-" {
		return write(stdout)
	}
	return d.Write(name, write)
}

// spare refuses an output that would take the place of what was read, before
// anything is computed for it. "" and "-" are no files.
func spare(d *disk.Disk, name string) error {
	if name == "" || name == "-" {
		return nil
	}
	return d.Spared(name)
}

func jsonOf(v any) func(io.Writer) error {
	return func(w io.Writer) error {
		e := json.NewEncoder(w)
		e.SetIndent("", "  ")
		return e.Encode(v)
	}
}
