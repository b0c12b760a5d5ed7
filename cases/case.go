package cases

import (
	"fmt"

	"archload/cases/motion"
	"archload/cases/season"
	"archload/cases/tree"
	"archload/materials"
	"archload/mesh"
)

// Format is the version of the case files that this program reads.
const Format = 1

// UnitsNote says the units and signs of everything in a report; JSON repeats it.
const UnitsNote = "mm, N, MPa, g, N·mm, degrees; sink positive down, stress positive in tension"

// Case is one design as its file and the file's bases say it, with the
// defaults filled in. Load makes it; later stages never change it.
type Case struct {
	// 1, the version of the case file
	Format int `toml:"format" need:"format = 1" eg:"1"`
	// one line for pictures and tables; default: the file's name
	Title string `toml:"title" eg:"'parlour guitar, second top'"`
	// case this one starts from, of which only what changes is written: a file, or a bundled case's name;
	// default: none
	Base     string             `toml:"base" eg:"'course-guitar'"`
	Plate    Plate              `toml:"plate" need:"the table [plate] with wood, outline and thickness"`
	Braces   []Brace            `toml:"brace" most:"100"` // default: none
	Rim      Rim                `toml:"rim"`
	Body     *Body              `toml:"body"`               // default: none, that is, its own defaults where there is a body
	Strings  *Strings           `toml:"strings"`            // default: none
	Bridge   *Bridge            `toml:"bridge"`             // default: none
	Loads    []TopLoad          `toml:"load" most:"200"`    // default: none
	Gauges   []Gauge            `toml:"gauge" most:"500"`   // default: none
	Supports []Support          `toml:"support" most:"100"` // default: none
	Posts    []Post             `toml:"post" most:"50"`     // default: none
	Woods    map[string]*Wood   `toml:"wood" most:"100"`    // the case's own woods; default: none
	Motion   *motion.Motion     `toml:"motion"`             // default: none, that is, its own defaults
	Season   *season.Season     `toml:"season"`             // default: none
	Masses   []motion.PlateMass `toml:"mass" most:"100"`    // default: none
	Taps     []motion.Tap       `toml:"tap" most:"100"`     // default: none
	Tones    []motion.HeardTone `toml:"tone" most:"100"`    // default: none
	Mesh     Mesh               `toml:"mesh"`

	Rep   *tree.FaultLog            // places of the keys
	Cards map[string]materials.Card // by the key that names the wood
}

// Plate is the top: its wood, plan, graduation, arch and sound holes.
type Plate struct {
	// a wood card (archload wood lists them), one of the case's own, [wood.NAME], or a card file
	Wood string `toml:"wood" need:"the name of a wood, as in wood = \"sitka-spruce\"" eg:"'sitka-spruce'"`
	// carved: wood axes fixed in space; pressed: they follow the surface. Default: carved
	Made string `toml:"made" default:"carved" one:"carved pressed" eg:"'pressed'"`
	// quarter: rings upright; flat: rings lying. Default: quarter
	Cut string `toml:"cut" default:"quarter" one:"quarter flat" eg:"'flat'"`
	// deg, rings turned from the cut about the grain; default: 0
	RingAngle tree.Angle `toml:"ring_angle" default:"0" want:"-90..90" eg:"8"`
	// deg, grain turned from the centre line in plan, anticlockwise seen from outside; default: 0
	GrainAngle tree.Angle `toml:"grain_angle" default:"0" want:"-45..45" eg:"2"`
	// the edge in plan: points taken with a tape measure, joined by a smooth curve; a CSV file
	// x_mm,y_mm[,corner], or an element of a drawing ("top.svg#outline")
	Outline Outline `toml:"outline" need:"a CSV file with x_mm,y_mm[,corner], an element of a drawing (\"top.svg#outline\") or a list of [x, y]" eg:"[[0, -250], [200, -130], [95, 225], [-95, 225], [-200, -130]]"`
	// mm, from the outer surface inward along its normal: one for the whole plate, or the table [plate.thickness]
	Thickness Heights `toml:"thickness" need:"the thickness in mm, or { contours = \"...\" }, { templates = \"...\" } or { points = \"...\" }" eg:"5"`
	// 1, multiplies the thickness everywhere; default: 1
	ThicknessScale float64 `toml:"thickness_scale" default:"1" want:"0.5..2" eg:"0.95"`
	// mm, left on (below 0: taken off) at places [[x, y, mm], ...], on the inner face: the surface through them that bends
	// least, held between the least and the most of them, beyond the outermost as at the nearest side. Default: none
	ThicknessChange [][3]tree.Length `toml:"thickness_change" most:"400" eg:"[[0, 60, -0.3], [110, -80, 0], [-110, -80, 0]]"`

	Arch  Arch   `toml:"arch" need:"the table [plate.arch] with one of contours, templates, points, formula"`
	Holes []Hole `toml:"hole" most:"200"` // default: none
}

