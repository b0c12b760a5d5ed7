package contact

import (
	"math"
	"math/rand/v2"
	"testing"

	"archload/fem/vec3"

	"gonum.org/v1/gonum/mat"
)

// randomContact is a small contact problem in slip: four pads at the corners
// of a foot and more at random places between them, on a lightly curved
// surface, with random gaps; three guides; a random symmetric positive definite
// compliance; and a load whose resultant lies between the pads.
func randomContact(r *rand.Rand, pads int) *lcp {
	n := pads + 3
	p := &lcp{idle: factors(), pads: pads, per: 1, a: make([]float64, n*n), b: make([]float64, n), gap: make([]float64, pads)}
	root := mat.NewDense(n, n, nil)
	for i := range n {
		for j := range n {
			root.Set(i, j, r.NormFloat64())
		}
	}
	var a mat.Dense
	a.Mul(root, root.T())
	for i := range n {
		p.b[i] = 0.05 * r.NormFloat64()
		for j := range n {
			p.a[i*n+j] = 1e-3 * a.At(i, j)
		}
		p.a[i*n+i] += 1e-4
	}
	load := 50 + 100*r.Float64() // N
	var at [3]float64
	weight := 0.0
	for i := range pads {
		x, y := 120*r.Float64()-60, 12*r.Float64()-6 // mm
		if i < 4 {
			x, y = float64(120*(i%2)-60), float64(12*(i/2)-6)
		}
		normal := [3]float64{0.2 * r.NormFloat64(), 0.1 * r.NormFloat64(), 1}
		l := vec3.Norm(normal)
		normal = vec3.Scale(normal, 1/l)
		p.r = append(p.r, ArmRow([3]float64{}, [3]float64{x, y, 0}, normal))
		p.plane = append(p.plane, [3]float64{1, y, -x})
		p.nz = append(p.nz, normal[2])
		p.gap[i] = 0.2 * r.Float64() * float64(r.IntN(3))
		w := r.Float64()
		weight += w
		at = vec3.Add(at, [3]float64{w * x, w * y, 0})
	}
	at = vec3.Scale(at, 1/weight)
	for _, g := range []Guide{{Dir: [3]float64{1, 0, 0}}, {Dir: [3]float64{0, 1, 0}}, {Dir: [3]float64{0, 0, 1}, Turn: true}} {
		p.r = append(p.r, g.row([3]float64{}))
	}
	force := [3]float64{5 * r.NormFloat64(), 5 * r.NormFloat64(), -load}
	moment := vec3.Cross(at, [3]float64{0, 0, -load})
	p.f = [6]float64{force[0], force[1], force[2], moment[0], moment[1], 20 * r.NormFloat64()}
	p.down = [3]float64{p.f[2], p.f[3], p.f[4]}
	return p
}

// answer is a full solution: forces of all rows, movements of the pads and
// the rigid motion.
type answer struct {
	lambda, w []float64
	rho       [6]float64
}

// onSet solves the equations of one set of closed pads (a bit for each):
// closed pads stay shut, guides do not move, open pads carry nothing.
func (p *lcp) onSet(set int, g []float64) (answer, bool) {
	var rows []int
	for i := range p.b {
		if i >= p.pads || set>>i&1 == 1 {
			rows = append(rows, i)
		}
	}
	k := len(rows)
	m, rhs := mat.NewDense(k+6, k+6, nil), mat.NewVecDense(k+6, nil)
	for x, i := range rows {
		rhs.SetVec(x, -p.b[i])
		if i < p.pads {
			rhs.SetVec(x, -p.b[i]-g[i])
		}
		for y, j := range rows {
			m.Set(x, y, p.a[i*len(p.b)+j])
		}
		for c := range 6 {
			m.Set(x, k+c, p.r[i][c])
			m.Set(k+c, x, p.r[i][c])
		}
	}
	for c := range 6 {
		rhs.SetVec(k+c, -p.f[c])
	}
	var lu mat.LU
	lu.Factorize(m)
	if lu.Cond() > 1e12 {
		return answer{}, false
	}
	x := mat.NewVecDense(k+6, nil)
	if lu.SolveVecTo(x, false, rhs) != nil {
		return answer{}, false
	}
	out := answer{lambda: make([]float64, len(p.b)), w: make([]float64, p.pads)}
	for y, j := range rows {
		out.lambda[j] = x.AtVec(y)
	}
	for c := range 6 {
		out.rho[c] = x.AtVec(k + c)
	}
	for i := range out.w {
		out.w[i] = g[i] + p.movement(int32(i), 1, out.lambda, out.rho)
	}
	return out, true
}

