// Faults shows that the published checks bite: it puts each deliberate fault of
// faults.toml into a copy of the tree, one at a time, runs the rows of `archload
// verify` on it, and prints which rows see it as a Markdown table.
//
//	go run ./cmd/internal/faults [-only REGEXP]
//
// It is run by hand from the root of the module. It ends with status 1 if a fault
// has no place, does not compile, or is seen by no row.
package main

import (
	"bytes"
	_ "embed"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2"
)

//go:embed faults.toml
var list []byte

// fault is one change of the source.
type fault struct {
	Name string
	Part string // of the program, for the table
	Old  string // found once in the Go files of the tree, tests and the checks themselves aside
	New  string
}

func main() {
	only := flag.String("only", "", "faults whose name matches the regular expression")
	flag.Parse()
	unseen, err := run(*only)
	if err != nil {
		fmt.Fprintln(os.Stderr, "faults:", err)
		os.Exit(1)
	}
	if unseen > 0 {
		fmt.Fprintf(os.Stderr, "faults: %d not seen by any row, or not tried\n", unseen)
		os.Exit(1)
	}
}

// run tries the faults and returns how many no row sees or have no place.
func run(only string) (unseen int, err error) {
	want, err := regexp.Compile(only)
	if err != nil {
		return 0, err
	}
	var all struct{ Fault []fault }
	if err := toml.NewDecoder(bytes.NewReader(list)).DisallowUnknownFields().Decode(&all); err != nil {
		return 0, err
	}
	dir, err := os.MkdirTemp("", "faults")
	if err != nil {
		return 0, err
	}
	defer func() { err = errors.Join(err, os.RemoveAll(dir)) }()
	if err := os.CopyFS(filepath.Join(dir, "tree"), os.DirFS(".")); err != nil {
		return 0, err
	}
	t := tree{dir: dir}
	if rows, err := t.verify(); err != nil || len(rows) > 0 {
		return 0, fmt.Errorf("without a fault %d rows miss (%w)", len(rows), err)
	}
	fmt.Print("| part | fault | rows that see it | the first of them |\n|---|---|---|---|\n")
	for _, f := range all.Fault {
		if !want.MatchString(f.Name) {
			continue
		}
		rows, err := t.try(f)
		first := "**none**"
		switch {
		case err != nil:
			first = "**not tried**: " + strings.Join(strings.Fields(err.Error()), " ")
			unseen++
		case len(rows) == 0:
			unseen++
		default:
			first = rows[0]
		}
		fmt.Printf("| %s | %s | %d | %s |\n", f.Part, f.Name, len(rows), first)
	}
	return unseen, nil
}

// tree is the copy that the faults are put into.
type tree struct{ dir string }

// try returns the rows that see a fault, and leaves the tree as it was.
func (t tree) try(f fault) (rows []string, err error) {
	file, data, err := t.place(f.Old)
	if err != nil {
		return nil, err
	}
	if err := os.WriteFile(file, bytes.Replace(data, []byte(f.Old), []byte(f.New), 1), 0o600); err != nil {
		return nil, err
	}
	defer func() { err = errors.Join(err, os.WriteFile(file, data, 0o600)) }()
	return t.verify()
}

// place finds the one file that holds the text once.
func (t tree) place(old string) (file string, data []byte, err error) {
	count := 0
	root := filepath.Join(t.dir, "tree")
	err = filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && (d.Name() == ".git" || strings.HasSuffix(path, "cases/verify")):
			return fs.SkipDir
		case d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go"):
			return nil
		}
		text, err := os.ReadFile(path)
		if n := bytes.Count(text, []byte(old)); n > 0 {
			file, data, count = path, text, count+n
		}
		return err
	})
	if err == nil && count != 1 {
		err = fmt.Errorf("want the text %q once, found it %d times", old, count)
	}
	return file, data, err
}

// checks is the program that is built from the copy: the rows of `archload
// verify` that miss, one a line, without the pictures, which take long to compile.
const checks = `package main

import (
	"context"
	"fmt"
	"os"
	"runtime"

	"archload/cases/verify"
)

func main() {
	rows, err := verify.Run(context.Background(), verify.Options{Workers: runtime.NumCPU()})
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	for _, r := range rows {
		if !r.Pass {
			fmt.Println(r.Name + ": " + r.Quantity)
		}
	}
}
`

// verify builds the checks and returns the rows that miss, each once; a run that
// cannot end is one row with its message.
func (t tree) verify() ([]string, error) {
	program, main := filepath.Join(t.dir, "checks"), filepath.Join(t.dir, "tree", "cmd", "checks", "main.go")
	if err := os.MkdirAll(filepath.Dir(main), 0o700); err != nil {
		return nil, err
	}
	if err := os.WriteFile(main, []byte(checks), 0o600); err != nil {
		return nil, err
	}
	build := exec.Command("go", "build", "-o", program, "./cmd/checks")
	build.Dir = filepath.Join(t.dir, "tree")
	if out, err := build.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("go build: %w: %s", err, out)
	}
	var out, said bytes.Buffer
	check := exec.Command(program)
	check.Stdout, check.Stderr = &out, &said
	if err := check.Run(); err != nil {
		first, _, _ := strings.Cut(said.String(), "\n")
		return []string{"the run ends: " + first}, nil
	}
	var rows []string
	for row := range strings.Lines(out.String()) {
		if row = strings.TrimSpace(row); !slices.Contains(rows, row) {
			rows = append(rows, row)
		}
	}
	return rows, nil
}
