package surface

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"archload/mesh/plane"
)

// band is a strip of the plate by distance from the outline.
type band struct{ from, to float64 } // mm

var bands = [3]band{{0.5, 10}, {10, 35}, {35, 1e9}}

// fidelity is the error of a fitted arch in one band.
type fidelity struct {
	slopeP95, slopeMax float64 // degrees
	curvP95, curvRMS   float64 // %, over the larger of local and belly mean curvature, mean over a 15 mm disc
	heightMax          float64 // mm
}

// probe is one place where fit and truth are compared.
type probe struct {
	p     plane.Point
	d     float64    // mm from the outline
	hess  [3]float64 // true second derivatives xx, xy, yy, 1/mm
	err   [3]float64 // error of them, 1/mm
	slope float64    // angle between the gradients, degrees
	z     float64    // error of the height, mm
}

const (
	probeStep = 3.0 // mm
	probeDisc = 7.5 // mm, radius over which curvature errors are averaged
)

// probes compares fit and truth on a square grid; index finds them by column
// and row.
func probes(s *truth, fit Surface) (all []probe, index map[[2]int]int) {
	index = map[[2]int]int{}
	for i := 0; s.rim.lo[0]+float64(i)*probeStep < s.rim.hi[0]; i++ {
		for j := 0; s.rim.lo[1]+float64(j)*probeStep < s.rim.hi[1]; j++ {
			p := plane.Point{s.rim.lo[0] + float64(i)*probeStep, s.rim.lo[1] + float64(j)*probeStep}
			f := s.rim.nearest(p)
			if !f.inside || f.dist < bands[0].from {
				continue
			}
			want, got := s.At(p), fit.At(p)
			index[[2]int{i, j}] = len(all)
			all = append(all, probe{
				p: p, d: f.dist, z: math.Abs(got.Z - want.Z),
				hess:  [3]float64{want.Zxx, want.Zxy, want.Zyy},
				err:   [3]float64{got.Zxx - want.Zxx, got.Zxy - want.Zxy, got.Zyy - want.Zyy},
				slope: math.Atan(math.Hypot(got.Zx-want.Zx, got.Zy-want.Zy)) * 180 / math.Pi,
			})
		}
	}
	return all, index
}

// meanError returns the mean error of the second derivatives over the disc
// around the probe in column i, row j.
func meanError(all []probe, index map[[2]int]int, i, j int) (mean [3]float64) {
	n := 0.0
	centre := all[index[[2]int{i, j}]].p
	for di := -2; di <= 2; di++ {
		for dj := -2; dj <= 2; dj++ {
			m, ok := index[[2]int{i + di, j + dj}]
			if !ok || plane.Dist(all[m].p, centre) > probeDisc {
				continue
			}
			n++
			for c := range mean {
				mean[c] += (all[m].err[c] - mean[c]) / n
			}
		}
	}
	return mean
}

// compare measures the fit against the truth in the three bands.
func compare(s *truth, fit Surface) (out [3]fidelity) {
	all, index := probes(s, fit)
	belly, count := 0.0, 0.0
	for _, e := range all {
		if e.d >= bands[2].from {
			belly, count = belly+frobenius(e.hess), count+1
		}
	}
	belly /= count
	for b, r := range bands {
		var slope, curv []float64
		for ij, k := range index {
			e := &all[k]
			if e.d < r.from || e.d >= r.to {
				continue
			}
			slope = append(slope, e.slope)
			curv = append(curv, 100*frobenius(meanError(all, index, ij[0], ij[1]))/max(belly, frobenius(e.hess)))
			out[b].heightMax = max(out[b].heightMax, e.z)
		}
		slices.Sort(slope)
		slices.Sort(curv)
		out[b].slopeP95, out[b].slopeMax = slope[len(slope)*95/100], slope[len(slope)-1]
		out[b].curvP95 = curv[len(curv)*95/100]
		for _, v := range curv {
			out[b].curvRMS += v * v / float64(len(curv))
		}
		out[b].curvRMS = math.Sqrt(out[b].curvRMS)
	}
	return out
}

