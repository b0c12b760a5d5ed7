package cases

import (
	"slices"

	"archload/cases/tree"
	"archload/mesh"
)

// Bridge stands on the top, held by the strings alone. x in its tables runs
// along the bridge from its middle, treble positive.
type Bridge struct {
	// mm, its middle on the plate; default: [0, 0]
	At mesh.Point `toml:"at" default:"[0, 0]" eg:"[0, -5]"`
	// its grain runs along the bridge; default: ebony
	Wood string `toml:"wood" default:"ebony" eg:"'ebony'"`
	// deg, 0: rings lying (R upright), 90: rings upright (T upright); default: 0
	RingAngle tree.Angle `toml:"ring_angle" default:"0" want:"-90..90" eg:"90"`
	// one-piece, or a base with two posts and a saddle beam on them; default: one-piece
	Build string `toml:"build" default:"one-piece" one:"one-piece posts" eg:"'posts'"`
	// mm, of the base across the strings; default: 140
	Length tree.Length `toml:"length" default:"140" want:">0" eg:"132"`
	// mm, of the base: one, or stations [[x, mm], ...] along it
	Height Profile `toml:"height" along:"mm" want:">0" default:"12" eg:"[[-70, 7], [0, 12], [70, 7]]"`
	// mm, along the strings; default: 13
	Width tree.Length `toml:"width" default:"13" want:">0" eg:"12"`
	// mm, string contact above the top at the bridge's middle; default: 24
	SaddleHeight tree.Length `toml:"saddle_height" default:"24" want:">0" eg:"25"`
	// what of the base stands on the top: one table is a continuous foot, two are two feet; default: the
	// whole length
	Feet []Foot `toml:"foot" eg:"[{ from = -66, to = -20 }, { from = 20, to = 66 }]"`
	// wood taken out of the base from its underside; default: solid
	Hollow *Hollow `toml:"hollow" eg:"{ wall = 3, depth = 6 }"`
	// what of a one-piece bridge stands on its base and carries the strings: it weighs, and is taken as stiff
	SaddlePart SaddlePart `toml:"saddle_part" eg:"{ width = 5 }"`
	// the two screws between base and saddle beam, of build = "posts"
	Posts BridgePosts `toml:"posts" eg:"{ at = [-32, 32] }"`
	// the upper part that carries the strings, of build = "posts"
	SaddleBeam SaddleBeam `toml:"saddle_beam" eg:"{ height = 9 }"`
	// friction: a place that bears stays until it drags with all its friction, then it slides; grip: it stays
	// whatever it drags; slip: no friction, the saddle guided; default: friction
	Hold string `toml:"hold" default:"friction" one:"friction grip slip" eg:"'slip'"`
	// 1, coefficient of friction of the foot on the top, of hold = "friction"; smooth dry wood has 0.3 to 0.5
	// (Wood Handbook, ch. 4); default: 0.4
	Friction float64 `toml:"friction" default:"0.4" want:">=0" eg:"0.3"`
	// wood taken from under the fitted foot, so that its ends bear first; default: none
	Relief Relief `toml:"relief" eg:"{ depth = 0.12 }"`
	// [[x, mm], ...], air measured with feeler gauges under the fitted foot, unloaded, before any relief,
	// at x from its middle; it adds to the relief; default: none
	Misfit Stations `toml:"misfit" along:"mm" eg:"[[-60, 0], [0, 0.05], [60, 0]]"`
}

// Foot is a stretch of the base that stands on the top.
type Foot struct {
	// mm, its bass end from the bridge's middle (bass negative)
	From tree.Length `toml:"from" need:"the bass end in mm from the bridge's middle" eg:"-66"`
	// mm, its treble end from the bridge's middle
	To tree.Length `toml:"to" need:"the treble end in mm from the bridge's middle" eg:"66"`
	// full: the whole face; perimeter: only a wall around it; default: full
	Bearing string `toml:"bearing" default:"full" one:"full perimeter" eg:"'perimeter'"`
	// mm, of a perimeter bearing; default: 3
	Wall tree.Length `toml:"wall" default:"3" want:">0" eg:"4"`
}

// Hollow is wood taken out of the base from its underside.
type Hollow struct {
	// mm, the wall left standing around
	Wall tree.Length `toml:"wall" need:"the wall left standing in mm" want:">0" eg:"3"`
	// mm, from the underside; 0: solid after all
	Depth tree.Length `toml:"depth" need:"the depth in mm" want:">=0" eg:"6"`
}

// BridgePosts are the two screws between base and saddle beam.
type BridgePosts struct {
	// mm from the bridge's middle, of both; default: [-30, 30]
	At [2]tree.Length `toml:"at" default:"[-30, 30]" eg:"[-32, 32]"`
	// mm, of each, taken as solid; default: 4
	Diameter tree.Length `toml:"diameter" default:"4" want:">0" eg:"3.5"`
	// MPa, Young's modulus; default: 100000 (brass, handbook value from memory)
	Modulus tree.Stress `toml:"modulus" default:"100000" want:">0" eg:"'200 GPa'"`
	// mm, diameter and thickness of the wheel of brass on each, under the saddle beam; [0, 0]: none; default: [14, 2.5]
	// (common practice, no published source)
	Wheel [2]tree.Length `toml:"wheel" default:"[14, 2.5]" want:">=0" eg:"[16, 3]"`
}

