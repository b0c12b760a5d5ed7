package scene

import (
	"image/color"

	"archload/viz/scale"
)

// Scene is what stands before the camera: everything in mm, in the case's own
// axes (x to the treble, y to the neck, z outward). A Scene is never changed
// once it is made; a new load or field makes a new one, which may share
// solids with the old.
type Scene struct {
	Solids []*Solid
	Lines  []*Line
	Labels []Label
	Edge   [][3]float64 // mm, as drawn: the plate's outline, closed; what lies outside it on the page covers no wood

	Scale     *scale.Scale // of the values on the solids; nil: no field is shown
	Plain     bool         // no contour lines: the field is too uneven for them
	Field     string       // its name in the maker's words
	Unit      string
	Enlarge   float64    // movements are drawn this many times as large, 1
	Centre    [3]float64 // mm, what the camera turns about at first
	Radius    float64    // mm, of a sphere about Centre that holds everything
	Title     string     // of the design
	Statement string     // what is shown, in one line: field, load, enlargement
}

// Solid is a skin of triangles, lit, in one colour or in the colours of the
// scene's field. All lists but Tris have one entry for each point.
type Solid struct {
	Name    string       // "plate outside", "plate inside", "bass bar", "bridge"
	Points  [][3]float64 // mm, as drawn: the movements, enlarged, are already added
	Normals [][3]float64 // unit, of the shape as drawn; nil: not lit
	Values  []float64    // of the field, in its unit; nil: Paint everywhere; NaN: no value there
	Dim     []float64    // factor of light where a place sees less of the sky, 0 to 1; nil: 1 everywhere
	Across  []float64    // mm from the joint across the grain: wood, where no values are shown; nil: one colour
	Along   [3]float64   // of wood, along its grain, unit
	Soft    bool         // a shadow on what lies behind everything: Dim is a factor of its opacity, not of light
	Tris    [][3]int32   // anticlockwise seen from outside the body
	Paint   color.NRGBA  // where there is no value
	Picks   bool         // the pointer can read values here
}

// Line is a polyline of a constant width on the screen.
type Line struct {
	Points [][3]float64 // mm, as drawn
	Width  float64      // pixels on a screen of ordinary density
	Paint  color.NRGBA
	Halo   bool    // a light edge, so that it reads on dark ground
	Dash   float64 // mm of dash and of gap; 0: unbroken
	Over   bool    // drawn over everything, not hidden by solids
	Beads  bool    // beads move along it from its first point when the picture is in motion
}

// Label is a word at a place of the scene.
type Label struct {
	Text   string
	At     [3]float64 // mm, as drawn
	Kind   LabelKind
	Toward [3]float64 // mm; where the text stands off the place to, as a direction; zero: centred on it
}

// LabelKind says what a label stands for, and so how it is drawn.
type LabelKind uint8

// The kinds of label.
const (
	Orientation LabelKind = iota // neck, tail, bass, treble
	Reading                      // a pinned gauge with its value
	SectorForce                  // the newtons that a part of the rim takes
	Part                         // the name of a part that a lesson points at
	Level                        // the value of a line at a step of the legend
	Force                        // the newtons of an arrow, beside its beginning
)
