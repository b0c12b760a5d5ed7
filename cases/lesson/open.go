package lesson

import (
	"errors"
	"io/fs"
	"path"
	"slices"
	"strings"

	"archload/cases"
	"archload/cases/tree"
)

// Load reads a lesson file and opens every case that it shows. The
// error, if any, is Faults. A case named with its ending .toml lies beside the
// lesson; one named without is bundled.
func Load(fsys fs.FS, name string) (*Lesson, error) {
	src, err := tree.OpenSource(fsys, name, name)
	if err != nil {
		return nil, tree.Faults{{File: name, Line: 1, Err: err}}
	}
	return readLesson(src)
}

// Open loads a bundled lesson by its name, or a lesson file from fsys. A
// name without a slash and without the ending .toml is that of a bundled one.
func Open(fsys fs.FS, nameOrPath string) (*Lesson, error) {
	if strings.ContainsAny(nameOrPath, `/\`) || path.Ext(nameOrPath) == ".toml" {
		return Load(fsys, nameOrPath)
	}
	file := path.Join(lessonDir, nameOrPath+".toml")
	src, err := tree.OpenSource(cases.BundledFiles, file, file)
	if err == nil {
		return readLesson(src)
	}
	names, err := lessonNames()
	if err != nil {
		return nil, err
	}
	hint := "; there are " + strings.Join(names, ", ")
	if like := tree.Nearest(nameOrPath, names); like != "" {
		hint = `; did you mean "` + like + `"?`
	}
	return nil, tree.Faults{{File: nameOrPath, Line: 1, Err: errors.New("no bundled lesson of this name" + hint)}}
}

// Info describes a bundled lesson.
type Info struct {
	Name  string // to be given instead of a path
	Title string
	About string
	Steps int
}

// Bundled lists the lessons that come with the program, in the order
// in which they are best taken.
func Bundled() ([]Info, error) {
	names, err := lessonNames()
	if err != nil {
		return nil, err
	}
	var out []Info
	for _, name := range names {
		l, err := Open(nil, name)
		if err != nil {
			return nil, err
		}
		out = append(out, Info{Name: name, Title: l.Title, About: l.About, Steps: len(l.Steps)})
	}
	return out, nil
}

// lessonNames lists the bundled lessons; their names begin with their number.
func lessonNames() ([]string, error) {
	files, err := fs.Glob(cases.BundledFiles, lessonDir+"/*.toml")
	if err != nil {
		return nil, err
	}
	for i, f := range files {
		files[i] = cases.TrimExt(path.Base(f))
	}
	slices.Sort(files)
	return files, nil
}

// lessonDir is where the bundled lessons lie in BundledFiles.
const lessonDir = cases.BundledDir + "/lessons"