// allSets tries every set of closed pads and returns the answers that neither
// pull nor overlap.
func (p *lcp) allSets(g []float64) []answer {
	const slack = 1e-10
	var found []answer
	for set := range 1 << p.pads {
		a, ok := p.onSet(set, g)
		for i := 0; ok && i < p.pads; i++ {
			ok = a.lambda[i] >= -slack && a.w[i] >= -slack
		}
		if ok {
			found = append(found, a)
		}
	}
	return found
}

// TestContactBruteForce sets the path follower beside a search through all
// sets of closed pads: the same forces, gaps and rigid motion to 1e-10 of
// their scale. A linear problem with a positive definite compliance has one
// answer, so the search may find it twice only where a pad just touches.
func TestContactBruteForce(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 141))
	solved, closed := 0, map[int]int{}
	for trial := range 600 {
		p := randomContact(r, 4+trial%5)
		rest, err := p.slackRest()
		if err != nil {
			t.Fatalf("trial %d: %v", trial, err)
		}
		g := make([]float64, p.pads)
		for i := range g {
			g[i] = p.slackGap(i, rest)
		}
		all := p.allSets(g)
		if len(all) == 0 {
			continue // this compliance would tip the body off
		}
		got, err := p.trace()
		if err != nil {
			t.Fatalf("trial %d: %d pads: %v; the search finds %d answers", trial, p.pads, err, len(all))
		}
		solved++
		shut := 0
		for i := range p.pads {
			if got.Closed[i] {
				shut++
			}
		}
		closed[shut]++
		for _, want := range all {
			compareAnswers(t, trial, p, got, want)
		}
	}
	if solved < 500 {
		t.Errorf("%d of 600 problems have an answer, want 500 at least", solved)
	}
	t.Logf("%d problems; number of closed pads at the end: %v", solved, closed)
}

func compareAnswers(t *testing.T, trial int, p *lcp, got *State, want answer) {
	t.Helper()
	const tol = 1e-10
	force, move := vec3.Norm([3]float64(p.f[:3])), 1.0 // N, mm
	for j, v := range want.lambda {
		force = math.Max(force, math.Abs(v))
		move = math.Max(move, math.Abs(want.rho[min(j, 5)]))
	}
	for j, v := range want.lambda {
		if math.Abs(got.Lambda[j]-v) > tol*force {
			t.Errorf("trial %d: force of row %d = %.14g N, want %.14g (all sets tried)", trial, j, got.Lambda[j], v)
		}
	}
	for i, v := range want.w {
		if math.Abs(got.Gap[i]-v) > tol*move {
			t.Errorf("trial %d: gap of pad %d = %.14g mm, want %.14g (all sets tried)", trial, i, got.Gap[i], v)
		}
	}
	for c, v := range want.rho {
		if math.Abs(got.Rho[c]-v) > tol*move {
			t.Errorf("trial %d: rigid motion %d = %.14g, want %.14g (all sets tried)", trial, c, got.Rho[c], v)
		}
	}
}

// TestContactAlongThePath stops the load half way and wants the answer of the
// half load: without friction the contact has no memory.
func TestContactAlongThePath(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 718))
	for trial := range 40 {
		p := randomContact(r, 8)
		full, err := p.trace()
		if err != nil {
			continue
		}
		half := *p
		half.b = make([]float64, len(p.b))
		for i, v := range p.b {
			half.b[i] = v / 2
		}
		for c := range 6 {
			half.f[c] = p.f[c] / 2
		}
		for c := range 3 {
			half.down[c] = p.down[c] / 2
		}
		got, err := half.trace()
		if err != nil {
			t.Fatalf("trial %d: %v at half load, none at full", trial, err)
		}
		scale := vec3.Norm([3]float64(p.f[:3]))
		for i := range p.pads {
			want := tracedForce(full.Trace, 0.5, i)
			if math.Abs(got.Lambda[i]-want) > 1e-9*scale {
				t.Errorf("trial %d: pad %d at half load %.12g N, want %.12g (on the way to full load)", trial, i, got.Lambda[i], want)
			}
		}
	}
}

// tracedForce reads the force of a pad at a load, straight between events.
func tracedForce(trace []Trace, load float64, pad int) float64 {
	for k := 1; k < len(trace); k++ {
		if a, b := trace[k-1], trace[k]; load <= b.Load {
			u := (load - a.Load) / (b.Load - a.Load)
			return a.Force[pad] + u*(b.Force[pad]-a.Force[pad])
		}
	}
	return math.NaN()
}
