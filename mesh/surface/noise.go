package surface

import (
	"cmp"
	"math"
	"slices"

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
	near := make([]int, len(at))
	for i := 0; i < len(at); i += 1 + len(at)/noiseSamples {
		if r, ok := localResidual(at, z, i, near); ok {
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

// localResidual is the height of point i above the cubic through its
// neighbours and itself.
func localResidual(at []plane.Point, z []float64, i int, near []int) (float64, bool) {
	for k := range near {
		near[k] = k
	}
	d := func(k int) float64 { return math.Hypot(at[k][0]-at[i][0], at[k][1]-at[i][1]) }
	slices.SortFunc(near, func(a, b int) int { return cmp.Or(cmp.Compare(d(a), d(b)), a-b) })
	set := near[:noiseNeighbours]
	scale := d(set[noiseNeighbours-1])
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
