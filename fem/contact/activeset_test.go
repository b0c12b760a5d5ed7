package contact

import (
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"archload/fem/vec3"

	"gonum.org/v1/gonum/mat"
)

// randomGrip is a contact problem in grip: rows of pads on a lightly curved foot, a
// smooth random gap with roughness, and a compliance that couples near pads more
// than far ones.
func randomGrip(r *rand.Rand, long, wide int) *lcp {
	pads := long * wide
	n := 3 * pads
	p := &lcp{idle: factors(), pads: pads, per: 3, a: make([]float64, n*n), b: make([]float64, n), gap: make([]float64, pads), workers: 1 + r.IntN(2)}
	load := 50 + 100*r.Float64() // N
	deep, rough, slope := 0.15*r.Float64()*float64(r.IntN(3)), 4e-3*r.Float64()*float64(r.IntN(3)), r.NormFloat64()
	at := make([][3]float64, pads)
	for i := range pads {
		at[i] = [3]float64{120*(float64(i/wide)+0.5)/float64(long) - 60, 12*(float64(i%wide)+0.5)/float64(wide) - 6, 0}
		x, y := at[i][0]/60, at[i][1]/6
		normal := [3]float64{0.15 * x, 0.03 * y, 1}
		normal = vec3.Scale(normal, 1/vec3.Norm(normal))
		across := vec3.Cross([3]float64{0, 1, 0}, normal)
		across = vec3.Scale(across, 1/vec3.Norm(across))
		for _, d := range [][3]float64{normal, across, vec3.Cross(normal, across)} {
			p.r = append(p.r, ArmRow([3]float64{}, at[i], d))
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
			d := vec3.Norm(vec3.Sub(at[i/3], at[j/3]))
			v := 2e-3 * math.Exp(-d/30) * axes[i%3][j%3]
			p.a[i*n+j] = v
		}
		p.a[i*n+i] += 3e-4
	}
	push := [3]float64{3 * r.NormFloat64(), 8 * r.NormFloat64(), -load}
	m := vec3.Cross([3]float64{10 * r.NormFloat64(), r.NormFloat64(), 20}, push)
	p.f = [6]float64{push[0], push[1], push[2], m[0], m[1], m[2]}
	p.down = [3]float64{p.f[2], p.f[3], p.f[4]}
	return p
}

