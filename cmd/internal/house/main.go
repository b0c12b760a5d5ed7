// Command house measures how the packages of the module are built inside: lines,
// files, exported types, and the order of their files.
//
//	go run ./cmd/internal/house                # the table; fails if a bound is passed
//	go run ./cmd/internal/house -report        # the table alone
//	go run ./cmd/internal/house -why ./fem     # the order of one package and what runs against it
//
// File A uses file B of the same package if A mentions a package-level object, a
// method or a field that is declared in B. The files of a package should stand in
// a line, so that each uses only those below it and a reader may begin at one end;
// uses that run back up are counted in the line that has the fewest of them. Tests
// are left out. Of files for one system alone, those of this system are read for
// uses; lines and files are counted for all systems.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
)

func main() {
	if err := house(os.Args[1:], os.Stdout, os.Stderr); err != nil {
		if !errors.Is(err, flag.ErrHelp) {
			fmt.Fprintln(os.Stderr, "house:", err)
		}
		os.Exit(1)
	}
}

// errCrowded says that a package passes a bound; the table has said which.
var errCrowded = errors.New("a package is too large, or its files have no order; -why PACKAGE tells more")

// house runs the command with its arguments.
func house(args []string, stdout, stderr io.Writer) error {
	f := flag.NewFlagSet("house", flag.ContinueOnError)
	f.SetOutput(stderr)
	dir := f.String("C", ".", "`folder` of the module")
	report := f.Bool("report", false, "print the table and fail at nothing that it shows")
	why := f.String("why", "", "the order of the files of one `package`, and what runs against it")
	if err := f.Parse(args); err != nil {
		return err
	}
	if f.NArg() > 0 {
		return fmt.Errorf("unexpected argument %q", f.Arg(0))
	}
	pattern := "./..."
	if *why != "" {
		pattern = *why
	}
	rooms, err := load(*dir, pattern)
	if err != nil {
		return err
	}
	if *why != "" {
		for _, r := range rooms {
			r.explain(stdout)
		}
		return nil
	}
	if crowded := table(stdout, rooms); crowded && !*report {
		return errCrowded
	}
	return nil
}
