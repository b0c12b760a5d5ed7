package lesson

import (
	"errors"
	"io/fs"
	"path"
	"slices"
	"strings"

	"archload/cases"
	"archload/cases/tree"
	"archload/mesh"
)

// lessonFormat is the version of the lesson files that this program reads.
const lessonFormat = 1

// lessonDir is where the bundled lessons lie in BundledFiles.
const lessonDir = cases.BundledDir + "/lessons"

// Lesson is a walk through one or more designs, a step at a time, for a
// teacher or an apprentice before the window. Everything is resolved: defaults
// are filled in, and what a step leaves out is taken over from the one before.
type Lesson struct {
	Name  string // the file's, without its ending
	Title string
	About string // one sentence
	Steps []LessonStep
}

// LessonStep is one picture of a lesson, with the words under it.
type LessonStep struct {
	Caption string           // one or two sentences, without the marks of its claims
	Caution string           // where harm could come of it; "": none
	Case    string           // as OpenChanged takes it
	Set     []cases.KeyValue // keys set on top of the case
	Beside  string           // a second design at its side, as Open takes it; "": none
	Load    float64          // 0..1 of the string load
	Play    bool             // the load runs from nothing to Load
	Field   string           // one of LessonFields
	Face    string           // one of LessonFaces
	View    string           // one of LessonViews
	Section string           // one of LessonSections
	Points  []LessonPoint    // what is pointed at
	Claims  []LessonClaim    // what the caption and the caution say of the numbers
}

// LessonPoint is a place that a step points at.
type LessonPoint struct {
	Name  string     // one of the case's landmarks; "": a place of the lesson's own
	At    mesh.Point // mm, in plan
	Words string     // written beside it
}

// LessonInfo describes a bundled lesson.
type LessonInfo struct {
	Name  string // to be given instead of a path
	Title string
	About string
	Steps int
}

// LessonFields lists what may colour the top in a lesson.
func LessonFields() []string {
	return []string{"none", "sink", "stress along", "stress across", "strength used", "load flow", "foot pressure", "gap"}
}

// LessonFaces lists the faces whose stress a lesson may show.
func LessonFaces() []string { return []string{"outside", "inside"} }

// LessonViews lists where a lesson may look from.
func LessonViews() []string {
	return []string{"from outside", "from the tail", "from the treble side", "from inside", "at an angle"}
}

// LessonSections lists the cuts that a lesson may show: across at the bridge,
// or along the centre line.
func LessonSections() []string { return []string{"none", "cross", "long"} }

// LoadLesson reads a lesson file and opens every case that it shows. The
// error, if any, is Faults. A case named with its ending .toml lies beside the
// lesson; one named without is bundled.
func LoadLesson(fsys fs.FS, name string) (*Lesson, error) {
	src, err := tree.OpenSource(fsys, name, name)
	if err != nil {
		return nil, tree.Faults{{File: name, Line: 1, Err: err}}
	}
	return readLesson(src)
}

// OpenLesson loads a bundled lesson by its name, or a lesson file from fsys. A
// name without a slash and without the ending .toml is that of a bundled one.
func OpenLesson(fsys fs.FS, nameOrPath string) (*Lesson, error) {
	if strings.ContainsAny(nameOrPath, `/\`) || path.Ext(nameOrPath) == ".toml" {
		return LoadLesson(fsys, nameOrPath)
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

// BundledLessons lists the lessons that come with the program, in the order
// in which they are best taken.
func BundledLessons() ([]LessonInfo, error) {
	names, err := lessonNames()
	if err != nil {
		return nil, err
	}
	var out []LessonInfo
	for _, name := range names {
		l, err := OpenLesson(nil, name)
		if err != nil {
			return nil, err
		}
		out = append(out, LessonInfo{Name: name, Title: l.Title, About: l.About, Steps: len(l.Steps)})
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
