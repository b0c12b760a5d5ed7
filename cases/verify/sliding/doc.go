// Package sliding builds and solves the checks of dry friction, beside package
// problem: bodies on firm ground in closed form (ground.go, bar.go, slope.go, beam.go),
// small feet by lot beside a search of its own (bruteforce.go), and a case file whose
// foot comes to grip and slip at the ends, and turns with its mirror image (foot.go).
package sliding
