package viz

import "math"

// placeBraceNames finds a place beside each brace for its name.
func (g *page) placeBraceNames(v *planView) []tag {
	f := v.lay.frame
	var out []tag
	for _, b := range v.in.Drawing.Braces {
		name := clean(b.Name)
		if name == "" || len(b.Line) < 2 {
			continue
		}
		off := 8.0
		if len(b.Half) > 0 {
			off += f.scale * b.Half[0]
		}
		t := tag{text: name, s: label(), back: behind()}
		if g.placeAlong(&t, f.all(b.Line), off) {
			g.blocked = append(g.blocked, t.box)
			out = append(out, t)
		}
	}
	return out
}

// placeAlong looks for a free place beside a line, off points from it.
func (g *page) placeAlong(t *tag, l []pt, off float64) bool {
	for _, share := range []float64{0.18, 0.82, 0.3, 0.7, 0.5, 0.1, 0.9} {
		for _, side := range []float64{off, -off} {
			at, angle := along(l, share)
			angle = readable(angle)
			s, c := math.Sincos(angle)
			t.box = g.place(at.add(-s*(side-2.6), c*(side-2.6)), t.text, t.s, 0.5, angle)
			if g.free(t.box.grown(1.2)) {
				return true
			}
		}
	}
	return false
}

// readable turns an angle so that text along it is not upside down.
func readable(a float64) float64 {
	for a > math.Pi/2+1e-9 {
		a -= math.Pi
	}
	for a <= -math.Pi/2+1e-9 {
		a += math.Pi
	}
	return a
}

// along returns the place and direction at share t of a polyline's length.
func along(l []pt, t float64) (pt, float64) {
	total := 0.0
	for i := 1; i < len(l); i++ {
		total += math.Hypot(l[i].X-l[i-1].X, l[i].Y-l[i-1].Y)
	}
	want := t * total
	for i := 1; i < len(l); i++ {
		d := math.Hypot(l[i].X-l[i-1].X, l[i].Y-l[i-1].Y)
		if want <= d && d > 0 || i == len(l)-1 {
			u := math.Min(1, want/math.Max(d, 1e-12))
			return pt{l[i-1].X + u*(l[i].X-l[i-1].X), l[i-1].Y + u*(l[i].Y-l[i-1].Y)},
				math.Atan2(l[i].Y-l[i-1].Y, l[i].X-l[i-1].X)
		}
		want -= d
	}
	return l[0], 0
}

// placeLineName finds room on the longest line of level k for its value; the
// line is interrupted there.
func (g *page) placeLineName(v *planView, k int, lines []path) (tag, bool) {
	l := v.lay.frame.all(longest(lines).pts)
	if len(l) < 2 || polyLength(l) < 60 {
		return tag{}, false
	}
	t := tag{text: v.scale.label(k), s: label()}
	if lightness(v.scale.BandColor(k)) < 0.62 {
		t.s.color = paperColor()
	}
	for _, share := range []float64{0.5, 0.35, 0.65, 0.2, 0.8, 0.42, 0.58, 0.27, 0.73, 0.1, 0.9} {
		at, angle := along(l, share)
		angle = readable(angle)
		s, c := math.Sincos(angle)
		t.box = g.place(at.add(2.8*s, -2.8*c), t.text, t.s, 0.5, angle)
		if g.free(t.box.grown(2)) && straight(l, share, t.box.w+6) {
			g.blocked = append(g.blocked, t.box)
			return t, true
		}
	}
	return tag{}, false
}

// outside returns the parts of a line that do not lie in a block.
func outside(l []pt, closed bool, b block) [][]pt {
	var out [][]pt
	var run []pt
	put := func(q pt) {
		if b.holds(q) {
			if len(run) > 1 {
				out = append(out, run)
			}
			run = nil
			return
		}
		run = append(run, q)
	}
	if closed {
		l = append(l[:len(l):len(l)], l[0])
	}
	put(l[0])
	for i := 1; i < len(l); i++ {
		p, q := l[i-1], l[i]
		n := 1
		if around(p, q, 0.1).overlaps(b) {
			n = 1 + int(math.Hypot(q.X-p.X, q.Y-p.Y)/0.5)
		}
		for j := 1; j <= n; j++ {
			u := float64(j) / float64(n)
			put(pt{p.X + u*(q.X-p.X), p.Y + u*(q.Y-p.Y)})
		}
	}
	if len(run) > 1 {
		out = append(out, run)
	}
	return out
}

// straight tells whether a line keeps its direction over w points about share t.
func straight(l []pt, t, w float64) bool {
	total := polyLength(l)
	a, _ := along(l, math.Max(0, t-0.5*w/total))
	b, _ := along(l, math.Min(1, t+0.5*w/total))
	return math.Hypot(b.X-a.X, b.Y-a.Y) > 0.94*w
}

func longest(l []path) path {
	var best path
	most := 0.0
	for _, q := range l {
		n := 0.0
		for i := 1; i < len(q.pts); i++ {
			n += math.Hypot(q.pts[i][0]-q.pts[i-1][0], q.pts[i][1]-q.pts[i-1][1])
		}
		if n > most {
			best, most = q, n
		}
	}
	return best
}

func polyLength(l []pt) float64 {
	total := 0.0
	for i := 1; i < len(l); i++ {
		total += math.Hypot(l[i].X-l[i-1].X, l[i].Y-l[i-1].Y)
	}
	return total
}
