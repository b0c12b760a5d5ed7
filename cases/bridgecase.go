package cases

import (
	"archload/cases/tree"
	"archload/mesh"
	"slices"
)

// Bridge stands on the top, held by the strings alone. x in its tables runs
// along the bridge from its middle, treble positive.
type Bridge struct {
	At           mesh.Point  `toml:"at" default:"[0, 0]"`                             // mm, its middle on the plate; default: [0, 0]
	Wood         string      `toml:"wood" default:"ebony"`                            // grain along x; default: ebony
	RingAngle    tree.Angle  `toml:"ring_angle" default:"0" want:"-90..90"`           // deg; 0: R upright, 90: T upright; default: 0
	Build        string      `toml:"build" default:"one-piece" one:"one-piece posts"` // default: one-piece
	Length       tree.Length `toml:"length" default:"140" want:">0"`                  // mm, of the base along x; default: 140
	Height       Profile     `toml:"height" along:"mm" want:">0" default:"12"`        // mm, of the base along x; default: 12
	Width        tree.Length `toml:"width" default:"13" want:">0"`                    // mm, along the strings; default: 13
	SaddleHeight tree.Length `toml:"saddle_height" default:"24" want:">0"`            // mm, string contact above the top at the middle; default: 24
	Feet         []Foot      `toml:"foot"`                                            // one: continuous; two: with a gap; default: the whole length
	Hollow       *Hollow     `toml:"hollow"`                                          // from the underside; default: solid
	Posts        BridgePosts `toml:"posts"`                                           // of a bridge with posts
	SaddleBeam   SaddleBeam  `toml:"saddle_beam"`                                     // of a bridge with posts
	Hold         string      `toml:"hold" default:"grip" one:"grip slip"`             // grip: a closed point sticks; slip: frictionless, the saddle guided; default: grip
	Relief       Relief      `toml:"relief"`                                          // default: none
	Misfit       Stations    `toml:"misfit" along:"mm"`                               // [[x, mm], ...], measured gap of the fitted foot, added to the relief; default: none
}

// Foot is a stretch of the base that stands on the top.
type Foot struct {
	From    tree.Length `toml:"from" need:"the bass end in mm from the bridge's middle"` // mm
	To      tree.Length `toml:"to" need:"the treble end in mm from the bridge's middle"` // mm
	Bearing string      `toml:"bearing" default:"full" one:"full perimeter"`             // default: full
	Wall    tree.Length `toml:"wall" default:"3" want:">0"`                              // mm, of a perimeter bearing; default: 3
}

// Hollow is wood taken out of the base from its underside.
type Hollow struct {
	Wall  tree.Length `toml:"wall" need:"the wall left standing in mm" want:">0"` // mm
	Depth tree.Length `toml:"depth" need:"the depth in mm" want:">=0"`            // mm; 0: solid after all
}

// BridgePosts are the two screws between base and saddle beam.
type BridgePosts struct {
	At       [2]tree.Length `toml:"at" default:"[-30, 30]"`             // mm from the bridge's middle; default: [-30, 30]
	Diameter tree.Length    `toml:"diameter" default:"4" want:">0"`     // mm; default: 4
	Modulus  tree.Stress    `toml:"modulus" default:"100000" want:">0"` // MPa, Young's modulus; default: 100000 (brass, handbook value from memory)
}

// SaddleBeam carries the strings on the posts. Its grain runs along x, R
// upright.
type SaddleBeam struct {
	Length tree.Length `toml:"length" default:"90" want:">0"` // mm; default: 90
	Width  tree.Length `toml:"width" default:"9" want:">0"`   // mm, along the strings; default: 9
	Height tree.Length `toml:"height" default:"8" want:">0"`  // mm; default: 8
	Wood   string      `toml:"wood"`                          // default: the bridge's wood
}

// Relief is wood taken from under the foot after fitting, so that its outer
// ends bear first. Relief.Gap gives the formulas.
type Relief struct {
	Depth    tree.Length `toml:"depth" default:"0" want:">=0"`                              // mm, at the middle; default: 0
	Shape    string      `toml:"shape" default:"parabola" one:"parabola cosine wedge flat"` // default: parabola
	Ends     tree.Length `toml:"ends" default:"15" want:">0"`                               // mm, left untouched at each outer end by shape flat; default: 15
	Across   tree.Length `toml:"across" default:"0" want:">=0"`                             // mm, hollow across the foot's width, zero at its edges; default: 0
	Stations Stations    `toml:"stations" along:"mm" want:">=0"`                            // [[x, depth], ...] instead of depth and shape
}

// TopLoad is a force on the outer surface: a weight on the bench, a finger.
type TopLoad struct {
	Name  string          `toml:"name"`                                                      // default: "load N"
	At    mesh.Point      `toml:"at" need:"the place [x, y] in mm"`                          // mm
	Size  *[2]tree.Length `toml:"size" want:">0"`                                            // mm, rectangle it is spread on, across and along; default: a point
	Force [3]tree.Force   `toml:"force" need:"the force [x, y, z] in N; down is negative z"` // N
}

// Gauge is a place where a dial gauge would stand.
type Gauge struct {
	Name     string       `toml:"name"`                             // default: "gauge N"
	At       mesh.Point   `toml:"at" need:"the place [x, y] in mm"` // mm
	Measured *tree.Length `toml:"measured"`                         // mm, sink read on the bench; default: none
}

// Support is a bench support under the plate: it holds the plate vertically at
// a point or along a line, both ways (it pulls as well as it pushes).
type Support struct {
	Name string       `toml:"name"` // default: "support N"
	At   *mesh.Point  `toml:"at"`   // mm
	Line []mesh.Point `toml:"line"` // mm
}

// Post is a prop between top and back: a vertical spring at a point.
type Post struct {
	Name      string         `toml:"name"`                                             // default: "post N"
	At        mesh.Point     `toml:"at" need:"the place [x, y] in mm"`                 // mm
	Stiffness tree.Stiffness `toml:"stiffness" need:"its stiffness in N/mm" want:">0"` // N/mm
	Diameter  tree.Length    `toml:"diameter" default:"6" want:">0"`                   // mm, of its end on the plate; default: 6
}

// Mesh steers the triangulation.
type Mesh struct {
	Size   tree.Length `toml:"size" default:"6" want:"2..30"`     // mm, edge away from features; default: 6
	Refine float64     `toml:"refine" default:"1" want:"0.25..8"` // 1, divides every size; default: 1
}

// Wall is the width of the bearing wall of foot i, mm; 0 for a full face.
func (b *Bridge) Wall(i int) float64 {
	switch {
	case b.Hollow != nil:
		return float64(b.Hollow.Wall)
	case b.Feet[i].Bearing == "perimeter":
		return float64(b.Feet[i].Wall)
	}
	return 0
}

// Places are the posts along the bridge, bass first, mm.
func (p *BridgePosts) Places() []float64 {
	xs := []float64{float64(p.At[0]), float64(p.At[1])}
	slices.Sort(xs)
	return xs
}
