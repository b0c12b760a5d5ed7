package panel

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"math"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"
)

// Face is a size and a weight of letters.
type Face uint8

// The faces, regular and bold.
const (
	Small Face = iota // 11 points
	Body              // 13
	Title             // 16
	Large             // 20
	SmallBold
	BodyBold
	TitleBold
	LargeBold

	faces
)

// Size returns the nominal size of the face, points of the layout. The true
// size differs by up to 6 % so that the small letters end on whole pixels.
func (f Face) Size() float64 { return [...]float64{11, 13, 16, 20}[f%SmallBold] }

// LineHeight returns the distance of two lines of a paragraph, points.
func (f Face) LineHeight() float64 { return [...]float64{15, 18, 22, 27}[f%SmallBold] }

// Bold returns the bold face of the same size.
func (f Face) Bold() Face { return f%SmallBold + SmallBold }

// Atlas is every letter in every face, drawn once for a density of the
// screen. It is never changed, so that many lists may share it.
type Atlas struct {
	Image   *image.Alpha // coverage
	Density float64      // pixels to a point

	faces [faces]letters
	full  [2]float64 // a place, 0 to 1, that is full: for plain shapes
}

// letters is one face, in pixels.
type letters struct {
	glyphs    map[rune]glyph
	ascii     [128]glyph // the same, found quickly
	capHeight float64
	ascent    float64 // of the tallest plain letter
	descent   float64
}

// glyph is one letter in the atlas.
type glyph struct {
	from    image.Rectangle // in the atlas
	offset  image.Point     // from the pen to its top left corner
	advance int             // whole pixels
}

// alphabet is what the atlas holds, where the font has it: ASCII, Latin-1 and
// the signs of the trade.
func alphabet() []rune {
	var out []rune
	for r := rune(' '); r <= '~'; r++ {
		out = append(out, r)
	}
	for r := rune(0xa0); r <= 0xff; r++ {
		if r != 0xad { // a soft hyphen is not seen
			out = append(out, r)
		}
	}
	return append(out, []rune("−–—’‘‚“”„…→←↑↓↔▲▼◄►σεντρφαβγδθλμπΔΣΩ⅛≤≥≈≠∞√•′″‰⁰⁴")...)
}

// NewAtlas draws the letters for a screen with density pixels to a point,
// 0.5 to 4.
func NewAtlas(density float64) (*Atlas, error) {
	if !(density >= 0.5 && density <= 4) {
		return nil, fmt.Errorf("panel: want 0.5 to 4 pixels to a point, found %g", density)
	}
	a := &Atlas{Density: density}
	var drawn []drawing
	for f := range faces {
		face, parsed, err := openFace(f, density)
		if err != nil {
			return nil, err
		}
		drawn = append(drawn, a.faces[f].measure(f, face, parsed)...)
	}
	a.pack(drawn)
	return a, nil
}

// openFace opens a face at a size that puts the top of the small letters on a
// whole pixel: level strokes are then crisp.
func openFace(f Face, density float64) (font.Face, *opentype.Font, error) {
	ttf := goregular.TTF
	if f >= SmallBold {
		ttf = gobold.TTF
	}
	parsed, err := opentype.Parse(ttf)
	if err != nil {
		return nil, nil, fmt.Errorf("panel: letters: %w", err)
	}
	const probe = 1000
	big, err := opentype.NewFace(parsed, &opentype.FaceOptions{Size: probe, DPI: 72, Hinting: font.HintingNone})
	if err != nil {
		return nil, nil, fmt.Errorf("panel: letters: %w", err)
	}
	xHeight := float64(big.Metrics().XHeight) / 64 / probe
	size := f.Size() * density
	if xHeight > 0 {
		size = max(1, math.Round(size*xHeight)) / xHeight
	}
	face, err := opentype.NewFace(parsed, &opentype.FaceOptions{Size: size, DPI: 72, Hinting: font.HintingFull})
	if err != nil {
		return nil, nil, fmt.Errorf("panel: letters: %w", err)
	}
	return face, parsed, nil
}

