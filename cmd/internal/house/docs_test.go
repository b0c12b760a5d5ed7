package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// tree is what a document may speak of: the files of the module, and what its
// Go files declare.
type tree struct {
	files    map[string]bool            // paths below the root, with slashes; folders too
	bases    map[string]bool            // names of files without their folder
	packages map[string]bool            // folders with Go files outside testdata
	declared map[string]map[string]bool // by package name: Name, Type.Method, Type.Field
	anywhere map[string]bool            // all of these without their package, and methods and fields alone
	docs     map[string]string          // comments of packages by the file that they stand in
}

// treeOf reads the module at a root.
func treeOf(t *testing.T, root string) *tree {
	t.Helper()
	w := &tree{map[string]bool{}, map[string]bool{}, map[string]bool{}, map[string]map[string]bool{}, map[string]bool{}, map[string]string{}}
	err := filepath.WalkDir(root, func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.Name() == ".git" && d.IsDir() {
			return filepath.SkipDir
		}
		rel, err := filepath.Rel(root, name)
		if err != nil {
			return err
		}
		rel = filepath.ToSlash(rel)
		w.files[rel] = true
		if d.IsDir() {
			return nil
		}
		w.bases[path.Base(rel)] = true
		if path.Ext(rel) == ".go" && !strings.Contains(rel, "/testdata/") {
			w.packages[path.Dir(rel)] = true
			return w.addFile(name, rel)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// addFile adds what a Go file declares.
func (w *tree) addFile(name, rel string) error {
	f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments|parser.SkipObjectResolution)
	if err != nil {
		return err
	}
	if f.Doc != nil {
		w.docs[rel] = f.Doc.Text()
	}
	pkg := strings.TrimSuffix(f.Name.Name, "_test")
	for _, d := range f.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			owner := ""
			if d.Recv != nil {
				owner = receiver(d.Recv.List[0].Type)
			}
			w.declare(pkg, owner, d.Name.Name)
		case *ast.GenDecl:
			for _, s := range d.Specs {
				w.addSpec(pkg, s)
			}
		}
	}
	return nil
}

// addSpec adds constants, variables, and types with their fields and methods.
func (w *tree) addSpec(pkg string, s ast.Spec) {
	switch s := s.(type) {
	case *ast.ValueSpec:
		for _, n := range s.Names {
			w.declare(pkg, "", n.Name)
		}
	case *ast.TypeSpec:
		w.declare(pkg, "", s.Name.Name)
		var fields *ast.FieldList
		switch u := s.Type.(type) {
		case *ast.StructType:
			fields = u.Fields
		case *ast.InterfaceType:
			fields = u.Methods
		default:
			return
		}
		for _, f := range fields.List {
			for _, n := range f.Names {
				w.declare(pkg, s.Name.Name, n.Name)
			}
		}
	}
}

// declare adds a name, below a type if there is an owner.
func (w *tree) declare(pkg, owner, name string) {
	if w.declared[pkg] == nil {
		w.declared[pkg] = map[string]bool{}
	}
	w.anywhere[name] = true
	if owner != "" {
		name = owner + "." + name
		w.anywhere[name] = true
	}
	w.declared[pkg][name] = true
}

// receiver is the name of the type of a method.
func receiver(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.StarExpr:
		return receiver(e.X)
	case *ast.IndexExpr:
		return receiver(e.X)
	case *ast.Ident:
		return e.Name
	}
	return ""
}

var (
	isName  = regexp.MustCompile(`^[A-Za-z_]\w*(\.[A-Za-z_]\w*)*$`)
	isPath  = regexp.MustCompile(`^[\w.*{},/-]+$`)
	isRun   = regexp.MustCompile(`-(?:run|fuzz)[ =]'?\^?(\w+)`)
	inTicks = regexp.MustCompile("`([^`\n]+)`")
	isLink  = regexp.MustCompile(`\[\*?([A-Za-z]\w*(?:\.\w+)*)\]`)
	inDoc   = regexp.MustCompile(`\b[a-z]\w*\.go\b|\b[a-z]\w*\.[A-Z]\w*(?:\.[A-Z]\w*)?\b`)
)

// fault says what is wrong with a span of code in a document; "" if nothing.
func (w *tree) fault(span string) string {
	span = strings.TrimSuffix(span, "()")
	words := strings.Fields(span)
	switch {
	case words[0] == "go" || words[0] == "archload" || words[0] == "archview":
		return w.commandFault(words, span)
	case w.files[strings.Trim(strings.TrimPrefix(span, "./"), "/")] || w.bases[span]:
		return ""
	case isName.MatchString(span):
		if w.known(span) {
			return ""
		}
		return "no such name"
	case isPath.MatchString(span):
		for _, one := range unbraced(span) {
			if !w.matches(one) {
				return "no such file: " + one
			}
		}
		return ""
	}
	return "neither a file nor a name nor a command"
}

// commandFault looks at the words of a command: folders, verbs and tests must be.
func (w *tree) commandFault(words []string, span string) string {
	if words[0] == "archload" && len(words) > 1 && !strings.HasPrefix(words[1], "-") && !w.files["cmd/archload/"+words[1]+".go"] {
		return "no such verb"
	}
	for _, a := range words[1:] {
		dir := strings.TrimSuffix(strings.TrimPrefix(a, "./"), "/...")
		if strings.HasPrefix(a, "./") && a != "./..." && !w.files[dir] {
			return "no such folder: " + a
		}
	}
	for _, m := range isRun.FindAllStringSubmatch(span, -1) {
		found := false
		for name := range w.anywhere {
			found = found || strings.Contains(name, m[1])
		}
		if !found {
			return "no such test"
		}
	}
	return ""
}

