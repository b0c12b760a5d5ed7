package bench

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"archload/cases"
	"archload/cases/motion"
	"archload/cases/tree"
	"archload/mesh/plane"
)

// check tells what contradicts and what is likely a slip of the pen.
func (f *File) check() {
	if f.Format != cases.Format && f.Rep.Clean("format") {
		f.Rep.AddKey("format", "want %d, found %d", cases.Format, f.Format)
	}
	f.checkBlank()
	for i := range f.Bars {
		f.checkBar(i)
	}
	for i := range f.Tones {
		f.checkTone(i)
	}
	for i := range f.Presses {
		f.checkPress(i)
		f.checkTargets(i)
	}
	if f.readings() == 0 && f.asked() == 0 && f.Carving == nil && f.Rep.Err() == nil {
		f.Rep.AddKey("", "nothing was measured: want a weight, a [[tone]], a [[bar]], a [[press]] with gauges, or [carving]")
	}
}

// readings counts what was measured.
func (f *File) readings() int {
	n := len(f.Tones)
	if f.Blank != nil && f.Blank.Weight > 0 {
		n++
	}
	for i := range f.Bars {
		b := &f.Bars[i]
		n += len(b.Flexure) + len(b.Torsion) + len(b.Edgewise)
		if b.Weight > 0 {
			n++
		}
	}
	for i := range f.Presses {
		for k := range f.Presses[i].Gauges {
			if f.Presses[i].Gauges[k].Measured != nil {
				n++
			}
		}
	}
	return n
}

// asked counts the gauges that are to be told.
func (f *File) asked() int {
	n := 0
	for i := range f.Presses {
		for k := range f.Presses[i].Gauges {
			if f.Presses[i].Gauges[k].Measured == nil {
				n++
			}
		}
	}
	return n
}

// checkBlank wants what its shape needs, and a weight that wood can have.
func (f *File) checkBlank() {
	b := f.Blank
	if b == nil {
		if len(f.Tones) > 0 {
			f.Rep.AddKey("tone[1]", "want a [blank] that has this tone; those of a bar stand in its [[bar]]")
		}
		return
	}
	has := map[string]bool{"length": b.Length > 0, "width": b.Width > 0, "thickness": b.Thickness.Mean() > 0, "outline": b.Outline != nil, "case": b.Case != ""}
	need := map[string][]string{"bar": {"length", "width", "thickness"}, "rectangle": {"length", "width", "thickness"}, "wedge": {"length", "width", "thickness"},
		"half-top": {"outline", "thickness"}, "plate": {"case"}}[b.Shape]
	for _, key := range []string{"length", "width", "thickness", "outline", "case"} {
		needed := slices.Contains(need, key)
		full := "blank." + key
		switch {
		case !f.Rep.Clean(full):
		case needed && !has[key]:
			f.Rep.AddKey(full, "missing, want it for shape = %q", b.Shape)
		case !needed && has[key]:
			f.Rep.AddKey(full, "want none for shape = %q, which goes by %s", b.Shape, strings.Join(need, ", "))
		}
	}
	if f.Rep.Clean("blank") && b.Shape != "plate" && (b.Shape == "wedge") != (b.Thickness[0] != b.Thickness[1]) {
		f.Rep.AddKey("blank.thickness", "want [thick edge, thin edge] for a wedge and one thickness for all else, found shape = %q", b.Shape)
	}
	if area := b.area(); b.Weight > 0 && area > 0 && f.Rep.Clean("blank") {
		f.checkWeight("blank.weight", float64(b.Weight), area*b.Thickness.Mean())
	}
}

// area is that of a flat blank in plan, mm²; 0 for a plate of a case.
func (b *Blank) area() float64 {
	if b.Outline == nil {
		return float64(b.Length) * float64(b.Width)
	}
	c, err := plane.NewCurve(b.Outline.Points, b.Corners())
	if err != nil {
		return 0 // told when the blank is meshed
	}
	return math.Abs(c.Area())
}

