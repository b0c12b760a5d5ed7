// Package surface makes smooth functions over a plan: the arch of a plate from
// what a maker knows of it, and its graduation. It knows no triangles. Lengths
// are mm.
//
// A [Surface] answers with a [Jet] at any place: value, slopes and second
// derivatives. There are four kinds here: [Flat], the [ThinPlate] through a few places, the [Spline] that [Fit]
// lays through data, and the arch of [NewFormula].
//
// # Fit
//
// Data are contour lines, spot heights, templates and measured points, in any
// mixture. The surface f of bicubic B-splines (C. de Boor, A Practical Guide
// to Splines, chapters IX and XVII) minimises
//
//	Σ ((f(pᵢ) − zᵢ)/σᵢ)² + λ ∫ a² f_nnn² + 3 f_nnt² + 3 f_ntt² + f_ttt²,
//
// n across the outline, t along it. λ is the greatest for which every class of
// data is met to within its own errors (V. A. Morozov's discrepancy principle;
// C. H. Reinsch, Numer. Math. 10, 1967). a < 1 near the outline where the data
// show a trough there. Where the σ come from stands in datum.go, what is
// refused in check.go, what is doubted in report.go.
//
//	s, report, err := surface.Fit(surface.Data{
//		Outline: outline,
//		Lines:   []surface.ContourLine{{ID: "a", Height: 12, Points: pts}},
//	})
//	z := s.At(plane.Point{0, 40}).Z
//
// The normal equations are sparse: blocks.go hands them to package sparse in blocks of six splines.
//
// [FitLike] takes from another fit over the same outline the equations without their data
// (ground.go): an apex that is moved under the hand costs three quarters.
//
// # Formula
//
// [NewFormula] makes an arch from height, rim and apex over any outline:
//
//	z = rim + A φ(u) − depth (d/at)² exp(1 − (d/at)²),  −Δu = s,  u = 0 on the outline,
//
// see there.
//
// # Reading a surface off again
//
// [Contours] returns lines of equal height by marching squares, [EdgeProfiles]
// heights square to the outline.
//
// # Order of the files
//
// From below: jet, data, spline, rise, cross, rim, blocks, system, roughness, ground,
// noise, datum, check, fitter, level, search, report, fit; beside them thinplate, dome, formula
// and contour. Nothing is kept between calls; the same data give the same bits
// with one processor or many.
package surface
