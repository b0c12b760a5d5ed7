package sheet

import (
	"bufio"
	"fmt"
	"io"

	"archload/mesh"
	"archload/viz/canvas"
)

// Formats lists what Sheet.Write can write.
func (s *Sheet) Formats() []string { return []string{"svg", "pdf"} }

// Write writes the sheet in true size: "svg" in one piece, "pdf" on its paper,
// tiled with laps and register marks where it is larger.
func (s *Sheet) Write(w io.Writer, format string) error {
	switch format {
	case "svg":
		return s.writeSVG(w)
	case "pdf":
		return s.writePDF(w)
	}
	return fmt.Errorf("sheet format %q: want one of %q", format, s.Formats())
}

func (s *Sheet) writeSVG(w io.Writer) error {
	d := s.whole()
	b := bufio.NewWriter(w)
	pw, ph := (d.hi[0]+2*sheetEdge)*perMM, (d.hi[1]+2*sheetEdge)*perMM
	c := canvas.NewSVG(b, pw, ph, s.subject+": "+s.Title)
	g := canvas.NewBare(c, pw, ph)
	d.paint(g, canvas.Frame{Scale: perMM, Origin: canvas.At(sheetEdge*perMM, sheetEdge*perMM)}, d.lo, d.hi)
	c.Close()
	return b.Flush()
}

func (s *Sheet) writePDF(w io.Writer) error {
	var t tiling
	var paper mesh.Point
	if s.Paper == Roll {
		t = tiling{d: s.whole(), cols: 1, rows: 1, cells: [][2]int{{0, 0}}}
		t.cell = mesh.Point{t.d.hi[0] - 2*sheetLap, t.d.hi[1] - 2*sheetLap}
		paper = mesh.Point{t.cell[0] + 2*sheetEdge + 2*sheetLap, t.cell[1] + 2*sheetEdge + 2*sheetLap + sheetFoot}
	} else {
		t, paper = s.tile()
	}
	var pages []*canvas.PDFPage
	for i := range t.cells {
		p := canvas.NewPDFPage(paper[0]*perMM, paper[1]*perMM)
		s.drawTile(p, &t, i)
		pages = append(pages, p)
	}
	return canvas.WritePDF(w, s.subject+": "+s.Title, pages)
}
