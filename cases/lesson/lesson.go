package lesson

import (
	"archload/cases/tree"

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
	Steps []Step
}

// Step is one picture of a lesson, with the words under it.
type Step struct {
	Caption string          // one or two sentences, without the marks of its claims
	Ask     string          // a question that is put before the picture answers it; "": none
	Caution string          // where harm could come of it; "": none
	Case    string          // as OpenChanged takes it
	Set     []tree.KeyValue // keys set on top of the case
	Beside  string          // the design that it is held against, as Open takes it; "": none
	Against []tree.KeyValue // keys set on top of that
	Bench   string          // the bench file that claims may speak of; "": none
	Load    float64         // 0..1 of the string load
	Play    bool            // the load runs from nothing to Load
	Field   string          // one of Fields
	Face    string          // one of Faces
	View    string          // one of Views
	Section string          // one of Sections
	More    bool            // of two designs: what the step's own has more than the one beside
	Enlarge float64         // movements are drawn this many times as large; 0: chosen
	Forces  bool            // the forces as arrows
	Strip   float64         // mm: a strip so wide along the centre line alone; 0: all
	Tone    int             // which tone is shown, where the field is "tone"; 0: the lowest
	State   string          // one of States, of the tone; "": strung, if it has strings
	Air     float64         // relative humidity to which the design is taken, percent; 0: none, or dry where the field is "humidity"
	AirA    float64         // the same of the design beside
	Points  []Point         // what is pointed at
	Chart   Chart           // numbers as bars below the picture; no rows: none
	Sketch  Sketch          // drawn beside them; of nothing: none
	Claims  []Claim         // what caption, caution, points and chart say of the numbers
}

// Chart is a few numbers as bars along one axis.
type Chart struct {
	Title string // what they are, with the unit
	Rows  []Row
}

// Row is one number of a chart.
type Row struct {
	Words  string  // as they stand at the bar, numbers included
	Value  float64 // the first number of the words
	Spread float64 // the second one, to either side of the first; 0: none
	Of     Whose
}

// Sketch is a drawing, not to scale, of what a picture of the design cannot show.
type Sketch struct {
	Of    string // one of Sketches
	Notes []Row  // what is written into it, in its order
}

// Whose number a row of a chart shows, where two designs are shown.
type Whose uint8

// The design beside, the step's own, or what is of neither alone.
const (
	Neither Whose = iota
	OfBeside
	OfOwn
)

// Point is a place that a step points at.
type Point struct {
	Name  string     // one of the case's landmarks; "": a place of the lesson's own
	At    mesh.Point // mm, in plan
	Words string     // written beside it
	Old   bool       // on the design beside

	Arrow  [3]float64 // mm: an arrow so long there, as drawn; zero: none
	Above  float64    // mm: over the top, of the arrow
	Swings bool       // the arrow points both ways
}

// Fields lists what may colour the top in a lesson.
func Fields() []string {
	return []string{"none", "sink", "stress along", "stress across", "strength used", "load flow", "foot pressure", "gap", "tone", "humidity"}
}

// Faces lists the faces whose stress a lesson may show.
func Faces() []string { return []string{"outside", "inside"} }

// States lists the states in which a lesson may show a tone.
func States() []string { return []string{"strung", "bare", "free"} }

// Views lists where a lesson may look from.
func Views() []string {
	return []string{"from outside", "from the tail", "from the treble side", "from inside", "at an angle", "from behind"}
}

// Sections lists the cuts that a lesson may show: across at the bridge,
// or along the centre line.
func Sections() []string { return []string{"none", "cross", "long"} }

// Sketches lists the sketches that a lesson may show, with how many notes are written into each.
func Sketches() map[string]int {
	return map[string]int{
		"rolling shear": 3, "neck": 4, "lean": 5, "driven": 3, "swinging string": 3, "air": 2, "air over a post": 2, "post": 2,
		"hinge": 1, "hinge and sides": 2, "tones": 11, "octave": 4, "shrunk": 2, "cloth": 2, "faces": 4,
	}
}