func frobenius(h [3]float64) float64 { return math.Sqrt(h[0]*h[0] + 2*h[1]*h[1] + h[2]*h[2]) }

// contourData are contours of the truth every step mm with points every 5 mm
// rounded to 0.1, an apex spot, and edge profiles.
func contourData(t testing.TB, s *truth, step float64, profiles int) Data {
	t.Helper()
	o := ContourOptions{Round: 0.1}
	var levels []float64
	for z := step; z < truthTop; z += step {
		levels = append(levels, z)
	}
	lines, err := Contours(s, guitarShape{}, levels, o)
	if err != nil {
		t.Fatal(err)
	}
	lines = append(lines, ContourLine{ID: "apex", Height: roundTo(s.At(s.apex).Z, 0.1), Points: []plane.Point{s.apex}})
	var at []float64
	for d := 4.0; d <= 48; d += 4 {
		at = append(at, d)
	}
	spots, err := EdgeProfiles(s, guitarShape{}, profiles, at, o)
	if err != nil {
		t.Fatal(err)
	}
	rim := truthRim
	return Data{Outline: guitarShape{}, Lines: append(lines, spots...), Rim: &rim}
}

// scattered are count noisy heights spread at random over the plate.
func scattered(s *truth, count int, noise float64) Data {
	r := rand.New(rand.NewPCG(7, 11))
	rim := truthRim
	d := Data{Outline: guitarShape{}, Rim: &rim, Noise: noise}
	for len(d.Points) < count {
		p := plane.Point{s.rim.lo[0] + r.Float64()*(s.rim.hi[0]-s.rim.lo[0]), s.rim.lo[1] + r.Float64()*(s.rim.hi[1]-s.rim.lo[1])}
		if s.rim.contains(p) {
			d.Points = append(d.Points, Sample{At: p, Z: s.At(p).Z + noise*r.NormFloat64()})
		}
	}
	return d
}

// gridded are exact heights on a square grid, to be met to 0.001 mm.
func gridded(s *truth, step float64) Data {
	rim := truthRim
	d := Data{Outline: guitarShape{}, Rim: &rim, Noise: 0.001}
	for px := -205.0; px < 206; px += step {
		for py := -200.0; py < 311; py += step {
			if p := (plane.Point{px, py}); s.rim.contains(p) {
				d.Points = append(d.Points, Sample{At: p, Z: s.At(p).Z})
			}
		}
	}
	return d
}