// drawing is a letter on its way into the atlas.
type drawing struct {
	face   Face
	letter rune
	mask   *image.Alpha
}

// measure fills the metrics of the face and draws its letters.
func (l *letters) measure(f Face, face font.Face, parsed *opentype.Font) []drawing {
	m := face.Metrics()
	l.capHeight = float64(m.CapHeight) / 64
	l.ascent = float64(m.Ascent.Ceil())
	l.descent = float64(m.Descent.Ceil())
	l.glyphs = make(map[rune]glyph)
	var out []drawing
	for _, r := range alphabet() {
		if at, err := parsed.GlyphIndex(nil, r); err != nil || at == 0 {
			continue // the font has a box in its place
		}
		bounds, mask, at, advance, ok := face.Glyph(fixed.Point26_6{}, r)
		if !ok {
			continue
		}
		l.glyphs[r] = glyph{offset: bounds.Min, advance: advance.Round()}
		if bounds.Empty() {
			continue
		}
		own := image.NewAlpha(image.Rect(0, 0, bounds.Dx(), bounds.Dy()))
		draw.Draw(own, own.Rect, mask, at, draw.Src)
		out = append(out, drawing{f, r, own})
	}
	return out
}

// pack puts the letters in rows, one texel apart, behind a full square.
func (a *Atlas) pack(drawn []drawing) {
	const full = 4 // texels
	width := 512
	if a.Density > 1.25 {
		width = 1024
	}
	if a.Density > 2.5 {
		width = 2048
	}
	x, y, row := full+1, 0, full+1
	for _, d := range drawn {
		w, h := d.mask.Rect.Dx(), d.mask.Rect.Dy()
		if x+w > width {
			x, y, row = 0, y+row, 0
		}
		g := a.faces[d.face].glyphs[d.letter]
		g.from = image.Rect(x, y, x+w, y+h)
		a.faces[d.face].glyphs[d.letter] = g
		x, row = x+w+1, max(row, h+1)
	}
	height := 64
	for height < y+row {
		height *= 2
	}
	a.Image = image.NewAlpha(image.Rect(0, 0, width, height))
	draw.Draw(a.Image, image.Rect(0, 0, full, full), image.NewUniform(color.Alpha{255}), image.Point{}, draw.Src)
	a.full = [2]float64{full / 2 / float64(width), full / 2 / float64(height)}
	for _, d := range drawn {
		draw.Draw(a.Image, a.faces[d.face].glyphs[d.letter].from, d.mask, image.Point{}, draw.Src)
	}
	for f := range a.faces {
		for r := rune(' '); r <= '~'; r++ {
			a.faces[f].ascii[r] = a.faces[f].glyphs[r]
		}
	}
}

// glyph returns the letter r of face f; a letter that the font lacks is a
// question mark.
func (a *Atlas) glyph(f Face, r rune) glyph {
	if r >= ' ' && r <= '~' {
		return a.faces[f].ascii[r]
	}
	g, ok := a.faces[f].glyphs[r]
	if !ok {
		g = a.faces[f].glyphs[instead(r)]
	}
	return g
}

// instead is what stands for a letter that the font lacks.
func instead(r rune) rune {
	switch r {
	case '\u2009', '\u202f', '\u2007', '\t':
		return ' '
	case '⋅':
		return '·'
	case '▸':
		return '►'
	case '▾':
		return '▼'
	case '◂':
		return '◄'
	case '✓':
		return '√'
	}
	return '?'
}

// TextWidth returns the width of one line of text, points: the sum of the
// advances of its letters.
func (a *Atlas) TextWidth(f Face, s string) float64 {
	n := 0
	for _, r := range s {
		n += a.glyph(f, r).advance
	}
	return float64(n) / a.Density
}

// snap moves a coordinate in points to the nearest whole pixel.
func (a *Atlas) snap(v float64) float64 { return math.Round(v*a.Density) / a.Density }
