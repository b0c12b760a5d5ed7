package scene

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"archload/cases/answer"
	"archload/fem/vec3"

	"archload/viz/figure"
	"archload/viz/scale"
)

// words adds neck, tail, bass and treble at the rim, unless words of the forces
// stand there.
func (b *build) words() {
	if b.in.Wordless || b.in.Flow != nil || b.in.Forces != nil && b.in.Forces.Flow != nil {
		return
	}
	m := b.k.mesh
	for _, w := range []struct {
		text string
		axis int
		sign float64
	}{{"neck", 1, 1}, {"tail", 1, -1}, {"bass", 0, -1}, {"treble", 0, 1}} {
		best := m.Rim[0]
		for _, n := range m.Rim {
			d := w.sign * (m.Points[n][w.axis] - m.Points[best][w.axis])
			off := math.Abs(m.Points[n][1-w.axis]) < math.Abs(m.Points[best][1-w.axis])
			if d > 1e-6 || d > -1e-6 && off {
				best = n
			}
		}
		var toward vec
		toward[w.axis] = w.sign
		b.label(Label{Text: w.text, At: vec3.Scale(vec3.Add(b.outer[best], b.inner[best]), 0.5), Kind: Orientation, Toward: toward})
	}
}

// pins adds a small ring and a reading at each pinned place.
func (b *build) pins() {
	for _, p := range b.in.Pins {
		at, inside := b.s.Top.Built.OnOuter(p.At)
		if !inside && p.Text == "" {
			continue // nothing can be read there
		}
		s := b.k.spot(at)
		text, kind := p.Text, Part
		if text == "" {
			kind = Reading
		}
		if text == "" && b.values != nil {
			text = scale.Reading(s.value(b.values)) + " " + b.in.Field.Unit()
		}
		if p.Name != "" {
			text = strings.TrimSuffix(p.Name, ":") + ": " + text
		}
		up := unit(s.on(b.up))
		place := plus(s.on(b.outer), 2*hover, up)
		if p.Arrow != (vec{}) {
			b.pinArrow(&p, text, place)
			continue
		}
		b.line(&Line{Points: circle(place, up, 2.2), Width: 1.6, Paint: lineColor(), Halo: true})
		b.label(Label{Text: text, At: place, Kind: kind, Toward: up})
	}
}

// circle is a closed ring about p, square to n, mm.
func circle(p, n vec, radius float64) []vec {
	const corners = 20
	u := unit(vec3.Cross(n, vec{0, 1, 0.01}))
	v := vec3.Cross(n, u)
	out := make([]vec, corners+1)
	for i := range out {
		s, c := math.Sincos(2 * math.Pi * float64(i) / corners)
		out[i] = plus(plus(p, radius*c, u), radius*s, v)
	}
	return out
}

// flow adds the lines of force, what each part of the rim takes, and what the
// braces carry.
func (b *build) flow() {
	if b.in.Flow == nil {
		return
	}
	for i, l := range b.in.Flow.Lines {
		var above, below []vec
		for _, q := range figure.Smoothed(l.Points) {
			at, _ := b.s.Top.Built.OnMiddle(q)
			s := b.k.spot(at)
			above = append(above, b.lifted(s))
			below = append(below, plus(s.on(b.inner), -hover, unit(s.on(b.up))))
		}
		for _, pts := range [2][]vec{above, below} {
			b.line(&Line{Points: pts, Width: 1.5, Paint: flowColor(), Halo: true, Beads: true})
			b.head(pts, 0.5+0.06*float64(i%3))
		}
	}
	if b.in.Forces == nil { // which say the same
		b.rimForces()
		b.postForces()
	}
	b.sectorEnds()
	b.braceForces()
}

// headSize is the length of an arrow head's strokes, mm.
const headSize = 4.0

// head adds an open arrow head to a line on the outer skin at a share of its
// points; short lines have none.
func (b *build) head(pts []vec, share float64) {
	i := int(share * float64(len(pts)))
	if i < 2 || i >= len(pts) || len(pts) < 10 {
		return
	}
	b.arrowHead(pts[i], unit(vec3.Sub(pts[i], pts[i-2])), 1.5, headSize)
}

// arrowHead adds an open head at p that points along dir, with strokes of a
// length in mm.
func (b *build) arrowHead(p, dir vec, width, size float64) {
	side := unit(vec3.Cross(dir, vec{0, 0, 1}))
	back := plus(p, -0.85*size, dir)
	b.line(&Line{Points: []vec{plus(back, 0.5*size, side), p, plus(back, -0.5*size, side)}, Width: width, Paint: flowColor(), Halo: true})
}

// Sizes of the arrows at the rim, mm.
const (
	rimArrow = 22.0
	rimStart = 3.0
)

// rimForces adds an arrow and the newtons at the middle of what each part of
// the rim takes.
func (b *build) rimForces() {
	for _, r := range b.rimParts(b.in.Flow.Sectors) {
		from := plus(b.outer[r.node], rimStart, r.away)
		tip := plus(from, rimArrow, r.away)
		b.line(&Line{Points: []vec{from, tip}, Width: 2.4, Paint: flowColor(), Halo: true, Beads: true})
		b.arrowHead(tip, r.away, 2.4, 1.5*headSize)
		b.label(Label{Text: r.words, At: plus(tip, 2, r.away), Kind: SectorForce, Toward: r.away})
	}
}

