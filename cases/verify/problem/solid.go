package problem

import (
	"context"
	"encoding/json"
	"fmt"
	"math"
	"strings"

	"archload/cases"
	"archload/testdata"
)

// solidPlate is the plate of testdata/solid3d: 300 x 400 mm, 5 mm thick, carved,
// its mid-surface z = 26 (1-(x/150)²)² (1-(y/200)²)² mm; with or without a bar;
// under loads P (80 N on two patches) or S (100 N on one).
type solidPlate struct {
	rim   string // clamped or hinged
	load  string // P or S
	brace bool
}

// outer samples the outer surface exactly: points of the mid-surface every
// 10 mm moved out by 2.5 mm along its normal.
func (solidPlate) outer() string {
	const rise, a, b, half = 26.0, 150.0, 200.0, 2.5 // mm
	var s strings.Builder
	s.WriteString("x_mm,y_mm,height_mm\n")
	for x := -a; x <= a; x += 10 {
		for y := -b; y <= b; y += 10 {
			p, q := 1-(x/a)*(x/a), 1-(y/b)*(y/b)
			z := rise * p * p * q * q
			zx, zy := -4*rise*x/(a*a)*p*q*q, -4*rise*y/(b*b)*p*p*q
			w := math.Sqrt(1 + zx*zx + zy*zy)
			fmt.Fprintf(&s, "%.5f,%.5f,%.5f\n", x-half*zx/w, y-half*zy/w, z+half/w)
		}
	}
	return s.String()
}

// text is the case file.
func (d solidPlate) text(gauges [][2]float64) string {
	var s strings.Builder
	fmt.Fprintf(&s, "format = 1\ntitle = \"3D reference\"\n[plate]\nwood = \"reference\"\noutline = \"outline.csv\"\nthickness = 5\n"+
		"[plate.arch]\npoints = \"points.csv\"\nnoise = 0.002\nrim_height = 2.5\n[rim]\nsupport = %q\n", d.rim)
	if d.brace {
		s.WriteString("[[brace]]\nname = \"bar\"\nwood = \"reference\"\nline = [[-40, 120], [-40, -120]]\nwidth = 8\nheight = 12\n")
	}
	patches := [][2]float64{{-40, -80}, {40, -80}}
	if d.load == "S" {
		patches = [][2]float64{{40, -100}}
	}
	for _, l := range patches {
		fmt.Fprintf(&s, "[[load]]\nat = [%g, 20]\nsize = [30, 14]\nforce = [0, 0, %g]\n", l[0], l[1])
	}
	for _, g := range gauges {
		fmt.Fprintf(&s, "[[gauge]]\nat = [%g, %g]\n", g[0], g[1])
	}
	s.WriteString("[wood.reference]\ndensity = 400\nEL = 10800\nER = 842\nET = 464\nGLR = 691\nGLT = 659\nGRT = 32\n" +
		"nuLR = 0.372\nnuLT = 0.467\nnuRT = 0.435\n")
	return s.String()
}

// solve solves the plate by the whole chain, from its case file, on the
// program's own mesh: 32 stands for the default edges of 6 mm, 16 for 12 mm.
// Each reading is the program's value over the reference's.
func (d solidPlate) solve(ctx context.Context, at Density) (Readings, error) {
	gauges := [][2]float64{{-40, 20}, {40, 20}, {0, 0}}
	c, err := cases.Load(folder(map[string]string{
		"solid.toml": d.text(gauges), "points.csv": d.outer(),
		"outline.csv": "x_mm,y_mm,corner\n-150,-200,1\n150,-200,1\n150,200,1\n-150,200,1\n",
	}), "solid.toml")
	if err != nil {
		return nil, err
	}
	s, err := cases.Solve(ctx, c, at.options())
	if err != nil {
		return nil, err
	}
	want, err := d.reference()
	if err != nil {
		return nil, err
	}
	r := cases.Summarize(s)
	return Readings{
		"energy": r.Energy.Total / want.Energy.Value,
		"bass":   -r.Gauges[0].Sink / want.Outer.Value[1],
		"treble": -r.Gauges[1].Sink / want.Outer.Value[2],
		"middle": -r.Gauges[2].Sink / want.Outer.Value[0],
	}, nil
}

// solidAnswer is what the reference says.
type solidAnswer struct {
	Outer  struct{ Value []float64 } `json:"w_outer"` // mm, at points_xy
	Energy struct{ Value float64 }   `json:"energy"`  // N·mm
}

func (d solidPlate) reference() (solidAnswer, error) {
	var a solidAnswer
	data, err := testdata.Files.ReadFile("solid3d/values.json")
	if err != nil {
		return a, err
	}
	var all map[string]json.RawMessage
	if err := json.Unmarshal(data, &all); err != nil {
		return a, err
	}
	var rim map[string]json.RawMessage
	if err := json.Unmarshal(all[d.rim], &rim); err != nil {
		return a, err
	}
	name := d.load
	if !d.brace {
		name += " no brace"
	}
	err = json.Unmarshal(rim[name], &a)
	return a, err
}