// TestHistory: along the whole path every segment obeys the rate equations of its
// active set, solved by dense elimination, no pad pulls or overlaps within it, and
// nothing jumps from one segment to the next but what drag lets go: pads close where
// their gaps end and open where their forces do.
func TestHistory(t *testing.T) {
	r := rand.New(rand.NewPCG(16, 4))
	events, opened, failed := 0, 0, 0
	for trial := range 300 {
		var p *lcp
		switch trial % 3 {
		case 0:
			p = randomContact(r, 12+r.IntN(60))
		case 1:
			p = randomGrip(r, 8+r.IntN(10), 4)
		default:
			p = randomGrip(r, 20, 4+r.IntN(2))
		}
		p.history = true
		st, err := p.trace()
		if err != nil {
			failed++
			continue
		}
		checkHistory(t, trial, p, st)
		for _, e := range st.Events {
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

// checkHistory checks every segment by itself and against the one before.
func checkHistory(t *testing.T, trial int, p *lcp, st *State) {
	t.Helper()
	force, length := 0.0, 0.0
	for _, f := range p.f[:3] {
		force += math.Abs(f)
	}
	for i, g := range p.gap {
		length = max(length, g, math.Abs(p.b[p.normal(i)]))
	}
	knots := st.history.segments
	if knots[0].load != 0 {
		t.Errorf("trial %d: the path begins at %g", trial, knots[0].load)
	}
	for s := range knots {
		k, end := &knots[s], 1.0
		if s+1 < len(knots) {
			end = knots[s+1].load
		}
		checkRates(t, trial, p, k)
		for _, load := range []float64{k.load, end} {
			at := k.at(load)
			for i := range p.pads {
				l, gap := at.Lambda[p.normal(i)], p.slackGap(i, st.SlackRest)+p.movement(p.normal(i), load, at.Lambda, at.Rho)
				switch {
				case k.closed[i] && (l < -1e-8*force || math.Abs(gap) > 1e-8*length):
					t.Errorf("trial %d at %g: pad %d carries %g N over a gap of %g mm", trial, load, i, l, gap)
				case !k.closed[i] && (l != 0 || gap < -1e-8*length || math.Abs(gap-at.Gap[i]) > 1e-8*length):
					t.Errorf("trial %d at %g: open pad %d carries %g N, gap %g mm, told %g", trial, load, i, l, gap, at.Gap[i])
				}
			}
		}
		if s == 0 {
			continue
		}
		before, released := knots[s-1].at(k.load), false
		for i := range p.pads {
			released = released || p.per > 1 && knots[s-1].closed[i] && (!k.closed[i] || k.slides[i])
		}
		if d := apartBy(k.all(k.lambda), before.Lambda); d > 1e-8 && !released {
			t.Errorf("trial %d at %g: forces jump by %.2g of the greatest", trial, k.load, d)
		}
	}
}

// checkRates compares the rates of a segment with those of its active set.
func checkRates(t *testing.T, trial int, p *lcp, k *segment) {
	t.Helper()
	var rows []int32
	for i := range int32(len(p.b)) {
		pad := p.padOf(i)
		if pad >= p.pads || k.closed[pad] && (p.isNormal(i) || !k.slides[pad]) {
			rows = append(rows, i)
		}
	}
	var f [6]float64
	for m := range f {
		f[m] = -p.f[m]
	}
	lambda, rho := p.dense(t, rows, p.b, f)
	if d := max(apartBy(k.all(k.dl), lambda), apartBy(k.dr[:], rho[:])); d > 1e-7 {
		t.Errorf("trial %d at %g: rates of %d rows are %.2g of the greatest apart, want 1e-7", trial, k.load, len(rows), d)
	}
}

// dense solves A λ + R ρ = −v on some rows, Rᵀ λ = f by elimination.
func (p *lcp) dense(t *testing.T, rows []int32, v []float64, f [6]float64) (all []float64, rho [6]float64) {
	t.Helper()
	k := len(rows)
	m, rhs := mat.NewDense(k+6, k+6, nil), mat.NewVecDense(k+6, nil)
	for x, i := range rows {
		rhs.SetVec(x, -v[i])
		for y, j := range rows {
			m.Set(x, y, p.a[int(i)*len(p.b)+int(j)])
		}
		for c := range 6 {
			m.Set(x, k+c, p.r[i][c])
			m.Set(k+c, x, p.r[i][c])
		}
	}
	for c := range 6 {
		rhs.SetVec(k+c, f[c])
	}
	x := mat.NewVecDense(k+6, nil)
	if err := x.SolveVec(m, rhs); err != nil {
		t.Fatal(err)
	}
	all = make([]float64, len(p.b))
	for y, i := range rows {
		all[i] = x.AtVec(y)
	}
	for c := range rho {
		rho[c] = x.AtVec(k + c)
	}
	return all, rho
}

// TestHeldComeAndGo: after rows have come and gone, few or many at once, in the last
// batch or long before, the forces and movements are those of dense elimination.
func TestHeldComeAndGo(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 91))
	p := randomGrip(r, 16, 4)
	n := len(p.b)
	order := make([]int32, n)
	for i := range order {
		order[i] = int32(i)
	}
	h, active := newActiveSet(p, order, n-9), map[int32]bool{}
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
		if err := h.remove(out); err != nil {
			t.Fatal(err)
		}
		if err := h.add(in); err != nil {
			t.Fatal(err)
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
		q := equations{dt: 0.7, f: p.f}
		if step%2 == 1 {
			q.v = randomList(r, n)
		}
		w, v := make([]float64, p.pads), make([]float64, p.pads)
		got, rho, err := h.solve(q, w, open)
		if err != nil {
			t.Fatal(err)
		}
		alone := q.v
		if alone == nil {
			alone = make([]float64, n)
			for i, b := range p.b {
				alone[i] = q.dt * b
			}
		}
		rows := slices.Sorted(maps.Keys(active))
		want, rhoWant := p.dense(t, rows, alone, q.f)
		for i := range v {
			if j := p.normal(i); open[i] {
				v[i] = alone[j] + p.movement(j, 0, want, rhoWant)
			}
		}
		if d := max(apartBy(got, want), apartBy(w, v), apartBy(rho[:], rhoWant[:])); d > 1e-9 {
			t.Errorf("step %d: %d rows: %.2g of the greatest apart, want 1e-9", step, len(rows), d)
		}
		if !slices.Equal(slices.Sorted(slices.Values(h.rows)), rows) {
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
