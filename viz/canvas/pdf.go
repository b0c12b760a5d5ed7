package canvas

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"image"
	"io"
	"math"
	"strconv"
	"strings"
	"unicode/utf16"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// PDFPage is one page of a PDF: a vg.Canvas whose paths are written in points
// with three decimals (0.4 thousandths of a millimetre) straight in the page's
// own coordinates, so that a length can be read off the file. Text is drawn as
// outlines, as in SVG.
type PDFPage struct {
	W, H float64 // points
	body bytes.Buffer
	states
}

// NewPDFPage is an empty page of w x h points.
func NewPDFPage(w, h float64) *PDFPage {
	c := &PDFPage{W: w, H: h, states: upright()}
	vg.Initialize(c)
	return c
}

// fine writes a length in points.
func fine(v float64) string {
	s := strconv.FormatFloat(math.Round(v*1000)/1000, 'f', -1, 64)
	if s == "-0" {
		return "0"
	}
	return s
}

func fines(v ...float64) string {
	parts := make([]string, len(v))
	for i, x := range v {
		parts[i] = fine(x)
	}
	return strings.Join(parts, " ")
}

// Clip limits what is drawn to a rectangle until unclip.
func (c *PDFPage) Clip(r Rect) {
	fmt.Fprintf(&c.body, "q %s re W n\n", fines(r.X0, r.Y0, r.Width(), r.Height()))
}

// Unclip ends what Clip began.
func (c *PDFPage) Unclip() { c.body.WriteString("Q\n") }

// Stroke draws a line.
func (c *PDFPage) Stroke(p vg.Path) {
	if c.now.width <= 0 {
		return
	}
	dash := make([]float64, len(c.now.dash))
	for i, d := range c.now.dash {
		dash[i] = float64(d)
	}
	fmt.Fprintf(&c.body, "%s RG %s w 1 j [%s] %s d\n%sS\n", c.paint(), fine(c.now.width), fines(dash...), fine(float64(c.now.shift)), c.data(p))
}

// Fill fills an area.
func (c *PDFPage) Fill(p vg.Path) {
	fmt.Fprintf(&c.body, "%s rg\n%sf\n", c.paint(), c.data(p))
}

// paint is the colour laid on white paper: a sheet has nothing to shine
// through.
func (c *PDFPage) paint() string {
	k := c.now.color
	mix := func(v uint8) float64 {
		a := float64(k.A) / 255
		return (a*float64(v) + (1-a)*255) / 255
	}
	return fines(mix(k.R), mix(k.G), mix(k.B))
}

// FillString draws text as one path of glyph outlines.
func (c *PDFPage) FillString(f font.Face, p vg.Point, text string) { c.Fill(glyphPath(f, p, text)) }

// DrawImage panics: a sheet holds lines alone.
func (c *PDFPage) DrawImage(vg.Rectangle, image.Image) {
	panic("canvas: pdf: images are not drawn") // this package's own fault
}

func (c *PDFPage) data(p vg.Path) string {
	var b strings.Builder
	var x, y float64
	for _, s := range p {
		switch s.Type {
		case vg.MoveComp, vg.LineComp:
			x, y = c.place(s.Pos)
			fmt.Fprintf(&b, "%s %c\n", fines(x, y), "ml"[s.Type])
		case vg.CurveComp:
			a := c.cubic(x, y, s)
			x, y = a[4], a[5]
			fmt.Fprintf(&b, "%s c\n", fines(a[:]...))
		case vg.CloseComp:
			b.WriteString("h\n")
		default:
			panic("canvas: pdf: arcs are not drawn") // this package's own fault
		}
	}
	return b.String()
}

// cubic gives the two control points and the end of a curve that starts at
// x, y; a quadratic one is raised to a cubic.
func (c *PDFPage) cubic(x, y float64, s vg.PathComp) [6]float64 {
	ex, ey := c.place(s.Pos)
	ax, ay := c.place(s.Control[0])
	if len(s.Control) == 2 {
		bx, by := c.place(s.Control[1])
		return [6]float64{ax, ay, bx, by, ex, ey}
	}
	return [6]float64{x + 2*(ax-x)/3, y + 2*(ay-y)/3, ex + 2*(ax-ex)/3, ey + 2*(ay-ey)/3, ex, ey}
}

// WritePDF writes pages as a PDF 1.7 (ISO 32000-1). It asks the viewer not to
// fit the pages to the printer's paper.
func WritePDF(w io.Writer, title string, pages []*PDFPage) error {
	var b bytes.Buffer
	b.WriteString("%PDF-1.7\n%\xe2\xe3\xcf\xd3\n")
	var at []int
	object := func(form string, args ...any) {
		at = append(at, b.Len())
		fmt.Fprintf(&b, "%d 0 obj\n", len(at))
		fmt.Fprintf(&b, form, args...)
		b.WriteString("\nendobj\n")
	}
	kids := make([]string, len(pages))
	for i := range pages {
		kids[i] = fmt.Sprintf("%d 0 R", 4+2*i)
	}
	object("<< /Type /Catalog /Pages 2 0 R /ViewerPreferences << /PrintScaling /None /DisplayDocTitle true >> >>")
	object("<< /Type /Pages /Count %d /Kids [%s] >>", len(pages), strings.Join(kids, " "))
	object("<< /Title %s /Creator (archload) >>", pdfText(title))
	for i, p := range pages {
		var z bytes.Buffer
		zw := zlib.NewWriter(&z)
		if _, err := zw.Write(p.body.Bytes()); err != nil {
			return err
		}
		if err := zw.Close(); err != nil {
			return err
		}
		object("<< /Type /Page /Parent 2 0 R /MediaBox [0 0 %s] /Resources << >> /Contents %d 0 R >>", fines(p.W, p.H), 5+2*i)
		object("<< /Length %d /Filter /FlateDecode >>\nstream\n%s\nendstream", z.Len(), z.String())
	}
	start := b.Len()
	fmt.Fprintf(&b, "xref\n0 %d\n0000000000 65535 f \n", len(at)+1)
	for _, o := range at {
		fmt.Fprintf(&b, "%010d 00000 n \n", o)
	}
	fmt.Fprintf(&b, "trailer\n<< /Size %d /Root 1 0 R /Info 3 0 R >>\nstartxref\n%d\n%%%%EOF\n", len(at)+1, start)
	_, err := w.Write(b.Bytes())
	return err
}

// pdfText is a text string in UTF-16 as hexadecimal digits.
func pdfText(s string) string {
	var b strings.Builder
	b.WriteString("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04X", u)
	}
	b.WriteString(">")
	return b.String()
}
