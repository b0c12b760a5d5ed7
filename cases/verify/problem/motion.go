package problem

import (
	"math"
	"strconv"

	"archload/cases/verify/reference"
	"archload/fem"
	"archload/fem/eigen"
	"archload/fem/element"
	"archload/mesh"
)

// tones finds the lowest values of omega² of a panel that is built, ascending; those of
// its free motions are left out.
func (p *panel) tones(count, free int, scale float64) ([]float64, error) {
	m, fixed := p.sys.Mass(), p.sys.FixedDofs()
	m.Fix(fixed)
	plan, err := p.sys.Analyse()
	if err != nil {
		return nil, err
	}
	modes, err := eigen.Lowest(&eigen.Problem{K: p.sys.K, M: m, Fixed: fixed, Plan: plan},
		eigen.Options{Count: count, Free: free, Scale: scale})
	if err != nil {
		return nil, err
	}
	return modes.Values[free:], nil
}

// hertz are tones as readings "1", "2", ... in Hz: a panel in mm, N, tonne.
func hertz(values []float64) Readings {
	out := Readings{}
	for i, v := range values {
		out[strconv.Itoa(i+1)] = math.Sqrt(v) / (2 * math.Pi)
	}
	return out
}

// pure are tones as readings omega a² of a plate whose rho h and D are 1.
func pure(values []float64, a float64) Readings {
	out := Readings{}
	for i, v := range values {
		out[strconv.Itoa(i+1)] = math.Sqrt(v) * a * a
	}
	return out
}

// woodDensity is that of the test wood, kg/m³.
const woodDensity = 400

// squareTones are the frequencies of a thin isotropic square plate (t/a 1/1000, nu 0.3),
// omega a² sqrt(rho h/D). Free plates have three free motions in bending alone.
func squareTones(s supports, free int) func(d Density) (Readings, error) {
	return func(d Density) (Readings, error) {
		const a, heavy = 1000.0, 1e12
		of := unitPlate(1, 0.3)
		of.density = heavy // rho h = 1 with D = 1
		p, err := plate(d, a, a, s, of)
		if err != nil {
			return nil, err
		}
		values, err := p.tones(7, free, 1e-10)
		return pure(values, a), err
	}
}

// cantileverSquare has three of its edges free.
func cantileverSquare(d Density) (Readings, error) {
	const a, heavy = 1000.0, 1e12
	of := unitPlate(1, 0.3)
	of.density = heavy
	p := newPanel(d, d.N, d.N, flat(a, a), of)
	p.hold("xyZ", everywhere)
	p.hold("zXY", On(0, 0))
	if err := p.build(); err != nil {
		return nil, err
	}
	values, err := p.tones(5, 0, 1)
	return pure(values, a), err
}

// rectangleTones are those of a flat rectangle of wood, Hz, with a weight (g) in its middle.
func rectangleTones(a, b float64, s supports, free int, of makeup, weight float64) func(d Density) (Readings, error) {
	return func(d Density) (Readings, error) {
		p, err := plate(d, a, b, s, of)
		if err != nil {
			return nil, err
		}
		if weight > 0 {
			at, _ := p.inPlan(a/2, b/2)
			p.Masses = []fem.PointMass{{At: []fem.SurfacePoint{at}, Mass: weight * 1e-6}}
			if err := p.build(); err != nil {
				return nil, err
			}
		}
		values, err := p.tones(7, free, 1e4)
		return hertz(values), err
	}
}

// woodTones is the flat test plate 400 x 300 x 4 mm, rigid in shear as in thin-plate theory.
func woodTones(s supports, free int, weight float64) func(d Density) (Readings, error) {
	return rectangleTones(reference.WoodLong, reference.WoodWide, s, free,
		makeup{h: 4, wood: reference.RigidInShear(reference.TestWood()), density: woodDensity}, weight)
}

// arched reads the arched plate of the test wood.
func archTones(d Density) (Readings, error) {
	p, err := archedPlate(d)
	if err != nil {
		return nil, err
	}
	values, err := p.tones(5, 0, 1)
	return hertz(values), err
}

