package scene

import (
	"image"
	"image/color"
	"math"

	"archload/viz/scale"
)

// PaintOptions steer Paint. The zero value paints solids and lines.
type PaintOptions struct {
	Contours bool    // lines at the steps of the legend
	Phase    float64 // of the beads on moving lines, above 0 to 1; 0: no beads
	Density  float64 // pixels to a point: widths of lines grow with it; 0 means 1
	Quick    bool    // one sample to a pixel instead of two by two
	Unlit    bool    // the colours of the legend, without light
}

func (o PaintOptions) density() float64 {
	if o.Density == 0 {
		return 1
	}
	return o.Density
}

// lineNearer is how much nearer to the eye lines are drawn than they lie, mm,
// so that the skin they lie on does not hide them.
const lineNearer = 1

// stripRows is the height of the strips that Paint works in, pixels: a strip's
// samples stay in the fast memory.
const stripRows = 32

// painter paints one view, strip by strip.
type painter struct {
	o       PaintOptions
	per     int // samples to a pixel, across and down
	w, h    int // of the view, samples
	lens    lens
	light   vec
	half    vec // half way between the light and the eye
	field   fieldPaint
	skins   []skin
	lines   []ribbon
	bias    float64 // mm that lines are drawn nearer to the eye
	first   int     // the strip's first row of samples
	rows    int
	sample  []uint32  // colours, 0xRRGGBB
	near    []float32 // 1/depth, 1/mm; 0: nothing
	cover   []uint8   // of the line being drawn
	touched []int32   // samples with cover
}

// Paint draws a scene into a rectangle of a picture, over what is there:
// solids with hidden parts hidden, lit, in the colours of their field, then
// lines. Words are left to the caller.
func Paint(dst *image.NRGBA, where image.Rectangle, s *Scene, c Camera, o PaintOptions) {
	if where.Empty() {
		return
	}
	p := &painter{o: o, per: 2, bias: lineNearer, light: c.Light()}
	p.half = c.Halfway()
	if o.Quick {
		p.per = 1
	}
	p.w, p.h = p.per*where.Dx(), p.per*where.Dy()
	p.lens = c.lens(p.w, p.h)
	p.o.Contours = o.Contours && !s.Plain
	p.field = newFieldPaint(s.Scale, p.o, p.per)
	for turn := range 3 {
		for _, k := range s.Solids {
			if k.turn() == turn {
				p.skins = append(p.skins, p.skin(k))
			}
		}
	}
	for _, l := range s.Lines {
		p.lines = append(p.lines, p.ribbon(l))
	}
	n := p.w * stripRows * p.per
	p.sample, p.near, p.cover = make([]uint32, n), make([]float32, n), make([]uint8, n)
	visible := where.Intersect(dst.Rect)
	for y := visible.Min.Y; y < visible.Max.Y; y += stripRows {
		p.strip(dst, image.Rect(where.Min.X, y, where.Max.X, min(y+stripRows, visible.Max.Y)), y-where.Min.Y)
	}
}

// turn says when a solid is painted: first what is opaque, then shadows behind it, last what is
// seen through.
func (o *Solid) turn() int {
	switch {
	case o.Soft:
		return 1
	case o.Paint.A == 255:
		return 0
	}
	return 2
}

// strip paints some rows of the view.
func (p *painter) strip(dst *image.NRGBA, r image.Rectangle, y int) {
	p.first, p.rows = y*p.per, r.Dy()*p.per
	p.load(dst, r)
	for i := range p.skins {
		p.paintSkin(&p.skins[i])
	}
	for _, over := range []bool{false, true} {
		for i := range p.lines {
			if p.lines[i].over == over {
				p.paintRibbon(&p.lines[i])
			}
		}
	}
	p.resolve(dst, r)
}

// load takes what is there as the ground.
func (p *painter) load(dst *image.NRGBA, r image.Rectangle) {
	for y := range r.Dy() {
		row := p.sample[y*p.per*p.w:]
		for x := range r.Dx() {
			v := uint32(0)
			if at := (image.Point{r.Min.X + x, r.Min.Y + y}); at.In(dst.Rect) {
				q := dst.Pix[dst.PixOffset(at.X, at.Y):]
				v = uint32(q[0])<<16 | uint32(q[1])<<8 | uint32(q[2])
			}
			for k := range p.per {
				row[x*p.per+k] = v
			}
		}
		for k := 1; k < p.per; k++ {
			copy(row[k*p.w:(k+1)*p.w], row[:p.w])
		}
	}
	clear(p.near[:p.rows*p.w])
}

