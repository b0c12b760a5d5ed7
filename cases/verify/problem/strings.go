package problem

import (
	"archload/cases"
	"archload/cases/gauge"
	"archload/cases/tree"
)

// stringForces computes tensions and what two strings press on the saddle.
func stringForces() (Readings, error) {
	out := Readings{}
	for _, s := range []struct {
		name  string
		plain float64 // in
		freq  float64 // Hz
	}{
		{".012 E4", 0.012, 329.628}, {".011 E4", 0.011, 329.628}, {".010 E4", 0.010, 329.628},
		{".016 B3", 0.016, 246.942}, {".015 B3", 0.015, 246.942},
	} {
		mu := gauge.PlainWeight(tree.Length(s.plain*25.4), 7850)
		out[s.name] = float64(cases.TensionOf(mu, 635, tree.Frequency(s.freq)))
		out[s.name+" mass"] = float64(mu)
	}
	for _, s := range []struct {
		name   string
		weight float64 // lb/in
		freq   float64 // Hz
	}{{"G3", 1.0e-4, 195.998}, {"D3", 1.85e-4, 146.832}, {"A2", 3.1e-4, 110}, {"E2", 4.9e-4, 82.407}} {
		const poundPerInch = 0.45359237 / 0.0254 // kg/m, exact
		out[s.name] = float64(cases.TensionOf(tree.LineMass(s.weight*poundPerInch), 635, tree.Frequency(s.freq)))
	}
	for _, s := range []struct {
		name        string
		tension     float64
		front, back float64 // deg
	}{{"4/10", 750, 4, 10}, {"5/9", 700, 5, 9}, {"3/11", 800, 3, 11}} {
		t := tree.Force(s.tension)
		out[s.name+" down"], out[s.name+" along"] = cases.Push(t, t, tree.Angle(s.front), tree.Angle(s.back))
	}
	return out, nil
}