// TestFidelity measures the fit against arches that are no splines. Bars: the
// project's own measurements with a prototype of the same method; plain is
// without a trough, soft and gentle have one 1.4 mm below the rim.
func TestFidelity(t *testing.T) {
	plain, soft, gentle := newTruth(t, 2, 0), newTruth(t, 2, 1.55), newTruth(t, 1.5, 1.9)
	type bars struct { // degrees, %; recurve: 10 to 35 mm from the outline, belly: beyond
		bellyP95, bellyMax, recurveP95, recurveMax float64
		bellyCurvP95, bellyCurvRMS, recurveCurvP95 float64
		bellyHeight                                float64 // mm
		trough, guessed                            bool
	}
	profiles := bars{bellyP95: 0.5, bellyMax: 1, recurveP95: 1.2, bellyCurvRMS: 20, trough: true}
	for _, c := range []struct {
		name string
		s    *truth
		data Data
		most bars
	}{
		{"plain, contours 3 mm", plain, contourData(t, plain, 3, 0), bars{
			bellyP95: 0.3, bellyMax: 0.7, recurveP95: 0.3, recurveMax: 0.7, bellyCurvP95: 10, recurveCurvP95: 25, guessed: true}},
		{"soft, contours 3 mm, 16 profiles", soft, contourData(t, soft, 3, 16), profiles},
		{"gentle, contours 3 mm, 16 profiles", gentle, contourData(t, gentle, 3, 16), profiles},
		{"gentle, contours 1 mm, 16 profiles", gentle, contourData(t, gentle, 1, 16), bars{
			bellyMax: 0.3, bellyCurvP95: 12, trough: true}},
		{"gentle, 1500 points, noise 0.1", gentle, scattered(gentle, 1500, 0.1), bars{bellyP95: 0.6, trough: true}},
		{"soft, exact points every 10 mm", soft, gridded(soft, 10), bars{
			bellyP95: 0.1, recurveP95: 0.1, bellyHeight: 0.02, trough: true}},
	} {
		fit, report, err := Fit(c.data)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		e := compare(c.s, fit)
		belly, recurve, m := e[2], e[1], c.most
		t.Logf("%s: belly slope p95 %.2f max %.2f, curvature p95 %.0f rms %.0f, height %.3f | recurve %.2f %.2f, %.0f %.0f, %.3f | edge %.2f %.2f | log λ %.1f, %d factorisations",
			c.name, belly.slopeP95, belly.slopeMax, belly.curvP95, belly.curvRMS, belly.heightMax,
			recurve.slopeP95, recurve.slopeMax, recurve.curvP95, recurve.curvRMS, recurve.heightMax,
			e[0].slopeP95, e[0].slopeMax, math.Log10(report.Smoothing), report.Factorizations)
		for _, b := range []struct {
			what      string
			got, most float64
		}{
			{"belly slope p95, degrees", belly.slopeP95, m.bellyP95},
			{"belly slope max, degrees", belly.slopeMax, m.bellyMax},
			{"belly curvature p95, %", belly.curvP95, m.bellyCurvP95},
			{"belly curvature rms, %", belly.curvRMS, m.bellyCurvRMS},
			{"belly height max, mm", belly.heightMax, m.bellyHeight},
			{"recurve slope p95, degrees", recurve.slopeP95, m.recurveP95},
			{"recurve slope max, degrees", recurve.slopeMax, m.recurveMax},
			{"recurve curvature p95, %", recurve.curvP95, m.recurveCurvP95},
		} {
			if b.most > 0 && b.got > b.most {
				t.Errorf("%s: %s = %.3f, want at most %g", c.name, b.what, b.got, b.most)
			}
		}
		checkReport(t, c.name, report, [2]bool{m.trough, m.guessed})
	}
}

// checkReport holds the report against what the data are: met within their
// errors, contour points within 0.05 mm, heights rounded to 0.1 within 0.12.
// want says whether a trough is seen, and whether a stretch of it is guessed.
func checkReport(t *testing.T, name string, r Report, want [2]bool) {
	t.Helper()
	if got := [2]bool{r.Trough, len(r.Warnings) > 0}; got != want {
		t.Errorf("%s: trough, warnings = %v, want %v (%v)", name, got, want, r.Warnings)
	}
	most := map[string]float64{"outline and contours": 0.05, "spots and templates": 0.12, "measured points": 0.5}
	for _, c := range r.Classes {
		if worst := math.Abs(c.Worst.Error); worst > most[c.Class] || c.Ratio > 1 {
			t.Errorf("%s, %s: worst misfit %.3f mm, rms %.2f of the expected; want at most %g and 1",
				name, c.Class, worst, c.Ratio, most[c.Class])
		}
	}
}

func TestContoursAloneCannotSeeTheTrough(t *testing.T) {
	for _, s := range []*truth{newTruth(t, 2, 1.55), newTruth(t, 1.5, 1.9)} {
		_, report, err := Fit(contourData(t, s, 3, 0))
		if err != nil {
			t.Fatal(err)
		}
		if len(report.Warnings) == 0 || !strings.Contains(report.Warnings[0].Msg, "the recurve is guessed here") {
			t.Errorf("warnings = %v, want that the recurve is guessed", report.Warnings)
		}
	}
}
