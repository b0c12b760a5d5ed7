package stage

import (
	"fmt"
	"slices"

	"archload/cases/tree"
	"archload/mesh"
	"archload/viz/scene"
)

// Want is what the user asks to see, in full: two equal wants give the same
// picture. It holds no pixels.
type Want struct {
	Designs []Design // one, or two
	Display
	Cut    Cut
	Pins   []scene.Pin // places that are read
	Linear bool        // numbers are those on the shape as carved, whatever else is asked for
	Held   bool        // the hand drags, or the load plays: scales stay as they were
}

// Display is how designs are drawn: what Looks and Want have in common.
type Display struct {
	Field   scene.Field
	Inside  bool    // the field of the inner face, where there are two
	Load    float64 // fraction of string load, 0 to 1
	Enlarge float64 // movements are drawn this many times as large; 0: chosen
	Arrange Arrange // of two designs
	Flow    bool    // lines of force over the field
	Strings bool
	Behind  bool    // a body is seen from behind: its back is solid, in the colours of the field
	Forces  bool    // arrows to scale
	Tone    int     // number of the tone of the first design that is drawn, from 1; 0: the first
	Air     float64 // relative humidity that the design is taken to, percent; 0: dry, as in winter
	AirA    float64 // the same for the first of two designs; 0: that of both
	InAir   bool    // every field is that of the design in that air
	Strip   float64 // mm: a strip so wide along the centre line alone is drawn; 0: all
	State   string  // in which tones are found; "": strung, if the design has strings
}

// Design is a case with the keys set on top of it.
type Design struct {
	Name string // as Open takes it
	Keys []tree.KeyValue
	Read int // how often its files were read again since the window opened
}

// opened is what a case is remembered by: its name, and which reading of its files it is.
func (d Design) opened() string {
	if d.Read == 0 {
		return d.Name
	}
	return fmt.Sprintf("%s\x00%d", d.Name, d.Read)
}

// Arrange says how two designs are shown.
type Arrange uint8

// The arrangements.
const (
	Beside     Arrange = iota // one camera, one scale
	Difference                // what the second has more than the first, on the first
)

// CutKind says where the plate is cut for the section strip.
type CutKind uint8

// The cuts.
const (
	NoCut     CutKind = iota
	CrossArch         // across, through the bridge
	LongArch          // along, through the bridge
	FreeCut           // along a line that the user drew
)

// Cut is the line of the section strip.
type Cut struct {
	Kind     CutKind
	From, To mesh.Point // mm, of a FreeCut
}

// Same says whether two designs are the same reading of a case with the same keys.
func (d Design) Same(o Design) bool { return d.opened() == o.opened() && SameKeys(d.Keys, o.Keys) }

// SameKeys says whether two lists set the same keys to the same values.
func SameKeys(a, b []tree.KeyValue) bool {
	return slices.EqualFunc(a, b, func(x, y tree.KeyValue) bool { return x.Key == y.Key && x.Value.Text == y.Value.Text })
}

// Equal says whether two wants give the same picture.
func (w Want) Equal(o Want) bool {
	return slices.EqualFunc(w.Designs, o.Designs, Design.Same) && slices.Equal(w.Pins, o.Pins) &&
		w.Display == o.Display && w.Cut == o.Cut && w.Held == o.Held && w.Linear == o.Linear
}

// sameView says whether two wants ask for the same, whether the hand holds it or not.
func (w Want) sameView(o Want) bool {
	w.Held = o.Held
	return w.Equal(o)
}

// With returns the design with keys set.
func (d Design) With(set ...tree.KeyValue) Design {
	d.Keys = tree.Laid(d.Keys, set...)
	return d
}

// SameDesigns says whether two wants ask for the same designs.
func (w Want) SameDesigns(o Want) bool { return slices.EqualFunc(w.Designs, o.Designs, Design.Same) }

// SameNames says whether two wants show the same cases, whatever is set on them.
func (w Want) SameNames(o Want) bool {
	return slices.EqualFunc(w.Designs, o.Designs, func(a, b Design) bool { return a.opened() == b.opened() })
}

// face is that whose field is wanted.
func (w Want) face() scene.Face {
	if w.Inside {
		return scene.Inner
	}
	return scene.Outer
}

// pinsOf are the pins on design i: a lesson points at one of two.
func pinsOf(pins []scene.Pin, i int) []scene.Pin {
	return slices.DeleteFunc(slices.Clone(pins), func(p scene.Pin) bool { return p.Name == "" && p.On != i })
}
