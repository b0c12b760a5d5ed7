package sheet

import (
	"fmt"
	"math"

	"archload/mesh"
	"archload/mesh/surface"
	"archload/viz/canvas"
	"archload/viz/scale"
)

// Contours on a sheet: about this many from lowest to highest.
const sheetLevels = 16

func (s *shop) plan() *Sheet {
	at, z := s.apex()
	step := contourStep(s.heights())
	d := s.drawPlan(step)
	return &Sheet{
		Name: "plan", Title: "plan with the contours of the arch",
		notes: []string{
			"Seen from outside, neck up, bass left.",
			fmt.Sprintf("Contours every %s mm: the height of the outer surface above the rim's gluing surface, mm. Apex %.1f mm high at (%.0f, %.0f) mm from the origin, treble and neck positive.",
				level(step), z, at[0], at[1]),
			"Dashed: the braces underneath. Thin rectangle: where the bridge's feet stand. Cross-arch templates belong on the lines named inside the edge.",
		},
		build: func(fitter) *fullScale { return d },
	}
}

// heights is the least and greatest height of the outer surface inside the
// outline, mm.
func (s *shop) heights() (lo, hi float64) { return s.extent(s.plate.Outer) }

func (s *shop) extent(f surface.Surface) (lo, hi float64) {
	a, b := s.notes.Outline.Bounds()
	lo, hi = math.Inf(1), math.Inf(-1)
	see := func(p mesh.Point) {
		v := f.At(p).Z
		lo, hi = math.Min(lo, v), math.Max(hi, v)
	}
	for y := a[1]; y <= b[1]; y += 4 {
		for x := a[0]; x <= b[0]; x += 4 {
			if p := (mesh.Point{x, y}); s.notes.Outline.Contains(p) {
				see(p)
			}
		}
	}
	for _, p := range s.rim {
		see(p)
	}
	return lo, hi
}

// contourStep is the 1-2-5 step that gives about sheetLevels contours.
func contourStep(lo, hi float64) float64 {
	return scale.StepAbove(math.Max(hi-lo, 0.01) / sheetLevels)
}

func (s *shop) drawPlan(step float64) *fullScale {
	d := newFullScale()
	s.contours(d, s.plate.Outer, step)
	for i := range s.c.Braces {
		if b := &s.c.Braces[i]; b.Fitted {
			s.brace(d, b.Line, b.Width.Max()/2)
		}
	}
	if b := s.c.Bridge; b != nil {
		for i := range b.Feet {
			lo, hi := b.FootRect(i)
			d.stroke([]mesh.Point{lo, {hi[0], lo[1]}, hi, {lo[0], hi[1]}}, true, canvas.Thin())
		}
	}
	at, z := s.apex()
	s.cross(d, at, 3, "apex "+fmt.Sprintf("%.1f", z))
	for _, g := range s.c.Gauges {
		up := 3.0
		if b := s.c.Bridge; b != nil && math.Abs(g.At[1]-b.At[1]) < float64(b.Width)/2+4 {
			up = b.At[1] - g.At[1] - float64(b.Width)/2 - 4
		}
		if math.Hypot(g.At[0]-at[0], g.At[1]-at[1]) > 4 {
			s.cross(d, g.At, up, g.Name)
		}
	}
	s.stationMarks(d)
	s.body(d)
	s.grain(d)
	return d
}

// cross marks a place with a name beside it, up mm higher.
func (s *shop) cross(d *fullScale, at mesh.Point, up float64, name string) {
	d.straight(mesh.Point{at[0] - 2.5, at[1]}, mesh.Point{at[0] + 2.5, at[1]}, canvas.Thin())
	d.straight(mesh.Point{at[0], at[1] - 2.5}, mesh.Point{at[0], at[1] + 2.5}, canvas.Thin())
	w := d.wide(name, canvas.Label())/2 + 4
	d.onWhite(mesh.Point{at[0] + w, at[1] + up}, name, canvas.Label())
}

