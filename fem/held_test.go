package fem

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// randomGrip is a contact problem in grip: rows of pads on a lightly curved foot, a
// smooth random gap with roughness, and a compliance that couples near pads more
// than far ones.
func randomGrip(r *rand.Rand, long, wide int) *problem {
	pads := long * wide
	n := 3 * pads
	p := &problem{pads: pads, per: 3, a: make([]float64, n*n), b: make([]float64, n), gap: make([]float64, pads), workers: 1 + r.IntN(2)}
	load := 50 + 100*r.Float64() // N
	deep, rough, slope := 0.15*r.Float64()*float64(r.IntN(3)), 4e-3*r.Float64()*float64(r.IntN(3)), r.NormFloat64()
	at := make([][3]float64, pads)
	for i := range pads {
		at[i] = [3]float64{120*(float64(i/wide)+0.5)/float64(long) - 60, 12*(float64(i%wide)+0.5)/float64(wide) - 6, 0}
		x, y := at[i][0]/60, at[i][1]/6
		normal := [3]float64{0.15 * x, 0.03 * y, 1}
		normal = scale3(normal, 1/norm3(normal))
		across := cross3([3]float64{0, 1, 0}, normal)
		across = scale3(across, 1/norm3(across))
		for _, d := range [][3]float64{normal, across, cross3(normal, across)} {
			p.r = append(p.r, armRow([3]float64{}, at[i], d))
		}
		p.plane = append(p.plane, [3]float64{1, at[i][1], -at[i][0]})
		p.nz = append(p.nz, normal[2])
		p.gap[i] = deep*(1-x*x) + rough*r.Float64()
		p.b[3*i] = 0.1*(1-0.8*x*x)*(1+0.1*slope*x) + 1e-3*r.NormFloat64()
		p.b[3*i+1], p.b[3*i+2] = 0.02*x+1e-3*r.NormFloat64(), 0.01*y
	}
	axes := [3][3]float64{{1, 0.15, -0.1}, {0.15, 0.8, 0.1}, {-0.1, 0.1, 0.7}}
	for i := range n {
		for j := range n {
			d := norm3(sub3(at[i/3], at[j/3]))
			v := 2e-3 * math.Exp(-d/30) * axes[i%3][j%3]
			p.a[i*n+j] = v
		}
		p.a[i*n+i] += 3e-4
	}
	push := [3]float64{3 * r.NormFloat64(), 8 * r.NormFloat64(), -load}
	m := cross3([3]float64{10 * r.NormFloat64(), r.NormFloat64(), 20}, push)
	p.f = [6]float64{push[0], push[1], push[2], m[0], m[1], m[2]}
	p.down = [3]float64{p.f[2], p.f[3], p.f[4]}
	return p
}

// TestHeldAsGrown sets the path beside the one that follows every event by a factor
// grown row by row: the same events in the same order, the same state along the
// whole path.
func TestHeldAsGrown(t *testing.T) {
	r := rand.New(rand.NewPCG(16, 4))
	events, opened, failed := 0, 0, 0
	for trial := range 300 {
		var p *problem
		switch trial % 3 {
		case 0:
			p = randomContact(r, 12+r.IntN(60))
		case 1:
			p = randomGrip(r, 8+r.IntN(10), 4)
		default:
			p = randomGrip(r, 20, 4+r.IntN(2))
		}
		p.keep = true
		q := *p
		q.with = ofGrown
		got, err := p.follow()
		want, no := q.follow()
		if (err == nil) != (no == nil) {
			t.Errorf("trial %d: %v, want %v", trial, err, no)
		}
		if no != nil {
			failed++
			continue
		}
		compareStates(t, trial, got, want)
		for _, e := range want.Events {
			events++
			if !e.Closes {
				opened++
			}
		}
	}
	t.Logf("%d events, %d of them openings; %d without an answer", events, opened, failed)
	if events < 4000 || opened < 200 || failed > 40 {
		t.Errorf("%d events, %d openings, %d failed: want at least 4000 and 200, at most 40", events, opened, failed)
	}
}

