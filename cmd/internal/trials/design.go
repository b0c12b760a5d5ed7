package main

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing/fstest"

	"archload/cases"
)

// units says how a case file spells its lengths.
type units int

const (
	inMM units = iota
	inInches
)

// writer makes the text of a random design. All is drawn from a seed, so that the
// same design can be written in other units.
type writer struct {
	strings.Builder
	r  *rand.Rand
	in units
}

// drawn returns the case that a seed draws, or its faults.
func drawn(seed uint64, in units) (*cases.Case, error) {
	w := &writer{r: rand.New(rand.NewPCG(seed, 1)), in: in}
	w.all()
	return cases.Load(fstest.MapFS{"a.toml": {Data: []byte(w.String())}}, "a.toml")
}

// between draws a length in steps of a tenth, mm.
func (w *writer) between(lo, hi float64) float64 {
	return math.Round(10*(lo+(hi-lo)*w.r.Float64())) / 10
}

// often says yes with a chance.
func (w *writer) often(chance float64) bool { return w.r.Float64() < chance }

// of draws one of some words.
func (w *writer) of(words ...string) string { return words[w.r.IntN(len(words))] }

// mm spells a length.
func (w *writer) mm(v float64) string {
	if w.in == inInches {
		return fmt.Sprintf("\"%.15g in\"", v/25.4)
	}
	return fmt.Sprintf("%.15g", v)
}

// at spells a list of lengths.
func (w *writer) at(v ...float64) string {
	var all []string
	for _, x := range v {
		all = append(all, w.mm(x))
	}
	return "[" + strings.Join(all, ", ") + "]"
}

func (w *writer) line(form string, args ...any) { fmt.Fprintf(w, form+"\n", args...) }

// all writes the whole case.
func (w *writer) all() {
	half := w.between(130, 210) // of the lower bout
	w.line("format = 1")
	w.plate(half)
	w.braces(half)
	w.rest(half)
	w.bridge()
}

// plate draws an outline that is its own mirror image as often as not, an arch by
// formula or measured points, and sound holes.
func (w *writer) plate(half float64) {
	w.line("[plate]\nwood = %q\nmade = %q", w.of("sitka-spruce", "red-spruce", "western-redcedar"), w.of("carved", "carved", "pressed"))
	if w.often(0.3) {
		w.line("grain_angle = %.1f\nring_angle = %.1f", w.between(-6, 6), w.between(-20, 20))
	}
	waist, upper := w.between(0.6, 0.8)*half, w.between(0.7, 0.9)*half
	tail, neck := w.between(1.1, 1.3)*half, w.between(1.1, 1.4)*half
	lean := [2]float64{1, 1}
	if w.often(0.5) {
		lean[0] = 1 + w.between(-0.5, 1)/10
	}
	pts := [][2]float64{{0, -tail}, {half, -0.6 * tail}, {waist, 0.05 * neck}, {upper, 0.6 * neck}, {0, neck},
		{-upper * lean[0], 0.6 * neck}, {-waist * lean[0], 0.05 * neck}, {-half * lean[0], -0.6 * tail}}
	var all []string
	for _, p := range pts {
		all = append(all, w.at(p[0], p[1]))
	}
	w.line("outline = [%s]", strings.Join(all, ", "))
	w.line("thickness = %s", w.mm(w.between(3, 6)))
	apex := 0.0
	if w.often(0.4) {
		apex = w.between(-15, 15)
	}
	w.line("arch.formula = { height = %s, apex = %s, recurve_depth = %s }", w.mm(w.between(12, 24)), w.at(apex, w.between(-10, 15)), w.mm(w.between(0, 1.5)))
	w.holes(half)
}

// holes draws one on the centre line, a pair, one to a side, or none.
func (w *writer) holes(half float64) {
	x, size := math.Round(0.42*half), w.at(w.between(12, 24), w.between(40, 60))
	y := w.between(45, 60)
	switch w.r.IntN(4) {
	case 0:
		w.line("[[plate.hole]]\nat = %s\nsize = %s", w.at(0, 0.6*half), w.at(w.between(50, 80), w.between(50, 80)))
	case 1:
		w.line("[[plate.hole]]\nat = %s\nsize = %s\nmirrored = true", w.at(x, y), size)
	case 2:
		w.line("[[plate.hole]]\nat = %s\nsize = %s", w.at(x, y), size)
	}
}

// braces draws up to three bars anywhere, or a pair.
func (w *writer) braces(half float64) {
	brace := func(line string) {
		w.line("[[brace]]\nline = %s\nwidth = %s\nheight = %s", line, w.mm(w.between(5, 9)), w.mm(w.between(5, 14)))
	}
	if w.often(0.3) {
		x, y := w.between(25, 40), w.between(60, 0.8*half)
		for _, side := range []float64{-1, 1} {
			brace("[" + w.at(side*x, y) + ", " + w.at(side*(x+8), -y) + "]")
		}
		return
	}
	for range w.r.IntN(4) {
		x, y := w.between(-0.3*half, 0.3*half), w.between(25, 0.7*half)
		brace("[" + w.at(x, -y) + ", " + w.at(w.between(-0.3*half, 0.3*half), y) + "]")
	}
}

// rest draws rim, strings, gauges, posts and weights.
func (w *writer) rest(half float64) {
	w.line("[rim]\nsupport = %q", w.of("hinged", "clamped", "elastic"))
	w.line("[[gauge]]\nat = %s", w.at(w.between(-50, 50), w.between(20, 60)))
	if w.often(0.2) {
		w.line("[[post]]\nat = %s\nstiffness = 2000", w.at(w.between(-40, 40), w.between(-30, -12)))
	}
	if w.often(0.2) {
		w.line("[[load]]\nat = %s\nforce = [%.1f, 0, -20]", w.at(w.between(-0.4*half, 0.4*half), -0.5*half), w.between(-5, 5))
	}
	w.line("[strings]\nspread = %s\nfront_angle = %.1f\nback_angle = %.1f", w.mm(w.between(36, 60)), w.between(3, 8), w.between(7, 13))
	for range 2 + w.r.IntN(5) {
		w.line("[[strings.each]]\ntension = %.0f", w.between(40, 160))
	}
}

// bridge draws a bridge on one foot or two, full, hollowed or relieved.
func (w *writer) bridge() {
	long := w.between(100, 150)
	w.line("[bridge]\nbuild = %q\nhold = %q\nlength = %s", w.of("one-piece", "one-piece", "posts"), w.of("grip", "friction", "slip"), w.mm(long))
	if w.often(0.4) {
		w.line("at = %s", w.at(w.between(-4, 4), w.between(-6, 6)))
	}
	foot, bearing := long-w.between(0, 12), w.of("full", "full", "perimeter")
	if w.often(0.25) {
		gap := w.between(30, 50)
		w.line("foot = [{ from = %s, to = %s }, { from = %s, to = %s }]", w.mm(-foot/2), w.mm(-gap/2), w.mm(gap/2), w.mm(foot/2))
	} else {
		w.line("foot = [{ from = %s, to = %s, bearing = %q }]", w.mm(-foot/2), w.mm(foot/2), bearing)
	}
	if w.often(0.4) {
		w.line("[bridge.relief]\ndepth = %s", w.mm(w.between(0.1, 0.2)))
	}
}
