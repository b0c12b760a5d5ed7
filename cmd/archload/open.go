package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"archload/cases"
	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"

	"github.com/spf13/cobra"
)

// openCase loads a case by path or bundled name.
func openCase(d *disk.Disk, arg string) (*cases.Case, error) {
	c, err := cases.Open(d, filepath.ToSlash(arg))
	if err == nil {
		return c, nil
	}
	if file := meant(arg); file != "" {
		return nil, shell.Usagef("%s is not the name of a bundled case; did you mean the file %s?", arg, file)
	}
	return nil, err
}

// meant finds the case file that a name without its ending stands for: NAME.toml
// here, or NAME/NAME.toml as archload new makes it. It returns "" if there is
// none, or if the argument is a bundled case.
func meant(arg string) string {
	if filepath.Ext(arg) == ".toml" || slices.Contains(bundledNames(), arg) {
		return ""
	}
	for _, file := range []string{arg + ".toml", filepath.Join(arg, filepath.Base(arg)+".toml")} {
		if info, err := os.Stat(file); err == nil && info.Mode().IsRegular() {
			return file
		}
	}
	return ""
}

// bundledNames lists the bundled cases; nil if they cannot be read.
func bundledNames() []string {
	infos, err := cases.Bundled()
	if err != nil {
		return nil
	}
	var names []string
	for _, i := range infos {
		names = append(names, i.Name)
	}
	return names
}

// completeCases offers the bundled cases and the case files here.
func completeCases(_ *cobra.Command, _ []string, typed string) ([]string, cobra.ShellCompDirective) {
	names := bundledNames()
	files, _ := filepath.Glob(typed + "*.toml") // the pattern's only fault is an odd file name, which offers nothing
	inside, _ := filepath.Glob(typed + "*/*.toml")
	return append(append(names, files...), inside...), cobra.ShellCompDirectiveDefault
}

// fileStem makes a name for output files from a case argument.
func fileStem(arg string) string {
	return strings.TrimSuffix(filepath.Base(arg), ".toml")
}