// resolve gives each pixel the mean of its samples.
func (p *painter) resolve(dst *image.NRGBA, r image.Rectangle) {
	n := uint32(p.per * p.per)
	for y := range r.Dy() {
		for x := range r.Dx() {
			at := image.Point{r.Min.X + x, r.Min.Y + y}
			if !at.In(dst.Rect) {
				continue
			}
			var red, green, blue uint32
			for j := range p.per {
				row := p.sample[(y*p.per+j)*p.w+x*p.per:]
				for _, v := range row[:p.per] {
					red, green, blue = red+v>>16, green+v>>8&255, blue+v&255
				}
			}
			q := dst.Pix[dst.PixOffset(at.X, at.Y):]
			q[0], q[1], q[2], q[3] = uint8((red+n/2)/n), uint8((green+n/2)/n), uint8((blue+n/2)/n), 255
		}
	}
}

// tones is the number of colours that a field's map is cut into.
const tones = 1024

// fieldPaint is a scale made ready for painting.
type fieldPaint struct {
	shown    bool
	lo, step float64 // of the legend, in the field's unit; step 0: one value
	bands    float64
	tone     [tones + 1]uint32
	ink      [tones + 1]uint32 // of a contour line on it
	contours bool
	zero     float64    // number of the line at zero
	cell     float64    // dash of the lines below it, samples; 0: unbroken
	half     [2]float64 // half width of a line, and of the one at zero, samples
	fade     float64    // distance of lines, samples, below which they fade
	side     float64    // 1: what lies above zero is hatched; -1: what lies below; 0: nothing
	hatch    []uint32   // ink of the hatch in 256ths, by the sum of a sample's places across and down, over and over
}

// Widths of contour lines, points, and how close they may come.
const (
	contourHalf = 0.42
	zeroHalf    = 0.85
	contourRoom = 5
	contourInk  = 0.62 // opacity
	dashCell    = 3.5  // of a dash of the lines below zero
	hatchCell   = 7.0  // of the hatch, across and down, from line to line
	hatchHalf   = 0.3  // half width of its lines
	hatchInk    = 0.28 // opacity
)

func newFieldPaint(s *scale.Scale, o PaintOptions, per int) fieldPaint {
	f := fieldPaint{}
	if s == nil {
		return f
	}
	f.shown, f.lo, f.step, f.bands, f.contours = true, s.Lo, s.Step, float64(s.Bands()), o.Contours && s.Step > 0
	for i := range f.tone {
		c := s.Tone(float64(i) / tones)
		f.tone[i] = packed(c)
		f.ink[i] = packed(lineInk(c))
	}
	if f.step > 0 {
		f.zero = math.Round(-f.lo / f.step)
	}
	d := o.density() * float64(per)
	if s.Kind != scale.Counting {
		f.cell = dashCell * d
	}
	f.half, f.fade = [2]float64{contourHalf * d, zeroHalf * d}, contourRoom*d
	f.side = s.HatchedSide()
	f.hatch = hatchInks(d)
	return f
}

// hatchInks are the inks of slanting lines, d samples to a point: see fieldPaint.
func hatchInks(d float64) []uint32 {
	out := make([]uint32, max(2, int(math.Round(hatchCell*d))))
	for i := range out {
		off := math.Abs(float64(i)-float64(len(out)/2)) / math.Sqrt2
		out[i] = uint32(256 * hatchInk * math.Max(0, math.Min(1, hatchHalf*d+0.5-off)))
	}
	return out
}

// lineInk is that of a contour line on a colour.
func lineInk(on color.NRGBA) color.NRGBA {
	if brightness(on) < 0.42 {
		return color.NRGBA{251, 248, 240, 255}
	}
	return color.NRGBA{51, 38, 26, 255}
}

func packed(c color.NRGBA) uint32 { return uint32(c.R)<<16 | uint32(c.G)<<8 | uint32(c.B) }

// brightness of a colour, 0 to 1: its luma (ITU-R BT.709).
func brightness(c color.NRGBA) float64 {
	return (0.2126*float64(c.R) + 0.7152*float64(c.G) + 0.0722*float64(c.B)) / 255
}

// lit returns a colour times a light factor in 256ths.
func lit(v, factor uint32) uint32 {
	r, g, b := v>>16*factor>>8, v>>8&255*factor>>8, v&255*factor>>8
	return min(r, 255)<<16 | min(g, 255)<<8 | min(b, 255)
}

// blend returns a colour with another laid over it at an opacity in 256ths.
func blend(under, over, a uint32) uint32 {
	const rb, g = 0xff00ff, 0x00ff00
	k := 256 - a
	return ((under&rb)*k+(over&rb)*a)>>8&rb | ((under&g)*k+(over&g)*a)>>8&g
}
