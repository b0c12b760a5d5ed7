package drawing

import (
	"fmt"

	"archload/mesh"
)

// Sheet is a drawing at true size, placed on the plate: closed lines, called
// by the names of elements, layers or groups.
type Sheet interface {
	// Rings returns the closed lines of the thing of this name and of all
	// within it. The error is a *Fault if it lies in the drawing, a
	// *EmptyError if there is no line, else it is about the name and
	// does not repeat it.
	Rings(name string) ([]Ring, error)
	Metric() bool   // a height without its unit is in mm
	Mirrored() bool // shows the top from inside, by its marks
	Line() int      // of the file, where the drawing begins; 1-based
}

// Ring is a closed line on the plate.
type Ring struct {
	Points []mesh.Point // mm
	Corner []bool       // by point
	Labels []Label      // its own, then those of the groups around it, outward
}

// Label is what a thing in a drawing is called.
type Label struct {
	Line  int      // of the file; 1-based
	Shown string   // for messages
	Names []string // its names, the most telling one first
}

// Fault is a fault at one thing in a drawing.
type Fault struct {
	Line int    // of the file; 1-based
	Name string // of the thing, or ""
	Msg  string
}

func (f *Fault) Error() string { return f.Msg }

// Fault is a fault at the thing of this label.
func (l *Label) Fault(format string, args ...any) error {
	return &Fault{l.Line, l.Shown, fmt.Sprintf(format, args...)}
}

// Fault is a fault at the line itself.
func (r *Ring) Fault(format string, args ...any) error { return r.Labels[0].Fault(format, args...) }

// Selected is what was asked for by its name: the line or the outermost group.
func (r *Ring) Selected() *Label { return &r.Labels[len(r.Labels)-1] }

// EmptyError tells that a thing in a drawing holds no closed line.
type EmptyError struct{ Label Label }

func (e *EmptyError) Error() string { return "no closed line in " + e.Label.Shown }
