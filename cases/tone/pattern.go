package tone

import (
	"fmt"
	"math"

	"archload/cases/design"
	"archload/mesh"
	"archload/mesh/plane"
)

// normalMovement is the movement of the plate's nodes square to it, scaled so that the greatest is
// 1 and upward, and what share of the plate's greatest movement that is.
func normalMovement(m *design.Moving, shape []float64) (w []float64, share float64) {
	w = make([]float64, m.Built.PlateN)
	most, all := 0.0, 0.0
	for i := range w {
		n, u := m.Built.Model.Nodes[i].N, shape[6*i:][:3]
		w[i] = n[0]*u[0] + n[1]*u[1] + n[2]*u[2]
		if math.Abs(w[i]) > math.Abs(most) {
			most = w[i]
		}
		all = max(all, math.Sqrt(u[0]*u[0]+u[1]*u[1]+u[2]*u[2]))
	}
	if most != 0 {
		for i := range w {
			w[i] /= most
		}
		share = math.Abs(most) / all
	}
	return w, share
}

// inPlane is the share of the greatest movement below which a plate does not swing square to itself:
// it bends or stretches in its own plane, and sand would not gather.
const inPlane = 0.2

// leastField is the share of the plate's area, and of the greatest movement, from which a field
// that swings in one sense counts.
const leastField = 0.01

// field is a part of the plate that swings in one sense.
type field struct {
	up   bool
	area float64 // share of the plate
	most float64 // greatest movement in it, 1
	edge bool    // it reaches the outline
}

// fieldsOf cuts the plate into fields along the lines of no movement, node by node: neighbours of
// one sign belong together.
func fieldsOf(m *design.Moving, w []float64) []field {
	root := make([]int32, len(w))
	for i := range root {
		root[i] = int32(i)
	}
	find := func(i int32) int32 {
		for root[i] != i {
			root[i] = root[root[i]]
			i = root[i]
		}
		return i
	}
	area, total := make([]float64, len(w)), 0.0
	for t, tri := range m.Built.Mesh.Tris {
		a := m.Built.Mesh.TriArea(int32(t))
		total += a
		for k, n := range tri {
			area[n] += a / 3
			if o := tri[(k+1)%3]; (w[n] > 0) == (w[o] > 0) {
				root[find(n)] = find(o)
			}
		}
	}
	at := map[int32]int{}
	var list []field
	index := func(i int32) int {
		r := find(i)
		k, seen := at[r]
		if !seen {
			k = len(list)
			at[r] = k
			list = append(list, field{up: w[i] > 0})
		}
		return k
	}
	for i := range w {
		f := &list[index(int32(i))]
		f.area += area[i] / total
		f.most = max(f.most, math.Abs(w[i]))
	}
	for _, n := range m.Built.Mesh.Rim {
		list[index(n)].edge = true
	}
	var kept []field
	for _, f := range list {
		if f.area > leastField && f.most > 5*leastField {
			kept = append(kept, f)
		}
	}
	return kept
}

// patternOf says in plain words how the plate swings: the trade's names where they fit, or how many
// fields there are along and across. share is how much of the plate's movement is square to it.
func patternOf(m *design.Moving, w []float64, share float64) (words string, lines [2]int) {
	if share < inPlane {
		return "in its own plane", lines
	}
	across, along := crossings(m, w)
	return named(m, w, across, along), [2]int{across, along}
}

// allInOne and patternCross are words of patterns.
const (
	allInOne     = "all in one sense"
	patternCross = "cross"
)

// named are the words of patternOf for a plate that swings square to itself.
func named(m *design.Moving, w []float64, across, along int) string {
	fields := fieldsOf(m, w)
	if m.State == design.Free {
		if name := tapped(m, w, fields, across, along); name != "" {
			return name
		}
	}
	switch n := len(fields); {
	case n <= 1:
		return allInOne
	case across == 0:
		return fmt.Sprintf("%d fields along", along+1)
	case along == 0:
		return fmt.Sprintf("%d fields across", across+1)
	default:
		return fmt.Sprintf("%d fields, up to %d across, %d along", n, across+1, along+1)
	}
}

// tapped is the trade's name for what is heard when a free plate is tapped: "twist", its corners
// against each other; "cross", both ends against both sides, where the sand lies in an X; "ring", the
// middle against ends and sides, where it lies in a ring, which may be open at the waist. "" for all
// others.
func tapped(m *design.Moving, w []float64, fields []field, across, along int) string {
	up, edge := 0, 0
	for _, f := range fields {
		if f.up {
			up++
		}
		if f.edge {
			edge++
		}
	}
	tail, neck, bass, treble := atEnds(m, w)
	middle := len(fields) - up // fields against the ends
	if !neck {
		middle = up
	}
	switch {
	case len(fields) >= 3 && across == 1 && along == 1:
		return "twist"
	case len(fields) == 2 && edge == 1, middle == 1 && tail == neck && bass == neck && treble == neck && across == 2 && along == 2:
		return "ring"
	case len(fields) <= 4 && tail == neck && bass == treble && bass != neck && across == 2 && along == 2:
		return patternCross
	}
	return ""
}

// atEnds says whether the plate goes up at its tail, neck, bass and treble ends: where the outline
// reaches farthest, in the middle of a straight end.
func atEnds(m *design.Moving, w []float64) (tail, neck, bass, treble bool) {
	const aside = 1e-3 // mm of reach that a millimetre from the middle costs
	p, rim := m.Built.Mesh.Points, m.Built.Mesh.Rim
	var pts []mesh.Point
	for _, n := range rim {
		pts = append(pts, p[n])
	}
	lo, hi := plane.Bounds(pts)
	var up [4]bool
	for k := range up {
		axis, sign := 1-k/2, 1-2*float64(1-k%2) // y twice, then x; low, high
		best := math.Inf(-1)
		for i, q := range pts {
			other := q[1-axis] - (lo[1-axis]+hi[1-axis])/2
			if reach := sign*q[axis] - aside*math.Abs(other); reach > best {
				best, up[k] = reach, w[rim[i]] > 0
			}
		}
	}
	return up[0], up[1], up[2], up[3]
}

// crossings counts the lines of no movement that a straight path meets, the most over a few paths:
// across the plate at some places along it, and along it at some places across.
func crossings(m *design.Moving, w []float64) (across, along int) {
	lo, hi := plane.Bounds(m.Built.Mesh.Points)
	for _, share := range []float64{0.25, 0.4, 0.5, 0.6, 0.75} {
		across = max(across, signChanges(m, w, 0, lo[1]+share*(hi[1]-lo[1]), [2]float64{lo[0], hi[0]}))
		along = max(along, signChanges(m, w, 1, lo[0]+share*(hi[0]-lo[0]), [2]float64{lo[1], hi[1]}))
	}
	return across, along
}

// signChanges counts the changes of sense along a line parallel to an axis; what moves less than a
// hundredth of the greatest counts for neither.
func signChanges(m *design.Moving, w []float64, axis int, at float64, span [2]float64) int {
	const steps = 160
	count, last := 0, 0.0
	for i := range steps + 1 {
		var q [2]float64
		q[axis], q[1-axis] = span[0]+(span[1]-span[0])*float64(i)/steps, at
		place, inside := placeAt(m, q)
		if !inside {
			continue
		}
		v := place.of(w)
		if math.Abs(v) < 2*leastField {
			continue
		}
		if last != 0 && (v > 0) != (last > 0) {
			count++
		}
		last = v
	}
	return count
}
