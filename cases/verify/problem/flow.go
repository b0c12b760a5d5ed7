package problem

import (
	"math"

	"archload/cases/verify/reference"
	"archload/fem"
	"archload/fem/contact"
	"archload/fem/flow"
)

// The strip of the flow checks: 200 x 40 mm, 5 mm thick, on pinned ends, 10 N
// on the line x = 0.3 of its length from the first end.
const (
	flowLong, flowWide, flowThick = 200.0, 40.0, 5.0 // mm
	flowForce, flowShare          = 10.0, 0.3
)

// flowStrip follows the force through a strip, flat or arched by the given
// rise, to its ends: by the lever 0.7 of it go to the first and 0.3 to the
// second, through every section on the way and evenly over the width. It reads
// the force per width over that, the mean of points along the middle half of
// each stretch and the one that is furthest off.
func flowStrip(rise float64) func(d Density) (Readings, error) {
	return func(d Density) (Readings, error) {
		p := newPanel(d, d.N, max(2, d.N/4), func(u, v float64) (x, n [3]float64) {
			s := 2*u - 1
			slope := -4 * rise * s / flowLong
			return [3]float64{flowLong * u, flowWide * (v - 0.5), rise * (1 - s*s)}, unit([3]float64{-slope, 0, 1})
		}, makeup{h: flowThick, wood: reference.Isotropic(1e4, 0)})
		p.hold("xyz", On(0, 0))
		p.hold("xyz", On(0, flowLong))
		if err := p.build(); err != nil {
			return nil, err
		}
		top, err := p.sys.Prepare(1)
		if err != nil {
			return nil, err
		}
		r := contact.Condense(top, nil, contact.Slip, p.lineForce(flowShare*flowLong)).RecoverPlate()
		f, err := flow.New(&r.Result, partRib)
		if err != nil {
			return nil, err
		}
		return flowReadings(f), nil
	}
}

// lineForce spreads the force over the width at x.
func (p *panel) lineForce(x float64) []fem.PointForce {
	const points = 80
	var loads []fem.PointForce
	for k := range points {
		at, ok := p.inPlan(x, flowWide*((float64(k)+0.5)/points-0.5))
		if ok {
			loads = append(loads, fem.PointForce{At: at, F: [3]float64{0, 0, -flowForce / points}})
		}
	}
	return loads
}

func flowReadings(f *flow.Flow) Readings {
	out := Readings{"balance": f.Divergence}
	for _, s := range []struct {
		name      string
		from, to  float64 // of the length
		direction float64
		share     float64
	}{{"first end", 0, flowShare, -1, 1 - flowShare}, {"second end", flowShare, 1, 1, flowShare}} {
		sum, worst, count := 0.0, 0.0, 0.0
		for i := range 21 {
			for j := range 9 {
				x := flowLong * (s.from + (s.to-s.from)*(0.25+0.5*float64(i)/20))
				t, ok := f.At(x+0.01, flowWide*(0.4*(float64(j)/4-1))+0.01)
				if !ok {
					continue
				}
				got := s.direction * t[0] * flowWide / (flowForce * s.share)
				sum, count, worst = sum+got, count+1, max(worst, math.Abs(got-1))
			}
		}
		out[s.name], out[s.name+" worst"] = sum/count, worst
	}
	return out
}
