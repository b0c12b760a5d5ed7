package panel

import (
	"image"
	"image/color"
	"math"
)

// fine is the subdivision of a pixel to which corners are rounded before
// painting; edges are then exact, and triangles that share one neither
// overlap nor gape.
const (
	fineBits = 8
	fine     = 1 << fineBits
)

// farthest is where corners end, pixels: what lies beyond is not painted.
const farthest = 1 << 20

// Paint draws the list over dst, whose first pixel is the page's left upper
// corner.
func (l *List) Paint(dst *image.NRGBA) {
	for i := 0; i+2 < len(l.Vertices); i += 3 {
		if t, ok := newTriangle(l.Vertices[i : i+3]); ok {
			t.paint(dst, l.Atlas.Image)
		}
	}
}

// painted is a triangle on its way to the pixels.
type painted struct {
	v    [3]Vertex
	x, y [3]int64 // corners, in parts of a pixel
	area int64    // twice, positive
}

func newTriangle(v []Vertex) (painted, bool) {
	t := painted{v: [3]Vertex(v)}
	for i, c := range t.v {
		if !(abs(c.X) < farthest && abs(c.Y) < farthest) {
			return t, false
		}
		t.x[i], t.y[i] = int64(math.Round(c.X*fine)), int64(math.Round(c.Y*fine))
	}
	t.area = t.edge(2, t.x[2], t.y[2])
	if t.area < 0 {
		t.v[1], t.v[2] = t.v[2], t.v[1]
		t.x[1], t.x[2] = t.x[2], t.x[1]
		t.y[1], t.y[2] = t.y[2], t.y[1]
		t.area = -t.area
	}
	return t, t.area > 0
}

// edge is the signed area between x, y and the edge that faces corner i; for
// the corner itself it is the triangle's.
func (t *painted) edge(i int, x, y int64) int64 {
	a, b := (i+1)%3, (i+2)%3
	return (t.x[b]-t.x[a])*(y-t.y[a]) - (t.y[b]-t.y[a])*(x-t.x[a])
}

// owns tells whether pixels whose middle lies on the edge that faces corner i
// belong to the triangle: left and top edges do.
func (t *painted) owns(i int) bool {
	a, b := (i+1)%3, (i+2)%3
	dx, dy := t.x[b]-t.x[a], t.y[b]-t.y[a]
	return dy < 0 || dy == 0 && dx > 0
}

// paint blends the triangle over dst.
func (t *painted) paint(dst *image.NRGBA, atlas *image.Alpha) {
	r := dst.Rect
	x0 := max(int64(r.Min.X), min(t.x[0], t.x[1], t.x[2])>>fineBits)
	x1 := min(int64(r.Max.X), max(t.x[0], t.x[1], t.x[2])>>fineBits+1)
	y0 := max(int64(r.Min.Y), min(t.y[0], t.y[1], t.y[2])>>fineBits)
	y1 := min(int64(r.Max.Y), max(t.y[0], t.y[1], t.y[2])>>fineBits+1)
	var slack [3]int64
	for i := range slack {
		if !t.owns(i) {
			slack[i] = 1
		}
	}
	plain := t.plain(atlas)
	for y := y0; y < y1; y++ {
		for x := x0; x < x1; x++ {
			cx, cy := x*fine+fine/2, y*fine+fine/2
			e0, e1, e2 := t.edge(0, cx, cy), t.edge(1, cx, cy), t.edge(2, cx, cy)
			if e0 < slack[0] || e1 < slack[1] || e2 < slack[2] {
				continue
			}
			k := t.v[0].Paint
			if !plain {
				k = t.at(float64(e0), float64(e1), float64(e2), atlas)
			}
			blend(dst.Pix[dst.PixOffset(int(x), int(y)):], k)
		}
	}
}

// plain tells whether the triangle is one paint all over, without the atlas.
func (t *painted) plain(atlas *image.Alpha) bool {
	a, b, c := t.v[0], t.v[1], t.v[2]
	b.X, b.Y, c.X, c.Y = a.X, a.Y, a.X, a.Y
	return a == b && b == c && cover(atlas, a.U, a.V) == 255
}

// cover reads the atlas at a place, 0 to 1, without blending texels.
func cover(atlas *image.Alpha, u, v float64) uint8 {
	w, h := atlas.Rect.Dx(), atlas.Rect.Dy()
	x := min(w-1, max(0, int(u*float64(w))))
	y := min(h-1, max(0, int(v*float64(h))))
	return atlas.Pix[y*atlas.Stride+x]
}

// at returns the paint at a place given by its three areas.
func (t *painted) at(e0, e1, e2 float64, atlas *image.Alpha) color.NRGBA {
	s := 1 / float64(t.area)
	a, b, c := e0*s, e1*s, e2*s
	v := &t.v
	mix := func(p, q, r uint8) uint8 {
		return uint8(min(255, max(0, float64(p)*a+float64(q)*b+float64(r)*c+0.5)))
	}
	k := color.NRGBA{
		mix(v[0].Paint.R, v[1].Paint.R, v[2].Paint.R),
		mix(v[0].Paint.G, v[1].Paint.G, v[2].Paint.G),
		mix(v[0].Paint.B, v[1].Paint.B, v[2].Paint.B),
		mix(v[0].Paint.A, v[1].Paint.A, v[2].Paint.A),
	}
	full := cover(atlas, v[0].U*a+v[1].U*b+v[2].U*c, v[0].V*a+v[1].V*b+v[2].V*c)
	k.A = uint8((int(k.A)*int(full) + 127) / 255)
	return k
}

// blend lays k over the pixel at the front of pix.
func blend(pix []uint8, k color.NRGBA) {
	if k.A == 0 {
		return
	}
	if k.A == 255 {
		pix[0], pix[1], pix[2], pix[3] = k.R, k.G, k.B, 255
		return
	}
	a, below := int(k.A)*255, (255-int(k.A))*int(pix[3])
	sum := a + below
	mix := func(over, under uint8) uint8 { return uint8((int(over)*a + int(under)*below + sum/2) / sum) }
	pix[0], pix[1], pix[2] = mix(k.R, pix[0]), mix(k.G, pix[1]), mix(k.B, pix[2])
	pix[3] = uint8((sum + 127) / 255)
}
