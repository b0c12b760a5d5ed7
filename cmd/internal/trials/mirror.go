package main

import (
	"slices"

	"archload/cases"
	"archload/cases/tree"
	"archload/mesh"
)

// mirrored is the case reflected in the centre line (x to -x): outline, arch and
// graduation, holes, braces, grain, bridge, strings, loads, gauges, supports and
// posts. Lists keep their order but for the feet, which go from bass to treble.
func mirrored(c *cases.Case) *cases.Case {
	m := *c
	mirrorPlate(&m.Plate)
	m.Braces = slices.Clone(c.Braces)
	for i := range m.Braces {
		m.Braces[i].Line = mirrorPoints(m.Braces[i].Line)
	}
	m.Loads = slices.Clone(c.Loads)
	for i := range m.Loads {
		l := &m.Loads[i]
		l.At = l.At.Mirrored()
		l.Force[0] = -l.Force[0]
	}
	m.Gauges = slices.Clone(c.Gauges)
	for i := range m.Gauges {
		m.Gauges[i].At = m.Gauges[i].At.Mirrored()
	}
	m.Posts = slices.Clone(c.Posts)
	for i := range m.Posts {
		m.Posts[i].At = m.Posts[i].At.Mirrored()
	}
	m.Supports = slices.Clone(c.Supports)
	for i := range m.Supports {
		m.Supports[i].At = mirrorPoint(m.Supports[i].At)
		m.Supports[i].Line = mirrorPoints(m.Supports[i].Line)
	}
	m.Strings = mirrorStrings(c)
	m.Bridge = mirrorBridge(c.Bridge)
	return &m
}

func mirrorPoint(p *mesh.Point) *mesh.Point {
	if p == nil {
		return nil
	}
	q := p.Mirrored()
	return &q
}

func mirrorPoints(pts []mesh.Point) []mesh.Point {
	out := slices.Clone(pts)
	for i := range out {
		out[i] = out[i].Mirrored()
	}
	return out
}

func mirrorPlate(p *cases.Plate) {
	p.Outline.Points = mirrorPoints(p.Outline.Points)
	p.GrainAngle, p.RingAngle = -p.GrainAngle, -p.RingAngle
	for _, t := range []**cases.HeightTable{&p.Arch.Contours, &p.Arch.Templates, &p.Arch.Points,
		&p.Thickness.Contours, &p.Thickness.Templates, &p.Thickness.Points} {
		if *t == nil {
			continue
		}
		m := **t
		m.X = slices.Clone(m.X)
		for i := range m.X {
			m.X[i] = 0 - m.X[i]
		}
		*t = &m
	}
	if f := p.Arch.Formula; f != nil {
		m := *f
		m.Apex = m.Apex.Mirrored()
		p.Arch.Formula = &m
	}
	p.Holes = slices.Clone(p.Holes)
	for i := range p.Holes {
		h := &p.Holes[i]
		h.At = mirrorPoint(h.At)
		if h.Outline != nil {
			o := *h.Outline
			o.Points = mirrorPoints(o.Points)
			h.Outline = &o
		}
	}
}

// mirrorStrings gives every string its place on the other side. The break angles
// of a path do not depend on it.
func mirrorStrings(c *cases.Case) *cases.Strings {
	if c.Strings == nil {
		return nil
	}
	m := *c.Strings
	m.Each = slices.Clone(m.Each)
	for i, f := range c.StringForces(0) {
		x := tree.Length(0 - f.X)
		m.Each[i].X = &x
	}
	return &m
}

func mirrorBridge(b *cases.Bridge) *cases.Bridge {
	if b == nil {
		return nil
	}
	m := *b
	m.At = m.At.Mirrored()
	m.Feet = slices.Clone(m.Feet)
	for i := range m.Feet {
		f := &m.Feet[i]
		f.From, f.To = -f.To, -f.From
	}
	slices.Reverse(m.Feet)
	m.Height.Stations = mirrorStations(m.Height.Stations)
	m.Relief.Stations = mirrorStations(m.Relief.Stations)
	m.Misfit = mirrorStations(m.Misfit)
	m.Posts.At = [2]tree.Length{-m.Posts.At[1], -m.Posts.At[0]}
	return &m
}

func mirrorStations(st cases.Stations) cases.Stations {
	m := slices.Clone(st)
	for i := range m {
		m[i].At = 0 - m[i].At
	}
	slices.Reverse(m)
	return m
}
