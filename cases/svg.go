package cases

import (
	"bytes"
	"errors"
	"fmt"
	"path"
	"strings"

	"archload/mesh"
)

// A drawing is an SVG file from which outline, holes and contour lines are
// read, traced in a drawing program at true size:
//
//	outline  = "top.svg#outline"      the element, layer or group of this name
//	contours = "top.svg#contours"     every closed line of this layer or group
//
// A name is an element's label or its id. The page's size must be physical
// (mm, cm, in, pt, pc; pixels are refused) and fit its viewBox; transforms of
// the element and of all groups around it apply.
//
// Marks, elements or groups of these names wherever they are, place the
// drawing on the plate by the middles of what they hold:
//
//	origin          x = y = 0: on the centre line, at the bridge's place
//	neck or tail    which way the neck lies
//	bass or treble  which side is which
//
// So a drawing may stand upright, lie, or hang upside down, and may show the
// top from outside or, mirrored, from inside. The neck must lie along one of
// the page's edges. A line named "ruler 300 mm" is optional: a drawing in
// which it is not as long is refused.
//
// Heights are read from names: "arch 12 mm", "contour_12", "apex 22", "spot
// 4.5 b". That is one of the words arch, contour, height, level, spot, apex,
// thickness (or none), then the number, its unit (or none: mm), and a suffix
// that begins with a letter to tell names apart. What has no height in its own
// name takes that of the nearest group around it. A closed shape of at most 5
// mm across is a spot height at its middle; a larger one is a line of equal
// height.
//
// The line itself counts, not its stroke's width. Straight lines are straight
// and corners sharp, except that a chain of straight lines which turns by less
// than 20 degrees from one to the next, and would bulge by less than 1 mm, is
// taken as points of a smooth curve. Hidden things are not read; clones,
// nested drawings and transforms in style sheets are refused.
//
// Source of the format: W3C, Scalable Vector Graphics 1.1 (second edition).
type drawing struct {
	src      *source
	root     *svgElement
	toPage   affine // from user units to mm on the page, x to the right, y down
	inch     bool   // the page's size is stated in inches
	origin   mesh.Point
	right    mesh.Point // unit vector to the treble side on the page
	up       mesh.Point // unit vector to the neck on the page
	mirrored bool
}

// isDrawing parts "top.svg#outline" into file and name; ok is false for the
// name of another kind of file.
func isDrawing(value string) (file, name string, ok bool) {
	file, name, _ = strings.Cut(value, "#")
	ext := strings.ToLower(path.Ext(file))
	return file, name, ext == ".svg" || ext == ".svgz"
}

// svgFault is a fault at an element of a drawing.
type svgFault struct {
	line int
	name string // of the element, or ""
	msg  string
}

func (f *svgFault) Error() string { return f.msg }

// faultf is a fault at an element.
func (e *svgElement) faultf(format string, args ...any) error {
	return &svgFault{e.line, e.shown(), fmt.Sprintf(format, args...)}
}

// openDrawing reads a drawing beside the file of n, once; nil if it is faulty.
func (d *decoder) openDrawing(n *node, key, name string) *drawing {
	file, label := n.src.beside(name)
	if w, ok := d.drawings[label]; ok {
		d.spoilIf(w == nil, key)
		return w
	}
	if d.drawings == nil {
		d.drawings = map[string]*drawing{}
	}
	d.drawings[label] = nil
	src, err := openSource(n.src.fsys, file, label)
	if err != nil {
		d.fault(n, key, "%q: %w", name, err)
		return nil
	}
	d.rep.order = append(d.rep.order, src)
	w, err := readDrawing(src)
	if err != nil {
		d.drawingFault(src, key, err)
		return nil
	}
	if w.mirrored {
		d.rep.notes = append(d.rep.notes, &FileError{File: label, Line: w.root.line,
			Err: errors.New("the drawing shows the top from inside (by its marks, treble lies to the left of the neck); it is read mirrored")})
	}
	d.drawings[label] = w
	return w
}

// drawingFault records a fault of a drawing.
func (d *decoder) drawingFault(src *source, key string, err error) {
	at, name := place{src, 1}, ""
	var f *svgFault
	if errors.As(err, &f) {
		at.line, name = f.line, f.name
	}
	d.rep.add(at, name, err)
	d.spoilIf(true, key)
}

// readDrawing reads the elements, the page's size and the marks.
func readDrawing(src *source) (*drawing, error) {
	if bytes.HasPrefix(src.data, []byte{0x1f, 0x8b}) {
		return nil, &svgFault{1, "", "a compressed drawing; want it saved as plain SVG"}
	}
	root, err := parseSVG(src.data)
	if err != nil {
		return nil, err
	}
	w := &drawing{src: src, root: root}
	if err := w.readPage(); err != nil {
		return nil, err
	}
	if err := w.readMarks(); err != nil {
		return nil, err
	}
	return w, w.checkRuler()
}

// fromPage turns a place on the page into one on the plate, mm.
func (w *drawing) fromPage(p mesh.Point) mesh.Point {
	x, y := p[0]-w.origin[0], p[1]-w.origin[1]
	return mesh.Point{x*w.right[0] + y*w.right[1] + 0, x*w.up[0] + y*w.up[1] + 0}
}
