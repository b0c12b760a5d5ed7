package reference

import (
	"math"

	"archload/materials"
)

// Series sums anew the values that the tables hold for supported plates; only
// odd terms count in the middle.
func Series() map[string]float64 {
	out := map[string]float64{}
	wood := TestWood()
	const a, b = WoodLong, WoodWide
	put := func(name string, v bent) {
		out[name+" w"], out[name+" Mx"], out[name+" My"] = v.w, v.mx, v.my
	}
	thin, thick := PlateLaw(wood, 4), PlateLaw(wood, 30)
	put("thin", navier(thin.thin(), a, b, a/2, b/2, oddOnly(evenly(1e-3)), 399))
	put("sheared", navier(PlateLaw(wood, 12), a, b, a/2, b/2, oddOnly(evenly(1e-3)), 399))
	put("thick", navier(thick, a, b, a/2, b/2, oddOnly(evenly(1e-3)), 399))
	put("point", navier(thin.thin(), a, b, a/2, b/2, oddOnly(point(100, a, b, a/2, b/2)), 999))
	iso := PlateLaw(Isotropic(12*(1-0.09), 0.3), 1).thin()
	put("square", navier(iso, 1, 1, 0.5, 0.5, oddOnly(evenly(1)), 999))
	put("square point", navier(iso, 1, 1, 0.5, 0.5, oddOnly(point(1, 1, 1, 0.5, 0.5)), 999))
	put("two free edges", levyFree(0.3))
	put("long", navier(iso, 1, 5, 0.5, 2.5, oddOnly(evenly(1)), 399))
	for _, c := range []struct {
		name    string
		slender float64
	}{{"laminate 10", 10}, {"laminate 20", 20}, {"laminate 100", 100}} {
		lam := materials.Orthotropic{EL: 25, ER: 1, ET: 1, GLR: 0.5, GLT: 0.5, GRT: 0.2, NuLR: 0.25, NuLT: 0.25, NuRT: 0.25}
		v := navier(PlateLaw(lam, 1/c.slender), 1, 1, 0.5, 0.5, oddOnly(evenly(1)), 399)
		out[c.name+" w"] = 100 * v.w / math.Pow(c.slender, 3)
	}
	blocked(out)
	return out
}

// blocked sums the case file supported-plate.toml: a plate 1 mm thick under 5 N
// on 40 x 24 mm about (150, 110).
func blocked(out map[string]float64) {
	p := PlateLaw(TestWood(), 1)
	load := patch(5, WoodLong, WoodWide, 150, 110, 40, 24)
	at := func(x, y float64) float64 { return navier(p, WoodLong, WoodWide, x, y, load, 300).w }
	out["block, under it"], out["block, middle"], out["block, quarter"] = at(150, 110), at(200, 150), at(300, 225)
}
