package tool

import (
	"fmt"
	"math"

	"archload/cases"
	"archload/cases/tree"
	"archload/mesh"
)

// Grip is a place of a design that the hand can take in the picture and move in plan.
type Grip struct {
	ID    string // "brace[1].line 0"
	Name  string // "bass bar, neck end"
	At    mesh.Point
	Outer bool         // it lies on the outer face, else on the inner one
	Line  []mesh.Point // the bar that it belongs to, mm; nil: none
	Along []bool       // which points of Line go along
	Lifts bool         // it is no place that moves: dragged up and down it makes a number greater and smaller
	Now   float64      // that number, mm
	// Set is the keys by which it lies so many mm to the treble and to the neck of At; the second is what is added to Now.
	Set func(by mesh.Point) []tree.KeyValue
}

// Grips lists them: the ends and the middle of each bar that is glued in, the posts, and the
// apex, which lies where it is told.
func Grips(c *cases.Case, apex mesh.Point) []Grip {
	var out []Grip
	for i := range c.Braces {
		if c.Braces[i].Fitted && len(c.Braces[i].Line) > 1 {
			out = append(out, barGrips(&c.Braces[i], i)...)
		}
	}
	for i := range c.Posts {
		at, key := c.Posts[i].At, fmt.Sprintf("post[%d].at", i+1)
		out = append(out, Grip{ID: key, Name: c.Posts[i].Name, At: at, Set: func(by mesh.Point) []tree.KeyValue {
			return []tree.KeyValue{place(key, moved(at, by))}
		}})
	}
	shift := c.Plate.Arch.ApexShift
	return append(out, Grip{ID: "plate.arch.apex_shift", Name: "apex of the arch", At: apex, Outer: true, Set: func(by mesh.Point) []tree.KeyValue {
		return []tree.KeyValue{place("plate.arch.apex_shift", moved(shift, by))}
	}})
}

// barGrips are the ends of bar i and its middle, by which all of it moves.
func barGrips(b *cases.Brace, i int) []Grip {
	key, n := fmt.Sprintf("brace[%d].line", i+1), len(b.Line)
	first, last := b.Line[0], b.Line[n-1]
	ends := [2]string{"tail end", "neck end"}
	low, high := first[1], last[1]
	if math.Abs(last[0]-first[0]) > math.Abs(last[1]-first[1]) { // it lies across
		ends, low, high = [2]string{"bass end", "treble end"}, first[0], last[0]
	}
	if low > high {
		ends[0], ends[1] = ends[1], ends[0]
	}
	grip := func(id, name string, at mesh.Point, along func(k int) bool) Grip {
		g := Grip{ID: key + " " + id, Name: name, At: at, Line: b.Line, Along: make([]bool, n)}
		for k := range g.Along {
			g.Along[k] = along(k)
		}
		g.Set = func(by mesh.Point) []tree.KeyValue { return []tree.KeyValue{lined(key, g.moved(by))} }
		return g
	}
	return []Grip{
		grip("0", b.Name+", "+ends[0], first, func(k int) bool { return k == 0 }),
		grip("1", b.Name+", "+ends[1], last, func(k int) bool { return k == n-1 }),
		grip("all", b.Name, halfway(b.Line), func(int) bool { return true }),
	}
}

// moved is the grip's line with what goes along moved.
func (g *Grip) moved(by mesh.Point) []mesh.Point {
	out := make([]mesh.Point, len(g.Line))
	for k, p := range g.Line {
		if out[k] = p; g.Along[k] {
			out[k] = moved(p, by)
		}
	}
	return out
}

func moved(p, by mesh.Point) mesh.Point {
	return mesh.Point{rounded(p[0] + by[0]), rounded(p[1] + by[1])}
}

// halfway is the place in the middle of a line's length, mm.
func halfway(line []mesh.Point) mesh.Point {
	long := func(k int) float64 { return math.Hypot(line[k+1][0]-line[k][0], line[k+1][1]-line[k][1]) }
	half := 0.0
	for k := range len(line) - 1 {
		half += long(k) / 2
	}
	for k := range len(line) - 1 {
		l := long(k)
		if half <= l && l > 0 {
			u := half / l
			return mesh.Point{line[k][0] + u*(line[k+1][0]-line[k][0]), line[k][1] + u*(line[k+1][1]-line[k][1])}
		}
		half -= l
	}
	return line[0]
}