// known says whether something is declared: pkg.Name, Type.Method, Name, or the name
// of a package.
func (w *tree) known(span string) bool {
	first, rest, dotted := strings.Cut(span, ".")
	if !dotted {
		return w.anywhere[span] || w.declared[span] != nil
	}
	return w.declared[first][rest] || w.anywhere[span]
}

// matches says whether a file or folder is there, also by a pattern.
func (w *tree) matches(pattern string) bool {
	pattern = strings.TrimSuffix(pattern, "/")
	if w.files[pattern] {
		return true
	}
	for f := range w.files {
		if ok, _ := path.Match(pattern, f); ok {
			return true
		}
	}
	return false
}

// unbraced writes a{b,c}d out as abd and acd.
func unbraced(s string) []string {
	before, rest, ok := strings.Cut(s, "{")
	if !ok {
		return []string{s}
	}
	in, after, _ := strings.Cut(rest, "}")
	var out []string
	for _, one := range strings.Split(in, ",") {
		out = append(out, unbraced(before+one+after)...)
	}
	return out
}

const root = "../../.."

// TestDevelopers holds DEVELOPERS.md to the tree: whatever stands there between
// backticks is a file, a name that is declared, or a command of folders that are
// there; so are the names in the drawing of the path of the data; and no package is
// left out.
func TestDevelopers(t *testing.T) {
	w := treeOf(t, root)
	data, err := os.ReadFile(root + "/DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	told, fenced := map[string]bool{}, false
	for i, line := range strings.Split(string(data), "\n") {
		if strings.HasPrefix(line, "```") {
			fenced = !fenced
			continue
		}
		if fenced {
			for _, name := range inDoc.FindAllString(line, -1) {
				if pkg, _, _ := strings.Cut(name, "."); w.declared[pkg] != nil && !w.known(name) {
					t.Errorf("DEVELOPERS.md:%d: %s: no such name", i+1, name)
				}
			}
			if f := strings.Fields(strings.SplitN(line, " #", 2)[0]); len(f) > 0 && f[0] == "go" {
				if fault := w.commandFault(f, strings.Join(f, " ")); fault != "" {
					t.Errorf("DEVELOPERS.md:%d: %s: %s", i+1, line, fault)
				}
			}
			continue
		}
		for _, m := range inTicks.FindAllStringSubmatch(line, -1) {
			told[m[1]] = true
			if fault := w.fault(m[1]); fault != "" {
				t.Errorf("DEVELOPERS.md:%d: `%s`: %s", i+1, m[1], fault)
			}
		}
	}
	for _, p := range slices.Sorted(maps.Keys(w.packages)) {
		if !told[p] {
			t.Errorf("DEVELOPERS.md: the package `%s` is not told", p)
		}
	}
}

// TestOtherDocuments: Go files, folders of packages and go commands that are named in
// the other documents exist.
func TestOtherDocuments(t *testing.T) {
	w := treeOf(t, root)
	for name := range w.files {
		if path.Ext(name) != ".md" || name == "DEVELOPERS.md" {
			continue
		}
		data, err := os.ReadFile(root + "/" + name)
		if err != nil {
			t.Fatal(err)
		}
		for i, line := range strings.Split(string(data), "\n") {
			for _, m := range inTicks.FindAllStringSubmatch(line, -1) {
				if !strings.HasSuffix(m[1], ".go") && !strings.HasPrefix(m[1], "go ") {
					continue
				}
				if fault := w.fault(m[1]); fault != "" {
					t.Errorf("%s:%d: `%s`: %s", name, i+1, m[1], fault)
				}
			}
		}
	}
}

// TestPackageDocs holds the comments of the packages to the tree: the files that they
// name stand beside them, and names that they link or take from other packages are
// declared.
func TestPackageDocs(t *testing.T) {
	w := treeOf(t, root)
	for doc, text := range w.docs {
		for _, name := range inDoc.FindAllString(text, -1) {
			pkg, _, _ := strings.Cut(name, ".")
			switch {
			case strings.HasSuffix(name, ".go"):
				if !w.files[path.Join(path.Dir(doc), name)] {
					t.Errorf("%s: %s: no such file beside it", doc, name)
				}
			case w.declared[pkg] != nil && !w.known(name):
				t.Errorf("%s: %s: no such name", doc, name)
			}
		}
		for _, m := range isLink.FindAllStringSubmatch(text, -1) {
			source := strings.Contains(text, "- ["+m[1]+"]") // a work that is cited
			if !source && !w.declared[path.Base(path.Dir(doc))][m[1]] && !w.known(m[1]) {
				t.Errorf("%s: [%s]: no such name", doc, m[1])
			}
		}
	}
}

// TestDocsFaults makes sure that what is wrong is found.
func TestDocsFaults(t *testing.T) {
	w := treeOf(t, root)
	for _, span := range []string{"cases.NoSuchName", "NoSuchName", "fem/nosuch.go", "fem/nosuch*.go", "fem/{model,nosuch}.go",
		"archload nosuch", "go run ./cmd/nosuch", "go test ./fem -run TestNoSuchThing", "a = b"} {
		if w.fault(span) == "" {
			t.Errorf("nothing is said of `%s`", span)
		}
	}
	for _, span := range []string{"design.Adapt", "Model.Zone", "fem", "fem/{model,ties}.go", "viz/figure/*.go", "archload solve", "go run ./cmd/internal/house -report"} {
		if fault := w.fault(span); fault != "" {
			t.Errorf("`%s`: %s", span, fault)
		}
	}
}
