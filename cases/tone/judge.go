package tone

import (
	"context"
	"math"
	"math/cmplx"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/fem/sparse"
	"archload/fem/vibration"
)

// The frequencies that are judged, Hz: edges of thirds of octaves. Fundamental notes lie mostly in
// the lower part.
const (
	judgedFrom  = 80.0
	judgedAlong = 160.0
	judgedMid   = 315.0
	judgedTo    = 800.0
)

// judgedPoints is how many frequencies a level's mean is taken over.
const judgedPoints = 120

// Judge puts how the strung top swings among the answers of a solution, if its case asks for it and
// has strings. What cannot be had is a warning.
func Judge(r *answer.Report, s *design.Solution, workers int) {
	c := s.Top.Built.Case
	if !c.Moving().Judged || s.Result.State == nil {
		return
	}
	m, err := design.Swinging(s, workers)
	if err == nil {
		r.Motion, err = judged(m, workers)
	}
	if err != nil {
		r.Warnings = append(r.Warnings, "how it swings is not known: "+err.Error())
	}
}

// judged finds the numbers.
func judged(m *design.Moving, workers int) (*answer.Motion, error) {
	t, err := tonesUpTo(m, judgedTo)
	if err != nil {
		return nil, err
	}
	node, at := m.Built.SaddleNode(0), m.Built.Saddle(0)
	const up, along, across, air = 0, 1, 2, 3
	red, err := t.Reduce([]sparse.Column{
		m.Structure.BodyPort(node, at, [3]float64{0, 0, 1}), m.Structure.BodyPort(node, at, [3]float64{0, 1, 0}),
		m.Structure.BodyPort(node, at, [3]float64{1, 0, 0}), m.Structure.VolumePort(m.Built.PlateN)}, m.Case.Moving().Loss)
	if err != nil {
		return nil, err
	}
	if m.Case.Moving().ByWood {
		if err := loseByWood(context.Background(), m, red, design.Options{Workers: workers}); err != nil {
			return nil, err
		}
	}
	out := &answer.Motion{
		LowestTone: answer.Num(t.List[0].Hz), PumpingTone: answer.None(), RockingTone: answer.None(),
		UpLow:     meanLevel(red, up, up, metres, judgedFrom, judgedMid),
		UpHigh:    meanLevel(red, up, up, metres, judgedMid, judgedTo),
		AlongHigh: meanLevel(red, along, along, metres, judgedAlong, judgedTo),
		Across:    meanLevel(red, across, across, metres, judgedFrom, judgedTo),
		AirAcross: meanLevel(red, across, air, metres*metres*metres, judgedFrom, judgedTo),
		AirLow:    meanLevel(red, up, air, metres*metres*metres, judgedFrom, judgedMid),
	}
	for i := len(t.List) - 1; i >= 0; i-- { // the lowest of a kind comes last
		hz := answer.Num(t.List[i].Hz)
		switch bridgeTone(m, t.List[i].Shape).Words {
		case pumps:
			out.PumpingTone = hz
		case rocksSideways:
			out.RockingTone = hz
		}
	}
	return out, nil
}

// meanLevel is the level of the mean square of a mobility between two frequencies, evenly in their
// logarithm, dB; scale turns mm into what it is told in.
func meanLevel(red *vibration.Reduced, drive, at int, scale, from, to float64) answer.Num {
	sum := 0.0
	for k := range judgedPoints {
		f := from * math.Pow(to/from, (float64(k)+0.5)/judgedPoints)
		y := scale * cmplx.Abs(red.Mobility(drive, at, f))
		sum += y * y / judgedPoints
	}
	return answer.Num(10 * math.Log10(sum))
}