// Arch is the carved outer surface, from exactly one source.
type Arch struct {
	// CSV line,height_mm,x_mm,y_mm: closed lines of equal height above the rim's gluing surface; lines of
	// one point are spot heights. Or a layer of a drawing, "top.svg#contours"
	Contours *HeightTable `toml:"contours" table:"contours" eg:"'contours.csv'"`
	// CSV station,x_mm,y_mm,height_mm: cross-arches and the long arch, each a chain of points
	Templates *HeightTable `toml:"templates" table:"templates" eg:"'templates.csv'"`
	// CSV x_mm,y_mm,height_mm: heights above the rim's gluing surface, measured anywhere
	Points *HeightTable `toml:"points" table:"points" eg:"'points.csv'"`
	// an arch without data, smooth from the rim to the apex
	Formula *ArchFormula `toml:"formula" eg:"{ height = 20, apex = [0, 10] }"`
	// mm, how far measured heights may be off (one standard deviation): the surface passes them by about
	// as much; default: what they show, at most 0.1
	Noise tree.Length `toml:"noise" want:">0" eg:"0.05"`
	// mm, outer surface at the outline above the rim's gluing surface; default: the thickness there
	RimHeight *tree.Length `toml:"rim_height" want:">0" eg:"5"`
	// the heights of the arch above its rim times this
	HeightScale float64 `toml:"height_scale" default:"1" want:"0.5..1.5" eg:"1.1"`
	// mm, the arch moved in plan: its apex by all of it, what is lower by less, the edge not at all
	ApexShift mesh.Point `toml:"apex_shift" default:"[0, 0]" eg:"[4, 0]"`
}

// ArchFormula is an arch without data: it rises from the rim to the apex,
// with a trough of the given depth along the outline.
type ArchFormula struct {
	// mm, outer surface at the apex above the rim's gluing surface
	Height tree.Length `toml:"height" need:"the apex height in mm" want:">0" eg:"20"`
	// mm, the highest place in plan; default: [0, 0]
	Apex mesh.Point `toml:"apex" default:"[0, 0]" eg:"[22, 10]"`
	// mm, trough below the arch without one; default: 0
	RecurveDepth tree.Length `toml:"recurve_depth" default:"0" want:">=0" eg:"1"`
	// mm, distance of the trough's floor from the outline; default: 22
	RecurveAt tree.Length `toml:"recurve_at" default:"22" want:">0" eg:"20"`
}

// Hole is a sound hole cut out of the plate: a curve, or an oval (at, size).
type Hole struct {
	// what tables and messages call it; default: none
	Name string `toml:"name" eg:"'f-hole'"`
	// its edge, as the plate's outline is given; default: the oval
	Outline *Outline `toml:"outline" eg:"'f-hole.csv'"`
	// mm, centre of the oval
	At *mesh.Point `toml:"at" eg:"[0, 170]"`
	// mm, the oval across and along; equal: a round hole
	Size *[2]tree.Length `toml:"size" want:">0" eg:"[80, 80]"`
	// a second hole mirrored in the centre line; default: false
	Mirrored bool `toml:"mirrored" default:"false" eg:"true"`
}

