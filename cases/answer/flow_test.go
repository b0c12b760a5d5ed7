package answer

import (
	"math"
	"strings"
	"testing"

	"archload/cases"
	"archload/cases/casetest"
	"archload/cases/design"
	"archload/fem/flow"
	"archload/mesh"
)

// outflow is what flows out of each node of the plan, N: -∫ t·grad v for its
// hat function v.
func outflow(m *mesh.Mesh, t [][2]float64) []float64 {
	out := make([]float64, len(m.Points))
	for i, tri := range m.Tris {
		for k, n := range tri {
			a, b := m.Points[tri[(k+1)%3]], m.Points[tri[(k+2)%3]]
			out[n] -= (t[i][0]*(a[1]-b[1]) + t[i][1]*(b[0]-a[0])) / 2
		}
	}
	return out
}

// TestFlowBalances: at every node what flows out is what load and braces press
// on it less what rim and supports hold, to 1e-8 of the load; the sums are the
// strings' downforce and the reactions, and a brace gives what it takes.
func TestFlowBalances(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"course-guitar", "course-guitar-elastic", "bowed-layout"} {
		s := solved(t, name, 0.5)
		f := s.Flow
		plate, whole := outflow(s.Top.Built.Mesh, f.Plate), outflow(s.Top.Built.Mesh, f.Whole)
		var off, load, held, braces float64
		for n := range plate {
			want := f.Load[n] - f.Rim[n] - f.Support[n]
			off = math.Max(off, math.Abs(whole[n]-want))
			off = math.Max(off, math.Abs(plate[n]-want-f.Brace[n]))
			load, held, braces = load+f.Load[n], held+f.Rim[n]+f.Support[n], braces+f.Brace[n]
		}
		if off > 1e-8*f.Total || f.Divergence > 1e-8 {
			t.Errorf("%s: a node is off balance by %.2g of the load (reported %.2g), want <= 1e-8", name, off/f.Total, f.Divergence)
		}
		down := Summarize(s).Strings.Downforce
		if math.Abs(load-down) > 1e-8*down || math.Abs(held-down) > 1e-8*down || math.Abs(braces) > 1e-8*down {
			t.Errorf("%s: load %.9g, held %.9g, braces %.2g N; want %.9g, the same and 0", name, load, held, braces, down)
		}
	}
}

// flux is the force through the straight cut from a to b, to the right, N, and
// whether the cut stays on the plate.
func flux(f *flow.Flow, a, b [2]float64) (force float64, whole bool) {
	const n = 1000
	dx, dy := (b[0]-a[0])/n, (b[1]-a[1])/n
	for i := range n {
		u := float64(i) + 0.5
		t, in := f.Stream(a[0]+u*dx, a[1]+u*dy)
		if !in {
			return 0, false
		}
		force += t[0]*dy - t[1]*dx
	}
	return force, true
}

// alongLine is the place at share u of a line's length.
func alongLine(l [][2]float64, u float64) [2]float64 {
	total := 0.0
	step := func(i int) float64 { return math.Hypot(l[i][0]-l[i-1][0], l[i][1]-l[i-1][1]) }
	for i := 1; i < len(l); i++ {
		total += step(i)
	}
	left := u * total
	for i := 1; i < len(l); i++ {
		if d := step(i); left > d || d == 0 {
			left -= d
			continue
		}
		k := left / step(i)
		return [2]float64{l[i-1][0] + k*(l[i][0]-l[i-1][0]), l[i-1][1] + k*(l[i][1]-l[i-1][1])}
	}
	return l[len(l)-1]
}

// TestFlowBetweenLines: the same force flows between two neighbouring lines all
// along, within 2 %, summed over straight cuts from the one to the other.
func TestFlowBetweenLines(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"course-guitar", "octave-mandola", "course-guitar-two-feet"} {
		f := solved(t, name, 0.5).Flow
		lines, err := f.Lines(flowLines)
		if err != nil {
			t.Fatal(err)
		}
		cuts := 0
		for k := 1; k < len(lines); k++ {
			a, b := lines[k-1], lines[k]
			if a.Force != b.Force {
				continue // of different feet
			}
			for _, u := range []float64{0.1, 0.3, 0.5, 0.7, 0.9} {
				p, q := alongLine(a.Points, u), alongLine(b.Points, u)
				got, whole := flux(f, p, q)
				if !whole || math.Hypot(p[0]-q[0], p[1]-q[1]) > 40 {
					continue // the neighbours part round a hole or a corner
				}
				cuts++
				if math.Abs(got-a.Force) > 0.02*a.Force {
					t.Errorf("%s: %.4f N between lines %d and %d at %.0f %% of their way, want %.4f", name, got, k-1, k, 100*u, a.Force)
				}
			}
		}
		if cuts < 100 {
			t.Errorf("%s: %d cuts, want 100 at least", name, cuts)
		}
	}
}

