package scene

import (
	"sync"

	"archload/mesh"
	"archload/viz/scale"
)

// Before is a field of the plate as it was before a change, to be drawn as dashed lines over
// the field of now.
type Before struct {
	Mesh   *mesh.Mesh
	Values []float64 // at the mesh's nodes, in the field's unit

	lines lastLines
}

// lastLines are the lines of a field at the steps of the scale that it was drawn by last, on the skeleton it
// was drawn on: the same for every step of a drag.
type lastLines struct {
	guard sync.Mutex
	on    *Skeleton
	by    scale.Scale
	lines []levelLine
}

// levelLine is a line at a step of the legend, as far as it lies on wood.
type levelLine struct {
	step int // from the legend's lower end
	way  []spot
}

// before draws where the lines at the legend's steps lay before the change: in plan they lie
// where they lay, and on the skins of now.
func (b *build) before() {
	s := b.scene.Scale
	if b.in.Before == nil || s == nil || s.Step == 0 || b.scene.Plain {
		return
	}
	for _, l := range b.linesBefore() {
		ink := lineInk(s.Tone(float64(l.step) / float64(s.Bands())))
		ink.A = 200
		above, below := make([]vec, len(l.way)), make([]vec, len(l.way))
		for i, p := range l.way {
			above[i] = b.lifted(p)
			below[i] = plus(p.on(b.inner), -hover, unit(p.on(b.up)))
		}
		for _, run := range [2][]vec{above, below} {
			b.line(&Line{Points: run, Width: 1.3, Dash: 7, Paint: ink})
		}
	}
}

// linesBefore are the lines of the field before at the steps of the scene's scale.
func (b *build) linesBefore() []levelLine {
	f, s := b.in.Before, b.scene.Scale
	f.lines.guard.Lock()
	defer f.lines.guard.Unlock()
	if f.lines.on == b.k && f.lines.by == *s {
		return f.lines.lines
	}
	var out []levelLine
	for k := 1; k < s.Bands(); k++ {
		for _, way := range levelLines(f, s.Lo+float64(k)*s.Step) {
			for _, run := range b.onWood(way) {
				out = append(out, levelLine{k, run})
			}
		}
	}
	f.lines.on, f.lines.by, f.lines.lines = b.k, *s, out
	return out
}

// onWood is a way in plan as far as it lies on wood, in runs of two places and more.
func (b *build) onWood(way []mesh.Point) (runs [][]spot) {
	var run []spot
	flush := func() {
		if len(run) > 1 {
			runs = append(runs, run)
		}
		run = nil
	}
	for _, q := range way {
		at, inside := b.s.Top.Built.WithinOuter(q)
		if !inside {
			flush()
			continue
		}
		run = append(run, b.k.spot(at))
	}
	flush()
	return runs
}

// crossing is where a line at a step of the legend crosses an edge of a triangle: the edge's
// nodes, the lesser first.
type crossing [2]int32

// levelLines are the lines at a value, in plan, straight within a triangle.
func levelLines(f *Before, level float64) (out [][]mesh.Point) {
	order, next := crossings(f, level)
	for _, line := range chained(order, next) {
		way := make([]mesh.Point, len(line))
		for i, c := range line {
			p, q := f.Mesh.Points[c[0]], f.Mesh.Points[c[1]]
			u := (level - f.Values[c[0]]) / (f.Values[c[1]] - f.Values[c[0]])
			way[i] = mesh.Point{p[0] + u*(q[0]-p[0]), p[1] + u*(q[1]-p[1])}
		}
		out = append(out, way)
	}
	return out
}

// crossings are those of one level, each with its neighbours on the line: one where the line
// ends at the plate's edge, else two. A value on the level counts as below it.
func crossings(f *Before, level float64) (order []crossing, next map[crossing][]crossing) {
	next = map[crossing][]crossing{}
	for _, t := range f.Mesh.Tris {
		var ends []crossing
		for i := range t {
			m, n := t[i], t[(i+1)%3]
			if (f.Values[m] > level) != (f.Values[n] > level) {
				ends = append(ends, crossing{min(m, n), max(m, n)})
			}
		}
		if len(ends) == 2 {
			for i, c := range ends {
				if next[c] == nil {
					order = append(order, c)
				}
				next[c] = append(next[c], ends[1-i])
			}
		}
	}
	return order, next
}

// chained walks from crossing to crossing: first the lines that end, then the closed ones.
func chained(order []crossing, next map[crossing][]crossing) (lines [][]crossing) {
	seen := map[crossing]bool{}
	walk := func(c crossing) {
		first, line := c, []crossing{}
		for on := true; on; {
			line, seen[c], on = append(line, c), true, false
			for _, n := range next[c] {
				if !seen[n] {
					c, on = n, true
					break
				}
			}
		}
		if len(line) > 2 && len(next[first]) == 2 {
			line = append(line, first)
		}
		lines = append(lines, line)
	}
	for _, ends := range []int{1, 2} {
		for _, c := range order {
			if len(next[c]) == ends && !seen[c] {
				walk(c)
			}
		}
	}
	return lines
}
