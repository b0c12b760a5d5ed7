package drawing

import (
	"archload/mesh"
)

// An svgSheet is an SVG file from which outline, holes and contour lines are
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
type svgSheet struct {
	root     *svgElement
	toPage   affine // from user units to mm on the page, x to the right, y down
	inch     bool   // the page's size is stated in inches
	origin   mesh.Point
	right    mesh.Point // unit vector to the treble side on the page
	up       mesh.Point // unit vector to the neck on the page
	mirrored bool
}

// fromPage turns a place on the page into one on the plate, mm.
func (w *svgSheet) fromPage(p mesh.Point) mesh.Point {
	x, y := p[0]-w.origin[0], p[1]-w.origin[1]
	return mesh.Point{x*w.right[0] + y*w.right[1] + 0, x*w.up[0] + y*w.up[1] + 0}
}

// Line is where the drawing begins in its file.
func (w *svgSheet) Line() int { return w.root.line }

// Metric tells whether a height without its unit is in mm: not if the page is
// measured in inches.
func (w *svgSheet) Metric() bool { return !w.inch }

// Mirrored tells whether the marks say that the top is seen from inside.
func (w *svgSheet) Mirrored() bool { return w.mirrored }