// brace draws the two edges of a brace and its ends.
func (s *shop) brace(d *fullScale, line []mesh.Point, half float64) {
	var left, right []mesh.Point
	for i, p := range line {
		a, b := line[max(0, i-1)], line[min(len(line)-1, i+1)]
		l := math.Hypot(b[0]-a[0], b[1]-a[1])
		nx, ny := -(b[1]-a[1])/l*half, (b[0]-a[0])/l*half
		left, right = append(left, mesh.Point{p[0] + nx, p[1] + ny}), append(right, mesh.Point{p[0] - nx, p[1] - ny})
	}
	for i := len(right) - 1; i >= 0; i-- {
		left = append(left, right[i])
	}
	d.stroke(left, true, canvas.Hidden())
}

// stationMarks draws at the edge where each cross-arch template belongs.
func (s *shop) stationMarks(d *fullScale) {
	for _, st := range s.crossStations() {
		for _, x := range []float64{st.from, st.to} {
			in, align := 6.0, 0.0
			if x == st.to {
				in, align = -6, 1
			}
			d.straight(mesh.Point{x, st.at}, mesh.Point{x + in, st.at}, canvas.Thin())
			d.words(mesh.Point{x + 1.2*in, st.at - 1}, signed(st.at), canvas.Label(), align)
		}
	}
}

// grain is an arrow along the grain beside the tail.
func (s *shop) grain(d *fullScale) {
	lo, hi := s.notes.Outline.Bounds()
	sin, cos := math.Sincos(float64(s.c.Plate.GrainAngle) * math.Pi / 180)
	a := mesh.Point{lo[0] + 6, hi[1] - 40}
	b := mesh.Point{a[0] - 36*sin, a[1] + 36*cos}
	d.straight(a, b, canvas.Thin())
	for _, t := range []float64{0.35, -0.35} {
		s, c := math.Sincos(float64(t))
		ux, uy := (a[0]-b[0])/36, (a[1]-b[1])/36
		d.straight(b, mesh.Point{b[0] + 5*(ux*c-uy*s), b[1] + 5*(ux*s+uy*c)}, canvas.Thin())
	}
	d.words(mesh.Point{a[0] + 2, a[1] + 14}, "grain", canvas.Rim(), 0)
}

// contours draws the lines of equal value of a surface, each with its value.
func (s *shop) contours(d *fullScale, f surface.Surface, step float64) {
	lo, hi := s.extent(f)
	var levels []float64
	for k := math.Ceil(lo/step + 1e-9); k*step < hi; k++ {
		levels = append(levels, k*step)
	}
	lines, err := surface.Contours(f, s.notes.Outline, levels, surface.ContourOptions{Spacing: 1})
	if err != nil {
		return // an outline that holds no region has no contours
	}
	centre, _ := s.apex()
	for _, l := range lines {
		n := len(l.Points)
		gap := math.Hypot(l.Points[0][0]-l.Points[n-1][0], l.Points[0][1]-l.Points[n-1][1])
		by := canvas.Pen{Width: 0.5, Color: canvas.Rust()}
		if int(math.Round(l.Height/step))%5 == 0 {
			by.Width = 0.9
		}
		d.stroke(l.Points, gap < 3, by)
		if gap < 3 && n >= 8 {
			hachures(d, f, l.Points, by)
		}
	}
	st := canvas.Style{Size: canvas.Smallest, Face: canvas.Regular, Color: canvas.Rust()}
	var set []mesh.Point
	for _, l := range lines {
		for _, half := range [][]float64{{60, 120, 75, 105, 20, 160}, {240, 300, 255, 285, 200, 340}} {
			if at, ok := labelPlace(l.Points, centre, half, set); ok && len(l.Points) >= 20 {
				set = append(set, at)
				d.onWhite(at, level(l.Height), st)
			}
		}
	}
}

