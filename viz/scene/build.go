package scene

import (
	"sync"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/fem/vec3"
	"archload/mesh"
)

// Show says what a scene shows of a design. Only Solution is needed.
type Show struct {
	Solution   *design.Solution // of the design that the skeleton was made from
	Load       float64          // share of the string load, for the statement, 1
	Field      Field
	Face       Face               // of the plate, for fields that differ between the faces
	Values     []float64          // of the field, in its unit, at the nodes or the cells of the foot; nil: taken from Solution
	Difference bool               // Values are what another design has more of
	Before     *Before            // the same field before a change, to be drawn as dashed lines; nil: none
	Range      *[2]float64        // ends of the legend, in the field's unit; nil: from the values
	Enlarge    float64            // movements are drawn so many times as large, 1; 0: EnlargeFor
	Strings    bool               // draw them
	Flow       *answer.FlowReport // lines of force to draw; nil: none
	Forces     *Forces            // arrows to draw; nil: none
	Behind     bool               // the back is solid and has the field's colours
	Worst      *Mark              // the place where most of the strength is used; nil: not known
	Pins       []Pin              // places to read
	Cut        [2]mesh.Point      // ends of a section's line in plan, mm; equal: none
	Statement  string             // what is said to be shown; "": field, load and enlargement
	Wordless   bool               // no neck, tail, bass and treble at the rim
}

// Pin is a place on the plate that is read.
type Pin struct {
	Name string
	At   mesh.Point // mm, on the outer surface
	Text string     // the reading; "": the field's value there
	On   int        // of two designs, the one that is pointed at, from 0; pins with a name are on both

	Arrow  [3]float64 // mm: an arrow so long at the place, for what pushes there or moves; zero: none. One that points down ends there
	Above  float64    // mm: how far over the place it stands
	Swings bool       // it points both ways
}

// build is a scene in the making.
type build struct {
	k            *Skeleton
	in           Show
	s            *design.Solution
	e            float64
	outer, inner []vec     // the plate's skins as drawn, at the nodes
	up           []vec     // normals of the outer skin as drawn
	values       []float64 // at the nodes; nil: none
	onFoot       []float64 // at the cells of the foot; nil: none
	scene        *Scene
	beside       sync.WaitGroup // what fills in slots of the scene meanwhile
}

// thinOff is how far a line may leave its way where it is drawn through fewer places, mm: a tenth of a pixel,
// where a page shows a whole top. To each of its stretches belongs a ribbon that costs as much whether it is
// long or short.
const thinOff = 0.06

// line adds a line to the scene.
func (b *build) line(l *Line) {
	l.Points = vec3.Thinned(l.Points, thinOff)
	b.scene.Lines = append(b.scene.Lines, l)
}

// solid adds a solid.
func (b *build) solid(o *Solid) { b.scene.Solids = append(b.scene.Solids, o) }

// label adds a label.
func (b *build) label(l Label) { b.scene.Labels = append(b.scene.Labels, l) }
