package sheet

import (
	"math"

	"archload/mesh"
	"archload/viz/canvas"
)

// Paper is what the sheets are printed on.
type Paper string

// The papers a sheet can be printed on.
const (
	A4     Paper = "a4"     // 210 x 297 mm
	Letter Paper = "letter" // 8.5 x 11 in
	Roll   Paper = "roll"   // one page as large as the drawing
)

// Papers lists the papers.
func Papers() []Paper { return []Paper{A4, Letter, Roll} }

// size is the paper's width and height upright, mm; 0, 0 for a roll.
func (p Paper) size() (w, h float64) {
	switch p {
	case A4:
		return 210, 297
	case Letter:
		return 8.5 * 25.4, 11 * 25.4
	}
	return 0, 0
}

// Sizes of a sheet, mm.
const (
	sheetEdge   = 8   // white edge, more than most printers need
	sheetFoot   = 15  // strip below the drawing: bar, words, key
	sheetLap    = 5   // that a sheet shows beyond its own part, on every side
	sheetSquare = 100 // the check square
	sheetGap    = 6   // between parts of a drawing
)

// Sheet is one full-scale drawing of a design.
type Sheet struct {
	Name  string // of its file: "plan"
	Title string // "plan with the contours of the arch"
	Paper Paper

	Warnings []string // what deserves a second look before wood is cut; printed below the drawing too

	subject string   // the case's title
	notes   []string // set inside the check square
	build   func(fit fitter) *fullScale
}

// hairPad is the room around the whole, mm, so that no line is halved at its edge.
const hairPad = 1.0

// fitter moves a part of height h that would begin at y up to where no joint
// between sheets crosses it, mm.
type fitter func(y, h float64) float64

// tiling is a drawing divided into cells.
type tiling struct {
	d          *fullScale
	cell       mesh.Point // mm
	cols, rows int
	cells      [][2]int // those with something to show: column, row from below; in the order of the sheets
}

// whole lays the drawing out in one piece, on the least paper.
func (s *Sheet) whole() *fullScale {
	free := func(y, _ float64) float64 { return y }
	var best *fullScale
	for _, at := range squarePlaces() {
		if d := s.compose(mesh.Point{}, at, free, hairPad); d != nil && (best == nil || d.hi[0]*d.hi[1] < best.hi[0]*best.hi[1]) {
			best = d
		}
	}
	return best
}

// squarePlace is where the check square stands.
type squarePlace int

const (
	within squarePlace = iota // in an empty part of the drawing
	beside                    // to the right of it
	below
)

func squarePlaces() []squarePlace { return []squarePlace{within, beside, below} }

// compose puts the check square and the drawing together, the whole with its
// lower left corner in the origin; cell 0, 0 means one piece. It is nil if the
// drawing has no room within; pad is the room around the whole, mm.
func (s *Sheet) compose(cell mesh.Point, place squarePlace, fit fitter, pad float64) *fullScale {
	out := newFullScale()
	base := pad
	if place == below {
		base += sheetSquare + sheetGap
	}
	at := mesh.Point{pad, base}
	d := s.build(func(y, h float64) float64 { return fit(y+base, h) - base })
	for k := range 2 {
		at[k] -= d.lo[k]
	}
	out.include(d, at)
	square := mesh.Point{pad, pad}
	switch place {
	case within:
		room, ok := out.room(cell, sheetSquare+2)
		if !ok {
			return nil
		}
		square = mesh.Point{room[0] + 1, room[1] + 1}
	case beside:
		square[0] += d.hi[0] - d.lo[0] + sheetGap
		if end := nextJoint(square[0], cell[0]); cell[0] > 0 && square[0]+sheetSquare > end {
			square[0] = end + 1
		}
	}
	out.include(s.square(), square)
	out.lo = mesh.Point{}
	out.hi = mesh.Point{out.hi[0] + pad, out.hi[1] + pad}
	return out
}

// room looks for an empty square of the given side outside the drawing's
// widest line: in one of the cells that the drawing needs anyway, or anywhere
// in its box if there are no cells.
func (d *fullScale) room(cell mesh.Point, side float64) (mesh.Point, bool) {
	t := tiling{d: d, cell: cell, cells: [][2]int{{0, 0}}, cols: 1, rows: 1}
	if cell[0] > 0 {
		t.cells = nil
		t.divide()
	}
	shape := d.widest()
	for _, c := range t.cells {
		lo, hi := mesh.Point{}, d.hi
		if cell[0] > 0 {
			lo, hi = t.seen(c[0], c[1])
		}
		for y := hi[1] - side; y >= lo[1]; y -= 4 {
			for x := hi[0] - side; x >= lo[0]; x -= 4 {
				a, b := mesh.Point{x, y}, mesh.Point{x + side, y + side}
				if !d.crosses(a, b) && !insideLoop(shape, mesh.Point{x + side/2, y + side/2}) {
					return a, true
				}
			}
		}
	}
	return mesh.Point{}, false
}

// widest is the closed line whose box is largest.
func (d *fullScale) widest() []mesh.Point {
	var best []mesh.Point
	most := 0.0
	for _, it := range d.items {
		if a := (it.hi[0] - it.lo[0]) * (it.hi[1] - it.lo[1]); it.closed && a > most {
			best, most = it.line, a
		}
	}
	return best
}

