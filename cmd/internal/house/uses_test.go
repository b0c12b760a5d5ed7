package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"maps"
	"slices"
	"strings"
	"testing"
)

// usesIn returns the uses between the files of a package given as text, as "a>b: names".
func usesIn(t *testing.T, files map[string]string) []string {
	t.Helper()
	fset := token.NewFileSet()
	var parsed []*ast.File
	for _, name := range slices.Sorted(maps.Keys(files)) {
		f, err := parser.ParseFile(fset, name, "package p\n"+files[name], 0)
		if err != nil {
			t.Fatal(err)
		}
		parsed = append(parsed, f)
	}
	pkg, info, err := check("p", fset, parsed, nil)
	if err != nil {
		t.Fatal(err)
	}
	u := usesOf(fset, parsed, pkg, info)
	var lines []string
	for pair, names := range u.of {
		lines = append(lines, fmt.Sprintf("%s>%s: %s", u.files[pair[0]], u.files[pair[1]], strings.Join(names, " ")))
	}
	slices.Sort(lines)
	return lines
}

func TestUses(t *testing.T) {
	const b = "type T struct{ F int; E }\ntype E struct{ G int }\nfunc (*T) M() {}\nfunc f() T { return T{} }\ntype I interface{ N() }\ntype L[X any] struct{ V X }\nfunc (L[X]) W() {}\n"
	for _, c := range []struct{ what, a, want string }{
		{"a function", "var _ = f()", "a>b: f"},
		{"a field of a value whose type is not named", "func a() int { x := f(); return x.F }", "a>b: .F f"},
		{"a field of what is embedded", "func a() int { x := f(); return x.G }", "a>b: .G f"},
		{"a method", "func a() { x := f(); x.M() }", "a>b: *T.M f"},
		{"a method of an interface", "func a(i I) { i.N() }", "a>b: I I.N"},
		{"a field and a method of a generic type", "func a(l L[int]) { _ = l.V; l.W() }", "a>b: .V L L[X].W"},
		{"a key of a literal", "var _ = T{F: 1}", "a>b: .F T"},
		{"embedding", "type U struct{ T }", "a>b: T"},
		{"a method for a type elsewhere", "func (T) Z() {}", "a>b: T"},
		{"a name of its own that hides another", "func a() { f := 1; _ = f }", ""},
		{"nothing", "var x = 1", ""},
	} {
		if got := strings.Join(usesIn(t, map[string]string{"a": c.a, "b": b}), "; "); got != c.want {
			t.Errorf("%s: got %q, want %q", c.what, got, c.want)
		}
	}
}
