package materials

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"
)

func TestCheckAcceptsAndRefuses(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(o *Orthotropic)
		keys   string // of the faults, in order; "" for none
		says   string // part of the message
	}{
		{"handbook Sitka", func(*Orthotropic) {}, "", ""},
		{"isotropic steel", func(o *Orthotropic) { *o = isotropic(210000, 0.3, 7850) }, "", ""},
		{"no cross strain", func(o *Orthotropic) { o.NuLR, o.NuLT, o.NuRT = 0, 0, 0 }, "", ""},
		{"negative ratio, still definite", func(o *Orthotropic) { o.NuRT = -0.9 }, "", ""},
		{"missing", func(o *Orthotropic) { o.GRT = 0 }, "GRT", "missing or zero; want > 0 MPa"},
		{"negative", func(o *Orthotropic) { o.ET = -430 }, "ET", "found -430 MPa; want > 0"},
		{"not a number", func(o *Orthotropic) { o.GLR = math.NaN() }, "GLR", "found NaN"},
		{"infinite", func(o *Orthotropic) { o.EL = math.Inf(1) }, "EL", "found +Inf"},
		{"huge", func(o *Orthotropic) { o.ER = 2e7 }, "ER", "found 2e+07 MPa; want at most 1e+07"},
		{"tiny", func(o *Orthotropic) { o.GLT = 1e-9 }, "GLT", "want at least 1e-06"},
		{"no density", func(o *Orthotropic) { o.Density = 0 }, "density", "want > 0 kg/m³"},
		{"ratio not a number", func(o *Orthotropic) { o.NuLT = math.NaN() }, "nuLT", "found NaN"},
		{"ratio infinite", func(o *Orthotropic) { o.NuLR = math.Inf(-1) }, "nuLR", "found -Inf"},
		{"several at once", func(o *Orthotropic) { o.EL, o.GRT, o.NuRT = 0, -1, math.NaN() }, "EL GRT nuRT", ""},
		// 0.435 -> 1.9 > sqrt(ER/ET) = 1.347
		{"rt indefinite", func(o *Orthotropic) { o.NuRT = 1.9 }, "nuRT", "1.9 makes the compliance indefinite; want between -1.347 and 1.32 "},
		{"lr indefinite", func(o *Orthotropic) { o.NuLR = 3.6 }, "nuLR", "3.6 makes the compliance indefinite"},
		{"lt indefinite", func(o *Orthotropic) { o.NuLT = -5 }, "nuLT", "-5 makes the compliance indefinite"},
		// Each pair is admissible, the three together are not.
		{"all three together", func(o *Orthotropic) { o.NuLR, o.NuLT, o.NuRT = 2.5, 3.2, 0.6 }, "nuLR", "makes the compliance indefinite"},
		{"incompressible", func(o *Orthotropic) { *o = isotropic(1000, 0.5, 1000) }, "nuLR", "want between -1 and 0.5"},
	} {
		o := sitka()
		c.change(&o)
		err := o.Check()
		var keys []string
		var fs Faults
		if errors.As(err, &fs) {
			for _, f := range fs {
				keys = append(keys, f.Key)
			}
		}
		if got := strings.Join(keys, " "); got != c.keys || (err == nil) != (c.keys == "") {
			t.Errorf("%s: faults at %q, want %q (%v)", c.name, got, c.keys, err)
		}
		if err != nil && !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: says %q, want it to hold %q", c.name, err, c.says)
		}
	}
}

// TestCheckIsDefiniteness compares Check with the eigenvalues of the scaled
// compliance for random ratios, and the range it names with its own edges.
func TestCheckIsDefiniteness(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	var refused int
	for range 2000 {
		o := Orthotropic{EL: 1000 * math.Exp(r.NormFloat64()), ER: 1000 * math.Exp(r.NormFloat64()),
			ET: 1000 * math.Exp(r.NormFloat64()), GLR: 100, GLT: 100, GRT: 100, Density: 500,
			NuLR: r.NormFloat64() / 2, NuLT: r.NormFloat64() / 2, NuRT: r.NormFloat64() / 2}
		root := [3]float64{math.Sqrt(o.EL), math.Sqrt(o.ER), math.Sqrt(o.ET)}
		s, sym := o.Compliance(), mat.NewSymDense(3, nil)
		for i := range 3 {
			for j := range 3 {
				sym.SetSym(i, j, s[i][j]*root[i]*root[j])
			}
		}
		var eig mat.EigenSym
		if !eig.Factorize(sym, false) {
			t.Fatal("eigenvalues did not converge")
		}
		least := eig.Values(nil)[0]
		if math.Abs(least) < 1e-7 {
			continue
		}
		if err := o.Check(); (err == nil) != (least > 0) {
			t.Errorf("%+v: Check says %v, least eigenvalue %g", o, err, least)
		} else if err != nil {
			refused++
		}
	}
	if refused < 300 || refused > 1700 {
		t.Errorf("%d of 2000 refused, want both sides well tried", refused)
	}
}

func TestReciprocity(t *testing.T) {
	o := sitka()
	s := o.Compliance()
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"nuRL = nuLR ER/EL, 0.372 * 0.078", -s[0][1] * o.ER, 0.029016},
		{"nuTL = nuLT ET/EL, 0.467 * 0.043", -s[0][2] * o.ET, 0.020081},
		{"nuTR = nuRT ET/ER, 0.435 * 43/78", -s[1][2] * o.ET, 0.435 * 43 / 78},
	} {
		near(t, c.what, c.got, c.want, 1e-12)
	}
	for i := range s {
		for j := range s {
			if s[i][j] != s[j][i] {
				t.Errorf("S[%d][%d] = %g differs from S[%d][%d] = %g", i, j, s[i][j], j, i, s[j][i])
			}
		}
	}
}
