package lesson

import (
	"archload/cases"
	"archload/mesh"
)

// lessonFormat is the version of the lesson files that this program reads.
const lessonFormat = 1

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
