package problem

import (
	"errors"
	"fmt"
	"math"

	"archload/cases/verify/reference"
	"archload/fem"
	"archload/fem/contact"
	"archload/fem/element"
	"archload/mesh"

	"gonum.org/v1/gonum/mat"
)

// bruteForce sets the path follower beside a search through every set of
// closed pads on small random problems: a flat wood plate, an elastic bar on
// four to seven pads with random gaps and beddings, random loads. The search
// writes the whole problem as one dense system for every set, the bar's own
// stiffness matrix included, and shares no code with the contact solver.
func bruteForce() (Readings, error) {
	out := Readings{"problems": 0, "force": 0, "gap": 0, "answers": 0, "pull": 0, "overlap": 0}
	chance := dice(11)
	for trial := range 40 {
		t, top, err := randomTrestle(&chance, 4+trial%4)
		if err != nil {
			return nil, err
		}
		found, err := everySet(t, top)
		if err != nil {
			return nil, err
		}
		m, err := t.follow()
		if errors.Is(err, contact.ErrOverturns) {
			continue // the gaps are such that the slack bar lies beside the load
		}
		if err != nil {
			return nil, fmt.Errorf("trial %d: %w", trial, err)
		}
		out["problems"]++
		out["answers"] = max(out["answers"], float64(len(found)))
		if len(found) == 0 {
			return nil, fmt.Errorf("trial %d: no set of closed pads answers", trial)
		}
		out.compare(t, m, found[0])
	}
	return out, nil
}

// compare keeps the largest differences.
func (out Readings) compare(t *trestle, m *met, want contactAnswer) {
	load, wide := 0.0, 1e-3
	for _, l := range t.body.Loads {
		load -= l.F[2]
	}
	for i := range t.pads {
		wide = max(wide, t.pads[i].Gap)
	}
	for i := range t.pads {
		out["force"] = max(out["force"], math.Abs(m.Lambda[i]-want.force[i])/load)
		out["gap"] = max(out["gap"], math.Abs(m.Gap[i]-want.gap[i])/wide)
		out["pull"] = max(out["pull"], -m.Lambda[i]/load)
		out["overlap"] = max(out["overlap"], -m.Gap[i]/wide)
	}
}

// randomTrestle stands a bar on a clamped wood plate 120 x 60 mm.
func randomTrestle(chance *dice, pads int) (*trestle, *panel, error) {
	t := &trestle{}
	p := newPanel(Density{}, 12, 6, func(u, v float64) (x, n [3]float64) {
		return [3]float64{120 * (u - 0.5), 60 * (v - 0.5), 0}, n
	}, makeup{h: 3, wood: reference.TestWood()})
	p.hold("xyzXYZ", func(x [3]float64) bool { return math.Abs(x[0]) > 59.9 || math.Abs(x[1]) > 29.9 })
	if err := p.build(); err != nil {
		return nil, nil, err
	}
	t.model = p.Model
	var xs []float64
	for i := range pads {
		x := -45 + 90*float64(i)/float64(pads-1)
		if i > 0 && i < pads-1 {
			x += 5 * chance.next()
		}
		xs = append(xs, x)
	}
	load := mesh.Point{20 * chance.next(), 50 + 20*chance.next()}
	nodes := append([]float64{-50}, xs...)
	nodes = append(nodes, 50)
	for i, x := range xs {
		gap := 0.05 * max(0, chance.next())
		at, ok := p.inPlan(x, 3*chance.next())
		if !ok {
			return nil, nil, fmt.Errorf("pad %d lies beside the plate", i)
		}
		t.bear(x, []fem.SurfacePoint{at}, gap)
		t.pads[i].Bedding[0] = 1e-4 * (1.5 + chance.next())
	}
	t.lay(element.Rectangle{Width: 10, Height: 6, E: 12000, Gxy: 1000, Gxz: 1000}, nodes)
	t.press(load[0], load[1])
	return t, p, nil
}

// contactAnswer is the answer on one set of closed pads.
type contactAnswer struct{ force, gap []float64 }

