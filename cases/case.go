package cases

import (
	"archload/cases/tree"
	"archload/materials"
	"archload/mesh"
)

// Format is the version of the case files that this program reads.
const Format = 1

// Case is one design as its file and the file's bases say it, with the
// defaults filled in. Load makes it; later stages never change it.
type Case struct {
	Format   int              `toml:"format" need:"format = 1"`
	Title    string           `toml:"title"` // one line for pictures and tables; default: the file's name
	Base     string           `toml:"base"`  // case this one starts from: a file, or a bundled case's name; default: none
	Plate    Plate            `toml:"plate" need:"the table [plate] with wood, outline and thickness"`
	Braces   []Brace          `toml:"brace" most:"100"` // default: none
	Rim      Rim              `toml:"rim"`
	Strings  *Strings         `toml:"strings"`            // default: none
	Bridge   *Bridge          `toml:"bridge"`             // default: none
	Loads    []TopLoad        `toml:"load" most:"200"`    // default: none
	Gauges   []Gauge          `toml:"gauge" most:"500"`   // default: none
	Supports []Support        `toml:"support" most:"100"` // default: none
	Posts    []Post           `toml:"post" most:"50"`     // default: none
	Woods    map[string]*Wood `toml:"wood" most:"100"`    // the case's own woods; default: none
	Mesh     Mesh             `toml:"mesh"`

	Rep   *tree.FaultLog            // places of the keys
	Cards map[string]materials.Card // by the key that names the wood
}

// Plate is the top: its wood, plan, graduation, arch and sound holes.
type Plate struct {
	Wood           string     `toml:"wood" need:"the name of a wood, as in wood = \"sitka-spruce\""`
	Made           string     `toml:"made" default:"carved" one:"carved pressed"` // carved: wood axes fixed in space; pressed: they follow the surface. Default: carved
	Cut            string     `toml:"cut" default:"quarter" one:"quarter flat"`   // default: quarter
	RingAngle      tree.Angle `toml:"ring_angle" default:"0" want:"-90..90"`      // deg, rings turned from the cut about the grain; default: 0
	GrainAngle     tree.Angle `toml:"grain_angle" default:"0" want:"-45..45"`     // deg, grain turned from the centre line in plan, anticlockwise; default: 0
	Outline        Outline    `toml:"outline" need:"a CSV file with x_mm,y_mm[,corner], an element of a drawing (\"top.svg#outline\") or a list of [x, y]"`
	Thickness      Heights    `toml:"thickness" need:"the thickness in mm, or { contours = \"...\" }, { templates = \"...\" } or { points = \"...\" }"` // mm, from the outer surface inward along its normal
	ThicknessScale float64    `toml:"thickness_scale" default:"1" want:"0.5..2"`                                                                        // 1, multiplies the thickness everywhere; default: 1
	Arch           Arch       `toml:"arch" need:"the table [plate.arch] with one of contours, templates, points, formula"`
	Holes          []Hole     `toml:"hole" most:"200"` // default: none
}

// Arch is the carved outer surface, from exactly one source.
type Arch struct {
	Contours  *HeightTable `toml:"contours" table:"contours"`   // CSV line,height,x,y: closed lines of equal height; lines of one point are spot heights. Or a layer of a drawing, "top.svg#contours"
	Templates *HeightTable `toml:"templates" table:"templates"` // CSV station,x,y,height
	Points    *HeightTable `toml:"points" table:"points"`       // CSV x,y,height: measured anywhere
	Formula   *ArchFormula `toml:"formula"`
	Noise     tree.Length  `toml:"noise" want:">0"`      // mm, standard deviation of measured points; default: what they show, at most 0.1
	RimHeight *tree.Length `toml:"rim_height" want:">0"` // mm, outer surface at the outline above z = 0; default: the thickness there
}

// ArchFormula is an arch without data: it rises from the rim to the apex,
// with a trough of the given depth along the outline.
type ArchFormula struct {
	Height       tree.Length `toml:"height" need:"the apex height in mm" want:">0"` // mm, outer surface at the apex above z = 0
	Apex         mesh.Point  `toml:"apex" default:"[0, 0]"`                         // mm; default: [0, 0]
	RecurveDepth tree.Length `toml:"recurve_depth" default:"0" want:">=0"`          // mm, trough below the arch without one; default: 0
	RecurveAt    tree.Length `toml:"recurve_at" default:"22" want:">0"`             // mm, distance of the trough's floor from the outline; default: 22
}

// Heights is a thickness: constant, or from contours, templates or measured
// points.
type Heights struct {
	Const     tree.Length  // mm; 0 when a table is given
	Contours  *HeightTable // CSV line,height,x,y, or a layer of a drawing
	Templates *HeightTable // CSV station,x,y,height
	Points    *HeightTable // CSV x,y,height
	Noise     tree.Length  // mm, standard deviation of measured points; default: what they show, at most 0.1
}

