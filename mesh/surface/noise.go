package surface

import (
	"math"
	"slices"
	"sort"

	"gonum.org/v1/gonum/mat"

	"archload/mesh/plane"
)

// Points used for the local surface of estimateNoise: a full cubic has ten
// coefficients.
const (
	noiseNeighbours = 24
	cubicTerms      = 10
	noiseSamples    = 300 // points looked at, evenly through the list
)

// estimateNoise returns the standard deviation of the noise that measured
// heights show, mm: each point is compared with a cubic surface through its
// nearest neighbours, and the middle of the sizes of those residuals is taken,
// so that single blunders do not count. What a cubic cannot follow counts as
// noise, so the value is rather too large than too small. It is NaN for fewer
// points than a local surface needs.
//
// The scale 1.4826 turns the median of |r| into the standard deviation of a
// normal distribution; √(n/(n−p)) makes up for the p coefficients fitted to n
// points (both standard statistics).
func estimateNoise(at []plane.Point, z []float64) float64 {
	if len(at) <= noiseNeighbours {
		return math.NaN()
	}
	res := make([]float64, 0, len(at))
	for i := 0; i < len(at); i += 1 + len(at)/noiseSamples {
		if r, ok := localResidual(at, z, i); ok {
			res = append(res, math.Abs(r))
		}
	}
	if len(res) == 0 {
		return math.NaN()
	}
	slices.Sort(res)
	n, p := float64(noiseNeighbours), float64(cubicTerms)
	return 1.4826 * res[len(res)/2] * math.Sqrt(n/(n-p))
}

// nearest lists the points nearest to point i, itself among them, and the distance of the
// farthest of them, mm; of equals the first.
func nearest(at []plane.Point, i int) (set []int, farthest float64) {
	set = make([]int, 0, noiseNeighbours+1)
	var dist [noiseNeighbours + 1]float64
	for k, p := range at {
		d := math.Hypot(p[0]-at[i][0], p[1]-at[i][1])
		n := len(set)
		if n == noiseNeighbours && d >= dist[n-1] {
			continue
		}
		place := sort.Search(n, func(q int) bool { return dist[q] > d })
		copy(dist[place+1:n+1], dist[place:n])
		dist[place] = d
		set = slices.Insert(set, place, k)
		set = set[:min(n+1, noiseNeighbours)]
	}
	return set, dist[noiseNeighbours-1]
}

// localResidual is the height of point i above the cubic through its
// neighbours and itself.
func localResidual(at []plane.Point, z []float64, i int) (float64, bool) {
	set, scale := nearest(at, i)
	if scale == 0 {
		return 0, false
	}
	a := mat.NewDense(noiseNeighbours, cubicTerms, nil)
	b := mat.NewVecDense(noiseNeighbours, nil)
	for r, k := range set {
		x, y := (at[k][0]-at[i][0])/scale, (at[k][1]-at[i][1])/scale
		a.SetRow(r, []float64{1, x, y, x * x, x * y, y * y, x * x * x, x * x * y, x * y * y, y * y * y})
		b.SetVec(r, z[k])
	}
	var qr mat.QR
	qr.Factorize(a)
	var c mat.VecDense
	if err := qr.SolveVecTo(&c, false, b); err != nil { // points in line, say
		return 0, false
	}
	return z[i] - c.AtVec(0), true
}
