package surface

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"archload/mesh/plane"
)

const (
	farOutside    = 10.0 // mm beyond the outline where a datum is refused: the spline's box ends at two cells
	samePlace     = 0.05 // mm between data that count as one place
	templateSlack = 0.2  // mm by which two templates may differ where they cross, beside interpolation
)

// checkData refuses data that no surface can follow, before any fitting.
func checkData(d *Data, all []datum) error {
	for _, check := range []func(*Data, []datum) error{
		checkFinite, checkPlaces, checkEnough, checkTemplates, checkDuplicates, checkContours, checkRim,
	} {
		if err := check(d, all); err != nil {
			return err
		}
	}
	return nil
}

func checkFinite(d *Data, all []datum) error {
	for i := range all {
		if e := &all[i]; !finite(e.at[0], e.at[1], e.z) {
			return e.fault("want finite numbers, found x %g, y %g, height %g", e.at[0], e.at[1], e.z)
		}
	}
	if d.Rim != nil && !finite(*d.Rim) {
		return &DataError{Set: "outline", Line: -1, Msg: fmt.Sprintf("rim height: want a finite number, found %g", *d.Rim)}
	}
	for _, v := range []float64{d.Noise, d.Rounding, d.RecurveAt, d.Cell} {
		if !finite(v) || v < 0 {
			return &DataError{Set: "points", Line: -1, Msg: fmt.Sprintf("noise, rounding, recurve_at or cell: want > 0, found %g", v)}
		}
	}
	return nil
}

func checkPlaces(_ *Data, all []datum) error {
	for i := range all {
		if e := &all[i]; e.foot.signed() < -farOutside {
			return e.fault("lies %.1f mm outside the outline, want at most %g", e.foot.dist, farOutside)
		}
	}
	return nil
}

// checkEnough wants one datum inside a known rim, and three data that are
// not in one line otherwise.
func checkEnough(d *Data, all []datum) error {
	if len(all) == 0 {
		return &DataError{Set: "points", Line: -1, Msg: "no heights found, want contours, templates or measured points"}
	}
	if d.Rim != nil {
		return nil
	}
	if len(all) < 3 {
		return &DataError{Set: all[0].set, Line: -1, Msg: fmt.Sprintf("want at least 3 points, found %d", len(all))}
	}
	var c plane.Point
	for _, e := range all {
		c[0] += e.at[0] / float64(len(all))
		c[1] += e.at[1] / float64(len(all))
	}
	var xx, xy, yy float64
	for _, e := range all {
		dx, dy := e.at[0]-c[0], e.at[1]-c[1]
		xx, xy, yy = xx+dx*dx, xy+dx*dy, yy+dy*dy
	}
	if least := (xx+yy)/2 - math.Hypot((xx-yy)/2, xy); least < 1e-4*(xx+yy) || xx+yy < 1 {
		return all[0].fault("all points lie along one line, want them spread over the plate")
	}
	return nil
}

// checkDuplicates refuses different heights at one place.
func checkDuplicates(_ *Data, all []datum) error {
	order := make([]int32, len(all))
	for i := range order {
		order[i] = int32(i)
	}
	slices.SortStableFunc(order, func(a, b int32) int { return cmp.Compare(all[a].at[0], all[b].at[0]) })
	for k, i := range order {
		for _, j := range order[k+1:] {
			a, b := &all[i], &all[j]
			if b.at[0]-a.at[0] > samePlace {
				break
			}
			tolerance := 0.05 + 4*math.Hypot(a.sigma, b.sigma)
			if math.Abs(a.at[1]-b.at[1]) <= samePlace && math.Abs(a.z-b.z) > tolerance {
				if b.row < a.row {
					a, b = b, a
				}
				return b.fault("height %g mm, but %s row %d says %g mm at the same place", b.z, a.set, a.row, a.z)
			}
		}
	}
	return nil
}