// Brace is a bar glued to the underside along a line.
type Brace struct {
	// what tables and pictures call it; default: "brace N"
	Name string `toml:"name" eg:"'bass bar'"`
	// its grain runs along the line, rings upright; default: the plate's wood
	Wood string `toml:"wood" eg:"'sitka-spruce'"`
	// mm, its middle line in plan, straight from point to point
	Line []mesh.Point `toml:"line" need:"at least two points [x, y]" eg:"[[-36, 120], [-44, -135]]"`
	// mm, of its glue face: one, or stations [[fraction of the length, mm], ...]
	Width Profile `toml:"width" along:"fraction" want:">0" need:"the width in mm" eg:"7"`
	// mm, below the plate: one, or stations [[fraction of the length, mm], ...]
	Height Profile `toml:"height" along:"fraction" want:">0" need:"the height in mm, or stations [[fraction, mm], ...]" eg:"[[0, 4], [0.5, 13], [1, 4]]"`
	// 1, multiplies the height everywhere; default: 1
	HeightScale float64 `toml:"height_scale" default:"1" want:"0.2..3" eg:"0.9"`
	// where it crosses another one they are let into each other; default: false
	Joined bool `toml:"joined" default:"false" eg:"true"`
	// false: not glued in, as if it were left off; default: true
	Fitted bool `toml:"fitted" default:"true" eg:"false"`
}

// EvenThickness is the thickness of a plate of one thickness, mm; 0 where it is
// graduated.
func (p *Plate) EvenThickness() tree.Length { return p.Thickness.Const * tree.Length(p.ThicknessScale) }

// HeightAt is the height at a fraction of the brace's length, mm.
func (b *Brace) HeightAt(s float64) float64 { return b.HeightScale * b.Height.Value(s) }

// Rim is what holds the plate's edge.
type Rim struct {
	// what the edge stands on: elastic sides that give way, the whole body with its back ([body]), a hinge, a clamp,
	// or nothing (then supports); default: body where strings press a bridge, else elastic
	Support string `toml:"support" default:"elastic" one:"hinged clamped free elastic body" eg:"'hinged'"`
	// mm, of the sides from the back's gluing surface to the top's; default: 80
	SideHeight tree.Length `toml:"side_height" default:"80" want:">0" eg:"76"`
	// mm, of the sides; default: 2.3
	SideThickness tree.Length `toml:"side_thickness" default:"2.3" want:">0" eg:"2"`
	// its grain runs along the outline; default: sugar-maple
	SideWood string `toml:"side_wood" default:"sugar-maple" eg:"'sugar-maple'"`
	// mm, width and height; [0, 0]: none; default: [6, 14]
	Lining [2]tree.Length `toml:"lining" default:"[6, 14]" want:">=0" eg:"[0, 0]"`
	// mm, its width across; default: 60
	NeckBlock tree.Length `toml:"neck_block" default:"60" want:">=0" eg:"70"`
	// mm, its width across; default: 60
	TailBlock tree.Length `toml:"tail_block" default:"60" want:">=0" eg:"50"`
	// N, the strings' lengthwise squeeze of the top, in its plane, equal and opposite at the two blocks;
	// default: 0
	Squeeze tree.Force `toml:"squeeze" default:"0" want:">=0" eg:"200"`
}

// Strings are the string set and its way over the saddle.
type Strings struct {
	// mm, speaking length from nut to saddle; default: none (tensions given)
	Scale tree.Length `toml:"scale" want:">0" eg:"640"`
	// mm, measured at the saddle from the middle of the first string to the middle of the last; default:
	// 52
	Spread tree.Length `toml:"spread" default:"52" want:">=0" eg:"54"`
	// deg, how steeply the strings leave the saddle toward the neck, below the top's plane
	FrontAngle *tree.Angle `toml:"front_angle" want:"0..45" eg:"5"`
	// deg, how steeply the strings leave the saddle toward the tail, below the top's plane
	BackAngle *tree.Angle `toml:"back_angle" want:"0..45" eg:"9"`
	// heights of nut, neck and tailpiece, from which both angles follow; default: angles given
	Path *StringPath `toml:"path" eg:"{ neck_angle = 4, fret_plane = 22, anchor_height = 18, anchor_distance = 95 }"`
	// 1, multiplies every tension: a lighter or heavier set; default: 1
	TensionScale float64 `toml:"tension_scale" default:"1" want:"0.2..3" eg:"0.9"`
	// 1, coefficient of friction of string on saddle; 0: no range of the push is given; default: 0
	SaddleFriction float64 `toml:"saddle_friction" default:"0" want:"0..1" eg:"0.15"`
	// gauges as a set is sold, thin ones first: thousandths of an inch, or with their unit, w behind what is
	// wound; instead of what the strings of each weigh or pull; default: none
	Gauges string `toml:"gauges" eg:"'13 17 26w 35w 45w 56w'"`
	// the notes of all strings, treble first, instead of those in each; default: none
	Notes string `toml:"notes" eg:"'E4 B3 G3 D3 A2 E2'"`
	// what wound strings given by their gauge are wrapped with: phosphor bronze, brass (80 copper, 20 zinc), steel
	// (nickel-plated too) or nickel; default: bronze
	Wrap string `toml:"wrap" default:"bronze" one:"bronze brass steel nickel" eg:"'nickel'"`
	// how many strings, one after the other in the list, stand beside each other as a course; default: 1
	Course int `toml:"course" default:"1" want:"1..2" eg:"2"`
	// mm, between the two strings of a course; default: 3
	CourseGap tree.Length `toml:"course_gap" default:"3" want:">0" eg:"3.5"`
	// the strings, treble first: a list, one table { ... } each; default: those of notes and gauges
	Each []String `toml:"each" most:"64" eg:"[{ note = 'E4', plain = '0.012 in' }, { tension = 101 }]"`
}

