package desk

import (
	"image"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/mesh"
	"archload/viz/desk/layout"
	"archload/viz/panel"
	"archload/viz/scene"
	"archload/viz/stage"
	"archload/viz/tool"
)

// toolbox is what can be changed of a design, worked out once for each state
// of its keys.
type toolbox struct {
	of    stage.Design
	tools []tool.Tool
	usual map[string]float64 // the sliders' values in the design's file
	ahead *cases.Case        // as the hand has set it
}

// play is the string load running from nothing to full.
type play struct {
	on    bool
	since float64 // s, when it stood at from
	from  float64 // fraction of string load
	to    float64
}

// hiddenWord is a word of one of the views.
type hiddenWord struct {
	view int
	kind scene.LabelKind
	text string
	at   [3]float64 // mm; zero for a word at the rim, of which there is one
}

// sight is what is known of the words that one camera sees.
type sight struct {
	camera  scene.Camera
	of      *stage.Shown
	briefly bool // with the bridge alone in the way
	hidden  map[hiddenWord]bool
}

// cover is what a scene covers of its view.
type cover struct {
	of      *scene.Scene
	camera  scene.Camera
	size    image.Point // of the view, pixels
	density float64
	held    bool // all is what an earlier scene covered

	all, bridge *scene.Covered
}

// noted is since when a note stands.
type noted struct {
	text  string
	since float64 // s
}

// growth is scales going over into those of the picture that is shown, so that
// the eye sees them change and not the plate.
type growth struct {
	from  stage.Scales
	since float64 // s
	of    *stage.Shown
	drawn *stage.Shown // the last one between them
}

// drag is what the hand does to the drawing while a button is held.
type drag struct {
	what  dragKind
	view  int         // in which it began
	from  panel.Point // where it began, points
	last  panel.Point
	moved bool       // far enough not to be a click
	cut   mesh.Point // where a line of a cut began, mm
}

type dragKind uint8

const (
	noDrag dragKind = iota
	turning
	shifting
	cutting
	gripping // something of the design is moved
)

// hover is what is read under the pointer.
type hover struct {
	at   panel.Point
	read answer.GaugeReport
	wood design.PlateShape

	other *answer.GaugeReport // of the other design, if there are two
	onB   bool                // the pointer is on B
	place mesh.Point          // in plan, mm
}

// arrival is a place to which the camera flies.
type arrival struct {
	at   [3]float64
	when float64 // s, when it is there; 0: nowhere
}

// past is what was set before: undone one step at a time, and done again.
type past struct {
	now           []stage.Design // as noted last
	before, after [][]stage.Design
}

// pageFit is how the page fits into the window.
type pageFit struct {
	steps, mostSteps int     // by which everything is written larger in this window, and could be
	narrow           bool    // there is no room for the panel unless it is asked for
	asked            bool    // it is asked for
	menuAt           float64 // left edge of the list that the folded bar has opened, points
	room             headRoom
	view             string            // the last that was named
	sizes            map[sized]float64 // how large plates are drawn, as found
	more             float64           // by which the strip was higher last, points
	saved            bool              // it is a picture for a file, which has no panel beside it
}

// headRoom is how many lines are kept for remarks over the drawings: the drawing must not move
// when one goes.
type headRoom struct {
	of    string // the designs, what is seen of them and from where
	lines map[layout.HeadWide]int
}

// sized is for what it was found how large a plate is drawn.
type sized struct {
	view, names string
	onFoot      bool
	wide, tall  float64 // of the room for it, points
}
