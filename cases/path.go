package cases

import (
	"math"

	"archload/cases/tree"
)

// StringPath is the strings' way in side view, from which both break angles
// follow instead of being given:
//
//	                      saddle
//	                  .-----o-----.
//	           .-----' a_f  |  a_b '----.
//	    .-----'             |h           '---o anchor
//	nut o                .-'|'-.              |
//	    |           .---'   |zt '---.         |za
//	    |zn     .--'        |        '--.     |
//	----+------+------------+------------+----+---- z = 0, rim's gluing surface
//	   neck    |<--- L (along the string)|<-D->   tail
//
// zt is the outer surface under the bridge's middle, h the string's contact
// above it, L the speaking length (scale). The anchor is where the string
// leaves the tailpiece, D behind the saddle in plan:
//
//	tan a_b = (zt + h - za) / D
//
// The front follows from the nut's height, or from the neck as it is set: the
// fret plane (a straightedge on the frets) falls toward the nut by the neck
// angle b and passes f above the top at the bridge's middle; the string stands
// a off it at the nut:
//
//	sin a_f = (zt + h - zn) / L
//	    a_f = b + asin(((h - f) cos b - a) / L)
//
// On a saddle of radius R the string at x from the middle lies lower: h is
// saddle_height - (R - sqrt(R² - x²)). Heights across the nut are taken as
// even (1 mm there turns a string by a tenth of a degree), and so is the fan
// of the strings in plan (0.5 degree changes no force by more than 1 in 10⁴).
type StringPath struct {
	// mm, string at the nut above the rim's gluing surface, below it negative; instead of neck_angle,
	// fret_plane and nut_action
	NutHeight *tree.Length `toml:"nut_height" eg:"3"`
	// deg, fret plane below the top's plane, falling toward the nut
	NeckAngle *tree.Angle `toml:"neck_angle" want:"-5..20" eg:"4"`
	// mm, fret plane above the top at the bridge's middle: lay a straightedge on the frets and measure
	// from the wood up to it
	FretPlane *tree.Length `toml:"fret_plane" eg:"22"`
	// mm, string off the fret plane at the nut; default with neck_angle: 0.5
	NutAction *tree.Length `toml:"nut_action" want:">=0" eg:"0.4"`
	// mm, where the strings leave the tailpiece, above the rim's gluing surface
	AnchorHeight tree.Length `toml:"anchor_height" need:"the height in mm above the rim's gluing surface where the strings leave the tailpiece" eg:"18"`
	// mm, from the saddle back to where the strings leave the tailpiece, in plan
	AnchorDistance tree.Length `toml:"anchor_distance" need:"how far behind the saddle the strings leave the tailpiece, in mm" want:">0" eg:"95"`
	// mm, of the saddle's crown across the strings; default: level
	SaddleRadius tree.Length `toml:"saddle_radius" want:">0" eg:"300"`
}

// usualNutAction is the default of nut_action, mm (usual setting of the nut's
// slots over the first fret's plane, from memory).
const usualNutAction = 0.5

// angles returns the front and back break angle, deg, of a string of speaking
// length scale whose contact lies h above the top, which is itself at zt above
// z = 0, all mm. NaN: no straight string reaches.
func (p *StringPath) angles(zt, h, scale float64) (front, back float64) {
	const deg = 180 / math.Pi
	back = math.Atan((zt+h-float64(p.AnchorHeight))/float64(p.AnchorDistance)) * deg
	if p.NutHeight != nil {
		return math.Asin((zt+h-float64(*p.NutHeight))/scale) * deg, back
	}
	b := float64(*p.NeckAngle)
	off := (h-float64(*p.FretPlane))*math.Cos(b/deg) - float64(*p.NutAction)
	return b + math.Asin(off/scale)*deg, back
}
