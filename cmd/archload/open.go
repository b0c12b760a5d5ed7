package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"archload/cases"
	"archload/cases/design"
	"archload/cases/stability"
	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"
	"archload/viz/sheet"

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

// open loads a case, at so many times its load, and looks that no output takes its place.
func (o *wanted) open(cmd *cobra.Command, arg string) (*cases.Case, error) {
	if err := o.check(); err != nil {
		return nil, err
	}
	tell, done := shell.Progress(cmd.ErrOrStderr())
	tell(fileStem(arg) + ": reading")
	c, err := openCase(o.disk, arg)
	done()
	if err == nil {
		c, err = o.cut(cmd, arg, c, "--bench", nil)
	}
	if err != nil {
		return nil, err
	}
	for _, file := range []string{o.json, o.report} {
		if err := spare(o.disk, file); err != nil {
			return nil, err
		}
	}
	return stability.Times(c, o.load()), nil
}

// withCase opens a case and lets f answer, telling its progress.
func withCase[R any](o *wanted, cmd *cobra.Command, arg string, f func(*cases.Case, design.Options) (R, error)) (none R, err error) {
	c, err := o.open(cmd, arg)
	if err != nil {
		return none, err
	}
	tell, done := shell.Progress(cmd.ErrOrStderr())
	defer done()
	return f(c, o.options(fileStem(arg), tell))
}

// checkPaper wants a paper that sheets are drawn for.
func checkPaper(paper string) error {
	if !slices.Contains(sheet.Papers(), sheet.Paper(paper)) {
		return shell.Usagef("--paper: want one of %q, found %q", sheet.Papers(), paper)
	}
	return nil
}
