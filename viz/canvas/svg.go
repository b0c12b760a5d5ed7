package canvas

import (
	"bufio"
	"bytes"
	"encoding/base64"
	"fmt"
	"html"
	"image"
	"image/png"
	"math"
	"strconv"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// SVG writes a picture as SVG. Lengths are points with two decimals.
// Text is drawn as outlines, because a viewer without the font would set it
// wider; its words stay in aria-label.
type SVG struct {
	w      *bufio.Writer // keeps the first error until Flush
	height float64
	states
}

// NewSVG begins a file of width x height points; Close ends it.
func NewSVG(w *bufio.Writer, width, height float64, title string) *SVG {
	fmt.Fprintf(w, "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%spt\" height=\"%spt\" viewBox=\"0 0 %s %s\">\n",
		short(width), short(height), short(width), short(height))
	fmt.Fprintf(w, "<title>%s</title>\n", html.EscapeString(Clean(title)))
	c := &SVG{w: w, height: height, states: upright()}
	vg.Initialize(c)
	return c
}

// Close writes the end of the file; the writer is flushed by the caller, who
// learns there of the first error.
func (c *SVG) Close() { fmt.Fprint(c.w, "</svg>\n") }

// short writes a length with at most two decimals.
func short(v float64) string {
	s := strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64)
	if s == "-0" {
		return "0"
	}
	return s
}

// xy takes a point through the transform to the file's axes (y down).
func (c *SVG) xy(p vg.Point) (x, y float64) {
	x, y = c.place(p)
	return x, c.height - y
}

// Stroke draws a line.
func (c *SVG) Stroke(p vg.Path) {
	if c.now.width <= 0 {
		return
	}
	fmt.Fprintf(c.w, "<path fill=\"none\" %s stroke-width=\"%s\" stroke-linejoin=\"round\"", c.paint("stroke"), short(c.now.width))
	for i, d := range c.now.dash {
		if i == 0 {
			fmt.Fprintf(c.w, " stroke-dashoffset=\"%s\" stroke-dasharray=\"", short(float64(c.now.shift)))
		}
		fmt.Fprintf(c.w, "%s ", short(float64(d)))
	}
	if len(c.now.dash) > 0 {
		fmt.Fprint(c.w, "\"")
	}
	fmt.Fprintf(c.w, " d=\"%s\"/>\n", c.data(p))
}

// Fill fills an area.
func (c *SVG) Fill(p vg.Path) {
	fmt.Fprintf(c.w, "<path %s d=\"%s\"/>\n", c.paint("fill"), c.data(p))
}

// paint writes colour and opacity.
func (c *SVG) paint(what string) string {
	k := c.now.color
	s := fmt.Sprintf("%s=\"#%02x%02x%02x\"", what, k.R, k.G, k.B)
	if k.A < 255 {
		s += fmt.Sprintf(" %s-opacity=\"%s\"", what, short(float64(k.A)/255))
	}
	return s
}

// FillString draws text as one path of glyph outlines.
func (c *SVG) FillString(f font.Face, p vg.Point, text string) {
	fmt.Fprintf(c.w, "<path role=\"img\" aria-label=\"%s\" %s d=\"%s\"/>\n",
		html.EscapeString(text), c.paint("fill"), c.data(glyphPath(f, p, text)))
}

// data writes the path; this package draws no arcs.
func (c *SVG) data(p vg.Path) string {
	var b bytes.Buffer
	for _, s := range p {
		switch s.Type {
		case vg.MoveComp:
			c.points(&b, 'M', s.Pos)
		case vg.LineComp:
			c.points(&b, 'L', s.Pos)
		case vg.CurveComp:
			c.points(&b, " QC"[len(s.Control)], append(s.Control[:len(s.Control):len(s.Control)], s.Pos)...)
		case vg.CloseComp:
			b.WriteByte('Z')
		default:
			panic("canvas: svg: arcs are not drawn") // this package's own fault
		}
	}
	return b.String()
}

func (c *SVG) points(b *bytes.Buffer, letter byte, list ...vg.Point) {
	for i, p := range list {
		if i > 0 {
			letter = ' '
		}
		x, y := c.xy(p)
		b.WriteByte(letter)
		b.WriteString(short(x))
		b.WriteByte(' ')
		b.WriteString(short(y))
	}
}

// DrawImage writes pixels into the file.
func (c *SVG) DrawImage(r vg.Rectangle, img image.Image) {
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		panic("canvas: svg: image cannot be encoded: " + err.Error()) // an empty image: the caller's fault
	}
	x, y := c.xy(vg.Point{X: r.Min.X, Y: r.Max.Y})
	fmt.Fprintf(c.w, "<image x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" href=\"data:image/png;base64,%s\"/>\n",
		short(x), short(y), short(float64(r.Max.X-r.Min.X)), short(float64(r.Max.Y-r.Min.Y)), base64.StdEncoding.EncodeToString(b.Bytes()))
}
