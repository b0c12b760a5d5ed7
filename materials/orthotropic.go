package materials

import (
	"fmt"
	"math"
)

// Limits of what Check accepts; they catch a wrong unit or a slip of the
// hand, not an unusual wood.
const (
	maxModulus  = 1e7   // MPa, ten times diamond
	minModulus  = 1e-6  // MPa
	maxDensity  = 25000 // kg/m³, above osmium
	minDefinite = 1e-9  // 1, least determinant of the scaled compliance
)

// Orthotropic is the elastic behaviour of a wood in its axes L, R, T.
type Orthotropic struct {
	EL, ER, ET       float64 // MPa, Young's moduli
	GLR, GLT, GRT    float64 // MPa, shear moduli; GRT is the rolling shear modulus
	NuLR, NuLT, NuRT float64 // 1, strain along the second letter when loaded along the first, reversed
	Density          float64 // kg/m³
}

// Check reports every constant that is missing, not finite, out of any
// physical range, or makes the compliance indefinite. The error is Faults.
// A Poisson ratio may be zero or negative.
func (o Orthotropic) Check() error {
	fs := o.rangeFaults()
	if len(fs) > 0 {
		return fs
	}
	if f, bad := o.indefinite(); bad {
		return Faults{f}
	}
	return nil
}

// rangeFaults looks at each constant alone.
func (o Orthotropic) rangeFaults() Faults {
	var fs Faults
	for _, q := range []struct {
		key       string
		value     float64
		unit      string
		low, high float64
	}{
		{"density", o.Density, "kg/m³", 0, maxDensity},
		{"EL", o.EL, "MPa", minModulus, maxModulus},
		{"ER", o.ER, "MPa", minModulus, maxModulus},
		{"ET", o.ET, "MPa", minModulus, maxModulus},
		{"GLR", o.GLR, "MPa", minModulus, maxModulus},
		{"GLT", o.GLT, "MPa", minModulus, maxModulus},
		{"GRT", o.GRT, "MPa", minModulus, maxModulus},
	} {
		if msg := positive(q.value, q.low, q.high, q.unit); msg != "" {
			fs = append(fs, Fault{Key: q.key, Msg: msg})
		}
	}
	for _, q := range []struct {
		key   string
		value float64
	}{{"nuLR", o.NuLR}, {"nuLT", o.NuLT}, {"nuRT", o.NuRT}} {
		if math.IsNaN(q.value) || math.IsInf(q.value, 0) {
			fs = append(fs, Fault{Key: q.key, Msg: fmt.Sprintf("found %g; want a finite number", q.value)})
		}
	}
	return fs
}

// positive says what is wrong with a value that must lie above 0 (and not
// below low) and not above high; "" if nothing is.
func positive(v, low, high float64, unit string) string {
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		return fmt.Sprintf("found %g; want a finite number of %s", v, unit)
	case v == 0:
		return fmt.Sprintf("missing or zero; want > 0 %s", unit)
	case v < 0:
		return fmt.Sprintf("found %g %s; want > 0", v, unit)
	case v < low:
		hint := ""
		if unit == "MPa" && v*1000 >= low {
			hint = " (a value in GPa needs a factor 1000)"
		}
		return fmt.Sprintf("found %g %s; want at least %g%s", v, unit, low, hint)
	case v > high:
		return fmt.Sprintf("found %g %s; want at most %g", v, unit, high)
	}
	return ""
}

// indefinite names the Poisson ratio that breaks positive definiteness, with
// the range it must lie in while the other constants stay. With the scaled
// ratios a, b, c of the package comment the condition is |a|, |b|, |c| < 1
// and 1 - a² - b² - c² - 2abc > 0; the largest is the one to blame.
func (o Orthotropic) indefinite() (Fault, bool) {
	key := [3]string{"nuLR", "nuLT", "nuRT"}
	nu := [3]float64{o.NuLR, o.NuLT, o.NuRT}
	root := [3]float64{math.Sqrt(o.EL / o.ER), math.Sqrt(o.EL / o.ET), math.Sqrt(o.ER / o.ET)}
	var a [3]float64
	worst := 0
	for i := range a {
		a[i] = nu[i] / root[i]
		if math.Abs(a[i]) > math.Abs(a[worst]) {
			worst = i
		}
	}
	det := 1 - a[0]*a[0] - a[1]*a[1] - a[2]*a[2] - 2*a[0]*a[1]*a[2]
	if math.Abs(a[worst]) < 1 && det > minDefinite {
		return Fault{}, false
	}
	p, q := a[(worst+1)%3], a[(worst+2)%3]
	mid, half := 0.0, 1.0
	if math.Abs(p) < 1 && math.Abs(q) < 1 {
		mid, half = -p*q, math.Sqrt((1-p*p)*(1-q*q))
	}
	return Fault{Key: key[worst], Msg: fmt.Sprintf(
		"%g makes the compliance indefinite; want between %.4g and %.4g with the other constants as they are",
		nu[worst], (mid-half)*root[worst], (mid+half)*root[worst])}, true
}
