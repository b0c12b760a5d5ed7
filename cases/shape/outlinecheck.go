package shape

import (
	"fmt"
	"math"
	"slices"

	"archload/cases"
	"archload/mesh"
	"archload/mesh/plane"
)

// Of data beside the outline a few are slips of their own; many are the outline's.
const (
	outsideMost  = 10.0 // mm: a datum so far outside is refused
	outsideShare = 0.1  // of a table's rows
	outsideLeast = 3    // rows
)

// checkOutline refuses an outline beside which many of the measured data lie: the
// fault is not that of the table that shows it.
func (f *fitter) checkOutline() {
	if !f.touched("plate.outline", "plate.arch", "plate.thickness") {
		return
	}
	p := &f.c.Plate
	for _, of := range []struct {
		key    string
		tables []cases.KeyedTable
	}{{"plate.arch", p.Arch.Tables()}, {"plate.thickness", p.Thickness.Tables()}} {
		for _, t := range of.tables {
			if t.Table == nil {
				continue
			}
			count, far := f.outside(t.Table)
			if count < outsideLeast || float64(count) < outsideShare*float64(len(t.Table.X)) {
				continue
			}
			f.rep.AddKey("plate.outline", "%d of the %d places of %s.%s lie outside this outline, by up to %.0f mm; want the whole outline, in the same units and directions%s",
				count, len(t.Table.X), of.key, t.Key, far, f.outlineHint(t.Table))
			return
		}
	}
}

// outside counts the places of a table that lie outside, and tells how far, mm.
func (f *fitter) outside(t *cases.HeightTable) (count int, far float64) {
	for i := range t.X {
		p := mesh.Point{t.X[i], t.Y[i]}
		if f.made.Outline.Contains(p) {
			continue
		}
		if d := f.made.Outline.Distance(p); d > outsideMost {
			count, far = count+1, max(far, d)
		}
	}
	return count, far
}

// outlineHint asks whether x and y were changed about, or the outline written in
// another unit: what makes the outline just hold the data.
func (f *fitter) outlineHint(t *cases.HeightTable) string {
	lo, hi := f.made.Outline.Bounds()
	at := make([]mesh.Point, len(t.X))
	for i := range at {
		at[i] = mesh.Point{t.X[i], t.Y[i]}
	}
	from, to := plane.Bounds(at)
	wide, long := hi[0]-lo[0], hi[1]-lo[1]
	w, l := to[0]-from[0], to[1]-from[1]
	// Data reach over most of a plate: between half of it and a little beyond.
	holds := func(plate, data float64) bool { return data <= 1.1*plate && data >= 0.5*plate }
	if holds(long, w) && holds(wide, l) {
		return "; were its x and y changed about?"
	}
	for _, u := range []struct {
		factor float64
		name   string
	}{{25.4, "in"}, {10, "cm"}} {
		if holds(u.factor*wide, w) && holds(u.factor*long, l) {
			return fmt.Sprintf("; was it written in %s?", u.name)
		}
	}
	return ""
}

// lowArch hints at an arch written in another unit, for faults that its height causes.
func (f *fitter) lowArch() string {
	most := 0.0
	for _, t := range f.c.Plate.Arch.Tables() {
		if t.Table != nil {
			most = math.Max(most, slices.Max(t.Table.Height))
		}
	}
	if most == 0 || most > lowestArch {
		return ""
	}
	return fmt.Sprintf("; the arch is only %.3g mm high: were its heights written in cm?", most)
}

// lowestArch is the height below which a carved arch is hardly meant, mm.
const lowestArch = 5.0
