package canvas

import (
	"bufio"
	"bytes"
	"fmt"
	"html"
	"io"
	"math"
	"strconv"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// compactSVG writes a picture as an SVG of about a fifth of the size of
// SVG's, for a page that holds many: lengths are whole tenths of a point,
// each from the last place on, and each letter's outline is written once.
type compactSVG struct {
	*SVG
	glyphs map[glyphKey]int // numbers of those in defs
	defs   bytes.Buffer
}

// glyphKey is a letter of a face.
type glyphKey struct {
	face  font.Font // size 0
	glyph sfnt.GlyphIndex
}

// tenths is how many of the file's units make a point.
const tenths = 10

// WriteCompact writes the picture as an SVG of about a fifth of the size of
// Write's, for a page that holds many.
func (p *Picture) WriteCompact(to io.Writer) error {
	w := bufio.NewWriter(to)
	fmt.Fprintf(w, "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%spt\" height=\"%spt\" viewBox=\"0 0 %.0f %.0f\" stroke-linejoin=\"round\">",
		short(p.Width), short(p.Height), tenths*p.Width, tenths*p.Height)
	fmt.Fprintf(w, "<title>%s</title>\n", html.EscapeString(Clean(p.Title)))
	c := &compactSVG{SVG: &SVG{w: w, height: p.Height, states: upright()}, glyphs: map[glyphKey]int{}}
	vg.Initialize(c)
	p.Draw(c)
	fmt.Fprintf(w, "<defs>%s</defs></svg>\n", c.defs.Bytes())
	return w.Flush()
}

// Stroke draws a line.
func (c *compactSVG) Stroke(p vg.Path) {
	if c.now.width <= 0 {
		return
	}
	fmt.Fprintf(c.w, "<path fill=\"none\" %s stroke-width=\"%s\"", c.paint("stroke"), short(tenths*c.now.width))
	for i, d := range c.now.dash {
		if i == 0 {
			fmt.Fprintf(c.w, " stroke-dashoffset=\"%s\" stroke-dasharray=\"", short(tenths*float64(c.now.shift)))
		}
		fmt.Fprintf(c.w, "%s ", short(tenths*float64(d)))
	}
	if len(c.now.dash) > 0 {
		fmt.Fprint(c.w, "\"")
	}
	fmt.Fprintf(c.w, " d=\"%s\"/>\n", c.data(p))
}

// Fill fills a path.
func (c *compactSVG) Fill(p vg.Path) {
	fmt.Fprintf(c.w, "<path %s d=\"%s\"/>\n", c.paint("fill"), c.data(p))
}

// data writes the path by whole tenths.
func (c *compactSVG) data(p vg.Path) string {
	d := tracer{}
	at := func(q vg.Point) [2]int {
		x, y := c.xy(q)
		return [2]int{int(math.Round(tenths * x)), int(math.Round(tenths * y))}
	}
	for _, s := range p {
		switch s.Type {
		case vg.MoveComp:
			d.to('m', at(s.Pos))
		case vg.LineComp:
			d.to('l', at(s.Pos))
		case vg.CurveComp:
			var list [][2]int
			for _, q := range s.Control {
				list = append(list, at(q))
			}
			d.to(" qc"[len(s.Control)], append(list, at(s.Pos))...)
		case vg.CloseComp:
			d.close()
		default:
			panic("canvas: svg: arcs are not drawn") // this package's own fault
		}
	}
	return d.b.String()
}

// tracer writes a path from place to place.
type tracer struct {
	b          bytes.Buffer
	now, start [2]int
	last       byte // letter
}

// to goes on to the last of some points; a line of no length is left out.
func (t *tracer) to(letter byte, list ...[2]int) {
	end := list[len(list)-1]
	if letter == 'l' && end == t.now && t.last == 'l' {
		return
	}
	if letter != t.last || letter == 'm' {
		t.b.WriteByte(letter)
	}
	first := letter != t.last || letter == 'm'
	for _, q := range list {
		for k := range q {
			v := q[k] - t.now[k]
			if !first && v >= 0 {
				t.b.WriteByte(' ')
			}
			t.b.WriteString(strconv.Itoa(v))
			first = false
		}
	}
	t.now, t.last = end, letter
	if letter == 'm' {
		t.start = end
	}
}

// close goes back to where the loop began.
func (t *tracer) close() {
	t.b.WriteByte('z')
	t.now, t.last = t.start, 'z'
}

// FillString draws text by naming its letters.
func (c *compactSVG) FillString(f font.Face, p vg.Point, text string) {
	var (
		buf  sfnt.Buffer
		ppem = fixed.Int26_6(f.Face.UnitsPerEm()) // one unit of fixed = one font unit
		unit = tenths * float64(f.Font.Size) / float64(ppem)
	)
	left, top := c.xy(p)
	m := c.now.m
	fmt.Fprintf(c.w, "<g role=\"img\" aria-label=\"%s\" %s transform=\"matrix(%.5g %.5g %.5g %.5g %.0f %.0f)\">", html.EscapeString(text), c.paint("fill"),
		m[0]*unit, -m[1]*unit, -m[2]*unit, m[3]*unit, tenths*left, tenths*top)
	setLine(f, ppem, &buf, text, func(g sfnt.GlyphIndex, x fixed.Int26_6) {
		if n := c.glyph(f, g, ppem, &buf); n > 0 {
			fmt.Fprintf(c.w, "<use href=\"#g%d\" x=\"%d\"/>", n, int(x))
		}
	})
	fmt.Fprint(c.w, "</g>\n")
}

// glyph is the number of a letter among those defined, from 1 on; 0 for a
// blank.
func (c *compactSVG) glyph(f font.Face, g sfnt.GlyphIndex, ppem fixed.Int26_6, buf *sfnt.Buffer) int {
	key := glyphKey{f.Font, g}
	key.face.Size = 0
	if n, ok := c.glyphs[key]; ok {
		return n
	}
	segs, err := f.Face.LoadGlyph(buf, g, ppem, nil)
	if err != nil || len(segs) == 0 {
		c.glyphs[key] = 0
		return 0
	}
	t := tracer{}
	for i, s := range segs {
		if i > 0 && s.Op == sfnt.SegmentOpMoveTo {
			t.close()
		}
		var list [][2]int
		for _, a := range s.Args[:[]int{1, 1, 2, 3}[s.Op]] {
			list = append(list, [2]int{int(a.X), int(a.Y)})
		}
		t.to("mlqc"[s.Op], list...)
	}
	t.close()
	c.glyphs[key] = len(c.glyphs) + 1
	fmt.Fprintf(&c.defs, "<path id=\"g%d\" d=\"%s\"/>", c.glyphs[key], t.b.String())
	return c.glyphs[key]
}