// TestFlowConverges: at ten places all over the plate, a triangle or more away
// from foot, holes and braces, the flow changes by less than 5 % to a finer
// mesh, and what the balance changes falls.
func TestFlowConverges(t *testing.T) {
	t.Parallel()
	c := casetest.Open(t, "course-guitar")
	coarse, fine := answered(t, c, 0.7).Flow, answered(t, c, 1).Flow
	for _, p := range [][2]float64{{0, 45}, {15, 70}, {10, -80}, {0, 140}, {0, -150}, {70, -100}, {-60, 140}, {110, 100}, {-80, -170}, {59, 80}} {
		a, in := coarse.At(p[0], p[1])
		b, _ := fine.At(p[0], p[1])
		va, vb := math.Hypot(a[0], a[1]), math.Hypot(b[0], b[1])
		t.Logf("(%4.0f, %4.0f): %.4f, then %.4f N/mm, %+.2f %%", p[0], p[1], va, vb, 100*(vb/va-1))
		if !in || !(math.Abs(vb/va-1) < 0.05) {
			t.Errorf("flow at (%g, %g) mm: %.4f N/mm, on the finer mesh %.4f, want within 5 %%", p[0], p[1], va, vb)
		}
	}
	if !(fine.Correction < 0.85*coarse.Correction && fine.Correction < 0.01) {
		t.Errorf("the balance changes %.4f of the flow, on the finer mesh %.4f; want less, and below 0.01", coarse.Correction, fine.Correction)
	}
}

// TestFlowLinesAreWhole: in every bundled case the lines run from the load to
// the rim or a support, in steps no longer than a triangle, on the plate, and
// carry the load between them.
func TestFlowLinesAreWhole(t *testing.T) {
	t.Parallel()
	list, err := cases.Bundled()
	if err != nil {
		t.Fatal(err)
	}
	for _, info := range list {
		s := solved(t, info.Name, 0.5)
		if s.Flow == nil {
			t.Errorf("%s: no load flow: %v", info.Name, s.FlowFault)
			continue
		}
		lines, err := s.Flow.Lines(flowLines)
		if err != nil {
			t.Errorf("%s: %v", info.Name, err)
		}
		sum := 0.0
		for i, l := range lines {
			sum += l.Force
			if where := breaks(s, l); where != "" {
				t.Errorf("%s: line %d of %d %s", info.Name, i+1, len(lines), where)
			}
		}
		r := Summarize(s).Flow
		t.Logf("%s: %d lines carry %.2f of %.2f N, divergence %.1e, correction %.4f, %.2f N to supports", info.Name, len(lines), sum,
			s.Flow.Total, s.Flow.Divergence, s.Flow.Correction, r.Supports)
		if math.Abs(r.Load-sum-r.Direct) > 1e-9*r.Load || math.Abs(r.Direct) > math.Max(0.02*r.Load, r.Supports) {
			t.Errorf("%s: %d lines carry %.2f N, %.2f N direct, want the load of %.2f N", info.Name, len(lines), sum, r.Direct, r.Load)
		}
		if s.Flow.Divergence > 1e-8 || s.Flow.Correction > 0.02 {
			t.Errorf("%s: divergence %.2g, correction %.4f, want <= 1e-8 and 0.02", info.Name, s.Flow.Divergence, s.Flow.Correction)
		}
	}
}

