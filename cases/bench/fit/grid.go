package fit

import (
	"math"

	"archload/cases/motion"
	"archload/fem"
	"archload/fem/sparse"
	"archload/mesh"
)

// gridSide is how many places along and across a shape is looked at.
const gridSide = 25

// grid are the places where shapes are looked at, the first across.
type grid struct {
	up     []sparse.Column // the upward movement of each, over the freedoms
	inside []bool
	free   bool // nothing holds the piece
}

// newGrid lays places evenly over a scene's box.
func newGrid(sc *scene, sys *fem.System) *grid {
	g := &grid{free: sc.free > 0}
	for j := range gridSide {
		for i := range gridSide {
			u, v := (float64(i)+0.5)/gridSide, (float64(j)+0.5)/gridSide
			at, in := sc.at(mesh.Point{sc.lo[0] + u*(sc.hi[0]-sc.lo[0]), sc.lo[1] + v*(sc.hi[1]-sc.lo[1])})
			var up sparse.Column
			if in {
				up = sys.Column([]fem.SurfacePoint{at}, [3]float64{0, 0, 1})
			}
			g.up, g.inside = append(g.up, up), append(g.inside, in)
		}
	}
	return g
}

// look samples a shape: its upward movement at the places, of unit length, the lines that stand still, and
// whether the long edges move against each other.
func (g *grid) look(shape []float64) ([]float64, motion.Pattern, bool) {
	w := make([]float64, len(g.up))
	sum := 0.0
	for i := range g.up {
		for k, d := range g.up[i].Dofs {
			w[i] += g.up[i].Vals[k] * shape[d]
		}
		sum += w[i] * w[i]
	}
	for i := range w {
		w[i] /= math.Sqrt(sum)
	}
	p := motion.Pattern{Across: g.crossings(w, gridSide, 1), Along: g.crossings(w, 1, gridSide)}
	if p.Across == 0 && p.Along == 0 && g.free { // what nothing holds keeps its middle: some of it moves the other way
		p = motion.Pattern{Ring: true}
	}
	odd := 0.0
	for j := range gridSide {
		for i := range gridSide {
			odd += w[gridSide*j+i] * w[gridSide*j+gridSide-1-i]
		}
	}
	return w, p, odd < 0
}

// crossings counts the changes of sense on the way along lines of places, on the line that moves most:
// places of a line are walk apart, lines apart.
func (g *grid) crossings(w []float64, walk, apart int) int {
	best, most := 0, -1.0
	for l := range gridSide {
		count, last, sum := 0, 0.0, 0.0
		for k := range gridSide {
			i := l*apart + k*walk
			if !g.inside[i] {
				continue
			}
			v := w[i]
			sum += v * v
			if math.Abs(v) < still {
				continue
			}
			if last != 0 && (v > 0) != (last > 0) {
				count++
			}
			last = v
		}
		if sum > most {
			best, most = count, sum
		}
	}
	return best
}

// still is the movement, of the shape of unit length over the grid, below which a place counts as standing
// still: a twentieth of the mean.
const still = 0.05 / gridSide

// alike is how much two shapes are the same, 0 to 1: the square of their cosine (the modal assurance
// criterion).
func alike(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum * sum
}
