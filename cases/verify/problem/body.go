package problem

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing/fstest"

	"archload/cases/answer"
	"archload/mesh"
)

// squeezedBody is the case file of a closed body of two carved plates on an ellipse,
// sides between their mid-surfaces and two rigid blocks, pressed together lengthwise
// at the blocks. testdata/README.md defines it and says what an independent 3D solid
// gives. Its plates lie on their rims by half their thickness, so that the walls go
// from z = 0 to z = -80.
const squeezedBody = `
format = 1
title = "squeezed body"
[plate]
wood = "spruce"
outline = "outline.csv"
thickness = 5
arch = { points = "top.csv", noise = 0.001, rim_height = 2.5 }
[rim]
support = "body"
side_height = 80
side_thickness = 2.3
side_wood = "maple"
lining = [0, 0]
neck_block = 60
tail_block = 60
[body.back]
wood = "maple"
thickness = 4.5
arch = { points = "back.csv", noise = 0.001, rim_height = 2.25 }
[[load]]
on = "neck block"
at = [0, 200]
z = -20
force = [0, -700, 0]
[[load]]
on = "tail block"
at = [0, -200]
z = -20
force = [0, 700, 0]
[wood.spruce]
like = "sitka-spruce"
EL = 10800
ER = 842
ET = 464
GLR = 691
GLT = 659
GRT = 32
nuLR = 0.372
nuLT = 0.467
nuRT = 0.435
density = 400
[wood.maple]
like = "sugar-maple"
EL = 13860
ER = 1830
ET = 901
GLR = 1538
GLT = 873
GRT = 290
nuLR = 0.424
nuLT = 0.476
nuRT = 0.774
density = 630
`

// The body's ellipse, mm.
const bodyHalfWidth, bodyHalfLength = 150.0, 200.0

// bodyFiles are the case and its tables.
func bodyFiles() fstest.MapFS {
	return fstest.MapFS{
		"body.toml":   {Data: []byte(squeezedBody)},
		"outline.csv": {Data: []byte(bodyEllipse())},
		"top.csv":     {Data: []byte(bodyArch(18, 5))},
		"back.csv":    {Data: []byte(bodyArch(15, 4.5))},
	}
}

// bodyEllipse is a table of points on the outline.
func bodyEllipse() string {
	const points = 400
	var b strings.Builder
	b.WriteString("x_mm,y_mm\n")
	for i := range points {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / points)
		fmt.Fprintf(&b, "%.9f,%.9f\n", bodyHalfWidth*cos, bodyHalfLength*sin)
	}
	return b.String()
}

// bodyArch is a table of places on the outer surface, h/2 outside the mid-surface
// rise (1-s)² along its normal; s is the ellipse's form. They lie about 10 mm apart.
func bodyArch(rise, h float64) string {
	const step = 10
	var b strings.Builder
	b.WriteString("x_mm,y_mm,height_mm\n")
	form := func(x, y float64) float64 {
		return x*x/bodyHalfWidth/bodyHalfWidth + y*y/bodyHalfLength/bodyHalfLength
	}
	for i := -15; i <= 15; i++ {
		for j := -20; j <= 20; j++ {
			x, y := float64(step*i), float64(step*j)
			s := form(x, y)
			slope := -4 * rise * (1 - s)
			zx, zy := slope*x/bodyHalfWidth/bodyHalfWidth, slope*y/bodyHalfLength/bodyHalfLength
			k := h / 2 / math.Sqrt(1+zx*zx+zy*zy)
			if x, y = x-k*zx, y-k*zy; s <= 1 && form(x, y) <= 1 {
				fmt.Fprintf(&b, "%.6f,%.6f,%.6f\n", x, y, rise*(1-s)*(1-s)+k)
			}
		}
	}
	return b.String()
}

// solveSqueezedBody reads movements, mm and degrees, energies, N·mm, and balance.
func solveSqueezedBody(ctx context.Context, d Density) (Readings, error) {
	s, err := solveCase(ctx, bodyFiles(), "body.toml", d)
	if err != nil {
		return nil, err
	}
	rise := func(x, y float64) float64 {
		at, _ := s.Top.Built.OnMiddle(mesh.Point{x, y})
		return s.Result.MoveAt(at)[2]
	}
	r := answer.Summarize(s)
	b := r.Body
	nearer := func(z float64) float64 { // the blocks turn as one
		return b.Nearer.Top + (b.Nearer.Back-b.Nearer.Top)*z/80
	}
	return Readings{
		"centre": rise(0, 0), "bass foot": rise(-37, -20), "treble foot": rise(37, -20), "between": rise(0, -20), "neckward": rise(0, 60),
		"bout": rise(80, 0), "back": -b.Back.Centre, "from rim": -b.Sink.Apex,
		"nearer 0": nearer(0), "nearer 20": nearer(20), "nearer 40": nearer(40), "nearer 80": nearer(80),
		"turn": b.NeckTurn, "energy": r.Energy.Total, "energy top": r.Energy.Membrane + r.Energy.Bending + r.Energy.Shear,
		"carried": b.Outside, "balance": max(r.Error.Equilibrium, r.Error.Energy),
	}, nil
}
