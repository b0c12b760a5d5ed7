package problem

import (
	"context"
	"fmt"
	"strings"
	"testing/fstest"

	"archload/cases/answer"
	"archload/cases/verify/reference"
	"archload/mesh"
)

// drum is a round plate on sides that yield, from a case file to the report: of
// one isotropic material but for the sides' Poisson's ratio, a force in the
// middle, gauges halfway out on four sides.
type drum struct {
	lining [2]float64 // mm
	block  float64    // width of the blocks across, mm: 200 makes blocks of the whole side
	side   float64    // what the sides' thickness then is, mm
}

// The drum's plate, mm, MPa and N.
const (
	drumRadius, drumPlate, drumHeight = 100.0, 3.0, 60.0
	drumE, drumNu, drumForce          = 1e4, 0.3, 20.0
	drumUp, drumShear                 = 4e3, 2e3 // of the sides, upright and out of their plane
)

// text is the case file.
func (d drum) text() string {
	var s strings.Builder
	fmt.Fprintf(&s, "format = 1\n[plate]\nwood = \"even\"\noutline = \"outline.csv\"\nthickness = %g\n[plate.arch]\n"+
		"formula = { height = %[1]g }\nrim_height = %[1]g\n", drumPlate)
	fmt.Fprintf(&s, "[rim]\nsupport = \"elastic\"\nside_height = %g\nside_thickness = %g\nside_wood = \"side\"\n"+
		"lining = [%g, %g]\nneck_block = %g\ntail_block = %[5]g\n", drumHeight, min(d.side, 6), d.lining[0], d.lining[1], d.block)
	fmt.Fprintf(&s, "[[load]]\nat = [0, 0]\nforce = [0, 0, %g]\n", -drumForce)
	for _, g := range [][2]float64{{50, 0}, {0, 50}, {-50, 0}, {0, -50}} {
		fmt.Fprintf(&s, "[[gauge]]\nat = [%g, %g]\n", g[0], g[1])
	}
	return s.String() + evenWood("even", drumE, drumNu) + fmt.Sprintf("[wood.side]\ndensity = 400\nEL = %g\nER = %g\nET = 10000\nGLR = 5000\nGLT = 5000\nGRT = %g\n"+
		"nuLR = 1e-6\nnuLT = 1e-6\nnuRT = 1e-6\n", drumE, drumUp, drumShear)
}

// evenWood is the table of a wood that is the same in all directions.
func evenWood(name string, e, nu float64) string {
	g := e / (2 * (1 + nu))
	return fmt.Sprintf("[wood.%s]\ndensity = 400\nEL = %g\nER = %[2]g\nET = %[2]g\nGLR = %[3]g\nGLT = %[3]g\nGRT = %[3]g\n"+
		"nuLR = %[4]g\nnuLT = %[4]g\nnuRT = %[4]g\n", name, e, g, nu)
}

// outlineTable is a closed curve as a table.
func outlineTable(points []mesh.Point) string {
	var s strings.Builder
	s.WriteString("x_mm,y_mm\n")
	for _, p := range points {
		fmt.Fprintf(&s, "%.9f,%.9f\n", p[0], p[1])
	}
	return s.String()
}

// solve reads the mean sink of the gauges over the reference's.
func (d drum) solve(ctx context.Context, at Density) (Readings, error) {
	s, err := solveCase(ctx, fstest.MapFS{
		"drum.toml":   {Data: []byte(d.text())},
		"outline.csv": {Data: []byte(outlineTable(ellipse(mesh.Point{}, drumRadius, drumRadius, 96)))},
	}, "drum.toml", at)
	if err != nil {
		return nil, err
	}
	mean := 0.0
	for _, g := range answer.Summarize(s).Gauges {
		mean += g.Sink / 4
	}
	want := reference.Drum{Radius: drumRadius, Plate: drumPlate, E: drumE, Nu: drumNu,
		Side: d.side, Height: drumHeight, Around: drumE, Up: drumUp, Shear: drumShear, Ring: d.lining, Force: drumForce}
	return Readings{"sink": mean / want.Sink(drumRadius/2)}, nil
}
