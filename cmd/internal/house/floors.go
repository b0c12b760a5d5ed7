package main

import (
	"bufio"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// floorsFile holds the floors of a module, below its folder. A line is a package and
// what it may import outside its tests besides the standard library: packages, or
// modules with everything in them ("/..."). # begins a comment.
const floorsFile = ".ci/floors"

// floors tells what each package may import.
type floors map[string][]string

// readFloors reads the floors of the module in dir.
func readFloors(dir string) (floors, error) {
	f, err := os.Open(filepath.Join(dir, floorsFile))
	if err != nil {
		return nil, err
	}
	defer f.Close() // only read
	list := floors{}
	s := bufio.NewScanner(f)
	for n := 1; s.Scan(); n++ {
		text, _, _ := strings.Cut(s.Text(), "#")
		word := strings.Fields(text)
		if len(word) == 0 {
			continue
		}
		if _, twice := list[word[0]]; twice {
			return nil, fmt.Errorf("%s:%d: %s has a line already", floorsFile, n, word[0])
		}
		list[word[0]] = word[1:]
	}
	return list, s.Err()
}

// Standard packages with restricted use, each with all below it.
var (
	// system is for commands: nothing else touches files, processes or the network.
	system = []string{"os", "log", "net", "syscall", "flag"}
	// chance is not for the physics, which gives the same answer every time.
	chance = []string{"time", "math/rand", "crypto/rand"}
)

// faults returns what the packages of a module import against its floors, as sentences;
// a package without a line and a line without a package are faults too.
func (f floors) faults(list []listed) []string {
	var out []string
	known := map[string]bool{}
	for _, p := range list {
		if !p.own() {
			continue
		}
		known[p.ImportPath] = true
		may, has := f[p.ImportPath]
		if !has {
			out = append(out, fmt.Sprintf("%s has no floor; give it a line in %s", p.ImportPath, floorsFile))
			continue
		}
		for _, imported := range p.Imports {
			if why := refused(p, may, imported); why != "" {
				out = append(out, fmt.Sprintf("%s may not import %s%s", p.ImportPath, imported, why))
			}
		}
	}
	for path := range f {
		if !known[path] {
			out = append(out, fmt.Sprintf("%s has a line in %s, but there is no such package", path, floorsFile))
		}
	}
	slices.Sort(out)
	return out
}

// refused says why p, which may import what a line lists, may not import this one; ""
// if it may.
func refused(p listed, may []string, imported string) string {
	module := p.Module.Path
	first, _, _ := strings.Cut(imported, "/")
	own := func(folders ...string) bool {
		rest, is := strings.CutPrefix(p.ImportPath, module+"/")
		return is && within(rest, folders)
	}
	switch {
	case admitted(may, imported):
		return ""
	case within(imported, []string{module}) || strings.Contains(first, "."):
		return ": its line does not list it"
	case within(imported, system) && p.Name != "main" && !own("cmd", "internal"):
		return ": only commands touch the system"
	case within(imported, chance) && own("materials", "mesh", "fem"):
		return ": the physics has no clock and no chance"
	}
	return ""
}

// admitted tells whether a list names an import, or a module that it is part of.
func admitted(may []string, imported string) bool {
	return slices.ContainsFunc(may, func(m string) bool {
		all, whole := strings.CutSuffix(m, "/...")
		return m == imported || whole && within(imported, []string{all})
	})
}

// within tells whether a package is one of a list or below one.
func within(path string, list []string) bool {
	return slices.ContainsFunc(list, func(top string) bool {
		return path == top || strings.HasPrefix(path, top+"/")
	})
}
