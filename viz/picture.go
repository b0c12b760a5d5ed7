package viz

import (
	"bufio"
	"fmt"
	"image"
	"image/png"
	"io"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/vgimg"

	"archload/mesh"
)

// DefaultDPI is the resolution of a PNG if none is asked for, dots per inch.
const DefaultDPI = 150

// Picture is a finished page. It never changes; drawing it twice gives the
// same bytes.
type Picture struct {
	Width, Height float64 // points (1/72 inch)
	Title         string

	draw   func(*page)
	frame  frame         // plan pictures: where a point of the plate lies
	legend *legendLayout // plan pictures with a field
}

// Draw draws the picture on any canvas of Width x Height points.
func (p *Picture) Draw(c vg.Canvas) { p.drawPage(c) }

func (p *Picture) drawPage(c vg.Canvas) *page {
	g := newPage(c, p.Width, p.Height)
	p.draw(g)
	return g
}

// Image returns the picture as pixels; dpi <= 0 means DefaultDPI.
func (p *Picture) Image(dpi int) image.Image {
	if dpi <= 0 {
		dpi = DefaultDPI
	}
	c := vgimg.NewWith(vgimg.UseWH(vg.Length(p.Width), vg.Length(p.Height)), vgimg.UseDPI(dpi))
	p.Draw(c)
	return c.Image()
}

// Formats lists what Write can write.
func Formats() []string { return []string{"png", "svg"} }

// Write writes the picture as "png" at dpi dots per inch (<= 0: DefaultDPI)
// or as "svg", which has no resolution.
func (p *Picture) Write(w io.Writer, format string, dpi int) error {
	b := bufio.NewWriter(w)
	switch format {
	case "png":
		enc := png.Encoder{CompressionLevel: png.BestSpeed}
		if err := enc.Encode(b, p.Image(dpi)); err != nil {
			return err
		}
	case "svg":
		c := newSVG(b, p.Width, p.Height, p.Title)
		p.Draw(c)
		c.close()
	default:
		return fmt.Errorf("picture format %q: want one of %q", format, Formats())
	}
	return b.Flush()
}

// Where returns the place on the page of a point of the plate: points from
// the left edge and from the top edge. It is 0, 0 for pictures not in plan.
func (p *Picture) Where(q mesh.Point) (left, top float64) {
	if p.frame.scale == 0 {
		return 0, 0
	}
	v := p.frame.at(q)
	return v.X, p.Height - v.Y
}

// LegendAt returns a place on the page inside the legend's patch for the value v,
// points from the left and top edges; 0, 0 if the picture has no legend.
func (p *Picture) LegendAt(v float64) (left, top float64) {
	if p.legend == nil {
		return 0, 0
	}
	c := p.legend.patch(p.legend.scale.Band(v))
	return (c.X0 + c.X1) / 2, p.Height - (c.Y0+c.Y1)/2
}

// frame takes points of the plate (mm) to the page (points).
type frame struct {
	scale  float64 // points per mm
	origin pt      // place of the plate's origin
}

func (f frame) at(q mesh.Point) pt {
	return pt{f.origin.X + f.scale*q[0], f.origin.Y + f.scale*q[1]}
}

func (f frame) all(l []mesh.Point) []pt {
	out := make([]pt, len(l))
	for i, q := range l {
		out[i] = f.at(q)
	}
	return out
}

func (f frame) lines(l [][]mesh.Point) [][]pt {
	out := make([][]pt, len(l))
	for i, q := range l {
		out[i] = f.all(q)
	}
	return out
}

func (f frame) paths(l []path) [][]pt {
	out := make([][]pt, len(l))
	for i, q := range l {
		out[i] = f.all(q.pts)
	}
	return out
}

// fit returns the frame that centres the mm box lo..hi in r as large as it
// goes.
func fit(lo, hi mesh.Point, r rect) frame {
	w, h := max(hi[0]-lo[0], 1e-9), max(hi[1]-lo[1], 1e-9)
	s := min(r.width()/w, r.height()/h)
	return frame{s, pt{
		(r.X0+r.X1)/2 - s*(lo[0]+hi[0])/2,
		(r.Y0+r.Y1)/2 - s*(lo[1]+hi[1])/2,
	}}
}