// insideLoop counts crossings to the right of p.
func insideLoop(l []mesh.Point, p mesh.Point) bool {
	in := false
	for i, a := range l {
		b := l[(i+1)%len(l)]
		if (a[1] > p[1]) != (b[1] > p[1]) && p[0] < a[0]+(p[1]-a[1])/(b[1]-a[1])*(b[0]-a[0]) {
			in = !in
		}
	}
	return in
}

// square is the check square with what there is to say of the sheet in it.
func (s *Sheet) square() *fullScale {
	d := newFullScale()
	const a = sheetSquare
	d.stroke([]mesh.Point{{0, 0}, {a, 0}, {a, a}, {0, a}}, true, canvas.Firm())
	for x := 10.0; x < a; x += 10 {
		for _, l := range [][2]mesh.Point{{{x, 0}, {x, 2}}, {{x, a}, {x, a - 2}}, {{0, x}, {2, x}}, {{a, x}, {a - 2, x}}} {
			d.straight(l[0], l[1], canvas.Hair())
		}
	}
	y := a - 4.0
	say := func(text string, st canvas.Style, lead float64) {
		for _, l := range d.rule.Wrap(canvas.Clean(text), st, (a-10)*perMM) {
			y -= lead
			d.words(mesh.Point{5, y}, l, st, 0)
		}
	}
	say(s.subject, canvas.Style{Size: 11, Face: canvas.Bold, Color: canvas.Ink()}, 4.8)
	y--
	say(s.Title, canvas.Style{Size: 10, Face: canvas.Bold, Color: canvas.Rust()}, 4.4)
	for _, n := range s.notes {
		y -= 1.5
		say(n, canvas.Label(), 3.6)
	}
	y = math.Min(y-1.5, 20)
	say("True size: this square must measure 100 mm each way. Print at 100 %, without fitting to the page.", canvas.Label(), 3.6)
	return d
}

// tile divides the drawing for its paper in the way that takes the fewest
// sheets.
func (s *Sheet) tile() (best tiling, paper mesh.Point) {
	const apart = 2 // mm between a joint and what it must not cross
	w, h := s.Paper.size()
	for _, size := range []mesh.Point{{w, h}, {h, w}} {
		cell := mesh.Point{size[0] - 2*sheetEdge - 2*sheetLap, size[1] - 2*sheetEdge - 2*sheetLap - sheetFoot}
		fit := func(y, h float64) float64 {
			if joint := nextJoint(y, cell[1]); h+2*apart <= cell[1] && y+h+apart > joint {
				return joint + apart
			}
			return y
		}
		for _, at := range squarePlaces() {
			t := s.divided(cell, at, fit)
			if t.d != nil && (best.d == nil || len(t.cells) < len(best.cells)) {
				best, paper = t, size
			}
		}
	}
	return best, paper
}

// divided is the drawing divided into cells with its square at a place; without a drawing
// if that has no room.
func (s *Sheet) divided(cell mesh.Point, at squarePlace, fit fitter) tiling {
	t := tiling{cell: cell, d: s.compose(cell, at, fit, hairPad)}
	if t.d == nil {
		return t
	}
	if t.divide(); len(t.cells) > 1 { // joined sheets have marks in their corners: nothing lies in the laps outside
		t = tiling{cell: cell, d: s.compose(cell, at, fit, sheetLap+2)}
		if t.d != nil {
			t.divide()
		}
	}
	return t
}

// nextJoint is the first joint between cells of the given size at or beyond v,
// mm. The first cell shows its lap as well, so the joints lie a lap further out
// than whole cells.
func nextJoint(v, cell float64) float64 {
	return sheetLap + max(1, math.Ceil((v-sheetLap)/cell))*cell
}

// divide lists the cells that show something, from the top left.
func (t *tiling) divide() {
	count := func(k int) int { return max(1, int(math.Ceil((t.d.hi[k]-2*sheetLap)/t.cell[k]-1e-9))) }
	t.cols, t.rows = count(0), count(1)
	for row := t.rows - 1; row >= 0; row-- {
		for col := range t.cols {
			if lo, hi := t.seen(col, row); t.d.crosses(lo, hi) {
				t.cells = append(t.cells, [2]int{col, row})
			}
		}
	}
}

// seen is a cell with those of its laps that lie at the edge of the whole:
// nobody else shows what is in them.
func (t *tiling) seen(col, row int) (lo, hi mesh.Point) {
	lo, hi = t.box(col, row)
	for k, i := range [2]int{col, row} {
		if i == 0 {
			lo[k] -= sheetLap
		}
		if i == [2]int{t.cols, t.rows}[k]-1 {
			hi[k] += sheetLap
		}
	}
	return lo, hi
}

// box is a cell without its laps.
func (t *tiling) box(col, row int) (lo, hi mesh.Point) {
	lo = mesh.Point{sheetLap + float64(col)*t.cell[0], sheetLap + float64(row)*t.cell[1]}
	return lo, mesh.Point{lo[0] + t.cell[0], lo[1] + t.cell[1]}
}

// number returns the sheet that shows a cell, from 1; 0: it is left out.
func (t *tiling) number(col, row int) int {
	for i, c := range t.cells {
		if c == [2]int{col, row} {
			return i + 1
		}
	}
	return 0
}