// String is one string. Its tension is given, or follows from note, the scale,
// and the diameter of plain steel or the unit weight.
type String struct {
	// what tables call it; default: the note, or its number
	Name string `toml:"name" eg:"'high E'"`
	// its pitch, "E4" (A4 = 440 Hz, equal temperament) or Hz
	Note Note `toml:"note" eg:"'E4'"`
	// mm, diameter of a plain steel string
	Plain tree.Length `toml:"plain" want:">0" eg:"'0.012 in'"`
	// mm, diameter of a wound string: its weight follows from its build, within 5 %
	Wound tree.Length `toml:"wound" want:">0" eg:"'0.056 in'"`
	// kg/m (= g/mm); makers' tables often give lb/in
	UnitWeight tree.LineMass `toml:"unit_weight" want:">0" eg:"'1.2e-4 lb/in'"`
	// N, instead of note and gauge
	Tension tree.Force `toml:"tension" want:">0" eg:"102"`
	// mm, this string's own speaking length; default: the set's
	Scale tree.Length `toml:"scale" want:">0" eg:"650"`
	// mm from the bridge's middle; default: spread evenly, first string at +spread/2 (treble), last at
	// -spread/2
	X *tree.Length `toml:"x" eg:"-26"`
	// deg, this string's own, toward the neck; default: the set's
	FrontAngle *tree.Angle `toml:"front_angle" want:"0..45" eg:"5"`
	// deg, this string's own, toward the tail; default: the set's
	BackAngle *tree.Angle `toml:"back_angle" want:"0..45" eg:"9"`
	// mm, diameter of a wound string's core, which carries the stretch; default: three tenths of its mass
	Core tree.Length `toml:"core" want:">0" eg:"0.4"`
	// N, added to the speaking length alone (a plucked string); default: 0
	Rise tree.Force `toml:"rise" default:"0" want:">=0" eg:"20"`
}

// Tables lists the tables an arch may come from; absent ones are nil.
func (a *Arch) Tables() []KeyedTable {
	return []KeyedTable{{"contours", a.Contours}, {"templates", a.Templates}, {"points", a.Points}}
}

// Files returns the files the case was read from: the case, its bases, tables
// and wood cards, in the order of opening. Names in bundled cases begin with
// "bundled/".
func (c *Case) Files() []string {
	var out []string
	for _, s := range c.Rep.Order {
		out = append(out, s.Label)
	}
	return out
}

// Place returns the file and line that set a key, or the table it would stand
// in if it is left to its default.
func (c *Case) Place(key string) (file string, line int) {
	p := c.Rep.Find(key)
	return p.Src.Label, p.Line
}

// Fault returns a fault at a key, for what only a later stage can see.
func (c *Case) Fault(key, form string, args ...any) *tree.FileError {
	file, line := c.Place(key)
	return &tree.FileError{File: file, Line: line, Key: key, Err: fmt.Errorf(form, args...)}
}

// IsSet reports whether a key stands in the case or its bases.
func (c *Case) IsSet(key string) bool {
	_, ok := c.Rep.Places[key]
	return ok
}

// Moving returns how the case vibrates, with the defaults filled in.
func (c *Case) Moving() motion.Motion {
	if c.Motion != nil {
		return *c.Motion
	}
	return motion.Motion{Loss: 0.02, Stress: true}
}