// hachures draws short strokes from a closed contour into a hollow that it
// encloses, so that a trough does not read as a hill.
func hachures(d *fullScale, f surface.Surface, l []mesh.Point, by canvas.Pen) {
	const apart, long = 6.0, 1.6 // mm
	turn := 1.0                  // anticlockwise: the inside lies to the left
	if ringArea(l) < 0 {
		turn = -1
	}
	var strokes [][2]mesh.Point
	lower, gone := 0, apart
	for i := range l {
		a, b := l[i], l[(i+1)%len(l)]
		step := math.Hypot(b[0]-a[0], b[1]-a[1])
		if step == 0 {
			continue
		}
		in := mesh.Point{-turn * (b[1] - a[1]) / step, turn * (b[0] - a[0]) / step}
		j := f.At(a)
		if j.Zx*in[0]+j.Zy*in[1] < 0 {
			lower++
		}
		if gone += step; gone >= apart {
			gone = 0
			strokes = append(strokes, [2]mesh.Point{a, {a[0] + long*in[0], a[1] + long*in[1]}})
		}
	}
	if 2*lower <= len(l) {
		return
	}
	for _, s := range strokes {
		d.straight(s[0], s[1], by)
	}
}

// labelPlace finds where on a line its value may stand: toward one of a few
// bearings from the centre (degrees from treble), clear of the values already
// set.
func labelPlace(l []mesh.Point, centre mesh.Point, bearings []float64, set []mesh.Point) (mesh.Point, bool) {
	for _, deg := range bearings {
		a := deg * math.Pi / 180
		best, off := l[0], math.Inf(1)
		for _, p := range l {
			d := math.Abs(math.Remainder(math.Atan2(p[1]-centre[1], p[0]-centre[0])-a, 2*math.Pi))
			if d < off {
				best, off = p, d
			}
		}
		empty := off < 0.1
		for _, q := range set {
			empty = empty && (math.Abs(q[0]-best[0]) > 7 || math.Abs(q[1]-best[1]) > 3.6)
		}
		if empty {
			return best, true
		}
	}
	return mesh.Point{}, false
}

func (s *shop) graduation() *Sheet {
	lo, hi := s.extent(s.plate.Thickness)
	words := fmt.Sprintf("Thickness from %.1f to %.1f mm.", lo, hi)
	if hi-lo < 0.05 {
		words = fmt.Sprintf("One thickness everywhere: %.1f mm.", lo)
	}
	d := s.drawGraduation(lo, hi)
	return &Sheet{
		Name: "graduation", Title: "graduation map",
		notes: []string{
			"Seen from outside, neck up, bass left; hold it against a window to have it from inside.",
			words + " Each number is the thickness at its dot, in mm, measured square to the outer surface, as a caliper does.",
		},
		build: func(fitter) *fullScale { return d },
	}
}

func (s *shop) drawGraduation(lo, hi float64) *fullScale {
	const grid = 25
	d := newFullScale()
	if hi-lo >= 0.05 {
		s.contours(d, s.plate.Thickness, math.Max(0.1, contourStep(lo, hi)))
	}
	a, b := s.notes.Outline.Bounds()
	for y := math.Ceil(a[1]/grid) * grid; y <= b[1]; y += grid {
		for x := math.Ceil(a[0]/grid) * grid; x <= b[0]; x += grid {
			p := mesh.Point{x, y}
			if s.inWood(p, 5) {
				d.fill(dot(p, 0.4), canvas.Thin())
				d.words(mesh.Point{x + 1, y + 0.6}, fmt.Sprintf("%.1f", s.plate.Thickness.At(p).Z), canvas.Label(), 0)
			}
		}
	}
	s.body(d)
	return d
}

// ringArea is twice the signed area of a closed line, anticlockwise positive, mm².
func ringArea(l []mesh.Point) float64 {
	a := 0.0
	for i, p := range l {
		q := l[(i+1)%len(l)]
		a += p[0]*q[1] - q[0]*p[1]
	}
	return a
}
