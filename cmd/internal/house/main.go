// Command house looks at how the module is built: what each package imports, against
// the list in .ci/floors; and inside the packages lines, files, exported types, and the
// order of the files.
//
//	go run ./cmd/internal/house                # all; fails if a bound is passed
//	go run ./cmd/internal/house -report        # all; fails at imports alone
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

// errFloors says that imports do not run as they should; a line each has said which.
var errFloors = errors.New("imports run downward only")

// house runs the command with its arguments.
func house(args []string, stdout, stderr io.Writer) error {
	f := flag.NewFlagSet("house", flag.ContinueOnError)
	f.SetOutput(stderr)
	dir := f.String("C", ".", "`folder` of the module")
	report := f.Bool("report", false, "let no size or order of files fail")
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
	list, err := goList(*dir, pattern)
	if err != nil {
		return err
	}
	rooms, err := measureAll(list, func(p listed) bool { return p.own() && (*why == "" || !p.DepOnly) })
	if err != nil {
		return err
	}
	if *why != "" {
		for _, r := range rooms {
			r.explain(stdout)
		}
		return nil
	}
	crowded := table(stdout, rooms)
	may, err := readFloors(*dir)
	if err != nil {
		return err
	}
	faults := may.faults(list)
	for _, f := range faults {
		fmt.Fprintln(stdout, f)
	}
	switch {
	case len(faults) > 0:
		return errFloors
	case crowded && !*report:
		return errCrowded
	}
	return nil
}
