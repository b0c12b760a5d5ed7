package problem

import (
	"context"
	"encoding/json"
	"fmt"
	"io/fs"
	"math"
	"strings"
	"testing/fstest"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/testdata"
)

// solidPlate is the plate of testdata/solid3d on a rim, with or without its bar,
// under loads P (80 N on two patches) or S (100 N on one).
type solidPlate struct {
	rim   string // clamped or hinged
	load  string // P or S
	brace bool
	made  string // carved or pressed
}

// text lays rim, loads and a gauge at each place over the plate's own case.
func (d solidPlate) text(gauges [][2]float64) string {
	var s strings.Builder
	base := "plate.toml"
	if d.brace {
		base = "bar.toml"
	}
	fmt.Fprintf(&s, "format = 1\nbase = %q\n[plate]\nmade = %q\n[rim]\nsupport = %q\n", base, d.made, d.rim)
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
	return s.String()
}

// solve solves the plate by the whole chain, from its case file, on the
// program's own mesh: 32 stands for the default edges of 6 mm, 16 for 12 mm.
// Sinks and energy are the program's over the reference's.
func (d solidPlate) solve(ctx context.Context, at Density) (Readings, error) {
	want, gauges, err := d.reference()
	if err != nil {
		return nil, err
	}
	all, err := solidFolder()
	if err != nil {
		return nil, err
	}
	all["solid.toml"] = &fstest.MapFile{Data: []byte(d.text(gauges))}
	s, err := solveCase(ctx, all, "solid.toml", at)
	if err != nil {
		return nil, err
	}
	r := answer.Summarize(s)
	out := Readings{"energy": r.Energy.Total / want.Energy.Value, "reaction": r.Reactions.Total[2] / want.Reaction}
	out.solidSinks(r.Gauges, want.Outer.Value)
	if d.brace {
		axial, moment := barAt(s, 0)
		out["bar force"], out["bar moment"] = axial-want.Brace["N"].Value, moment/want.Brace["M"].Value
	}
	return out, nil
}

// solidFolder is testdata/solid3d in memory.
func solidFolder() (fstest.MapFS, error) {
	all := fstest.MapFS{}
	for _, name := range []string{"plate.toml", "bar.toml", "outline.csv", "points.csv"} {
		data, err := fs.ReadFile(testdata.Files, "solid3d/"+name)
		if err != nil {
			return nil, err
		}
		all[name] = &fstest.MapFile{Data: data}
	}
	return all, nil
}

// solidSinks reads the sinks: in the middle, under the loads, and the worst
// difference elsewhere over the greatest sink.
func (out Readings) solidSinks(gauges []answer.GaugeReport, w []float64) {
	largest := 0.0
	for _, v := range w {
		largest = math.Max(largest, math.Abs(v))
	}
	out["middle"], out["bass"], out["treble"] = -gauges[0].Sink/w[0], -gauges[1].Sink/w[1], -gauges[2].Sink/w[2]
	for i, g := range gauges {
		if g.Y != 20 {
			out["elsewhere"] = math.Max(out["elsewhere"], math.Abs(g.Sink+w[i])/largest)
		}
	}
}

// barAt returns the axial force, N, and the moment, N mm (tension at the bottom
// positive), of the plate's one bar at a place along the strings, straight
// between the middles of its stretches.
func barAt(s *design.Solution, y float64) (axial, moment float64) {
	model := s.Result.Plate.Model
	var last [3]float64 // y, N, M
	first := true
	for i := range model.Beams {
		e := &model.Beams[i]
		if e.Part != design.PartBraces {
			continue
		}
		f := s.Result.BeamForces(i)
		here := [3]float64{(model.Nodes[e.Nodes[0]].P[1] + model.Nodes[e.Nodes[1]].P[1]) / 2, f.N, -f.My[1]}
		if !first && (last[0]-y)*(here[0]-y) <= 0 {
			u := (y - last[0]) / (here[0] - last[0])
			return last[1] + u*(here[1]-last[1]), last[2] + u*(here[2]-last[2])
		}
		last, first = here, false
	}
	return math.NaN(), math.NaN()
}

// solidAnswer is what the reference says.
type solidAnswer struct {
	Outer    struct{ Value []float64 }          `json:"w_outer"` // mm, at the points
	Energy   struct{ Value float64 }            `json:"energy"`  // N mm
	Reaction float64                            `json:"reaction_z"`
	Brace    map[string]struct{ Value float64 } `json:"brace_y0"` // N and N mm
}

// reference reads the answer and its points.
func (d solidPlate) reference() (a solidAnswer, points [][2]float64, err error) {
	data, err := testdata.Files.ReadFile("solid3d/values.json")
	if err != nil {
		return a, nil, err
	}
	var all map[string]json.RawMessage
	if err := json.Unmarshal(data, &all); err != nil {
		return a, nil, err
	}
	if err := json.Unmarshal(all["points_xy"], &points); err != nil {
		return a, nil, err
	}
	var rim map[string]json.RawMessage
	if err := json.Unmarshal(all[d.rim], &rim); err != nil {
		return a, nil, err
	}
	name := d.load
	if !d.brace {
		name += " no brace"
	}
	err = json.Unmarshal(rim[name], &a)
	return a, points, err
}

// pressedSolid solves the plate without its bar, its wood axes following the
// surface: energy, N mm, and sink of the mid-surface at (40, 20), mm.
func pressedSolid(rim string) func(ctx context.Context, at Density) (Readings, error) {
	return func(ctx context.Context, at Density) (Readings, error) {
		all, err := solidFolder()
		if err != nil {
			return nil, err
		}
		d := solidPlate{rim: rim, load: "P", made: "pressed"}
		all["solid.toml"] = &fstest.MapFile{Data: []byte(d.text([][2]float64{{40, 20}}))}
		s, err := solveCase(ctx, all, "solid.toml", at)
		if err != nil {
			return nil, err
		}
		r := answer.Summarize(s)
		return Readings{"energy": r.Energy.Total, "sink": r.Gauges[0].Sink}, nil
	}
}
