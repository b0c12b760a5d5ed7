package scene

import (
	"fmt"
	"image/color"
	"math"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/fem/vec3"
	"archload/mesh"
)

// Forces are the forces to be drawn as arrows to one scale.
type Forces struct {
	Flow      *answer.FlowReport // where they go, now; nil: strings and foot alone
	PerNewton float64            // mm of arrow to a newton
	Share     float64            // of the strings' forces of the solution's case that act, 1
}

// GreatestForce is the greatest of the forces that arrows are drawn for, N.
func GreatestForce(f *answer.FlowReport, foot []answer.FootColumn) float64 {
	most := 0.0
	if f != nil {
		c := f.Sectors
		most = math.Max(math.Max(c.Neck, c.Tail), math.Max(c.Bass, c.Treble))
		most = math.Max(most, f.Supports)
	}
	sum := 0.0
	for _, c := range foot {
		sum += c.Force
	}
	return math.Max(most, sum/3)
}

// The colours of what presses and of what holds; their arrows point down and up.
func pressColor() color.NRGBA { return color.NRGBA{34, 66, 124, 255} }
func holdColor() color.NRGBA  { return color.NRGBA{132, 34, 62, 255} }

// forces adds arrows: what each string presses on the saddle with, what the foot gives
// to the top, what edge and posts hold up.
func (b *build) forces() {
	if b.in.Forces == nil {
		return
	}
	b.stringArrows()
	b.footArrows()
	if b.in.Forces.Flow == nil {
		return
	}
	b.edgeArrows()
	for i, p := range answer.PostForces(b.s) {
		at, _ := b.s.Top.Built.OnOuter(b.s.Top.Built.Case.Posts[i].At)
		b.arrow(b.lifted(b.k.spot(at)), p.Force, fmt.Sprintf("%s %.0f N", p.Name, p.Force), vec{0, 0, 1})
	}
}

// arrow adds a force straight up (positive) or down at the place where it bears, as long
// as its newtons, with words if there are any.
func (b *build) arrow(at vec, force float64, words string, toward vec) {
	long := force * b.in.Forces.PerNewton
	paint, sense := holdColor(), 1.0
	if force < 0 {
		paint, sense = pressColor(), -1
	}
	tail := plus(at, -long, vec{0, 0, 1})
	b.shaft(tail, at, paint)
	b.tip(at, vec{0, 0, sense}, math.Min(5, 0.6*math.Abs(long)), paint)
	if words != "" {
		b.label(Label{Text: words, At: tail, Kind: Force, Toward: toward})
	}
}

// shaft is the line of an arrow.
func (b *build) shaft(from, to vec, paint color.NRGBA) {
	b.line(&Line{Points: []vec{from, to}, Width: 3, Paint: paint, Halo: true, Over: true})
}

// tip is the head of an arrow that points along dir: strokes in two planes, so that one of them is
// seen from anywhere.
func (b *build) tip(at, dir vec, head float64, paint color.NRGBA) {
	aside := vec{1, 0, 0}
	if math.Abs(dir[0]) > 0.7 {
		aside = vec{0, 1, 0}
	}
	one := unit(vec3.Cross(dir, aside))
	back := plus(at, -head, dir)
	for _, side := range [2]vec{vec3.Scale(one, 0.42*head), vec3.Scale(unit(vec3.Cross(dir, one)), 0.42*head)} {
		b.line(&Line{Points: []vec{vec3.Add(back, side), at, vec3.Sub(back, side)}, Width: 2.4, Paint: paint, Halo: true, Over: true})
	}
}

// pinArrow is the arrow of a pin, with its words at the end that is free.
func (b *build) pinArrow(p *Pin, words string, at vec) {
	from := plus(at, p.Above, vec{0, 0, 1})
	to := vec3.Add(from, p.Arrow)
	dir, free := unit(p.Arrow), to
	if p.Arrow[2] < 0 { // it presses
		from, to = vec3.Sub(from, p.Arrow), from
		free = from
	}
	head := math.Min(8, 0.4*vec3.Norm(p.Arrow))
	b.shaft(from, to, lineColor())
	b.tip(to, dir, head, lineColor())
	if p.Swings {
		b.tip(from, vec3.Scale(dir, -1), head, lineColor())
	}
	b.label(Label{Text: words, At: free, Kind: Force, Toward: unit(vec3.Sub(free, vec3.Scale(vec3.Add(from, to), 0.5)))})
}

