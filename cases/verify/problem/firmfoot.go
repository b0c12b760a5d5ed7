package problem

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing/fstest"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/fem/vec3"
)

// firmFoot is a bridge on a plate, from a case file to the report, both so stiff
// that the foot stands on its bedding alone: half the plate's thickness and half
// the base's height of wood with a soft axis upright.
type firmFoot struct {
	bridge      string // further keys of the table [bridge]
	front, back float64
	tension     float64
	soft        bool    // a base that bends: E 10 GPa along, G 500 MPa upright and 2000 across
	radius      float64 // of the arch across, a parabola z = -x²/(2 radius), mm; 0: flat
}

// The firm plate and its bridge, mm and MPa.
const (
	firmLength, firmWidth, firmHeight = 60.0, 12.0, 10.0
	firmPlate, firmSoft, firmStiff    = 10.0, 100.0, 1e6
	firmSaddle                        = 24.0
	firmGap                           = 0.03
)

// squash is what a square millimetre of the foot gives under 1 N on level
// ground, mm: 5 mm of plate and 5 mm of base.
const squash = (firmPlate/2 + firmHeight/2) / firmSoft

// text is the case file.
func (f firmFoot) text() string {
	var s strings.Builder
	fmt.Fprintf(&s, "format = 1\n[plate]\nwood = \"firm\"\noutline = \"outline.csv\"\nthickness = %g\n", firmPlate)
	if f.radius == 0 {
		s.WriteString("[plate.arch]\nformula = { height = 20 }\nrim_height = 20\n")
	} else {
		s.WriteString("[plate.arch]\npoints = \"points.csv\"\nnoise = 0.001\n")
	}
	fmt.Fprintf(&s, "[rim]\nsupport = \"clamped\"\n[strings]\nfront_angle = %g\nback_angle = %g\neach = [{ name = \"a\", tension = %g, x = 0 }]\n",
		f.front, f.back, f.tension)
	fmt.Fprintf(&s, "[bridge]\nwood = \"base\"\nlength = %g\nwidth = %g\nheight = %g\nsaddle_height = %g\n%s\n", firmLength, firmWidth, firmHeight, firmSaddle, f.bridge)
	const wood = "[wood.%s]\ndensity = 400\nEL = %g\nER = %g\nET = %g\nGLR = %g\nGLT = %[5]g\nGRT = %[5]g\nnuLR = 1e-6\nnuLT = 1e-6\nnuRT = 1e-6\n"
	fmt.Fprintf(&s, wood, "firm", firmStiff, firmStiff, firmSoft, firmStiff)
	if f.soft {
		s.WriteString("[wood.base]\ndensity = 400\nEL = 10000\nER = 100\nET = 1000\nGLR = 500\nGLT = 2000\nGRT = 500\nnuLR = 1e-6\nnuLT = 1e-6\nnuRT = 1e-6\n")
		return s.String()
	}
	fmt.Fprintf(&s, wood, "base", firmStiff, firmSoft, firmStiff, firmStiff)
	return s.String()
}

// points samples the arch.
func (f firmFoot) points() string {
	var s strings.Builder
	s.WriteString("x_mm,y_mm,height_mm\n")
	for x := -60.0; x <= 60; x += 5 {
		for y := -40.0; y <= 40; y += 10 {
			fmt.Fprintf(&s, "%g,%g,%.6f\n", x, y, 60-x*x/(2*f.radius))
		}
	}
	return s.String()
}

// solve solves the case.
func (f firmFoot) solve(ctx context.Context, at Density) (*design.Solution, error) {
	all := fstest.MapFS{
		"firm.toml":   {Data: []byte(f.text())},
		"outline.csv": {Data: []byte("x_mm,y_mm,corner\n-60,-40,1\n60,-40,1\n60,40,1\n-60,40,1\n")},
	}
	if f.radius != 0 {
		all["points.csv"] = &fstest.MapFile{Data: []byte(f.points())}
	}
	return solveCase(ctx, all, "firm.toml", at)
}

// down is the downforce of the string, N, and along its push toward the neck.
func (f firmFoot) down() (down, along float64) {
	fs, fc := math.Sincos(f.front * degree)
	bs, bc := math.Sincos(f.back * degree)
	return f.tension * (fs + bs), f.tension * (fc - bc)
}

// beddingFoot reads a foot with a parabolic relief: how much of the load closes
// its middle, and the middle third's share of the full load, over the sums of
// stiff ground with a squash: p = (delta - g)/squash.
func beddingFoot(ctx context.Context, at Density) (Readings, error) {
	f := firmFoot{bridge: fmt.Sprintf("relief = { depth = %g }", firmGap), front: 10, back: 10, tension: 1000}
	s, err := f.solve(ctx, at)
	if err != nil {
		return nil, err
	}
	r := answer.Summarize(s).Bridge
	full, _ := f.down()
	const perDepth = firmWidth * firmLength / squash // N for a sink of 1 mm
	closes := perDepth * firmGap / 3
	sink := full/perDepth + firmGap*2/3
	third := perDepth * (sink/3 - firmGap*(1.0/3-1.0/81))
	return Readings{"closes": float64(r.MiddleClosesAt) * full / closes, "share": r.Share.Middle * full / third, "sink": r.Sink / sink}, nil
}

