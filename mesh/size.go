package mesh

import (
	"fmt"
	"math"
	"runtime"

	"archload/fem/parallel"
	"archload/mesh/plane"
)

// Wanted edge lengths along input curves, mm at scale 1.
//
// Hole edges: 0.4 of the local radius of curvature between 1.5 and 3 mm. With
// 3 mm edges at an eye of radius 4.75 the peak stress reads up to 4 % low even
// with a quadratic membrane; with 2 mm up to 1.8 % (measured in plane stress
// against a 0.35 mm reference).
const (
	lineSize   = 5.0
	holeRadius = 0.4
	holeLeast  = 1.5
	holeMost   = 3.0
	rimRadius  = 0.5 // outline: edges of at most half the radius of curvature
	sharpest   = 0.8 // any boundary edge: at most this times the radius
	sharpLeast = 0.1 // but never less than this fraction of Size

	surfaceTurn = 0.1 // edge times curvature of the surface
	surfaceStep = 5.0 // mm between looks at the curvature, which is an average
	perSizeStep = 1e6 // of the size for a curvature, 1/mm: the rounding of a fitted surface shall not show
)

// arcSource makes the field follow one arc.
func (f *sizeField) arcSource(d *Domain, a *planArc) {
	for i, x := range a.samples {
		r := 1 / max(a.curvature(i), 1e-9)
		h := lineSize
		switch a.part {
		case "outline":
			h = max(rimRadius*r, holeLeast)
		case "hole":
			h = min(max(holeRadius*r, holeLeast), holeMost)
		}
		if a.boundary() {
			h = min(h, max(sharpest*r, sharpLeast*d.Size))
		}
		f.put(x.p, min(h, d.Size))
	}
}

// fineSource sets the size within a zone.
func (f *sizeField) fineSource(z Fine) {
	lo, hi := plane.Bounds(z.Along)
	i0, j0, _, _ := f.locate(Point{lo[0] - z.Radius, lo[1] - z.Radius})
	i1, j1, _, _ := f.locate(Point{hi[0] + z.Radius, hi[1] + z.Radius})
	rows(j0, j1+2, func(j int) {
		for i := i0; i <= i1+1; i++ {
			p, best := f.place(i, j), math.Inf(1)
			for k, q := range z.Along {
				_, d2 := plane.OnChord(z.Along[max(k-1, 0)], q, p)
				best = min(best, d2)
			}
			out := max(math.Sqrt(best)-z.Radius, 0)
			f.h[j*f.nx+i] = min(f.h[j*f.nx+i], z.Size+f.slope*out)
		}
	})
}

// rows does the rows from..end-1 of a grid, some at a time.
func rows(from, end int, do func(j int)) {
	const some = 8
	parallel.Chunks(runtime.GOMAXPROCS(0), end-from, some, func(lo, hi int) {
		for j := from + lo; j < from+hi; j++ {
			do(j)
		}
	})
}

// bendSource limits the size where the surface is curved: between half of
// Size and Size.
func (f *sizeField) bendSource(d *Domain) {
	if d.Curvature == nil {
		return
	}
	coarse := f.bends(d)
	rows(0, f.ny, func(j int) {
		for i := range f.nx {
			k := j*f.nx + i
			f.h[k] = min(f.h[k], coarse.unscaled(f.place(i, j)))
		}
	})
}

// bends is the size that the surface's curvature asks for, on a grid of its own
// over that of f.
func (f *sizeField) bends(d *Domain) *sizeField {
	w, h := float64(f.nx-1)*f.cell, float64(f.ny-1)*f.cell
	step := max(surfaceStep, (w+h)/1000)
	coarse := &sizeField{lo: f.lo, cell: step, nx: int(w/step) + 2, ny: int(h/step) + 2, scale: f.scale}
	coarse.h = make([]float64, coarse.nx*coarse.ny)
	rows(0, coarse.ny, func(j int) {
		for i := range coarse.nx {
			k := math.Abs(d.Curvature(coarse.place(i, j)))
			want := d.Size
			if k > 0 {
				want = min(max(surfaceTurn/k, d.Size/2), d.Size)
				want = math.Round(want*perSizeStep) / perSizeStep
			}
			coarse.h[j*coarse.nx+i] = want
		}
	})
	return coarse
}

// Gaps between curves. A gap as wide as one edge or narrower gets edges of its
// own width, but not below gapLeast times Size.
const (
	gapLeast = 0.25
	gapWedge = 0.35 // curves that meet at more than asin(0.35), 20 degrees, leave no gap
	gapAlong = 3.0  // places on one curve are across a gap if the way along it is that much longer
)