// Hole is a sound hole cut out of the plate: a curve, or an oval (at, size).
type Hole struct {
	Name     string          `toml:"name"`                     // default: none
	Outline  *Outline        `toml:"outline"`                  // default: the oval
	At       *mesh.Point     `toml:"at"`                       // mm, centre of the oval
	Size     *[2]tree.Length `toml:"size" want:">0"`           // mm, the oval across and along; equal: a round hole
	Mirrored bool            `toml:"mirrored" default:"false"` // a second hole mirrored in the centre line; default: false
}

// Brace is a bar glued to the underside along a line.
type Brace struct {
	Name        string       `toml:"name"`                                                                                         // default: "brace N"
	Wood        string       `toml:"wood"`                                                                                         // grain along the line, rings upright; default: the plate's wood
	Line        []mesh.Point `toml:"line" need:"at least two points [x, y]"`                                                       // mm, in plan
	Width       Profile      `toml:"width" along:"fraction" want:">0" need:"the width in mm"`                                      // mm
	Height      Profile      `toml:"height" along:"fraction" want:">0" need:"the height in mm, or stations [[fraction, mm], ...]"` // mm, below the plate
	HeightScale float64      `toml:"height_scale" default:"1" want:"0.2..3"`                                                       // 1, multiplies the height everywhere; default: 1
	Joined      bool         `toml:"joined" default:"false"`                                                                       // where it crosses another one they are let into each other; default: false
	Fitted      bool         `toml:"fitted" default:"true"`                                                                        // false: not glued in, as if it were left off; default: true
}

// EvenThickness is the thickness of a plate of one thickness, mm; 0 where it is
// graduated.
func (p *Plate) EvenThickness() tree.Length { return p.Thickness.Const * tree.Length(p.ThicknessScale) }

// HeightAt is the height at a fraction of the brace's length, mm.
func (b *Brace) HeightAt(s float64) float64 { return b.HeightScale * b.Height.Value(s) }

// Rim is what holds the plate's edge.
type Rim struct {
	Support       string         `toml:"support" default:"elastic" one:"hinged clamped free elastic"` // default: elastic
	SideHeight    tree.Length    `toml:"side_height" default:"80" want:">0"`                          // mm; default: 80
	SideThickness tree.Length    `toml:"side_thickness" default:"2.3" want:">0"`                      // mm; default: 2.3
	SideWood      string         `toml:"side_wood" default:"sugar-maple"`                             // grain along the outline; default: sugar-maple
	Lining        [2]tree.Length `toml:"lining" default:"[6, 14]" want:">=0"`                         // mm, width and height; [0, 0]: none; default: [6, 14]
	NeckBlock     tree.Length    `toml:"neck_block" default:"60" want:">=0"`                          // mm, its width across; default: 60
	TailBlock     tree.Length    `toml:"tail_block" default:"60" want:">=0"`                          // mm, its width across; default: 60
	Squeeze       tree.Force     `toml:"squeeze" default:"0" want:">=0"`                              // N, in-plane, equal and opposite at the two blocks; default: 0
}

// Strings are the string set and its way over the saddle.
type Strings struct {
	Scale          tree.Length `toml:"scale" want:">0"`                         // mm, speaking length; default: none (tensions given)
	Spread         tree.Length `toml:"spread" default:"52" want:">=0"`          // mm, outer string to outer string at the saddle; default: 52
	FrontAngle     *tree.Angle `toml:"front_angle" want:"0..45"`                // deg, below the top's plane toward the neck
	BackAngle      *tree.Angle `toml:"back_angle" want:"0..45"`                 // deg, below the top's plane toward the tail
	Path           *StringPath `toml:"path"`                                    // default: angles given
	TensionScale   float64     `toml:"tension_scale" default:"1" want:"0.2..3"` // 1, multiplies every tension: a lighter or heavier set; default: 1
	SaddleFriction float64     `toml:"saddle_friction" default:"0" want:"0..1"` // 1, string on saddle; 0: no range of the push is given; default: 0
	Each           []String    `toml:"each" most:"64" need:"the strings, treble first"`
}

// String is one string. Its tension is given, or follows from note, the scale,
// and the diameter of plain steel or the unit weight.
type String struct {
	Name       string        `toml:"name"`                        // default: the note, or its number
	Note       Note          `toml:"note"`                        // "E4" (A4 = 440 Hz, equal temperament) or Hz
	Plain      tree.Length   `toml:"plain" want:">0"`             // mm, diameter of a plain steel string
	UnitWeight tree.LineMass `toml:"unit_weight" want:">0"`       // kg/m (= g/mm); maker's tables often give lb/in
	Tension    tree.Force    `toml:"tension" want:">0"`           // N
	Scale      tree.Length   `toml:"scale" want:">0"`             // mm, this string's own; default: the set's
	X          *tree.Length  `toml:"x"`                           // mm from the bridge's middle; default: spread evenly, first string at +spread/2 (treble), last at -spread/2
	FrontAngle *tree.Angle   `toml:"front_angle" want:"0..45"`    // deg; default: the set's
	BackAngle  *tree.Angle   `toml:"back_angle" want:"0..45"`     // deg; default: the set's
	Rise       tree.Force    `toml:"rise" default:"0" want:">=0"` // N, added to the speaking length alone (a plucked string); default: 0
}
