package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// listed is what the go command tells of a package.
type listed struct {
	ImportPath     string
	Name           string
	Dir            string
	Module         *module // nil for the standard library
	Export         string  // file with the types of what the package exports
	DepOnly        bool    // not asked for, only needed by another
	GoFiles        []string
	CgoFiles       []string
	IgnoredGoFiles []string // of other systems; tests among them
	Imports        []string // outside tests
	Error          *struct{ Err string }
}

// module is the one that a package is part of.
type module struct {
	Path string
	Main bool // the one that the command looks at
}

// own tells whether a package is part of the module that the command looks at. That
// takes in those that only others name: ./... passes folders called testdata by.
func (p listed) own() bool { return p.Module != nil && p.Module.Main }

// room is one package and what was counted in it.
type room struct {
	path  string // import path
	lines int    // of all its files
	files int    // for any system
	types int    // exported names of types
	uses  uses   // between its files on this system
}

// measureAll counts those packages of a list that are wanted. It returns the first fault
// of the parser or of the types.
func measureAll(list []listed, wanted func(listed) bool) ([]room, error) {
	exports := map[string]string{}
	for _, p := range list {
		exports[p.ImportPath] = p.Export
	}
	fset := token.NewFileSet()
	imports := importer.ForCompiler(fset, "gc", func(path string) (io.ReadCloser, error) {
		if exports[path] == "" {
			return nil, errors.New("no types are known")
		}
		return os.Open(exports[path])
	})
	var rooms []room
	for _, p := range list {
		if !wanted(p) {
			continue
		}
		r, err := measure(p, fset, imports)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", p.ImportPath, err)
		}
		rooms = append(rooms, r)
	}
	slices.SortFunc(rooms, func(a, b room) int { return strings.Compare(a.path, b.path) })
	return rooms, nil
}

// goList asks the go command for the packages of the module in dir that match pattern
// and for all that they import, which it builds for the types.
func goList(dir, pattern string) ([]listed, error) {
	cmd := exec.Command("go", "list", "-export", "-deps",
		"-json=ImportPath,Name,Dir,Module,Export,DepOnly,GoFiles,CgoFiles,IgnoredGoFiles,Imports,Error", pattern)
	cmd.Dir = dir
	var out, fault bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &fault
	if err := cmd.Run(); err != nil {
		return nil, fmt.Errorf("go list: %w\n%s", err, fault.String())
	}
	var list []listed
	for d := json.NewDecoder(&out); ; {
		var p listed
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return list, nil
		} else if err != nil {
			return nil, fmt.Errorf("go list: %w", err)
		}
		if p.Error != nil {
			return nil, fmt.Errorf("go list: %s: %s", p.ImportPath, p.Error.Err)
		}
		list = append(list, p)
	}
}

// measure reads the files of a package and counts.
func measure(p listed, fset *token.FileSet, imports types.Importer) (room, error) {
	r := room{path: p.ImportPath}
	here := slices.Concat(p.GoFiles, p.CgoFiles)
	var parsed []*ast.File
	for _, name := range slices.Concat(here, p.IgnoredGoFiles) {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		src, err := os.ReadFile(filepath.Join(p.Dir, name))
		if err != nil {
			return r, err
		}
		r.files++
		r.lines += bytes.Count(src, []byte("\n"))
		if !slices.Contains(here, name) {
			continue
		}
		f, err := parser.ParseFile(fset, name, src, parser.SkipObjectResolution)
		if err != nil {
			return r, err
		}
		parsed = append(parsed, f)
	}
	pkg, info, err := check(p.ImportPath, fset, parsed, imports)
	if err != nil {
		return r, err
	}
	r.types = exportedTypes(pkg)
	r.uses = usesOf(fset, parsed, pkg, info)
	return r, nil
}

// check finds what every name in the files means.
func check(path string, fset *token.FileSet, files []*ast.File, imports types.Importer) (*types.Package, *types.Info, error) {
	info := &types.Info{Uses: map[*ast.Ident]types.Object{}}
	conf := types.Config{Importer: imports, FakeImportC: true}
	pkg, err := conf.Check(path, fset, files, info)
	return pkg, info, err
}

// exportedTypes counts the exported names of types.
func exportedTypes(pkg *types.Package) int {
	n := 0
	for _, name := range pkg.Scope().Names() {
		if _, is := pkg.Scope().Lookup(name).(*types.TypeName); is && token.IsExported(name) {
			n++
		}
	}
	return n
}
