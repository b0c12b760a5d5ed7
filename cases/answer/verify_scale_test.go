package answer

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"archload/cases"
	"archload/cases/casetest"
	"archload/cases/design"
)

// scaleText is a relieved bridge in slip on a formula arch whose apex lies to
// the treble, so that nothing is symmetric; %g are relief and tension.
const scaleText = `format = 1
[plate]
wood = "sitka-spruce"
outline = [[0, -250], [200, -130], [140, 0], [150, 150], [0, 240], [-150, 150], [-140, 0], [-200, -130]]
thickness = 5
arch.formula = { height = 20, apex = [18, 0] }
[rim]
support = "elastic"
[strings]
front_angle = 5
back_angle = 9
each = [{ name = "a", tension = %[2]g }, { name = "b", tension = %[2]g }, { name = "c", tension = %[2]g }]
[bridge]
hold = "slip"
relief = { depth = %[1]g }
[mesh]
size = 9
`

func scaleCase(t *testing.T, relief, tension float64) *cases.Case {
	t.Helper()
	c, err := cases.Load(casetest.Files("a.toml", fmt.Sprintf(scaleText, relief, tension)), "a.toml")
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestSlipScales raises load and relief together: without friction every
// force, gap and movement must grow by the same factor, and every event stay at
// its share of the load. Contact without drag depends on load over gap alone.
func TestSlipScales(t *testing.T) {
	t.Parallel()
	one := answered(t, scaleCase(t, 0.1, 150), 1)
	passed(t, "slip", one)
	st := one.Result.State
	if len(st.Events) < 20 || st.Trace[0].Load != 0 {
		t.Fatalf("%d events from %g on, want a contact that changes with the load", len(st.Events), st.Trace[0].Load)
	}
	for _, k := range []float64{0.25, 2, 3.7} {
		two := answered(t, scaleCase(t, 0.1*k, 150*k), 1)
		to := two.Result.State
		compareScaled(t, fmt.Sprintf("%g times: pad force, N", k), st.Lambda, to.Lambda, k)
		compareScaled(t, fmt.Sprintf("%g times: gap, mm", k), st.Gap, to.Gap, k)
		compareScaled(t, fmt.Sprintf("%g times: movement of the top, mm", k), one.Result.U, two.Result.U, k)
		compareScaled(t, fmt.Sprintf("%g times: movement of the bridge, mm", k), one.Result.Body, two.Result.Body, k)
		compareScaled(t, fmt.Sprintf("%g times: energy, N·mm", k), []float64{one.Result.Energy.Total()}, []float64{two.Result.Energy.Total()}, k*k)
		if len(to.Events) != len(st.Events) {
			t.Errorf("%g times: %d events, want %d", k, len(to.Events), len(st.Events))
			continue
		}
		for i, e := range st.Events {
			if f := to.Events[i]; math.Abs(f.Load-e.Load) > 1e-9 || f.Pad != e.Pad || f.Closes != e.Closes {
				t.Errorf("%g times: event %d is %+v, want %+v", k, i, f, e)
			}
		}
	}
}

// compareScaled wants b = k a to 1e-9 of the largest.
func compareScaled(t *testing.T, what string, a, b []float64, k float64) {
	t.Helper()
	largest, worst := 0.0, 0.0
	for i := range a {
		largest = math.Max(largest, math.Abs(k*a[i]))
		worst = math.Max(worst, math.Abs(b[i]-k*a[i]))
	}
	if !(worst <= 1e-9*largest) || largest == 0 || len(a) != len(b) {
		t.Errorf("%s: off by %.3g at most, want 1e-9 of the largest, %.3g", what, worst, largest)
	}
}

// TestSlipEnergy holds the strain energy, bedding included, against the work
// of the loads and of the contact forces on the gaps they close:
// U = 1/2 F·u - 1/2 Σ λ g, loads and gaps counted from the slack bridge's rest.
func TestSlipEnergy(t *testing.T) {
	t.Parallel()
	s := answered(t, scaleCase(t, 0.1, 150), 1)
	work, closing := slipWork(s)
	want := work/2 - closing/2
	got := s.Result.Energy.Total()
	t.Logf("energy %.9f N·mm; 1/2 F·u %.6f, 1/2 Σ λ g %.6f", got, work/2, closing/2)
	casetest.Within(t, "energy against 1/2 F·u - 1/2 Σ λ g, N·mm", got, want, want, 1e-9)
	if closing < 0.02*work {
		t.Errorf("Σ λ g %.3g of F·u %.3g N·mm: want a relief that counts", closing, work)
	}
}

// slipWork returns F·u of the strings and Σ λ g of the pads, N·mm.
func slipWork(s *design.Solution) (work, closing float64) {
	for _, l := range s.Top.Built.Bridge.Body.Loads {
		u := s.Result.BodyMove(l.Node, l.At)
		for k := range 3 {
			work += l.F[k] * u[k]
		}
	}
	for i, g := range restGaps(s) {
		closing += s.Result.State.Lambda[i] * g
	}
	return work, closing
}

// restGaps are the gaps once the slack bridge lies on its foot, mm.
func restGaps(s *design.Solution) []float64 {
	rest, o := s.Result.State.SlackRest, s.Top.Built.Bridge.Body.Nodes[0]
	out := make([]float64, len(s.Top.Built.Bridge.Pads))
	for i := range out {
		p := &s.Top.Built.Bridge.Pads[i]
		out[i] = p.Gap + p.Dir[0][2]*(rest[2]+rest[3]*(p.At[1]-o[1])-rest[4]*(p.At[0]-o[0]))
	}
	return out
}

// TestRestOnTheEnds lets the slack bridge down on a foot with a parabola under
// it: it touches at both outer ends and overlaps nowhere.
func TestRestOnTheEnds(t *testing.T) {
	t.Parallel()
	for _, hold := range []string{"slip", "grip"} {
		text := strings.Replace(fmt.Sprintf(scaleText, 0.1, 150.0), `hold = "slip"`, fmt.Sprintf("hold = %q", hold), 1)
		s := answered(t, casetest.Load(t, casetest.Files("a.toml", text), "a.toml"), 0.5)
		passed(t, hold, s)
		lo, hi := math.Inf(1), math.Inf(-1)
		for i, g := range restGaps(s) {
			if g < -1e-12 {
				t.Errorf("%s: the slack bridge overlaps the top by %.3g mm at pad %d", hold, -g, i)
			}
			if x := s.Top.Built.Bridge.Pads[i].At[0]; g < 1e-12 {
				lo, hi = math.Min(lo, x), math.Max(hi, x)
			}
		}
		if math.Abs(lo+69) > 1 || math.Abs(hi-69) > 1 {
			t.Errorf("%s: the slack bridge touches from %.1f to %.1f mm, want at the outermost pads of its foot, 70 mm to each side", hold, lo, hi)
		}
	}
}