// rimPart is the middle of a part of the rim, with what it carries.
type rimPart struct {
	node  int32
	force float64 // N
	words string
	away  vec // level, square to the rim, outward
}

// rimParts are those that the rim has.
func (b *build) rimParts(c answer.SectorsReport) (out []rimPart) {
	stations, loop := answer.RimStations(b.s), b.k.mesh.Rim
	digits := scale.Alike(0, c.Neck, c.Tail, c.Bass, c.Treble)
	for _, w := range []struct {
		name  string
		force float64
	}{{"neck", c.Neck}, {"tail", c.Tail}, {"bass", c.Bass}, {"treble", c.Treble}} {
		i, ok := middleOf(stations, w.name)
		if !ok {
			continue
		}
		p, q := b.k.mesh.Points[loop[(i+len(loop)-1)%len(loop)]], b.k.mesh.Points[loop[(i+1)%len(loop)]]
		out = append(out, rimPart{node: loop[i], force: w.force, words: fmt.Sprintf("%s %.*f N", sectorWords(w.name), digits, w.force),
			away: unit(vec{q[1] - p[1], p[0] - q[0], 0})})
	}
	return out
}

// postForces adds what each post between top and back holds up.
func (b *build) postForces() {
	for i, p := range answer.PostForces(b.s) {
		at, _ := b.s.Top.Built.OnOuter(b.s.Top.Built.Case.Posts[i].At)
		b.label(Label{Text: fmt.Sprintf("%s %.0f N", p.Name, p.Force), At: b.lifted(b.k.spot(at)), Kind: Part})
	}
}

// sectorWords names a part of the rim so that it is not taken for the whole
// end of the plate.
func sectorWords(sector string) string {
	if sector == "neck" || sector == "tail" {
		return sector + " block"
	}
	return sector + " side"
}

// sectorEnds marks on the rim where the blocks end and the sides begin.
func (b *build) sectorEnds() {
	st := answer.RimStations(b.s)
	for i := range st {
		j := (i + 1) % len(st)
		if st[i].Sector == st[j].Sector {
			continue
		}
		n, m := b.k.mesh.Rim[i], b.k.mesh.Rim[j]
		p := vec3.Scale(vec3.Add(b.outer[n], b.outer[m]), 0.5)
		q := b.k.mesh.Points
		away := unit(vec{q[m][1] - q[n][1], q[n][0] - q[m][0], 0})
		b.line(&Line{Points: []vec{plus(p, -5, away), plus(p, 8, away)}, Width: 2, Paint: lineColor(), Halo: true})
	}
}

// middleOf finds the station nearest to the mean place of what a part of the rim takes, along the rim: a part that
// is alike on both sides has its arrow in the middle. The parts lie anticlockwise; one may run over the list's end.
func middleOf(st []answer.RimStation, sector string) (at int, ok bool) {
	start, n := -1, len(st)
	for i := range st {
		if st[i].Sector == sector && st[(i+n-1)%n].Sector != sector {
			start = i
		}
	}
	if start < 0 {
		return 0, false
	}
	var way []float64 // mm from the part's beginning to each station
	long, force, moment := 0.0, 0.0, 0.0
	for i := start; len(way) < n && st[i].Sector == sector; i = (i + 1) % n {
		way = append(way, long+st[i].Along/2)
		long += st[i].Along
		f := math.Abs(st[i].Force)
		force, moment = force+f, moment+f*way[len(way)-1]
	}
	mean := long / 2
	if force > 0 {
		mean = moment / force
	}
	best := 0
	for k, u := range way {
		if math.Abs(u-mean) < math.Abs(way[best]-mean) {
			best = k
		}
	}
	return (start + best) % n, true
}

// braceForces adds what each brace carries, as a line under it as wide as its
// share of the load.
func (b *build) braceForces() {
	forces, shares := braceDigits(b.in.Flow.Braces)
	for _, r := range b.in.Flow.Braces {
		i := slices.IndexFunc(b.k.braces, func(f braceFrame) bool { return f.name == r.Name })
		if i < 0 {
			continue
		}
		f := &b.k.braces[i]
		var below, above []vec
		for j := range f.stations {
			ring := b.braceRing(&f.stations[j])
			below = append(below, plus(vec3.Scale(vec3.Add(ring[0], ring[3]), 0.5), -hover, vec{0, 0, 1}))
			above = append(above, vec3.Scale(vec3.Add(b.lifted(f.stations[j].above[0]), b.lifted(f.stations[j].above[1])), 0.5))
		}
		paint := flowColor()
		width := 1.5 + 20*math.Min(0.2, math.Abs(r.Share))
		b.line(&Line{Points: below, Width: width, Paint: paint, Halo: true})
		paint.A = 90
		b.line(&Line{Points: above, Width: width, Paint: paint})
		end := above[0] // at its end toward the neck, clear of the bridge
		if last := above[len(above)-1]; last[1] > end[1] {
			end = last
		}
		b.label(Label{Text: fmt.Sprintf("%s %.*f N, %.*f %%", r.Name, forces, r.HandOver, shares, 100*r.Share), At: end, Kind: Part})
	}
}

// braceDigits are the decimals with which what braces carry is written.
func braceDigits(braces []answer.BraceFlowReport) (forces, shares int) {
	var n, percent []float64
	for _, r := range braces {
		n, percent = append(n, r.HandOver), append(percent, 100*r.Share)
	}
	return scale.Alike(0, n...), scale.Alike(0, percent...)
}
