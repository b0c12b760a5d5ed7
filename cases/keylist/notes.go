package keylist

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"regexp"
	"strings"

	"archload/cases"
)

// parted takes a field's comment apart: "mm, its width across; default: 60".
func parted(note string) (what, unit, fallback string) {
	what = note
	if m := regexp.MustCompile(`(?i)[;.] default( with \w+)?: (.*)$`).FindStringSubmatchIndex(what); m != nil {
		fallback = what[m[4]:m[5]]
		if m[2] >= 0 {
			fallback += what[m[2]:m[3]]
		}
		what = what[:m[0]]
	} else if m := regexp.MustCompile(`^(\w+); default: (.*)$`).FindStringSubmatch(what); m != nil {
		what, fallback = m[1], m[2]
	}
	if m := regexp.MustCompile(`^(mm|deg|N/mm|N|1|MPa|kg/m)( \([^)]*\))?(, |; | |$)`).FindStringSubmatch(what); m != nil {
		unit = m[1]
		what = strings.TrimPrefix(what, m[0])
	}
	if unit == "1" {
		unit = ""
	}
	return what, unit, fallback
}

// typeNote is the first paragraph of a type's comment without the type's name:
// "Plate is the top" says "the top".
func typeNote(name, note string) string {
	note, _, _ = strings.Cut(note, "\n\n")
	note = strings.Join(strings.Fields(note), " ")
	for _, verb := range []string{" is ", " are ", " "} {
		if rest, ok := strings.CutPrefix(note, name+verb); ok {
			return strings.TrimRight(rest, ":.")
		}
	}
	return note
}

// readNotes reads the comments of the schema's types ("Plate") and fields
// ("Plate.Wood").
func readNotes() (map[string]string, error) {
	notes := map[string]string{}
	for _, schema := range cases.SchemaFiles() {
		names, err := fs.Glob(schema, "*.go")
		if err != nil {
			return nil, err
		}
		for _, name := range names {
			src, err := schema.ReadFile(name)
			if err != nil {
				return nil, err
			}
			file, err := parser.ParseFile(token.NewFileSet(), name, src, parser.ParseComments)
			if err != nil {
				return nil, err
			}
			for _, d := range file.Decls {
				if g, ok := d.(*ast.GenDecl); ok {
					noteTypes(notes, g)
				}
			}
		}
	}
	return notes, nil
}

// noteTypes keeps the comments of the structs of a declaration.
func noteTypes(notes map[string]string, g *ast.GenDecl) {
	for _, s := range g.Specs {
		t, ok := s.(*ast.TypeSpec)
		if !ok {
			continue
		}
		notes[t.Name.Name] = g.Doc.Text()
		st, ok := t.Type.(*ast.StructType)
		if !ok {
			continue
		}
		for _, f := range st.Fields.List {
			for _, name := range f.Names {
				notes[t.Name.Name+"."+name.Name] = strings.Join(strings.Fields(f.Doc.Text()), " ")
			}
		}
	}
}