// Corners marks the corners of the blank's outline: those of its table, or where it has none the points at which it turns by
// more than sharp. So the joint of a half top is straight.
func (b *Blank) Corners() []bool {
	o := b.Outline
	if o.Corner != nil {
		return o.Corner
	}
	n := len(o.Points)
	out := make([]bool, n)
	for i := range out {
		p, q, r := o.Points[(i+n-1)%n], o.Points[i], o.Points[(i+1)%n]
		turn := math.Atan2(r[1]-q[1], r[0]-q[0]) - math.Atan2(q[1]-p[1], q[0]-p[0])
		out[i] = math.Abs(math.Remainder(turn, 2*math.Pi)) > sharp
	}
	return out
}

// sharp is from how much of a turn on a point of an outline is a corner: 50 degrees. On a curve, points that were measured
// turn by a few.
const sharp = 50 * math.Pi / 180

// mostTimes is how many times as dense, or as light, as its card a piece may be.
const mostTimes = 3

// checkWeight refuses a weight, g, that no such wood of that volume, mm³, has: mostly a slip by ten or a wrong unit.
func (f *File) checkWeight(key string, weight, volume float64) {
	density, card := weight/volume*1e6, f.Card.Wood.Density
	if card == 0 || density >= card/mostTimes && density <= card*mostTimes {
		return
	}
	hint := ""
	for _, k := range []float64{10, 0.1, 100, 0.01, 1000, 0.001} {
		d := density * k
		if d <= card/mostLikely || d >= card*mostLikely {
			continue
		}
		sizes := ""
		switch k {
		case 0.1, 10:
			sizes = fmt.Sprintf(", or with one size %g times as great,", 1/k)
		case 0.001, 1000:
			sizes = fmt.Sprintf(", or with every size %g times as great,", math.Cbrt(1/k))
		}
		hint = fmt.Sprintf("; with %.4g g%s it would be %.4g", weight*k, sizes, d)
		break
	}
	f.Rep.AddKey(key, "%g g on that size makes %s kg/m³, and %s has about %.0f%s: want the weight in g and sizes in mm", weight, shortly(density), f.Like, card, hint)
}

// shortly writes a number with four figures, all of those before the point.
func shortly(v float64) string {
	if v >= 1e4 {
		return fmt.Sprintf("%.0f", v)
	}
	return fmt.Sprintf("%.4g", v)
}

// mostLikely is how many times as dense as its card a piece is at most, likely.
const mostLikely = 1.7

// checkBar looks at a bar's weight and proportions.
func (f *File) checkBar(i int) {
	b := &f.Bars[i]
	key := tree.EntryKey("bar", i+1)
	if !f.Rep.Clean(key) {
		return
	}
	l, w, t := float64(b.Length), float64(b.Width), float64(b.Thickness)
	if b.Weight > 0 {
		f.checkWeight(key+".weight", float64(b.Weight), l*w*t)
	}
	if float64(b.Span) > l {
		f.Rep.AddKey(key+".span", "want at most the length, %g mm, found %g", l, float64(b.Span))
	}
	if b.Span > 0 && b.Held != "supports" {
		f.Rep.AddKey(key+".span", "want none for held = \"free\"")
	}
	switch {
	case l < 3*math.Max(w, t):
		f.Rep.AddKey(key+".length", "%g mm is short for a bar %g mm wide and %g mm thick: want at least three times, or a [blank]", l, w, t)
	case l < 20*t || l < 4*w:
		f.note(key+".length", "tests of bars want a length of 20 thicknesses and four widths; the fit takes shear and rotary inertia along, but small errors of size count more")
	}
	for _, n := range []struct {
		name  string
		tones Tones
	}{{"flexure", b.Flexure}, {"torsion", b.Torsion}, {"edgewise", b.Edgewise}} {
		last := 0.0 // of those that were heard
		for _, hz := range n.tones {
			if hz > 0 && hz <= last {
				f.Rep.AddKey(key+"."+n.name, "want the tones lowest first, found %g after %g", hz, last)
			}
			last = max(last, hz)
		}
	}
	if len(b.Torsion) > 0 && b.Held == "supports" {
		f.Rep.AddKey(key+".torsion", "want held = \"free\" for a tone of twisting")
	}
}