// bridgeBeam bends a bridge on two narrow feet, 56 mm from middle to middle: how
// far its middle goes below its ends, P l³/(48 E I) + P l/(4 k G A), k = 5/6, and
// the ends' rise, 2 mm times P l²/(16 E I).
func bridgeBeam(ctx context.Context, at Density) (Readings, error) {
	f := firmFoot{bridge: "hold = \"slip\"\nfoot = [{ from = -30, to = -26 }, { from = 26, to = 30 }]", front: 10, back: 10, tension: 100, soft: true}
	s, err := f.solve(ctx, at)
	if err != nil {
		return nil, err
	}
	p, _ := f.down()
	const l, ei, ga = 56.0, 1e4 * firmWidth * firmHeight * firmHeight * firmHeight / 12, 5.0 / 6 * 500 * firmWidth * firmHeight
	want := p*l*l*l/(48*ei) + p*l/(4*ga) + 2*p*l*l/(16*ei)
	r := answer.Summarize(s).Bridge
	return Readings{"bend": (r.Sink - (r.EndSink[0]+r.EndSink[1])/2) / want}, nil
}

// misfitFoot reads a foot with a measured gap, even over the middle 20 mm and
// straight to the ends: the load that closes it, over perDepth gap/3.
func misfitFoot(ctx context.Context, at Density) (Readings, error) {
	f := firmFoot{bridge: fmt.Sprintf("hold = \"grip\"\nmisfit = [[-30, 0], [-10, %[1]g], [10, %[1]g], [30, 0]]", firmGap), front: 10, back: 10, tension: 1000}
	s, err := f.solve(ctx, at)
	if err != nil {
		return nil, err
	}
	full, _ := f.down()
	closes := firmWidth * firmLength / squash * firmGap / 3
	return Readings{"closes": float64(answer.Summarize(s).Bridge.MiddleClosesAt) * full / closes}, nil
}

// slopedFoot reads a foot that slides on a round arch, with a relief: the load
// that closes its middle. On a slope of angle a the upright gap and the upright
// sink count cos a each, the squash cos⁴ a, and the force's upright part cos a:
// p = (delta - g)/(squash cos² a), cos² a = 1/(1 + (x/radius)²), summed along x.
func slopedFoot(ctx context.Context, at Density) (Readings, error) {
	f := firmFoot{bridge: fmt.Sprintf("hold = \"slip\"\nrelief = { depth = %g }", firmGap), front: 10, back: 10, tension: 1000, radius: 50}
	s, err := f.solve(ctx, at)
	if err != nil {
		return nil, err
	}
	full, _ := f.down()
	closes := 0.0
	const n = 600
	for i := range n {
		x := firmLength * ((float64(i)+0.5)/n - 0.5)
		u := 2 * x / firmLength
		closes += firmGap * u * u / squash * (1 + x*x/(f.radius*f.radius)) * firmWidth * firmLength / n
	}
	return Readings{"closes": float64(answer.Summarize(s).Bridge.MiddleClosesAt) * full / closes}, nil
}

// saddleArm reads what the ground gives back to a bridge whose string presses
// and pushes: the force along, and its moment about the foot's middle, which is
// the push times the saddle's height.
func saddleArm(ctx context.Context, at Density) (Readings, error) {
	f := firmFoot{bridge: "hold = \"grip\"", front: 4, back: 10, tension: 750}
	s, err := f.solve(ctx, at)
	if err != nil {
		return nil, err
	}
	var force, moment [3]float64
	for _, r := range s.Result.Reactions {
		p := vec3.Sub(s.Result.Plate.Model.Nodes[r.Node].P, [3]float64{0, 0, 20})
		g := [3]float64{r.F[0], r.F[1], r.F[2]}
		force = vec3.Add(force, g)
		moment = vec3.Add(moment, vec3.Add(vec3.Cross(p, g), [3]float64{r.F[3], r.F[4], r.F[5]}))
	}
	down, along := f.down()
	return Readings{"down": force[2] / down, "along": -force[1] / along, "moment": moment[0] / (along * firmSaddle)}, nil
}

// shearBar bends a bar of a case file on two bench supports by a force in its
// middle, P l³/(48 E I) + P l/(4 k G A), k = 5/6. The plate is so soft that it
// counts for little; G is that of the grain and the rings, which stand upright. The
// supports stand at the bar's ends, which are nodes: between two nodes such a plate
// gives way.
func shearBar(ctx context.Context, at Density) (Readings, error) {
	const l, wide, high, force, e, g = 80.0, 8.0, 20.0, 100.0, 1e4, 400.0
	text := "format = 1\n[plate]\nwood = \"soft\"\noutline = \"outline.csv\"\nthickness = 1\n[plate.arch]\nformula = { height = 1 }\nrim_height = 1\n" +
		"[rim]\nsupport = \"hinged\"\n[[brace]]\nname = \"bar\"\nwood = \"bar\"\nline = [[-40, 0], [0, 0], [40, 0]]\nwidth = 8\nheight = 20\n" +
		"[[load]]\nat = [0, 0]\nforce = [0, 0, -100]\n[[gauge]]\nat = [0, 0]\n[[support]]\nat = [-40, 0]\n[[support]]\nat = [40, 0]\n" + evenWood("soft", 100, 0.3) +
		"[wood.bar]\ndensity = 400\nEL = 10000\nER = 800\nET = 500\nGLR = 400\nGLT = 100\nGRT = 30\nnuLR = 0.37\nnuLT = 0.4\nnuRT = 0.4\n"
	s, err := solveCase(ctx, fstest.MapFS{
		"bar.toml":    {Data: []byte(text)},
		"outline.csv": {Data: []byte("x_mm,y_mm,corner\n-60,-40,1\n60,-40,1\n60,40,1\n-60,40,1\n")},
	}, "bar.toml", at)
	if err != nil {
		return nil, err
	}
	want := force*l*l*l/(48*e*wide*high*high*high/12) + force*l/(4*5.0/6*g*wide*high)
	return Readings{"sink": answer.Summarize(s).Gauges[0].Sink / want}, nil
}