// breaks says what is wrong with a line of force, "" if nothing is.
func breaks(s *design.Solution, l flow.Line) string {
	const triangle = 14.0 // mm, at refine 0.5
	first, last := l.Points[0], l.Points[len(l.Points)-1]
	if fromLoad(s, first) > triangle {
		return "does not begin at the load"
	}
	if !l.Inside && fromRim(s, last) > 1e-6 {
		return "does not end at the rim"
	}
	if l.Inside && s.Flow.Support[nearestNode(s, last)] == 0 {
		return "does not end at a support"
	}
	for i := 1; i < len(l.Points); i++ {
		p, q := l.Points[i-1], l.Points[i]
		if math.Hypot(q[0]-p[0], q[1]-p[1]) > triangle {
			return "jumps"
		}
		if _, _, inside := mesh.NewLocator(s.Top.Built.Mesh.Plan).Find(mesh.Point{(p[0] + q[0]) / 2, (p[1] + q[1]) / 2}); !inside {
			return "leaves the plate"
		}
	}
	return ""
}

// fromLoad is the distance to the nearest loaded node, mm.
func fromLoad(s *design.Solution, p [2]float64) float64 {
	d := math.Inf(1)
	for n, q := range s.Top.Built.Mesh.Points {
		if s.Flow.Load[n] != 0 {
			d = math.Min(d, math.Hypot(q[0]-p[0], q[1]-p[1]))
		}
	}
	return d
}

// fromRim is the distance to the outline, mm.
func fromRim(s *design.Solution, p [2]float64) float64 {
	d := math.Inf(1)
	for k, n := range s.Top.Built.Mesh.Rim {
		d = math.Min(d, offChord(s.Top.Built.Mesh.Points[n], s.Top.Built.Mesh.Points[s.Top.Built.Mesh.Rim[(k+1)%len(s.Top.Built.Mesh.Rim)]], p))
	}
	return d
}

func nearestNode(s *design.Solution, p [2]float64) int {
	best, least := 0, math.Inf(1)
	for n, q := range s.Top.Built.Mesh.Points {
		if d := math.Hypot(q[0]-p[0], q[1]-p[1]); d < least {
			best, least = n, d
		}
	}
	return best
}

// TestFlowOnRails: a strip on two bench rails, the weight nearer to one of
// them, gives each the lever law's share of the lines, and none to its edge; a
// weight at the very end of a plate held round its edge still flows to it.
func TestFlowOnRails(t *testing.T) {
	text := strings.Replace(glueText, "at = [0, 0]", "at = [0, 70]", 1)
	s := answered(t, casetest.Load(t, casetest.Files("a.toml", text, "strip.csv", glueStrip), "a.toml"), 1)
	lines, err := s.Flow.Lines(flowLines)
	if err != nil {
		t.Fatal(err)
	}
	far := 0
	for i, l := range lines {
		end := l.Points[len(l.Points)-1]
		if !l.Inside || math.Abs(math.Abs(end[1])-140) > 5 {
			t.Errorf("line %d ends at (%.1f, %.1f), want on a rail", i, end[0], end[1])
		}
		if end[1] < 0 {
			far++
		}
	}
	if len(lines) != flowLines || far != flowLines/4 {
		t.Errorf("%d lines, %d to the far rail, want %d and a quarter of them (lever law)", len(lines), far, flowLines)
	}

	edge := strings.Replace(glueText, "at = [0, 0]", "at = [0, 147]", 1)
	edge = strings.Replace(edge, `support = "free"`, `support = "hinged"`, 1)
	s = answered(t, casetest.Load(t, casetest.Files("a.toml", edge, "strip.csv", glueStrip), "a.toml"), 1)
	if lines, err = s.Flow.Lines(flowLines); err != nil {
		t.Fatal(err)
	}
	r := Summarize(s).Flow
	if len(lines) == 0 || math.Abs(r.Sectors.Neck+r.Sectors.Tail+r.Sectors.Bass+r.Sectors.Treble+r.Supports-20) > 1e-8 || r.Divergence > 1e-8 {
		t.Errorf("weight at the edge: %d lines, edge holds %+v, supports %.3g N, divergence %.2g", len(lines), r.Sectors, r.Supports, r.Divergence)
	}
	for i, l := range lines {
		if len(l.Points) < 2 {
			t.Errorf("weight at the edge: line %d has %d points", i, len(l.Points))
		}
	}
}

func TestThinned(t *testing.T) {
	t.Parallel()
	got := thinned([][2]float64{{0, 0}, {1, 0.01}, {2, 0}, {3, 1.004}, {4, 2}}, 0.05)
	want := [][2]float64{{0, 0}, {2, 0}, {4, 2}}
	if len(got) != len(want) {
		t.Fatalf("thinned to %v, want %v", got, want)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("point %d is %v, want %v", i, got[i], want[i])
		}
	}
}