// note adds what is admitted, but worth a second look.
func (f *File) note(key, form string, args ...any) {
	p := f.Rep.Find(key)
	f.Rep.Notes = append(f.Rep.Notes, &tree.FileError{File: p.Src.Label, Line: p.Line, Key: key, Err: fmt.Errorf(form, args...)})
}

// checkTone wants a pattern that can be told apart, and a state that the blank can have.
func (f *File) checkTone(i int) {
	t := &f.Tones[i]
	key := tree.EntryKey("tone", i+1)
	if _, ok := motion.ReadPattern(t.Pattern); t.Pattern != "" && !ok {
		f.Rep.AddKey(key+".pattern", "want twist, along, across, ring, or how many lines stand still across and along the length as in \"2 1\", found %q", t.Pattern)
	}
	if t.State == "bare" && f.Blank != nil && f.Blank.Shape != "plate" {
		f.Rep.AddKey(key+".state", "want free; only a plate that a case describes has an edge to stand on")
	}
}

// checkPress wants a weight, what it lies on, and a gauge.
func (f *File) checkPress(i int) {
	p := &f.Presses[i]
	key := tree.EntryKey("press", i+1)
	if !f.Rep.Clean(key) {
		return
	}
	if (p.Weight > 0) == (p.Force > 0) {
		f.Rep.AddKey(key, "want either weight in g or force in N")
	}
	if len(p.Gauges) == 0 {
		f.Rep.AddKey(key+".gauge", "missing, want a [[press.gauge]] with what it showed")
	}
	plate := p.Bar == "" && f.Blank != nil && f.Blank.Shape == "plate"
	switch {
	case p.Bar != "" && f.BarOf(p) == nil:
		f.Rep.AddKey(key+".bar", "no [[bar]] of the name %q", p.Bar)
	case p.Bar == "" && f.Blank == nil:
		f.Rep.AddKey(key, "want a [blank] that was pressed, or bar = \"...\"")
	case plate && p.Span > 0:
		f.Rep.AddKey(key+".span", "want supports, or none of both where the case's rim holds it")
	case len(p.Supports) > 0 && p.Span > 0:
		f.Rep.AddKey(key+".span", "want either supports or span")
	case !plate && len(p.Supports) < 3 && p.Span == 0:
		f.Rep.AddKey(key, "want what it lies on: supports = [[x, y], ...], three or more, or span")
	case p.State == Strung && !plate:
		f.Rep.AddKey(key+".state", "want bare: only a plate that a case describes has strings")
	case p.State == Strung && f.Top != nil && (f.Top.Strings == nil || f.Top.Bridge == nil):
		f.Rep.AddKey(key+".state", "want bare, or a case with [strings] and [bridge]")
	case p.State == Strung && len(p.Supports) > 0:
		f.Rep.AddKey(key+".supports", "want none under a top that is strung: it stands as its case says")
	case plate && len(p.Supports) > 0 && len(p.Supports) < 3:
		f.Rep.AddKey(key+".supports", "want three points or more, found %d", len(p.Supports))
	}
}

// checkTargets wants a target, or a reading.
func (f *File) checkTargets(i int) {
	p := &f.Presses[i]
	for k := range p.Gauges {
		key := tree.EntryKey(tree.EntryKey("press", i+1)+".gauge", k+1)
		switch g := &p.Gauges[k]; {
		case g.Measured != nil && g.Target > 0:
			f.Rep.AddKey(key+".target", "want it on a gauge that was not read, found both")
		case g.Measured != nil && p.State == Strung:
			f.Rep.AddKey(key+".measured", "want none with state = \"strung\": what a gauge shows with the strings on goes by bridge and strings too, and stands in the case, [[gauge]]")
		}
	}
}

// Told says whether all that a press asks is told by the plate of its case, and nothing of it is fitted.
func (f *File) Told(p *Press) bool {
	if f.Top == nil || p.Bar != "" {
		return false
	}
	for i := range p.Gauges {
		if p.Gauges[i].Measured != nil {
			return false
		}
	}
	return true
}

// BarOf is the bar that was pressed; nil for the blank.
func (f *File) BarOf(p *Press) *Bar {
	for i := range f.Bars {
		if f.Bars[i].Name == p.Bar && p.Bar != "" {
			return &f.Bars[i]
		}
	}
	return nil
}
