package bench

import (
	"archload/cases"
	"archload/cases/tree"
	"archload/materials"
	"archload/mesh"
)

// File is what was measured on one piece of wood, and on bars that were cut from it.
type File struct {
	// 1, the version of the file
	Format int `toml:"format" need:"format = 1" eg:"1"`
	// one line for tables; default: the file's name
	Title string `toml:"title" eg:"'spruce bought in May, half 3'"`
	// what the wood shall be called: [wood.NAME]; default: the file's name
	Name string `toml:"name" eg:"'half-3'"`
	// wood card that the piece is expected to be like, one of the file's own, [wood.NAME], or a card
	// file: its constants and how much they scatter are what is known before anything is measured
	Like string `toml:"like" need:"the wood card that it should be like, as in like = \"sitka-spruce\"" eg:"'sitka-spruce'"`
	// quarter: rings upright; flat: rings lying, in the blank and the bars. Default: quarter
	Cut string `toml:"cut" default:"quarter" one:"quarter flat" eg:"'flat'"`
	// deg, rings turned from the cut about the grain; default: 0
	RingAngle tree.Angle `toml:"ring_angle" default:"0" want:"-90..90" eg:"8"`
	// percent, of the air that the wood had come to rest in when it was measured; default: not known
	Humidity *float64 `toml:"humidity" want:"5..95" eg:"45"`

	Carving *Carving               `toml:"carving"`         // default: none
	Blank   *Blank                 `toml:"blank"`           // default: none
	Bars    []Bar                  `toml:"bar" most:"50"`   // default: none
	Tones   []Tone                 `toml:"tone" most:"60"`  // default: none
	Presses []Press                `toml:"press" most:"60"` // default: none
	Woods   map[string]*cases.Wood `toml:"wood" most:"20"`  // the file's own cards; default: none

	Rep  *tree.FaultLog // places of the keys
	Card materials.Card // of Like, as dry as the wood was if that is known
	Top  *cases.Case    // of the blank's case; nil without
	Aim  *cases.Case    // of the carving's target; nil without

	MoistureNow float64 // of the wood when it was measured, %, by the humidity; 0: not known
}

// Blank is the piece itself: a bar, a rectangle, a wedge, half a top, or a top that a case describes,
// at any stage of carving.
type Blank struct {
	// bar, rectangle or wedge: flat, by length, width and thickness; half-top: flat, by its outline;
	// plate: as a case file describes it. Default: rectangle
	Shape string `toml:"shape" default:"rectangle" one:"bar rectangle wedge half-top plate" eg:"'wedge'"`
	// mm, along the grain
	Length tree.Length `toml:"length" want:">0" eg:"550"`
	// mm, across the grain
	Width tree.Length `toml:"width" want:">0" eg:"200"`
	// mm, the mean of many places; of a wedge [thick edge, thin edge]
	Thickness Thickness `toml:"thickness" eg:"4.2"`
	// mm, how far the mean thickness may be off (one standard deviation); default: 0.02
	ThicknessNoise tree.Length `toml:"thickness_noise" default:"0.02" want:">=0" eg:"0.05"`
	// g, on the scale; of a case's plate with the braces that are in
	Weight tree.Mass `toml:"weight" want:">0" eg:"176"`
	// g, how far the weight may be off (one standard deviation), the volume's error but for the thickness
	// included; default: half a percent
	WeightNoise tree.Mass `toml:"weight_noise" want:">0" eg:"0.5"`
	// the edge of a half top in plan, as the plate's outline is given in a case; grain along y. Where no point is
	// marked as a corner, a turn of more than 50 degrees is one
	Outline *cases.Outline `toml:"outline" eg:"'half.csv'"`
	// the flat blank strains in shear through its thickness; without, it is a thin plate as in the published formulas for
	// blanks, and how much shear may change is added to the ranges. A thick one needs it. Default: true from a
	// fortieth of its narrower side on
	Shear *bool `toml:"shear" eg:"true"`
	// case file, or bundled case, that describes the plate as it is now: outline, arch, thickness, holes,
	// braces that are in
	Case string `toml:"case" eg:"'mine.toml'"`
}

// Carving is a plate on its way to a graduation: what the caliper reads now, and what it shall become.
type Carving struct {
	// case file, or bundled case, with the graduation that is wanted; its outside is carved already
	Target string `toml:"target" need:"the case with the graduation that is wanted" eg:"'mine.toml'"`
	// CSV x_mm,y_mm,thickness_mm: caliper readings anywhere
	Readings *cases.HeightTable `toml:"readings" table:"points" column:"thickness" need:"a CSV file with x_mm,y_mm,thickness_mm" eg:"'caliper.csv'"`
	// mm, how far readings may be off (one standard deviation); default: what they show, at most 0.1
	Noise tree.Length `toml:"noise" want:">0" eg:"0.05"`
	// mm, from how much on a place is told as too thick or too thin; default: 0.1
	Tolerance tree.Length `toml:"tolerance" default:"0.1" want:">0" eg:"0.2"`
}