// onDisc is a plate on a disc of radius a on the program's own mesh with n edges across,
// raised to a surface; its rim is clamped.
func onDisc(d Density, a float64, of makeup, at func(q mesh.Point) (x, n [3]float64)) (*panel, error) {
	plan, err := discPlan(d, a)
	if err != nil {
		return nil, err
	}
	p := &panel{}
	for _, q := range plan.Points {
		x, n := at(q)
		p.Nodes = append(p.Nodes, mesh.Node{P: x, N: n, H: of.h})
	}
	p.make(plan.Tris, of)
	for _, n := range plan.Rim {
		for dof := range 6 {
			p.Fixed = append(p.Fixed, fem.Fix{Node: n, Dof: dof})
		}
	}
	return p, p.build()
}

// discTones are those of a thin clamped circular plate, nu 0.3: omega a² sqrt(rho h/D).
func discTones(d Density) (Readings, error) {
	const a = 100.0
	of := unitPlate(0.1, 0.3)
	of.density = 1e13 // rho h = 1
	p, err := onDisc(d, a, of, func(q mesh.Point) (x, n [3]float64) { return [3]float64{q[0], q[1], 0}, n })
	if err != nil {
		return nil, err
	}
	values, err := p.tones(7, 0, 1)
	return pure(values, a), err
}

// capTones are those of a clamped spherical cap, R 500, base radius 100, t 2 mm, E 10 GPa,
// nu 0.3, 400 kg/m³, Hz.
func capTones(d Density) (Readings, error) {
	const r, base = 500.0, 100.0
	of := makeup{h: 2, wood: reference.Isotropic(1e4, 0.3), density: 400}
	p, err := onDisc(d, base, of, func(q mesh.Point) (x, n [3]float64) {
		z := math.Sqrt(r*r - q[0]*q[0] - q[1]*q[1])
		return [3]float64{q[0], q[1], z}, [3]float64{q[0] / r, q[1] / r, z / r}
	})
	if err != nil {
		return nil, err
	}
	values, err := p.tones(5, 0, 1)
	return hertz(values), err
}

// bar is a straight chain of beams along x, of one metal or wood.
type barOf struct {
	long    float64
	section element.Rectangle
	density float64
	parts   int
}

// panel makes the bar; held names the freedoms that are fixed at a share of its length.
func (b barOf) panel(held map[float64]string) (*panel, error) {
	p := &panel{}
	mass := b.section.Area() * b.long / float64(b.parts) * b.density * 1e-12
	for i := range b.parts + 1 {
		x := b.long * float64(i) / float64(b.parts)
		p.Nodes = append(p.Nodes, mesh.Node{P: [3]float64{x, 0, 0}})
		if i > 0 {
			p.Beams = append(p.Beams, fem.BeamElem{Nodes: [2]int32{int32(i - 1), int32(i)}, Up: [3]float64{0, 0, 1},
				Section: b.section, Mass: mass})
		}
	}
	for share, what := range held {
		if share < 0 {
			p.hold(what, everywhere)
			continue
		}
		p.hold(what, On(0, share*b.long))
	}
	return p, p.build()
}

// slenderBar is a bar of unit mass and EI/L³ = 1 that bends upright alone, without shear.
func slenderBar(held map[float64]string) (*panel, error) {
	const long = 1000.0
	s := element.Rectangle{Width: 1, Height: 1, E: 12 * long * long * long, Gxy: 1e20, Gxz: 1e20}
	held[-1] = "xyXZ"
	return barOf{long: long, section: s, density: 1e12 / long, parts: 40}.panel(held)
}

// weigh adds a lump of mass to a node of a bar and finds the tones.
func (p *panel) weighted(node int, mass float64, count int) ([]float64, error) {
	m, fixed := p.sys.Mass(), p.sys.FixedDofs()
	lump := make([]float64, 36)
	for d := range 3 {
		lump[7*d] = mass
	}
	m.Add([]int32{int32(node)}, lump)
	m.Fix(fixed)
	plan, err := p.sys.Analyse()
	if err != nil {
		return nil, err
	}
	modes, err := eigen.Lowest(&eigen.Problem{K: p.sys.K, M: m, Fixed: fixed, Plan: plan}, eigen.Options{Count: count})
	if err != nil {
		return nil, err
	}
	return modes.Values, nil
}