func compareStates(t *testing.T, trial int, got, want *State) {
	t.Helper()
	if len(got.Events) != len(want.Events) {
		t.Errorf("trial %d: %d events, want %d", trial, len(got.Events), len(want.Events))
		return
	}
	for k, e := range want.Events {
		g := got.Events[k]
		if g.Pad != e.Pad || g.Closes != e.Closes || math.Abs(g.Load-e.Load) > 1e-9 {
			t.Errorf("trial %d: event %d is %+v, want %+v", trial, k, g, e)
			return
		}
	}
	if !slices.Equal(got.Closed, want.Closed) || !slices.Equal(got.Slides, want.Slides) {
		t.Errorf("trial %d: other pads closed or sliding", trial)
	}
	for _, load := range []float64{1, 0.7, 0.2} {
		a, b := got.At(load), want.At(load)
		if d := apartBy(a.Lambda, b.Lambda); d > 1e-9 {
			t.Errorf("trial %d at %g: forces differ by %.2g of the greatest, want 1e-9", trial, load, d)
		}
		for i, g := range b.Gap {
			if math.Abs(a.Gap[i]-g) > 1e-9 {
				t.Errorf("trial %d at %g: gap %d is %.12g mm, want %.12g", trial, load, i, a.Gap[i], g)
			}
		}
		for m, v := range b.Rho {
			if math.Abs(a.Rho[m]-v) > 1e-9 {
				t.Errorf("trial %d at %g: motion %d is %.12g, want %.12g", trial, load, m, a.Rho[m], v)
			}
		}
		for _, v := range [][2]float64{{a.Work, b.Work}, {a.Lost, b.Lost}} {
			if math.Abs(v[0]-v[1]) > 1e-9*math.Abs(want.Work) {
				t.Errorf("trial %d at %g: work %.12g N mm, want %.12g", trial, load, v[0], v[1])
			}
		}
	}
}

// TestHeldComeAndGo: after rows have come and gone, few or many at once, in the last
// batch or long before, the forces are those of the factor grown row by row.
func TestHeldComeAndGo(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 91))
	p := randomGrip(r, 16, 4)
	n := len(p.b)
	order := make([]int32, n)
	for i := range order {
		order[i] = int32(i)
	}
	h, g, active := newHeld(p, order), ofGrown(p), map[int32]bool{}
	for step := range 80 {
		out, in := map[int32]bool{}, []int32{}
		for i := range int32(n) {
			switch {
			case active[i] && r.Float64() < []float64{0.02, 0.02, 0.4}[step%3]:
				out[i] = true
			case !active[i] && r.Float64() < 0.2:
				in = append(in, i)
			}
		}
		for _, c := range []carrying{h, g} {
			if err := c.drop(out); err != nil {
				t.Fatal(err)
			}
			if err := c.push(in); err != nil {
				t.Fatal(err)
			}
		}
		for i := range out {
			delete(active, i)
		}
		for _, i := range in {
			active[i] = true
		}
		open := make([]bool, p.pads)
		for i := range open {
			open[i] = !active[p.normal(i)]
		}
		q := question{dt: 0.7, f: p.f}
		if step%2 == 1 {
			q.v = randomList(r, n)
		}
		w, v := make([]float64, p.pads), make([]float64, p.pads)
		got, rho, err := h.answer(q, w, open)
		want, rhoWant, no := g.answer(q, v, open)
		if err != nil || no != nil {
			t.Fatal(err, no)
		}
		if d := max(apartBy(got, want), apartBy(w, v), apartBy(rho[:], rhoWant[:])); d > 1e-9 {
			t.Errorf("step %d: %d rows: %.2g of the greatest apart, want 1e-9", step, len(h.held()), d)
		}
		if !slices.Equal(h.held(), g.held()) {
			t.Errorf("step %d: other rows carry", step)
		}
	}
}

func randomList(r *rand.Rand, n int) []float64 {
	v := make([]float64, n)
	for i := range v {
		v[i] = 0.1 * r.NormFloat64()
	}
	return v
}
