package reference

import (
	"maps"
	"math"
	"os"
	"testing"

	"github.com/pelletier/go-toml/v2"
)

// TestSeriesClosedForms sets the series and beams behind the references beside
// closed forms of their own.
func TestSeriesClosedForms(t *testing.T) {
	iso := PlateLaw(Isotropic(12*(1-0.09), 0.3), 1).thin()
	// One term: a square plate under sin sin sinks by q/(4 pi⁴ D).
	one := func(m, n float64) float64 {
		if m == 1 && n == 1 {
			return 1
		}
		return 0
	}
	want := 1 / (4 * math.Pow(math.Pi, 4))
	if got := navier(iso, 1, 1, 0.5, 0.5, one, 3).w; math.Abs(got/want-1) > 1e-12 {
		t.Errorf("one term: %g, want %g", got, want)
	}
	// A patch as large as the plate is the uniform load.
	all := navier(iso, 1, 1, 0.5, 0.5, patch(1, 1, 1, 0.5, 0.5, 1, 1), 99).w
	even := navier(iso, 1, 1, 0.5, 0.5, oddOnly(evenly(1)), 99).w
	if math.Abs(all/even-1) > 1e-12 {
		t.Errorf("patch over all: %g, want %g (uniform)", all, even)
	}
	// A long plate between free edges is a beam of E I = D (1 - nu²) for nu 0.
	if got, want := levyFree(0).w, 5.0/384; math.Abs(got/want-1) > 1e-9 {
		t.Errorf("nu 0, two free edges: %.9g, want %.9g (beam)", got, want)
	}
}

// TestTimoshenkoBeam: rigid motions carry no force, and a cantilever sinks by
// P L³/(3 E I) + P L/(k G A).
func TestTimoshenkoBeam(t *testing.T) {
	const l = 30.0 // mm
	ei, ga := 12000*10*216/12.0, 5.0/6*800*60
	k := TimoshenkoBeam(ei, ga, l)
	for i := range 4 {
		up := k[i][0] + k[i][2]
		turned := k[i][1] + k[i][3] - k[i][2]*l // w = -x for a turn of one
		if math.Abs(up)+math.Abs(turned) > 1e-9*k[0][0]*l {
			t.Errorf("row %d: rigid motions give %g and %g, want 0", i, up, turned)
		}
		for j := range 4 {
			if k[i][j] != k[j][i] {
				t.Errorf("k[%d][%d] = %g, k[%d][%d] = %g, want the same", i, j, k[i][j], j, i, k[j][i])
			}
		}
	}
	det := k[2][2]*k[3][3] - k[2][3]*k[3][2]
	if got, want := k[3][3]/det, l*l*l/(3*ei)+l/ga; math.Abs(got/want-1) > 1e-12 {
		t.Errorf("tip under 1 N: %g mm, want %g", got, want)
	}
}

// TestLegendre compares with P3 = (5 s³ - 3 s)/2, s = 2 t - 1.
func TestLegendre(t *testing.T) {
	for _, x := range []float64{0, 0.3, 1} {
		s := 2*x - 1
		want := [3]float64{(5*s*s*s - 3*s) / 2, 2 * (15*s*s - 3) / 2, 4 * 15 * s}
		for k, got := range legendre(x, 4)[3] {
			if math.Abs(got-want[k]) > 1e-12 {
				t.Errorf("derivative %d of P3 at %g: %g, want %g", k, x, got, want[k])
			}
		}
	}
}

// TestTable sets every value of testdata/reference/series.toml beside its sum.
func TestTable(t *testing.T) {
	data, err := os.ReadFile("../../../testdata/reference/series.toml")
	if err != nil {
		t.Fatal(err)
	}
	var table struct {
		Value []struct {
			Name, Quantity, Read, Unit, Source string
			Value, Tolerance                   float64 // of the value
		}
	}
	if err := toml.Unmarshal(data, &table); err != nil {
		t.Fatal(err)
	}
	all, err := Ritz()
	if err != nil {
		t.Fatal(err)
	}
	maps.Copy(all, Series())
	if len(table.Value) == 0 {
		t.Fatal("the table is empty")
	}
	for _, v := range table.Value {
		got, ok := all[v.Read]
		if !ok || v.Unit == "" || v.Source == "" || !(v.Tolerance > 0) {
			t.Fatalf("%s, %s: want a solution that is known, unit, source and tolerance, found %+v", v.Name, v.Quantity, v)
		}
		if e := got/v.Value - 1; !(math.Abs(e) <= v.Tolerance) {
			t.Errorf("%s, %s: summed to %.9g %s, the table holds %.9g: off by %.1e, allowed %.0e", v.Name, v.Quantity, got, v.Unit, v.Value, e, v.Tolerance)
		}
	}
}
