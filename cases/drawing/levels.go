package drawing

import (
	"errors"
	"fmt"

	"archload/cases/tree"
	"archload/mesh"
	"archload/mesh/plane"
)

// Lines of equal height in a drawing.
const (
	spotSize    = 5.0 // mm: a closed shape no larger is a spot height
	contourStep = 5.0 // mm between the points read off a line
	mostLevels  = 2000
	mostNested  = 2 // lines of one height inside each other: the two flanks of a trough
)

// Level is a line of equal height, or a spot of one point.
type Level struct {
	Line   int    // of the file, where it is drawn
	Name   string // told apart from other lines of the same name
	Height float64
	Points []mesh.Point // mm

	ring  *Ring
	curve *plane.Curve // nil for a spot
}

// Levels reads the heights of closed lines from their names and the points off
// each line. metric says that a number without its unit is in mm.
func Levels(rings []Ring, metric bool) ([]Level, error) {
	if len(rings) > mostLevels {
		return nil, rings[0].Selected().Fault("want at most %d lines and spots, found %d", mostLevels, len(rings))
	}
	var out []Level
	taken := map[string]int{}
	for i := range rings {
		r := &rings[i]
		l := Level{Line: r.Labels[0].Line, Name: r.Labels[0].Shown, ring: r}
		var err error
		if l.Height, err = r.height(metric); err != nil {
			return nil, err
		}
		if taken[l.Name]++; taken[l.Name] > 1 {
			l.Name = fmt.Sprintf("%s (%d)", l.Name, taken[l.Name])
		}
		if err := l.lay(r); err != nil {
			return nil, err
		}
		out = append(out, l)
	}
	return out, checkNesting(out)
}

// lay reads the points off a ring: its middle if it is small, else evenly.
func (l *Level) lay(r *Ring) error {
	lo, hi := plane.Bounds(r.Points)
	if max(hi[0]-lo[0], hi[1]-lo[1]) <= spotSize {
		l.Points = []mesh.Point{{(lo[0] + hi[0]) / 2, (lo[1] + hi[1]) / 2}}
		return nil
	}
	curve, err := plane.NewCurve(r.Points, r.Corner)
	var ce *plane.CurveError
	switch {
	case errors.As(err, &ce) && ce.Point >= 0:
		return r.Fault("at %s: %s", tree.Spot(ce.At), ce.Msg)
	case err != nil:
		return r.Fault("%v", err)
	}
	l.curve = curve
	l.Points = plane.Evenly(curve.Polyline(0.01), contourStep)
	return nil
}

// checkNesting refuses a nest of lines of one height, which are lines whose
// own heights were not read: at most the two flanks of a trough lie so.
func checkNesting(lines []Level) error {
	for i, l := range lines {
		around := 0
		for k, o := range lines {
			if k != i && l.curve != nil && o.curve != nil && o.Height == l.Height && o.curve.Contains(l.Points[0]) {
				around++
			}
		}
		if around >= mostNested {
			return l.ring.Fault("lies inside %d other lines of the same height of %g mm; want each line's own height in its name", around, l.Height)
		}
	}
	return nil
}