// tipMass reads beta² = omega/sqrt(EI/(rho A L⁴)) of a cantilever with a mass mu at its tip.
func tipMass() (Readings, error) {
	out := Readings{}
	for _, mu := range []float64{0, 0.2, 0.5, 1, 2} {
		p, err := slenderBar(map[float64]string{0: "zY"})
		if err != nil {
			return nil, err
		}
		values, err := p.weighted(p.near(1000, 0, 0), mu, 2)
		if err != nil {
			return nil, err
		}
		for i, v := range values[:2] {
			out["mu "+strconv.FormatFloat(mu, 'g', -1, 64)+" tone "+strconv.Itoa(i+1)] = math.Sqrt(v)
		}
	}
	return out, nil
}

// middleMass reads the symmetric tones of a supported bar with a mass mu in its middle.
func middleMass() (Readings, error) {
	out := Readings{}
	for _, mu := range []float64{0.2, 0.5, 1} {
		p, err := slenderBar(map[float64]string{0: "z", 1: "z"})
		if err != nil {
			return nil, err
		}
		values, err := p.weighted(p.near(500, 0, 0), mu, 3)
		if err != nil {
			return nil, err
		}
		for i, v := range []float64{values[0], values[2]} { // the second tone has its node in the middle
			out["mu "+strconv.FormatFloat(mu, 'g', -1, 64)+" tone "+strconv.Itoa(i+1)] = math.Sqrt(v)
		}
	}
	return out, nil
}

// tappedBars reads the first bending tone of two free steel bars, that of a strip of wood,
// and the strip's first twisting tone, Hz.
func tappedBars() (Readings, error) {
	steel := func(h float64) barOf {
		const e, nu = 200e3, 0.3
		g := e / (2 * (1 + nu))
		return barOf{long: 100, section: element.Rectangle{Width: 20, Height: h, E: e, Gxy: g, Gxz: g}, density: 7850, parts: 40}
	}
	strip := barOf{long: 500, section: element.Rectangle{Width: 40, Height: 4, E: 1e4, Gxy: 640, Gxz: 640}, density: 400, parts: 40}
	stiff := strip
	stiff.section.Gxy, stiff.section.Gxz = 1e9, 1e9
	out := Readings{}
	for name, c := range map[string]struct {
		bar  barOf
		held string
		free int
	}{
		"steel 5": {steel(5), "xyXZ", 2}, "steel 10": {steel(10), "xyXZ", 2},
		"strip": {stiff, "xyXZ", 2}, "twist": {strip, "xyzYZ", 1},
	} {
		p, err := c.bar.panel(map[float64]string{-1: c.held})
		if err != nil {
			return nil, err
		}
		values, err := p.tones(1, c.free, 1e5)
		if err != nil {
			return nil, err
		}
		out[name] = math.Sqrt(values[0]) / (2 * math.Pi)
	}
	return out, nil
}

// tonesProblems are those of vibration.
func motionProblems() map[string]Problem {
	clamped, supported, free := supports{'c', 'c'}, supports{'s', 's'}, supports{'f', 'f'}
	thin := makeup{h: 4, wood: reference.RigidInShear(reference.TestWood()), density: woodDensity}
	iso := makeup{h: 4, wood: reference.Isotropic(1e4, 0.3), density: woodDensity}
	return map[string]Problem{
		"tones square supported":  onSquares(squareTones(supported, 0)),
		"tones square clamped":    onSquares(squareTones(clamped, 0)),
		"tones square free":       onSquares(squareTones(free, 3)),
		"tones square cantilever": onSquares(cantileverSquare),
		"tones disc":              onOwnMesh(discTones),
		"tones wood supported":    onSquares(woodTones(supported, 0, 0)),
		"tones wood clamped":      onSquares(woodTones(clamped, 0, 0)),
		"tones wood free":         onSquares(woodTones(free, 3, 0)),
		"tones wood weighted":     onSquares(woodTones(clamped, 0, 30)),
		"tones half top free":     onSquares(rectangleTones(550, 200, free, 3, thin, 0)),
		"tones isotropic free":    onSquares(rectangleTones(400, 300, free, 3, iso, 0)),
		"tones arch":              onSquares(archTones),
		"tones cap":               onOwnMesh(capTones),
		"tones tip mass":          once(tipMass),
		"tones middle mass":       once(middleMass),
		"tones bars":              once(tappedBars),
	}
}