// Bar is a straight bar cut from the same wood, tapped as it lies on soft supports a quarter of its length
// from the ends, or hinged on two supports.
type Bar struct {
	// what tables call it; default: "bar N"
	Name string `toml:"name" eg:"'offcut along'"`
	// which way its length runs: along the grain or across it; default: grain
	Along string `toml:"along" default:"grain" one:"grain across" eg:"'across'"`
	// mm
	Length tree.Length `toml:"length" need:"the length in mm" want:">0" eg:"300"`
	// mm, of the face that it is tapped on; of a quarter-cut bar along the grain, square to the rings
	Width tree.Length `toml:"width" need:"the width in mm" want:">0" eg:"30"`
	// mm, in the direction of the tap
	Thickness tree.Length `toml:"thickness" need:"the thickness in mm" want:">0" eg:"6"`
	// mm, how far the thickness may be off (one standard deviation); default: 0.02
	ThicknessNoise tree.Length `toml:"thickness_noise" default:"0.02" want:">=0" eg:"0.03"`
	// g
	Weight tree.Mass `toml:"weight" want:">0" eg:"22.1"`
	// g, how far the weight may be off (one standard deviation); default: half a percent
	WeightNoise tree.Mass `toml:"weight_noise" want:">0" eg:"0.05"`
	// Hz, tones of bending, lowest first: one or a list
	Flexure Tones `toml:"flexure" eg:"[312, 850]"`
	// Hz, tones of twisting, lowest first: one or a list
	Torsion Tones `toml:"torsion" eg:"640"`
	// Hz, tones of bending when it is tapped on its narrow side, lowest first: one or a list
	Edgewise Tones `toml:"edgewise" eg:"1320"`
	// 1, how far its tones may be off (one standard deviation), as a share; default: 0.005
	ToneNoise float64 `toml:"tone_noise" default:"0.005" want:"0.00001..0.2" eg:"0.003"`
	// free: on soft supports, or in the hand; supports: hinged on two supports span apart; default: free
	Held string `toml:"held" default:"free" one:"free supports" eg:"'supports'"`
	// mm, between the two supports; default: the length
	Span tree.Length `toml:"span" want:">0" eg:"280"`
}

// Tone is one tone of the blank, as it was heard or measured.
type Tone struct {
	// Hz
	Hz tree.Frequency `toml:"hz" need:"the frequency in Hz" want:">0" eg:"98"`
	// how it swings, if sand or fingers showed it: twist, along (it bends along the grain), across, ring,
	// or how many lines stand still across and along the length, "2 1"; default: not known
	Pattern string `toml:"pattern" eg:"'twist'"`
	// Hz, how far it may be off (one standard deviation); default: half a percent
	Noise tree.Frequency `toml:"noise" want:">0" eg:"0.5"`
	// free: in the hand; bare: a case's plate on its edge; default: free
	State string `toml:"state" default:"free" one:"free bare" eg:"'bare'"`
}

// Press is a weight put on the blank, or on a bar, that lies on supports, and what dial gauges then show.
type Press struct {
	// what tables call it; default: "press N"
	Name string `toml:"name" eg:"'2 kg in the middle'"`
	// name of the bar that was pressed; default: the blank
	Bar string `toml:"bar" eg:"'offcut along'"`
	// g, the weight put on
	Weight tree.Mass `toml:"weight" want:">0" eg:"'2 kg'"`
	// N, instead of a weight
	Force tree.Force `toml:"force" want:">0" eg:"20"`
	// mm, where, in plan; default: [0, 0]
	At mesh.Point `toml:"at" default:"[0, 0]" eg:"[0, 0]"`
	// mm, rectangle it is spread on, across and along; default: [10, 10]
	Size [2]tree.Length `toml:"size" default:"[10, 10]" want:">0" eg:"[30, 14]"`
	// bare: the plate on its edge, or on supports, without strings; strung: with the case's strings and bridge on, the weight
	// put on the bridge; what gauges will then show is told, not fitted. Default: bare
	State string `toml:"state" default:"bare" one:"bare strung" eg:"'strung'"`
	// mm, points it lies on, three or more; a case's plate without any rests on its rim as the case says
	Supports []mesh.Point `toml:"supports" most:"100" eg:"[[-90, -200], [90, -200], [0, 200]]"`
	// mm, instead of points: two straight edges square to the length, this far apart, each side of the middle
	Span   tree.Length `toml:"span" want:">0" eg:"250"`
	Gauges []Gauge     `toml:"gauge" most:"60"` // default: none
}

// Strung is the state of a plate that is pressed with its strings and bridge on.
const Strung = "strung"

// Newtons is the force of the press, N.
func (p *Press) Newtons() float64 {
	if p.Weight > 0 {
		return float64(p.Weight) * 1e-3 * StandardGravity
	}
	return float64(p.Force)
}

// StandardGravity is that of the 3rd CGPM, 1901, m/s².
const StandardGravity = 9.80665

// Gauge is a dial gauge and what it showed when the weight was put on.
type Gauge struct {
	// what tables call it; default: "gauge N"
	Name string `toml:"name" eg:"'beside the weight'"`
	// mm, in plan; default: [0, 0]
	At mesh.Point `toml:"at" default:"[0, 0]" eg:"[0, 30]"`
	// mm, how far the place sank; default: not read, and told what it will show
	Measured *tree.Length `toml:"measured" eg:"0.31"`
	// mm, how far it shall sink: told is what to change for it; default: none
	Target tree.Length `toml:"target" want:">0" eg:"0.3"`
	// mm, how far the reading may be off (one standard deviation); default: 0.005 and one percent
	Noise tree.Length `toml:"noise" want:">0" eg:"0.01"`
}