// checkContours refuses contour lines of different height that cross.
func checkContours(d *Data, _ []datum) error {
	var segs []segment
	row := int32(0)
	for i := range d.Lines {
		l := &d.Lines[i]
		segs = append(segs, segmentsOf(l.Points, l.closed(), i)...)
		for k := range segs {
			if s := &segs[k]; s.chain == i {
				s.row = rowOf(l.Rows, s.from, row+int32(s.from))
			}
		}
		row += int32(len(l.Points))
	}
	s, t, at, found := firstCrossing(segs, func(a, b *segment) bool {
		return d.Lines[a.chain].Height != d.Lines[b.chain].Height
	})
	if !found {
		return nil
	}
	if t.row < s.row {
		s, t = t, s
	}
	a, b := &d.Lines[s.chain], &d.Lines[t.chain]
	return &DataError{Set: "contours", Line: t.row, At: at, Msg: fmt.Sprintf(
		"line %s at %g mm crosses line %s at %g mm (row %d)", b.ID, b.Height, a.ID, a.Height, s.row)}
}

// closed tells whether the line's last point joins its first.
func (l *ContourLine) closed() bool {
	n := len(l.Points)
	if n < 3 {
		return false
	}
	sum := 0.0
	for i := 1; i < n; i++ {
		sum += plane.Dist(l.Points[i-1], l.Points[i])
	}
	return plane.Dist(l.Points[n-1], l.Points[0]) <= 3*sum/float64(n-1)
}

// checkTemplates refuses templates that disagree where they cross.
func checkTemplates(d *Data, _ []datum) error {
	var segs []segment
	for i := range d.Templates {
		t := &d.Templates[i]
		if len(t.Points) != len(t.Heights) {
			return &DataError{Set: "templates", Line: -1, Msg: fmt.Sprintf(
				"station %s: %d points but %d heights", t.ID, len(t.Points), len(t.Heights))}
		}
		segs = append(segs, segmentsOf(t.Points, false, i)...)
	}
	s, t, at, found := firstCrossing(segs, func(a, b *segment) bool {
		if a.chain == b.chain {
			return false
		}
		at, ok := a.meets(b)
		if !ok {
			return false
		}
		za, slackA := d.Templates[a.chain].heightAt(a.from, at)
		zb, slackB := d.Templates[b.chain].heightAt(b.from, at)
		return math.Abs(za-zb) > templateSlack+slackA+slackB
	})
	if !found {
		return nil
	}
	if t.chain < s.chain {
		s, t = t, s
	}
	a, b := &d.Templates[s.chain], &d.Templates[t.chain]
	za, _ := a.heightAt(s.from, at)
	zb, _ := b.heightAt(t.from, at)
	row := 0
	for i := range t.chain {
		row += len(d.Templates[i].Points)
	}
	return &DataError{Set: "templates", Line: rowOf(b.Rows, t.from, int32(row+t.from)), At: at, Msg: fmt.Sprintf(
		"stations %s and %s cross and differ by %.2f mm (%.2f and %.2f)", a.ID, b.ID, math.Abs(za-zb), za, zb)}
}

// heightAt returns the height on the chord from point i to the next, and how
// far the template may bulge from it (an eighth of the second difference).
func (t *Template) heightAt(i int, at plane.Point) (z, bulge float64) {
	a, b := t.Points[i], t.Points[i+1]
	u := plane.Dist(a, at) / plane.Dist(a, b)
	z = t.Heights[i] + u*(t.Heights[i+1]-t.Heights[i])
	if i > 0 && i+2 < len(t.Heights) {
		bulge = math.Abs(t.Heights[i-1]-t.Heights[i]-t.Heights[i+1]+t.Heights[i+2]) / 16
	}
	return z, bulge
}

// checkRim refuses data on the outline that contradict a stated rim height.
func checkRim(d *Data, all []datum) error {
	const steep = 0.7 // 1, of a slope of 35 degrees at the edge
	if d.Rim == nil || !d.RimStated {
		return nil
	}
	for i := range all {
		e := &all[i]
		slack := usualRounding + 4*e.sigma + steep*e.foot.dist
		if e.foot.dist <= onOutline && math.Abs(e.z-*d.Rim) > slack {
			return e.fault("height %g mm on the outline, but the rim height is stated as %g mm", e.z, *d.Rim)
		}
	}
	return nil
}
