package sheet

import (
	"fmt"
	"math"

	"archload/mesh"
	"archload/viz/canvas"
)

// drawTile draws sheet i: its cell with a lap all round, the joints with
// register marks in the cell's corners, and the strip at the foot.
func (s *Sheet) drawTile(p *canvas.PDFPage, t *tiling, i int) {
	g := canvas.NewBare(p, p.W, p.H)
	col, row := t.cells[i][0], t.cells[i][1]
	lo, hi := t.box(col, row)
	f := canvas.Frame{Scale: perMM}
	f.Origin = canvas.At((sheetEdge+sheetLap-lo[0])*perMM, (sheetEdge+sheetFoot+sheetLap-lo[1])*perMM)
	wlo, whi := mesh.Point{lo[0] - sheetLap, lo[1] - sheetLap}, mesh.Point{hi[0] + sheetLap, hi[1] + sheetLap}
	a, b := f.At(wlo), f.At(whi)
	p.Clip(canvas.Box(a.X, a.Y, b.X, b.Y))
	t.d.paint(g, f, wlo, whi)
	p.Unclip()
	if len(t.cells) > 1 {
		t.joints(g, f, col, row)
		t.registers(g, f, lo, hi)
	}
	s.foot(g, t, i)
}

// joints draws the edges of a cell that has a neighbour, with the neighbour's
// number in the lap.
func (t *tiling) joints(g *canvas.Page, f canvas.Frame, col, row int) {
	lo, hi := t.box(col, row)
	by := canvas.Pen{Width: 0.4, Color: canvas.SoftInk(), Dash: []float64{2, 3}}
	for _, e := range []struct {
		col, row int
		a, b     mesh.Point
		out      mesh.Point // from the edge into the lap, mm
		angle    float64
	}{
		{col - 1, row, mesh.Point{lo[0], lo[1]}, mesh.Point{lo[0], hi[1]}, mesh.Point{-1.2, 0}, math.Pi / 2},
		{col + 1, row, mesh.Point{hi[0], lo[1]}, mesh.Point{hi[0], hi[1]}, mesh.Point{3.4, 0}, math.Pi / 2},
		{col, row - 1, mesh.Point{lo[0], lo[1]}, mesh.Point{hi[0], lo[1]}, mesh.Point{0, -3.4}, 0},
		{col, row + 1, mesh.Point{lo[0], hi[1]}, mesh.Point{hi[0], hi[1]}, mesh.Point{0, 1.2}, 0},
	} {
		n := t.number(e.col, e.row)
		if n == 0 {
			continue
		}
		g.Stroke([][]canvas.Point{{f.At(e.a), f.At(e.b)}}, false, by)
		at := mesh.Point{e.a[0] + 0.25*(e.b[0]-e.a[0]) + e.out[0], e.a[1] + 0.25*(e.b[1]-e.a[1]) + e.out[1]}
		g.Turned(f.At(at), fmt.Sprintf("joins sheet %d", n), canvas.Small(), e.angle)
	}
}

// registers draws a cross in a circle on every corner of the cell: laid over
// the neighbour's they bring the sheets into place.
func (t *tiling) registers(g *canvas.Page, f canvas.Frame, lo, hi mesh.Point) {
	const arm, r = 4.2, 2.2 // mm
	by := canvas.Pen{Width: 0.4, Color: canvas.Ink()}
	for _, c := range []mesh.Point{lo, {hi[0], lo[1]}, hi, {lo[0], hi[1]}} {
		g.Line(f.At(mesh.Point{c[0] - arm, c[1]}), f.At(mesh.Point{c[0] + arm, c[1]}), by)
		g.Line(f.At(mesh.Point{c[0], c[1] - arm}), f.At(mesh.Point{c[0], c[1] + arm}), by)
		g.Stroke([][]canvas.Point{canvas.Disc(f.At(c), r*perMM)}, true, by)
	}
}

// foot draws the strip below the drawing: a bar of 100 mm, what the sheet is,
// and where it belongs.
func (s *Sheet) foot(g *canvas.Page, t *tiling, i int) {
	left, low := sheetEdge*perMM, sheetEdge*perMM
	bar(g, canvas.At(left+2*perMM, low+4*perMM))
	key := t.key(g, i)
	x := left + 108*perMM
	room := key - x - 2*perMM
	words := []string{fmt.Sprintf("sheet %d of %d", i+1, len(t.cells)), "scale 1 : 1, print at 100 %", s.Title, s.subject}
	if len(t.cells) > 1 {
		words[0] += fmt.Sprintf(", row %d, column %d", t.rows-t.cells[i][1], t.cells[i][0]+1)
	}
	y := low + 10.4*perMM
	for k, w := range words {
		st := canvas.Small()
		if k == 0 {
			st = canvas.Style{Size: canvas.Smallest, Face: canvas.Bold, Color: canvas.Ink()}
		}
		g.Text(canvas.At(x, y), g.Shorten(canvas.Clean(w), st, room), st, 0)
		y -= 3.5 * perMM
	}
}

// bar draws a scale of 100 mm that starts at at.
func bar(g *canvas.Page, at canvas.Point) {
	const h = 2 * perMM
	for k := range 10 {
		x := at.X + float64(k)*10*perMM
		cell := canvas.Loop(canvas.Box(x, at.Y, x+10*perMM, at.Y+h))
		if k%2 == 0 {
			g.Fill([][]canvas.Point{cell}, canvas.Ink())
		}
		g.Stroke([][]canvas.Point{cell}, true, canvas.Pen{Width: 0.4, Color: canvas.Ink()})
	}
	for k := 0; k <= 100; k += 50 {
		g.Text(canvas.At(at.X+float64(k)*perMM, at.Y-3.2*perMM), []string{"0", "50", "100 mm"}[k/50], canvas.Small(), []float64{0, 0.5, 1}[k/50])
	}
}

// key draws the plan of the sheets at the right end of the strip and returns
// its left edge, points.
func (t *tiling) key(g *canvas.Page, i int) float64 {
	right, low := g.W-sheetEdge*perMM, float64(sheetEdge)*perMM
	if len(t.cells) == 1 {
		return right
	}
	u := math.Min((sheetFoot-3)*perMM/float64(t.rows)/t.cell[1], 24*perMM/float64(t.cols)/t.cell[0])
	w, h := u*t.cell[0], u*t.cell[1]
	left := right - w*float64(t.cols)
	for k, c := range t.cells {
		x, y := left+w*float64(c[0]), low+h*float64(c[1])
		cell := canvas.Loop(canvas.Box(x, y, x+w, y+h))
		if k == i {
			g.Fill([][]canvas.Point{cell}, canvas.HairGrey())
		}
		g.Stroke([][]canvas.Point{cell}, true, canvas.Pen{Width: 0.4, Color: canvas.SoftInk()})
	}
	return left
}
