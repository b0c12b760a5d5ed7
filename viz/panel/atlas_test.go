package panel

import (
	"bytes"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"golang.org/x/image/font"
)

func newAtlas(t testing.TB, density float64) *Atlas {
	t.Helper()
	a, err := NewAtlas(density)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// TestTextWidth compares with the advances of the font itself, hinted to
// whole pixels, at the size that the atlas chose.
func TestTextWidth(t *testing.T) {
	const text = "Sink 0.312 mm, −4° at the café: Wölbung ½ × 12 µm"
	for _, density := range []float64{1, 1.5, 2} {
		a := newAtlas(t, density)
		for f := range faces {
			face, _, err := openFace(f, density)
			if err != nil {
				t.Fatal(err)
			}
			want := 0.0
			for _, r := range text {
				advance, ok := face.GlyphAdvance(r)
				if !ok {
					t.Fatalf("the font lacks %q", r)
				}
				want += float64(advance) / 64
			}
			if got := a.TextWidth(f, text) * density; got != want {
				t.Errorf("density %g, face %d: width %g pixels, want %g", density, f, got, want)
			}
			if n := float64(font.MeasureString(face, text)) / 64; math.Abs(n-want) > 0.03*want {
				t.Errorf("density %g, face %d: kerned width %g pixels is far from %g", density, f, n, want)
			}
		}
	}
}

func TestDigitsAreEquallyWide(t *testing.T) {
	a := newAtlas(t, 1)
	for f := range faces {
		for _, r := range "123456789" {
			if got, want := a.glyph(f, r).advance, a.glyph(f, '0').advance; got != want {
				t.Errorf("face %d: %c is %d pixels wide, 0 is %d", f, r, got, want)
			}
		}
	}
}

func TestAtlasHasTheSigns(t *testing.T) {
	a := newAtlas(t, 2)
	for _, r := range "°µ×−–—’‘“”…→←↑↓►▼σε½·±²³" {
		for f := range faces {
			if _, ok := a.faces[f].glyphs[r]; !ok {
				t.Errorf("face %d lacks %c", f, r)
			}
		}
	}
	for _, r := range "▸▾✓⋅" {
		if a.glyph(Body, r) == a.glyph(Body, '?') {
			t.Errorf("nothing stands for %c", r)
		}
	}
	if a.glyph(Body, '語') != a.glyph(Body, '?') {
		t.Error("a letter that the font lacks is no question mark")
	}
}

// TestLettersDoNotTouch wants every letter in a place of its own, with a
// clear texel to the right and below.
func TestLettersDoNotTouch(t *testing.T) {
	a := newAtlas(t, 1)
	owner := make(map[int]rune)
	for f := range faces {
		for r, g := range a.faces[f].glyphs {
			for y := g.from.Min.Y; y < g.from.Max.Y; y++ {
				for x := g.from.Min.X; x < g.from.Max.X; x++ {
					at := y*a.Image.Stride + x
					if was, ok := owner[at]; ok {
						t.Fatalf("%c of face %d lies over %c at %d, %d", r, f, was, x, y)
					}
					owner[at] = r
				}
			}
		}
	}
	for at, v := range a.Image.Pix {
		x, y := at%a.Image.Stride, at/a.Image.Stride
		if _, ok := owner[at]; !ok && v != 0 && (x >= 4 || y >= 4) {
			t.Fatalf("texel %d, %d belongs to no letter and is not clear", x, y)
		}
	}
	if got := cover(a.Image, a.full[0], a.full[1]); got != 255 {
		t.Errorf("the full place covers %d, want 255", got)
	}
}

func TestAtlasIsTheSameEveryTime(t *testing.T) {
	a, b := newAtlas(t, 1.5), newAtlas(t, 1.5)
	if a.Image.Rect != b.Image.Rect || !bytes.Equal(a.Image.Pix, b.Image.Pix) {
		t.Error("two atlases of one density differ")
	}
}

func TestAtlasDensities(t *testing.T) {
	for _, density := range []float64{0, -1, 0.49, 4.1, math.NaN(), math.Inf(1)} {
		if _, err := NewAtlas(density); err == nil || !strings.Contains(err.Error(), "0.5 to 4") {
			t.Errorf("density %g: error %v, want one that tells the range", density, err)
		}
	}
	for _, density := range []float64{0.5, 4} {
		if a := newAtlas(t, density); a.Image.Rect.Dy() > 2048 {
			t.Errorf("density %g: the atlas is %d texels high", density, a.Image.Rect.Dy())
		}
	}
}

// TestSizesStayNear wants the true size within 6 % of the nominal one: the
// widths at density 4, where the rounding is finest, tell it.
func TestSizesStayNear(t *testing.T) {
	const text = "The middle first touches at 41 % of the load."
	fine := newAtlas(t, 4)
	for _, density := range []float64{1, 1.5, 2} {
		a := newAtlas(t, density)
		for f := range faces {
			got, want := a.TextWidth(f, text), fine.TextWidth(f, text)
			if math.Abs(got/want-1) > 0.1 {
				t.Errorf("density %g, face %d: %g points wide, %g at density 4", density, f, got, want)
			}
		}
	}
}

func TestWrap(t *testing.T) {
	a := newAtlas(t, 1)
	const text = "A floating bridge stands on the top and no glue holds it.\n\nUnbreakableandverylongwordthatfitsnoline ends."
	for _, width := range []float64{40, 90, 200, 1000} {
		lines := a.Wrap(Body, text, width)
		for _, line := range lines {
			if w := a.TextWidth(Body, line); w > width {
				t.Errorf("width %g: %q is %g wide", width, line, w)
			}
		}
		strip := func(s string) string { return strings.NewReplacer(" ", "", "\n", "").Replace(s) }
		if got, want := strip(strings.Join(lines, "")), strip(text); got != want {
			t.Errorf("width %g: letters %q, want %q", width, got, want)
		}
		if got, want := a.ParagraphHeight(Body, text, width), 18*float64(len(lines)); got != want {
			t.Errorf("width %g: height %g, want %g", width, got, want)
		}
	}
	for width := 60.0; width < 300; width += 3 { // a number keeps its unit
		for _, line := range a.Wrap(Body, "The two blocks are pulled with 637 N, and 4 % of 0.12 mm is little.", width)[1:] {
			for _, unit := range []string{"N,", "%", "mm"} {
				if strings.HasPrefix(line, unit) {
					t.Errorf("width %g: %q begins with a unit", width, line)
				}
			}
		}
	}
	if got := len(a.Wrap(Body, text, 1000)); got != 3 {
		t.Errorf("%d lines on wide paper, want 3: two line ends", got)
	}
}

func TestShortened(t *testing.T) {
	a := newAtlas(t, 1)
	const text = "Scale length of the octave mandola"
	for w := 0.0; w < 300; w += 7 {
		got := a.Shortened(Body, text, w)
		if a.TextWidth(Body, got) > w {
			t.Errorf("%q does not fit %g points", got, w)
		}
		if !utf8.ValidString(got) || got != text && got != "" && !strings.HasSuffix(got, "…") {
			t.Errorf("%q at %g points", got, w)
		}
	}
	if got := a.Shortened(Body, text, 1000); got != text {
		t.Errorf("%q where there is room", got)
	}
}