// stringArrows are those of the strings; their sum stands over the middle one.
func (b *build) stringArrows() {
	all := b.s.Top.Built.StringShapes()
	if len(all) == 0 {
		return
	}
	sum, most := 0.0, 0
	forces := b.s.Top.Built.Geometry.StringForces()
	for i, f := range forces {
		sum += f.Downforce
		if math.Abs(all[i].Saddle.At[0]-b.s.Top.Built.Case.Bridge.At[0]) < math.Abs(all[most].Saddle.At[0]-b.s.Top.Built.Case.Bridge.At[0]) {
			most = i
		}
	}
	for i, f := range forces {
		words := ""
		if i == most {
			words = fmt.Sprintf("strings %.0f N", b.in.Forces.Share*sum)
		}
		b.arrow(plus(b.bridgePoint(all[i].Saddle), 0.5, vec{0, 0, 1}), -b.in.Forces.Share*f.Downforce, words, vec{0, 0, 1})
	}
}

// footArrows are what each third of one foot, or each of two, gives to the top: drawn
// at its edge toward the tail, where they can be seen.
func (b *build) footArrows() {
	cols := answer.FootColumns(b.s)
	if len(cols) == 0 {
		return
	}
	two := len(b.s.Top.Built.Case.Bridge.Feet) > 1
	lo, hi := cols[0].X, cols[len(cols)-1].X
	var force, at [3]float64
	for _, c := range cols {
		k := min(2, int(3*(c.X-lo)/math.Max(1e-9, hi-lo)))
		if two {
			k = 2 * c.Foot
		}
		force[k] += c.Force
		at[k] += c.Force * c.X
	}
	names := [3]string{"bass end", "middle", "treble end"}
	if two {
		names = [3]string{"bass foot", "", "treble foot"}
	}
	edge := math.Inf(1)
	for _, c := range answer.FootCells(b.s) {
		edge = math.Min(edge, c.Y-c.DY/2)
	}
	for k, f := range force {
		if f <= 0 {
			continue
		}
		p, _ := b.s.Top.Built.OnOuter(mesh.Point{at[k] / f, b.s.Top.Built.Case.Bridge.At[1] + edge - 3})
		b.arrow(b.lifted(b.k.spot(p)), -f, fmt.Sprintf("%s %.0f N", names[k], f), vec{0, 0, 1})
	}
}

// edgeArrows are what each part of the rim holds up, just outside it.
func (b *build) edgeArrows() {
	for _, r := range b.rimParts(b.in.Forces.Flow.Sectors) {
		b.arrow(plus(b.inner[r.node], rimStart, r.away), r.force, r.words, r.away)
	}
}

// worst marks a place that is named: a ring and a cross on the skin that it lies on.
func (b *build) worst() {
	w := b.in.Worst
	if w == nil {
		return
	}
	at, inside := b.s.Top.Built.OnOuter(w.At)
	if !inside {
		return
	}
	s := b.k.spot(at)
	up := unit(s.on(b.up))
	place := plus(s.on(b.outer), 2*hover, up)
	if w.Inside {
		place = plus(s.on(b.inner), -2*hover, up)
	}
	b.line(&Line{Points: circle(place, up, 5), Width: 2, Paint: holdColor(), Halo: true})
	b.line(&Line{Points: circle(place, up, 1), Width: 2, Paint: holdColor(), Halo: true})
	b.label(Label{Text: w.Text, At: place, Kind: Part, Toward: up})
}

// Mark is a place of the plate that is named.
type Mark struct {
	At     mesh.Point // mm, in plan
	Inside bool       // it lies on the inner face
	Text   string
}

// Place is where a mark lies in a scene that the skeleton made of a solution, mm; ok is
// false off the wood.
func (k *Skeleton) Place(s *Scene, of *design.Solution, m Mark) (p [3]float64, ok bool) {
	at, inside := of.Top.Built.OnOuter(m.At)
	if !inside {
		return p, false
	}
	skin := s.Solids[0].Points
	if m.Inside {
		skin = s.Solids[1].Points
	}
	return k.spot(at).on(skin), true
}
