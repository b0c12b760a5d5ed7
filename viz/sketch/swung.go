package sketch

import (
	"image/color"
	"math"

	"archload/viz/panel"
)

// How a swing is drawn, in shares of the room's height.
const (
	archDrawn  = 0.16 // the arch at rest
	swingDrawn = 0.15 // how far it goes
	bridgeFrom = 0.39 // the feet of the bridge, in shares of the width
	bridgeTo   = 0.61
)

// swing is a way in which a top swings, seen from the tail: how far up each place of it is, from bass, 0, to treble, 1.
type swing struct {
	up   func(u float64) float64
	post bool    // under the treble foot
	size float64 // of the swing, 1: as far as there is room
}

// The ways: all in one sense; one side up as the other goes down; about a post.
func pumping() swing {
	return swing{size: 1, up: func(u float64) float64 { return math.Sin(math.Pi * u) }}
}
func rocking() swing {
	return swing{size: 1, up: func(u float64) float64 { return math.Sin(2 * math.Pi * u) }}
}
func overPost(size float64) swing {
	return swing{post: true, size: size, up: func(u float64) float64 {
		if u < bridgeTo {
			return math.Sin(math.Pi * u / bridgeTo)
		}
		return -0.2 * math.Sin(math.Pi*(u-bridgeTo)/(1-bridgeTo))
	}}
}

// fills are the colours of what air is pushed up, and of what is taken back.
type fills struct {
	words    string
	up, back color.NRGBA
}

// toneFills are those of a tone's field; plainFills leave the colours of two designs alone.
func toneFills() fills {
	return fills{"brown: air pushed up, blue: air taken back", color.NRGBA{214, 160, 128, 255}, color.NRGBA{150, 180, 220, 255}}
}
func plainFills() fills {
	return fills{"dark: air pushed up, pale: air taken back", panel.SoftInk(), panel.Hair()}
}

// air draws two swinging tops from the tail, filled between where they rest and where they are: what air each side
// pushes up, and what the other takes back. Notes: of the first, of the second.
func (p *pen) air(first, second swing, f fills) {
	in := p.head("sketch from the tail; thin line: at rest; " + f.words)
	for i, s := range []swing{first, second} {
		cell := panel.Rect{X: in.X + float64(i)*in.W/2 + 6, Y: in.Y, W: in.W/2 - 12, H: in.H - 30}
		p.swinging(cell, s, &f)
		p.write(p.note(i).Words, panel.Point{X: cell.Centre().X, Y: in.Bottom() - 15}, cell.W, panel.Ink())
	}
}

// post draws one top that swings about its post. Notes: at the foot that swings, at the post.
func (p *pen) post() {
	in := p.head("sketch from the tail, the swing far too large; grey: at rest")
	wide := math.Min(in.W, 460)
	cell := panel.Rect{X: in.X + (in.W-wide)/2, Y: in.Y, W: wide, H: in.H - 4}
	p.swinging(cell, overPost(1), nil)
	base := cell.Y + 0.62*cell.H
	up := panel.Point{X: cell.X + 0.35*cell.W, Y: base - 0.36*cell.H}
	p.arrow(panel.Point{X: up.X, Y: up.Y + 14}, panel.Point{X: up.X, Y: up.Y - 14}, panel.Ink())
	p.arrow(panel.Point{X: up.X, Y: up.Y - 14}, panel.Point{X: up.X, Y: up.Y + 14}, panel.Ink())
	p.write(p.note(0).Words, panel.Point{X: cell.X + 0.15*cell.W, Y: up.Y - 6}, 0.34*cell.W, panel.Ink())
	p.write(p.note(1).Words, panel.Point{X: cell.X + 0.82*cell.W, Y: cell.Bottom() - 0.16*cell.H}, 0.34*cell.W, panel.Ink())
}

// swinging draws a top with its bridge, at rest and at the end of its swing, in a rectangle.
func (p *pen) swinging(r panel.Rect, s swing, f *fills) {
	base := r.Y + 0.66*r.H
	rest := func(u float64) float64 { return base - archDrawn*r.H*math.Pow(math.Sin(math.Pi*u), 0.7) }
	now := func(u float64) float64 { return rest(u) - swingDrawn*r.H*s.size*s.up(u) }
	at := func(y func(float64) float64, u float64) panel.Point { return panel.Point{X: r.X + r.W*u, Y: y(u)} }
	var before, after []panel.Point
	const steps = 60
	for i := range steps {
		u, v := float64(i)/steps, float64(i+1)/steps
		if f != nil {
			k := f.back
			if s.up((u+v)/2) > 0 {
				k = f.up
			}
			p.Polygon([]panel.Point{at(rest, u), at(rest, v), at(now, v), at(now, u)}, k)
		}
	}
	for i := 0; i <= steps; i++ {
		u := float64(i) / steps
		before, after = append(before, at(rest, u)), append(after, at(now, u))
	}
	if s.post {
		foot := at(rest, bridgeTo)
		p.Polygon([]panel.Point{{X: foot.X - 5, Y: foot.Y + 2}, {X: foot.X + 5, Y: foot.Y + 2}, {X: foot.X + 5, Y: r.Bottom()}, {X: foot.X - 5, Y: r.Bottom()}}, lateColor())
		p.Polyline([]panel.Point{{X: foot.X - 5, Y: r.Bottom()}, {X: foot.X - 5, Y: foot.Y + 2}, {X: foot.X + 5, Y: foot.Y + 2}, {X: foot.X + 5, Y: r.Bottom()}}, 1.2, panel.Ink())
	}
	p.bridge(at(rest, bridgeFrom), at(rest, bridgeTo), 0.36*r.H, panel.Pencil())
	p.Polyline(before, 1.4, panel.Pencil())
	p.bridge(at(now, bridgeFrom), at(now, bridgeTo), 0.36*r.H, panel.Ink())
	p.Polyline(after, 2, panel.Ink())
}

// bridge draws a bridge from the tail, its feet at two places, so many points tall.
func (p *pen) bridge(bass, treble panel.Point, tall float64, k color.NRGBA) {
	along := panel.Point{X: treble.X - bass.X, Y: treble.Y - bass.Y}
	long := math.Hypot(along.X, along.Y)
	up := panel.Point{X: along.Y / long, Y: -along.X / long}
	at := func(u, v float64) panel.Point { // along the foot, and over it
		return panel.Point{X: bass.X + u*along.X + v*tall*up.X, Y: bass.Y + u*along.Y + v*tall*up.Y}
	}
	p.Polyline([]panel.Point{at(0, 0), at(0.14, 0), at(0.2, 0.3), at(0.8, 0.3), at(0.86, 0), at(1, 0), at(0.98, 0.5), at(0.82, 0.6), at(0.78, 1), at(0.22, 1), at(0.18, 0.6), at(0.02, 0.5), at(0, 0)}, 1.6, k)
}
