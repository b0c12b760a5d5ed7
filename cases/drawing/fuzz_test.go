package drawing

import (
	"errors"
	"io/fs"
	"math"
	"os"
	"testing"

	"archload/mesh/plane"
)

// FuzzSVG wants faults with a place, or lines that can be drawn, from any
// drawing. It asks for what a case asks for, without the case, which takes a
// hundred times as long to read.
func FuzzSVG(f *testing.F) {
	dir := os.DirFS("../testdata/bad")
	names, err := fs.Glob(dir, "*.svg")
	if err != nil || len(names) < 12 {
		f.Fatalf("%d drawings, %v, want 12 at least", len(names), err)
	}
	for _, name := range names {
		data, err := fs.ReadFile(dir, name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Add([]byte(`<svg xmlns="http://www.w3.org/2000/svg" width="600mm" height="600mm" viewBox="0 0 600 600"><circle id="origin" cx="300" cy="300" r="1"/>` +
		`<circle id="neck" cx="300" cy="20" r="1"/><circle id="treble" cx="500" cy="300" r="1"/>` +
		`<rect id="outline" width="200" height="200" x="1" y="1" rx="9" transform="skewX(3)"/><g id="contours"><circle id="arch_9" r="50"/></g></svg>`))
	f.Fuzz(func(t *testing.T, svg []byte) {
		sheet, err := Read("drawing.svg", svg)
		if err != nil {
			checkFault(t, err)
			return
		}
		if sheet.Line() < 1 {
			t.Errorf("the drawing begins on line %d", sheet.Line())
		}
		for _, name := range []string{"outline", "contours"} {
			rings, err := sheet.Rings(name)
			checkFault(t, err)
			for _, r := range rings {
				checkRing(t, r)
			}
			if err == nil {
				_, err = Levels(rings, sheet.Metric())
				checkFault(t, err)
			}
		}
	})
}

// checkFault wants a fault in a drawing to lie on one of its lines. What is
// wrong with a name has no line.
func checkFault(t *testing.T, err error) {
	var inside *Fault
	var none *EmptyError
	switch {
	case errors.As(err, &inside) && inside.Line < 1, errors.As(err, &none) && none.Label.Line < 1:
		t.Errorf("error %v carries no place", err)
	case err != nil && err.Error() == "":
		t.Errorf("error %#v says nothing", err)
	}
}

// checkRing wants a closed line to have finite points and a place, and a curve
// through it or a reason why there is none.
func checkRing(t *testing.T, r Ring) {
	if len(r.Labels) == 0 || r.Selected().Line < 1 || len(r.Corner) != len(r.Points) {
		t.Errorf("a line of %d points, %d corners and labels %v", len(r.Points), len(r.Corner), r.Labels)
	}
	for _, p := range r.Points {
		if s := p[0] + p[1]; math.IsNaN(s) || math.IsInf(s, 0) {
			t.Errorf("point %v", p)
		}
	}
	if c, err := plane.NewCurve(r.Points, r.Corner); (c == nil) == (err == nil) {
		t.Errorf("curve %v, error %v", c, err)
	}
}