// everySet returns the answers that neither pull nor overlap, of all sets of
// closed pads.
func everySet(t *trestle, p *panel) ([]contactAnswer, error) {
	give, err := padGive(t, p)
	if err != nil {
		return nil, err
	}
	k, load := barSystem(t)
	const slack = 1e-10
	var found []contactAnswer
	for set := 1; set < 1<<len(t.pads); set++ {
		a, ok := onSet(t, give, k, load, set)
		for i := 0; ok && i < len(t.pads); i++ {
			ok = a.force[i] >= -slack && a.gap[i] >= -slack
		}
		if ok {
			found = append(found, a)
		}
	}
	return found, nil
}

// padGive is the plate's sink at each pad under 1 N on each, one full solve
// each, with the bedding.
func padGive(t *trestle, p *panel) (*mat.Dense, error) {
	n := len(t.pads)
	give := mat.NewDense(n, n, nil)
	for j := range n {
		clear(p.load)
		p.press(t.pads[j].Spread[0], [3]float64{0, 0, -1})
		a, err := p.solve()
		if err != nil {
			return nil, err
		}
		for i := range n {
			give.Set(i, j, -a.moveAt(t.pads[i].Spread[0])[2])
		}
		give.Set(j, j, give.At(j, j)+t.pads[j].Bedding[0])
	}
	return give, nil
}

// barSystem is the bar's stiffness in its plane, w and theta_y at each node, and
// its loads.
func barSystem(t *trestle) (*mat.Dense, []float64) {
	n := len(t.body.Nodes)
	k, load := mat.NewDense(2*n, 2*n, nil), make([]float64, 2*n)
	for _, b := range t.body.Beams {
		l := t.body.Nodes[b.Nodes[1]][0] - t.body.Nodes[b.Nodes[0]][0]
		sec := b.Section.(element.Rectangle) // as trestle.lay lays it
		ke := reference.TimoshenkoBeam(sec.E*sec.Width*sec.Height*sec.Height*sec.Height/12, 5.0/6*sec.Gxz*sec.Width*sec.Height, l)
		for i := range 4 {
			for j := range 4 {
				r, c := 2*int(b.Nodes[i/2])+i%2, 2*int(b.Nodes[j/2])+j%2
				k.Set(r, c, k.At(r, c)+ke[i][j])
			}
		}
	}
	for _, l := range t.body.Loads {
		load[2*int(l.Node)] += l.F[2]
		load[2*int(l.Node)+1] -= l.F[2] * (l.At[0] - t.body.Nodes[l.Node][0])
	}
	return k, load
}

// onSet solves for one set of closed pads (a bit for each): the bar's
// movements and the pads' forces.
func onSet(t *trestle, give, k *mat.Dense, load []float64, set int) (contactAnswer, bool) {
	nb, np := len(load), len(t.pads)
	m, rhs := mat.NewDense(nb+np, nb+np, nil), mat.NewVecDense(nb+np, nil)
	m.Slice(0, nb, 0, nb).(*mat.Dense).Copy(k)
	for i, f := range load {
		rhs.SetVec(i, f)
	}
	for i := range np {
		row := nb + i
		w := 2 * int(t.pads[i].Node)
		m.Set(w, row, -1) // the pad pushes the bar up
		if set>>i&1 == 0 {
			m.Set(row, row, 1)
			continue
		}
		// gap + bar's rise + plate's sink = 0
		m.Set(row, w, 1)
		rhs.SetVec(row, -t.pads[i].Gap)
		for j := range np {
			m.Set(row, nb+j, give.At(i, j))
		}
	}
	var lu mat.LU
	lu.Factorize(m)
	x := mat.NewVecDense(nb+np, nil)
	if lu.Cond() > 1e14 || lu.SolveVecTo(x, false, rhs) != nil {
		return contactAnswer{}, false
	}
	a := contactAnswer{force: make([]float64, np), gap: make([]float64, np)}
	for i := range np {
		a.force[i] = x.AtVec(nb + i)
		a.gap[i] = t.pads[i].Gap + x.AtVec(2*int(t.pads[i].Node))
		for j := range np {
			a.gap[i] += give.At(i, j) * x.AtVec(nb+j)
		}
	}
	return a, true
}
