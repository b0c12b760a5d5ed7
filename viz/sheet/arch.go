package sheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"archload/mesh"
	"archload/viz/canvas"
)

// station is a straight cut through the plate: across it at y = at, or along
// it at x = at, from one edge of the outline to the other, mm.
type station struct{ at, from, to float64 }

// templateRise is the least height of a template above its arch, mm.
const templateRise = 22

// chord returns the longest inside stretch of the line on which coordinate k
// equals at; ok is false if it misses the outline.
func (s *shop) chord(k int, at float64) (st station, ok bool) {
	var cuts []float64
	n := len(s.rim)
	for i, p := range s.rim {
		q := s.rim[(i+1)%n]
		if (p[k] > at) != (q[k] > at) {
			t := (at - p[k]) / (q[k] - p[k])
			cuts = append(cuts, p[1-k]+t*(q[1-k]-p[1-k]))
		}
	}
	slices.Sort(cuts)
	for i := 0; i+1 < len(cuts); i += 2 {
		if d := cuts[i+1] - cuts[i]; d > st.to-st.from {
			st, ok = station{at, cuts[i], cuts[i+1]}, true
		}
	}
	return st, ok
}

// crossStations are the cuts across: at the case's own templates, else every
// so many mm, and in any case at the bridge.
func (s *shop) crossStations() []station {
	lo, hi := s.notes.Outline.Bounds()
	at := s.ownStations(1)
	if s.every > 0 || len(at) == 0 {
		at = nil
		step := cmp.Or(s.every, 50)
		for y := math.Ceil(lo[1]/step) * step; y <= hi[1]; y += step {
			at = append(at, y)
		}
	}
	if s.c.Bridge != nil {
		at = append(at, s.c.Bridge.At[1])
	}
	return s.stations(1, at)
}

// longStations are the cuts along: on the centre line, through the apex, and
// at the case's own templates.
func (s *shop) longStations() []station {
	at := append(s.ownStations(0), 0)
	if p, _ := s.apex(); math.Abs(p[0]) > 3 {
		at = append(at, p[0])
	}
	return s.stations(0, at)
}

// stations cuts the outline where coordinate k has the given values; shorter
// cuts than 40 mm are left out.
func (s *shop) stations(k int, at []float64) []station {
	slices.Sort(at)
	var out []station
	for _, v := range at {
		if len(out) > 0 && v-out[len(out)-1].at < 1 {
			continue
		}
		if st, ok := s.chord(k, v); ok && st.to-st.from >= 40 {
			out = append(out, st)
		}
	}
	return out
}

// ownStations are the places of the case's arch templates that run square to
// axis k.
func (s *shop) ownStations(k int) []float64 {
	t := s.c.Plate.Arch.Templates
	if t == nil {
		return nil
	}
	var out []float64
	for i := 0; i < len(t.Lines); {
		j := i
		lo, hi := math.Inf(1), math.Inf(-1)
		for ; j < len(t.Lines) && t.Lines[j] == t.Lines[i]; j++ {
			v := [2]float64{t.X[j], t.Y[j]}[k]
			lo, hi = math.Min(lo, v), math.Max(hi, v)
		}
		if hi-lo < 0.5 {
			out = append(out, (lo+hi)/2)
		}
		i = j
	}
	return out
}

func (s *shop) crossArches() *Sheet {
	return &Sheet{
		Name: "cross-arches", Title: "cross-arch templates",
		notes: []string{
			"Seen from the tail, bass left. Cut along the firm line; the lower edge then rests on the outer surface from edge to edge of the outline.",
			"Each template's upper edge is straight and level: its height above the rim's gluing surface is written on it.",
			"y is the place of the cut from the origin, neck positive, mm. The sound holes are left out: carve first, cut them after.",
		},
		build: func(fit fitter) *fullScale {
			return stacked(s.crossStations(), fit, func(st station) *fullScale {
				return s.drawTemplate(cutout{name: fmt.Sprintf("cross-arch at y = %s mm", signed(st.at)), ends: [2]string{"bass", "treble"},
					centre: "centre line", st: st, point: func(u float64) mesh.Point { return mesh.Point{u, st.at} }})
			})
		},
	}
}

func (s *shop) longArches() *Sheet {
	return &Sheet{
		Name: "long-arches", Title: "long-arch templates",
		notes: []string{
			"Seen from the treble side, tail left. Cut along the firm line; the lower edge then rests on the outer surface from tail to neck.",
			"Each template's upper edge is straight and level: its height above the rim's gluing surface is written on it.",
			"x is the place of the cut from the centre line, treble positive, mm.",
		},
		build: func(fit fitter) *fullScale {
			return stacked(s.longStations(), fit, func(st station) *fullScale {
				return s.drawTemplate(cutout{name: fmt.Sprintf("long arch at x = %s mm", signed(st.at)), ends: [2]string{"tail", "neck"},
					centre: "y = 0", st: st, point: func(u float64) mesh.Point { return mesh.Point{st.at, u} }})
			})
		},
	}
}

// cutout is one template.
type cutout struct {
	name   string
	ends   [2]string // words at its low and high end
	centre string    // word at 0
	st     station
	point  func(u float64) mesh.Point // place in plan at u along the cut
}

// stacked sets drawings of some things one above the other, none across a joint if it
// fits between two.
func stacked[T any](list []T, fit fitter, draw func(T) *fullScale) *fullScale {
	d := newFullScale()
	y := 0.0
	for _, of := range list {
		one := draw(of)
		h := one.hi[1] - one.lo[1]
		y = fit(y, h+1)
		d.include(one, mesh.Point{0, y + 0.5 - one.lo[1]})
		y += h + sheetGap
	}
	return d
}

// drawTemplate draws a template with heights above z = 0 as its y.
func (s *shop) drawTemplate(t cutout) *fullScale {
	d := newFullScale()
	n := max(2, int(math.Ceil(t.st.to-t.st.from)))
	arch := make([]mesh.Point, n+1)
	low, top := math.Inf(1), math.Inf(-1)
	for i := range arch {
		u := t.st.from + (t.st.to-t.st.from)*float64(i)/float64(n)
		z := s.plate.Outer.At(t.point(u)).Z
		arch[i] = mesh.Point{u, z}
		low, top = math.Min(low, z), math.Max(top, z)
	}
	top = math.Ceil(top + templateRise)
	loop := append(slices.Clone(arch), mesh.Point{t.st.to, top}, mesh.Point{t.st.from, top})
	d.stroke(loop, true, templatePen())
	if t.st.from < 0 && t.st.to > 0 {
		z := s.plate.Outer.At(t.point(0)).Z
		d.straight(mesh.Point{0, z}, mesh.Point{0, top}, centrePen())
		d.words(mesh.Point{1.5, z + 2}, fmt.Sprintf("%s, arch %.1f mm high", t.centre, z), canvas.Label(), 0)
	}
	d.words(mesh.Point{t.st.from + 3, top - 5}, t.ends[0], canvas.Rim(), 0)
	d.words(mesh.Point{t.st.to - 3, top - 5}, t.ends[1], canvas.Rim(), 1)
	d.words(mesh.Point{t.st.from + 15, top - 5}, t.name, headStyle(), 0)
	d.words(mesh.Point{t.st.from + 15, top - 9}, fmt.Sprintf("upper edge %.0f mm above the rim's gluing surface", top), canvas.Label(), 0)
	return d
}
