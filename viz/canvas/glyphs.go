package canvas

import (
	xfont "golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// glyphPath returns the outlines of a line of text that starts at at.
// Advance and kerning are those by which TextWidth measures, so the line is
// as long as it was laid out.
func glyphPath(f font.Face, at vg.Point, text string) vg.Path {
	var (
		out  vg.Path
		buf  sfnt.Buffer
		ppem = fixed.Int26_6(f.Face.UnitsPerEm()) // one unit of fixed = one font unit
		unit = float64(f.Font.Size) / float64(ppem)
	)
	setLine(f, ppem, &buf, text, func(g sfnt.GlyphIndex, x fixed.Int26_6) {
		if segs, err := f.Face.LoadGlyph(&buf, g, ppem, nil); err == nil {
			out = appendGlyph(out, segs, vg.Point{X: at.X + vg.Length(unit*float64(x)), Y: at.Y}, unit)
		}
	})
	return out
}

// setLine tells each letter of a line of text and where it begins, font units
// from the line's beginning; letters that the face lacks are left out.
func setLine(f font.Face, ppem fixed.Int26_6, buf *sfnt.Buffer, text string, letter func(g sfnt.GlyphIndex, x fixed.Int26_6)) {
	var prev sfnt.GlyphIndex
	var x fixed.Int26_6
	for i, r := range text {
		g, err := f.Face.GlyphIndex(buf, r)
		if err != nil {
			continue
		}
		if i > 0 {
			if k, err := f.Face.Kern(buf, prev, g, ppem, xfont.HintingNone); err == nil {
				x += k
			}
		}
		letter(g, x)
		if w, err := f.Face.GlyphAdvance(buf, g, ppem, xfont.HintingNone); err == nil {
			x += w
		}
		prev = g
	}
}

// appendGlyph appends one glyph with its origin at at; unit is points per
// font unit. Glyph coordinates have y down.
func appendGlyph(to vg.Path, segs sfnt.Segments, at vg.Point, unit float64) vg.Path {
	place := func(p fixed.Point26_6) vg.Point {
		return vg.Point{X: at.X + vg.Length(unit*float64(p.X)), Y: at.Y - vg.Length(unit*float64(p.Y))}
	}
	for i, s := range segs {
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			if i > 0 {
				to.Close()
			}
			to.Move(place(s.Args[0]))
		case sfnt.SegmentOpLineTo:
			to.Line(place(s.Args[0]))
		case sfnt.SegmentOpQuadTo:
			to.QuadTo(place(s.Args[0]), place(s.Args[1]))
		case sfnt.SegmentOpCubeTo:
			to.CubeTo(place(s.Args[0]), place(s.Args[1]), place(s.Args[2]))
		}
	}
	if len(segs) > 0 {
		to.Close()
	}
	return to
}
