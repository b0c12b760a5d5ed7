package pull

import (
	"archload/cases"
	"archload/cases/shape"

	"archload/cases/tree"
)

// StringTable is what the strings do to the bridge, in full: `archload
// strings`.
type StringTable struct {
	Format int         `json:"format"`
	Units  string      `json:"units"`
	Title  string      `json:"title"`
	Path   *pathReport `json:"path"` // null where the angles are given
	*StringsReport
	Changes []StringChange `json:"changes"`
	Wound   string         `json:"wound,omitempty"` // how sure the weights of wound strings are that were given by their gauge
}

// pathReport is where the strings' path leads over the bridge's middle, mm
// above the rim's gluing surface.
type pathReport struct {
	Top    float64 `json:"top"`    // outer surface under the bridge
	Saddle float64 `json:"saddle"` // string contact at the saddle's middle
}

// StringChange is what a small change of one angle or length does, as
// differences of the sums.
type StringChange struct {
	Key       string  `json:"key"`
	Step      float64 `json:"step"`
	Unit      string  `json:"unit"`
	Downforce float64 `json:"downforce"` // N
	Along     float64 `json:"along"`     // N
	Shift     float64 `json:"shift"`     // mm, of the downforce at the contact plane, toward the neck
}

// StringTableOf returns the force table of a case; a fault if it has no strings,
// Faults of the geometry.
func StringTableOf(c *cases.Case) (*StringTable, error) {
	if c.Strings == nil {
		return nil, c.Fault("strings", "no strings in this case; want a table [strings]")
	}
	g, err := shape.NewGeometry(c)
	if err != nil {
		return nil, err
	}
	t := &StringTable{Format: cases.Format, Units: cases.UnitsNote, Title: c.Title, StringsReport: StringsOf(g), Changes: stringChanges(g), Wound: c.Strings.WoundNote()}
	if c.Strings.Path != nil {
		t.Path = &pathReport{Top: g.TopAtBridge, Saddle: g.TopAtBridge + float64(c.Bridge.SaddleHeight)}
	}
	return t, nil
}

// stringChanges tries a change of one degree in each angle and of one
// millimetre in each length that the case states, and recomputes the sums.
func stringChanges(g *shape.Geometry) []StringChange {
	before := g.StringSum()
	note := func(key string, unit string, after cases.StringSum) StringChange {
		return StringChange{Key: key, Step: 1, Unit: unit, Downforce: after.Downforce - before.Downforce,
			Along: after.Along - before.Along, Shift: after.Rocking - before.Rocking}
	}
	out := []StringChange{
		note("front_angle", "deg", turned(g, 1, 0)),
		note("back_angle", "deg", turned(g, 0, 1)),
	}
	for _, l := range pathKeys(g.Case) {
		out = append(out, note(l.key, l.unit, moved(g, l.move)))
	}
	return out
}

// turned sums the strings with every break angle larger by so many degrees.
func turned(g *shape.Geometry, front, back tree.Angle) cases.StringSum {
	forces := g.StringForces()
	for i, f := range forces {
		forces[i] = f.Bent(tree.Angle(f.FrontAngle)+front, tree.Angle(f.BackAngle)+back, g.Case.Strings.SaddleFriction)
	}
	return cases.SumStrings(forces)
}

// pathKey is a key that moves the strings and how to add one of its unit.
type pathKey struct {
	key, unit string
	move      func(b *cases.Bridge, p *cases.StringPath)
}

// pathKeys are the keys that the case's break angles and rocking moment depend
// on.
func pathKeys(c *cases.Case) []pathKey {
	keys := []pathKey{{"bridge.saddle_height", "mm", func(b *cases.Bridge, _ *cases.StringPath) { b.SaddleHeight++ }}}
	p := c.Strings.Path
	if p == nil {
		return keys
	}
	if p.NutHeight != nil {
		keys = append(keys, pathKey{"nut_height", "mm", func(_ *cases.Bridge, p *cases.StringPath) { p.NutHeight = oneMore(p.NutHeight) }})
	} else {
		keys = append(keys,
			pathKey{"neck_angle", "deg", func(_ *cases.Bridge, p *cases.StringPath) { p.NeckAngle = oneMore(p.NeckAngle) }},
			pathKey{"fret_plane", "mm", func(_ *cases.Bridge, p *cases.StringPath) { p.FretPlane = oneMore(p.FretPlane) }},
			pathKey{"nut_action", "mm", func(_ *cases.Bridge, p *cases.StringPath) { p.NutAction = oneMore(p.NutAction) }})
	}
	return append(keys,
		pathKey{"anchor_height", "mm", func(_ *cases.Bridge, p *cases.StringPath) { p.AnchorHeight++ }},
		pathKey{"anchor_distance", "mm", func(_ *cases.Bridge, p *cases.StringPath) { p.AnchorDistance++ }})
}

// oneMore returns one more than x, elsewhere.
func oneMore[T tree.Length | tree.Angle](x *T) *T {
	y := *x + 1
	return &y
}

// moved sums the strings of the case with its bridge or path changed.
func moved(g *shape.Geometry, move func(b *cases.Bridge, p *cases.StringPath)) cases.StringSum {
	d, s, b := *g.Case, *g.Case.Strings, *g.Case.Bridge
	d.Strings, d.Bridge = &s, &b
	if s.Path != nil {
		p := *s.Path
		s.Path = &p
	}
	move(&b, s.Path)
	return d.StringSum(g.TopAtBridge)
}