// SaddlePart is the upper part of a one-piece bridge, from the base up to the strings.
type SaddlePart struct {
	// mm, across the strings; default: 8 mm beyond the outer strings on both sides
	Length tree.Length `toml:"length" want:">0" eg:"62"`
	// mm, along the strings, in the mean; 0: it is not weighed; default: 6 (common practice, no published source)
	Width tree.Length `toml:"width" default:"6" want:">=0" eg:"5"`
}

// SaddleBeam carries the strings on the posts. Its grain runs along x, R
// upright.
type SaddleBeam struct {
	// mm, across the strings; default: 90
	Length tree.Length `toml:"length" default:"90" want:">0" eg:"80"`
	// mm, along the strings; default: 9
	Width tree.Length `toml:"width" default:"9" want:">0" eg:"8"`
	// mm, from its underside to its top; default: 8
	Height tree.Length `toml:"height" default:"8" want:">0" eg:"10"`
	// its grain runs along the bridge, R upright; default: the bridge's wood
	Wood string `toml:"wood" eg:"'ebony'"`
}

// Relief is wood taken from under the foot after fitting, so that its outer
// ends bear first.
//
// Relief.Gap gives the formulas.
type Relief struct {
	// mm, wood taken off at the bridge's middle; default: 0
	Depth tree.Length `toml:"depth" default:"0" want:">=0" eg:"0.12"`
	// how it runs out toward the ends of the foot; default: parabola
	Shape string `toml:"shape" default:"parabola" one:"parabola cosine wedge flat" eg:"'cosine'"`
	// mm, left untouched at each outer end by shape flat; default: 15
	Ends tree.Length `toml:"ends" default:"15" want:">0" eg:"20"`
	// mm, hollow across the foot's width, zero at its edges; default: 0
	Across tree.Length `toml:"across" default:"0" want:">=0" eg:"0.03"`
	// [[x, depth], ...] in mm from the bridge's middle, instead of depth and shape
	Stations Stations `toml:"stations" along:"mm" want:">=0" eg:"[[-66, 0], [0, 0.12], [66, 0]]"`
}

// TopLoad is a force on the outer surface: a weight on the bench, a finger; or on a
// block of a body: a pull at the neck; or on the saddle: a weight hung on the bridge.
type TopLoad struct {
	// what tables call it; default: "load N"
	Name string `toml:"name" eg:"'weight'"`
	// top, bridge (its saddle, as high as the strings stand there), neck block or tail block; default: top
	On string `toml:"on" default:"top" eg:"'neck block'"`
	// mm, height of the place above the rim's gluing surface, below it negative, of a load on a block; default: 0
	Z tree.Length `toml:"z" default:"0" eg:"-20"`
	// mm, in plan
	At mesh.Point `toml:"at" need:"the place [x, y] in mm" eg:"[0, 0]"`
	// mm, rectangle it is spread on, across and along; default: a point
	Size *[2]tree.Length `toml:"size" want:">0" eg:"[40, 40]"`
	// N, [x, y, z]: treble, neck and up positive, so a weight is negative in z
	Force [3]tree.Force `toml:"force" need:"the force [x, y, z] in N; down is negative z" eg:"[0, 0, -50]"`
}

// Gauge is a place where a dial gauge would stand.
type Gauge struct {
	// what tables and pictures call it; default: "gauge N"
	Name string `toml:"name" eg:"'bass side'"`
	// top or back: which plate it stands on, the back of a body from below; default: top
	On string `toml:"on" default:"top" one:"top back" eg:"'back'"`
	// mm, in plan, on bare wood: not under the foot
	At mesh.Point `toml:"at" need:"the place [x, y] in mm" eg:"[-45, 30]"`
	// mm, how far it went down on the bench under the loads of the case, from slack strings; down positive; default:
	// none
	Measured *tree.Length `toml:"measured" eg:"0.36"`
}

// Support is a bench support under the plate: it holds the plate vertically at
// a point or along a line, both ways (it pulls as well as it pushes).
type Support struct {
	// what tables call it; default: "support N"
	Name string `toml:"name" eg:"'rail'"`
	// mm, a point that is held
	At *mesh.Point `toml:"at" eg:"[0, -200]"`
	// mm, a line that is held, point to point
	Line []mesh.Point `toml:"line" eg:"[[-150, 100], [150, 100]]"`
}

// Post is a prop between top and back: a vertical spring at a point.
type Post struct {
	// what tables call it; default: "post N"
	Name string `toml:"name" eg:"'sound post'"`
	// mm, in plan
	At mesh.Point `toml:"at" need:"the place [x, y] in mm" eg:"[20, -15]"`
	// N/mm, force per change of its length
	Stiffness tree.Stiffness `toml:"stiffness" need:"its stiffness in N/mm" want:">0" eg:"2000"`
	// of what it is, its grain upright: over years, and in other air, it gives way as that wood does along the grain; default: it keeps its stiffness
	Wood string `toml:"wood" eg:"'sitka-spruce'"`
	// mm, of its end on the plate; default: 6
	Diameter tree.Length `toml:"diameter" default:"6" want:">0" eg:"5"`
}

// Mesh steers the triangulation.
type Mesh struct {
	// mm, edge of a triangle away from features; default: 6
	Size tree.Length `toml:"size" default:"6" want:"2..30" eg:"8"`
	// 1, divides every size: 2 makes every triangle half as large; default: 1
	Refine float64 `toml:"refine" default:"1" want:"0.25..8" eg:"2"`
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
