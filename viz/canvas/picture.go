package canvas

import (
	"bufio"
	"fmt"
	"image"
	"image/png"
	"io"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/vgimg"
)

// DefaultDPI is the resolution of a PNG if none is asked for, dots per inch.
const DefaultDPI = 150

// Picture is a finished page. It never changes; drawing it twice gives the
// same bytes.
type Picture struct {
	Width, Height float64 // points (1/72 inch)
	Title         string

	draw func(*Page)
}

// NewPicture is a picture of width x height points that draw draws; the title
// names it in an SVG.
func NewPicture(width, height float64, title string, draw func(*Page)) *Picture {
	return &Picture{Width: width, Height: height, Title: Clean(title), draw: draw}
}

// Draw draws the picture on any canvas of Width x Height points; the page that
// it returns knows where the text stands.
func (p *Picture) Draw(c vg.Canvas) *Page {
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
		c := NewSVG(b, p.Width, p.Height, p.Title)
		p.Draw(c)
		c.Close()
	default:
		return fmt.Errorf("picture format %q: want one of %q", format, Formats())
	}
	return b.Flush()
}