// gapFinder looks for places where input curves pass close to each other.
type gapFinder struct {
	d    *Domain
	arcs *arcSet
	grid *plane.Grid
	arc  []int32 // of each piece in the grid
	num  []int32 // sample at its start
}

// gapSources makes the field fine where curves pass close and the wood
// between them is narrower than the wanted edge.
func (f *sizeField) gapSources(d *Domain, arcs *arcSet) {
	g := &gapFinder{d: d, arcs: arcs}
	var segs [][2]Point
	for k := range arcs.arcs {
		x := arcs.arcs[k].samples
		for i := range len(x) - 1 {
			segs = append(segs, [2]Point{x[i].p, x[i+1].p})
			g.arc, g.num = append(g.arc, int32(k)), append(g.num, int32(i))
		}
	}
	g.grid = plane.NewGrid(segs)
	for k := range arcs.arcs {
		a := &arcs.arcs[k]
		if l := a.length(); l < d.Size*max(d.Scale, 1) && a.ends[0] != a.ends[1] {
			for _, x := range a.samples {
				f.put(x.p, g.limit(l))
			}
		}
		for i := range a.samples {
			if gap, q := g.at(int32(k), i); gap < d.Size*max(d.Scale, 1) {
				f.put(a.samples[i].p, g.limit(gap))
				f.put(q, g.limit(gap))
			}
		}
	}
}

// limit turns the width of a gap into an edge length at scale 1, mm. A scale
// above 1 does not make it longer.
func (g *gapFinder) limit(gap float64) float64 {
	return max(gap, gapLeast*g.d.Size) / max(g.d.Scale, 1)
}

// at returns the width of the narrowest gap at sample i of arc k, mm, and its
// other end, Size (times the scale, if above 1) if there is none.
func (g *gapFinder) at(k int32, i int) (float64, Point) {
	x := &g.arcs.arcs[k].samples[i]
	reach := g.d.Size * max(g.d.Scale, 1)
	best, other := reach, Point{}
	lo, hi := Point{x.p[0] - reach, x.p[1] - reach}, Point{x.p[0] + reach, x.p[1] + reach}
	g.grid.Near(lo, hi, func(s int32) {
		a, b := g.grid.Segs[s][0], g.grid.Segs[s][1]
		t, d2 := plane.OnChord(a, b, x.p)
		if d2 >= best*best || g.together(k, i, s, math.Sqrt(d2)) {
			return
		}
		q := plane.Lerp(a, b, t)
		if g.d.inWood(plane.Lerp(x.p, q, 0.5)) {
			best, other = math.Sqrt(d2), q
		}
	})
	return best, other
}

// together tells whether piece s is only the continuation of arc k, or meets
// it so near and at such an angle that the distance is no gap.
func (g *gapFinder) together(k int32, i int, s int32, gap float64) bool {
	a, b := &g.arcs.arcs[k], &g.arcs.arcs[g.arc[s]]
	x := &a.samples[i]
	if k == g.arc[s] {
		along := math.Abs(x.s - b.samples[g.num[s]].s)
		if a.ends[0] == a.ends[1] {
			along = min(along, a.length()-along)
		}
		return along < gapAlong*gap+2*g.d.Size/6
	}
	for _, v := range a.ends {
		if (v == b.ends[0] || v == b.ends[1]) && gap > gapWedge*plane.Dist(x.p, g.arcs.pts[v]) {
			return true
		}
	}
	return false
}

// newSizeField makes h(x) = min over the sources of (h_source + slope x distance).
// It also samples the arcs.
func newSizeField(d *Domain, arcs *arcSet) (*sizeField, error) {
	coarsest := d.Size * d.Scale
	if n := trianglesPerArea * d.Outline.Area() / (coarsest * coarsest); n > 2*maxTriangles {
		return nil, tooMany(n, d)
	}
	f := emptyField(d)
	for i := range arcs.arcs {
		arcs.arcs[i].sample(f.cell, arcs.pts)
	}
	f.bendSource(d)
	for i := range arcs.arcs {
		f.arcSource(d, &arcs.arcs[i])
	}
	f.gapSources(d, arcs)
	for _, z := range d.Fine {
		f.fineSource(z)
	}
	f.sweep()
	if n := 1.04 * f.expected(d); n > maxTriangles { // the estimate is 2 to 4 % low
		return nil, tooMany(n, d)
	}
	return f, nil
}

func tooMany(n float64, d *Domain) error {
	return &PlaceError{Part: "size", Msg: fmt.Sprintf("about %.3g triangles or more, beyond the limit of %d: want larger edges than %g mm (scale %g)", n, maxTriangles, d.Size, d.Scale)}
}
