package sliding

import (
	"fmt"
	"math"
	"math/rand/v2"

	"archload/cases/verify/problem"
	"archload/fem/friction"
)

// bruteForce sets the path with friction beside another way of following it: small
// feet by lot, the load raised in very many steps, in each of which the pads are
// relaxed one after the other (projected Gauss-Seidel, each force brought back to its
// cone) and the body is moved against what its balance lacks, until nothing changes.
func bruteForce() (problem.Readings, error) {
	out := problem.Readings{"force": 0, "lost": 0, "sliding": 0, "feet": 0}
	r := rand.New(rand.NewPCG(3, 1))
	for trial := range 6 {
		p := smallFoot(r, trial)
		path, err := p.Follow()
		if err != nil {
			return nil, fmt.Errorf("foot %d: %w", trial, err)
		}
		if path.Last().Guided {
			continue
		}
		b := &relaxed{p: p, force: make([]float64, len(p.B)), side: make([]float64, len(p.B))}
		if err := b.follow(200); err != nil {
			return nil, fmt.Errorf("foot %d: %w", trial, err)
		}
		m := path.Last()
		out["feet"]++
		for i, f := range b.force {
			out["force"] = max(out["force"], math.Abs(m.Force[i]-f)/-p.F[2])
		}
		out["lost"] = max(out["lost"], math.Abs(m.Lost-b.lost)/m.Work)
		for _, k := range m.Kind {
			if k == friction.Slides {
				out["sliding"]++
			}
		}
	}
	return out, nil
}

// smallFoot is a foot of two rows of pads on an arch, some of which stand off, on ground whose
// compliance fades with the distance.
func smallFoot(r *rand.Rand, trial int) *friction.Problem {
	columns := 3 + trial%3
	m := 2 * columns
	n := 3 * m
	p := &friction.Problem{A: make([]float64, n*n), B: make([]float64, n), Gap: make([]float64, m), Coefficient: 0.2 + 0.1*float64(trial%4), Tolerance: 1e-6}
	var at, dirs [][3]float64
	for i := range m {
		u := 2*float64(i/2)/float64(columns-1) - 1
		slope := -(0.15 + 0.2*r.Float64()) * u
		l := math.Hypot(1, slope)
		pos := [3]float64{30 * u, 6*float64(i%2) - 3, -2 * u * u}
		for _, d := range [][3]float64{{-slope / l, 0, 1 / l}, {1 / l, 0, slope / l}, {0, 1, 0}} {
			at, dirs = append(at, pos), append(dirs, d)
			p.R = append(p.R, [6]float64{d[0], d[1], d[2], pos[1]*d[2] - pos[2]*d[1], pos[2]*d[0] - pos[0]*d[2], pos[0]*d[1] - pos[1]*d[0]})
		}
		if i/2 > 0 && i/2 < columns-1 {
			p.Gap[i] = 0.02 * r.Float64()
		}
	}
	for i := range n {
		for j := range n {
			dot := dirs[i][0]*dirs[j][0] + dirs[i][1]*dirs[j][1] + dirs[i][2]*dirs[j][2]
			p.A[i*n+j] = 1e-3 * dot * math.Exp(-math.Abs(at[i][0]-at[j][0])/25-math.Abs(at[i][1]-at[j][1])/25)
		}
		p.A[i*n+i] += 3e-4
	}
	x, y, push := 8*r.Float64()-4, r.Float64()-0.5, 6*r.Float64()-3
	p.F = [6]float64{0, push, -100, -100 * y, 100 * x, push * x}
	return p
}

// relaxed is a foot that is followed by relaxation.
type relaxed struct {
	p     *friction.Problem
	force []float64
	side  []float64 // where each tangential row stood at the step before
	rho   [6]float64
	lost  float64
}

const (
	stiffly = 5000  // N/mm against what the balance lacks
	still   = 1e-10 // N: where nothing changes any more
)

// follow raises the load in steps.
func (b *relaxed) follow(steps int) error {
	for k := 1; k <= steps; k++ {
		before := append([]float64(nil), b.force...)
		load := float64(k) / float64(steps)
		for sweep := 0; ; sweep++ {
			if b.sweep(load) < still {
				break
			}
			if sweep > 100000 {
				return fmt.Errorf("step %d does not settle", k)
			}
		}
		for j := range b.side {
			if j%3 != 0 {
				now := b.move(j, load)
				b.lost -= (before[j] + b.force[j]) / 2 * (now - b.side[j])
				b.side[j] = now
			}
		}
	}
	return nil
}

// move is how far a row has moved, mm.
func (b *relaxed) move(j int, load float64) float64 {
	n := len(b.p.B)
	v := b.p.B[j] * load
	for k, f := range b.force {
		v += b.p.A[j*n+k] * f
	}
	for c, q := range b.rho {
		v += b.p.R[j][c] * q
	}
	return v
}

// sweep relaxes every pad once and then moves the body; it returns the greatest change
// of a force, N, and of a force that the balance lacks.
func (b *relaxed) sweep(load float64) (change float64) {
	p, n := b.p, len(b.p.B)
	for i := range p.Gap {
		j := 3 * i
		soft := p.A[j*n+j]
		normal := max(0, b.force[j]-(p.Gap[i]+b.move(j, load))/soft)
		change = max(change, math.Abs(normal-b.force[j]))
		b.force[j] = normal
		x := b.force[j+1] - (b.move(j+1, load)-b.side[j+1])/soft
		y := b.force[j+2] - (b.move(j+2, load)-b.side[j+2])/soft
		if l := math.Hypot(x, y); l > p.Coefficient*normal {
			x, y = x/l*p.Coefficient*normal, y/l*p.Coefficient*normal
		}
		change = max(change, math.Abs(x-b.force[j+1]), math.Abs(y-b.force[j+2]))
		b.force[j+1], b.force[j+2] = x, y
	}
	for c := range 6 {
		lacks := p.F[c] * load
		for j, f := range b.force {
			lacks += p.R[j][c] * f
		}
		arm := 1.0
		if c > 2 {
			arm = 30 // mm
		}
		change = max(change, math.Abs(lacks)/arm)
		b.rho[c] += lacks / arm / arm / stiffly
	}
	return change
}
