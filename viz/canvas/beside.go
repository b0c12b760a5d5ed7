package canvas

import "math"

// Beside looks for a free place near a mark: to the right first, then around
// it, then further out.
func (g *Page) Beside(at Point, words string, s Style) (b Block, far, ok bool) {
	w := g.TextWidth(words, s)
	for ring, r := range []float64{6.5, 9, 16, 26, 38, 52, 70} {
		for _, d := range [][2]float64{{1, 0}, {1, 1}, {1, -1}, {-1, 0}, {-1, 1}, {-1, -1}, {0, 1}, {0, -1}} {
			x, y := at.X+d[0]*r, at.Y-3+d[1]*r
			switch {
			case d[0] < 0:
				x -= w
			case d[0] == 0:
				x, y = x-w/2, y+5*d[1]
			}
			b = g.Place(Point{x, y}, words, s, 0, 0)
			if g.Free(b.Grown(1.2)) && (ring < 2 || g.open(at, b)) {
				return b, ring > 1, true
			}
		}
	}
	return b, false, false
}

// open tells whether the straight way from a mark to its label crosses no
// other label.
func (g *Page) open(at Point, b Block) bool {
	way := Around(at, b.At.Add(b.W/2, b.Up/2), 0.5)
	for _, o := range g.labels {
		if way.Overlaps(o) {
			return false
		}
	}
	return true
}

// PlaceAlong looks for a free place beside a line, off points from it.
func (g *Page) PlaceAlong(t *Tag, l []Point, off float64) bool {
	for _, share := range []float64{0.18, 0.82, 0.3, 0.7, 0.5, 0.1, 0.9} {
		for _, side := range []float64{off, -off} {
			at, angle := Along(l, share)
			angle = Readable(angle)
			s, c := math.Sincos(angle)
			t.Box = g.Place(at.Add(-s*(side-2.6), c*(side-2.6)), t.Text, t.In, 0.5, angle)
			if g.Free(t.Box.Grown(1.2)) {
				return true
			}
		}
	}
	return false
}
