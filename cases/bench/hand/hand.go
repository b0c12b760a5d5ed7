package hand

import (
	"context"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/bench"
	"archload/cases/design"
	"archload/cases/study"
	"archload/materials"
)

// Row is one gauge under one weight. Lengths mm.
type Row struct {
	Press   string       `json:"press"`
	State   string       `json:"state"` // bare or strung
	Gauge   string       `json:"gauge"`
	At      [2]float64   `json:"at"`
	Force   float64      `json:"force"` // N, of the weight
	Sink    study.Ranged `json:"sink"`  // by the weight alone
	Mesh    answer.Num   `json:"mesh"`  // half the width of the mesh's range
	PerKilo answer.Num   `json:"per_kilo"`
	Target  answer.Num   `json:"target"`  // null: none
	Changes []Change     `json:"changes"` // each of which would meet it
}

// Look answers the gauges of a file that were not read, on the plate that its case describes, in a wood; nil without any.
// Errors are those of a case that cannot be built or solved.
func Look(ctx context.Context, f *bench.File, wood materials.Card, o design.Options) ([]Row, error) {
	var rows []Row
	for i := range f.Presses {
		p := &f.Presses[i]
		if f.Top == nil || p.Bar != "" || !asks(p) {
			continue
		}
		list, err := pressed(ctx, f, i, wood, o)
		if err != nil {
			return nil, err
		}
		rows = append(rows, list...)
	}
	return rows, nil
}

// asks says whether a gauge waits for an answer.
func asks(p *bench.Press) bool {
	for i := range p.Gauges {
		if p.Gauges[i].Measured == nil {
			return true
		}
	}
	return false
}

// pressed answers the gauges of press n.
func pressed(ctx context.Context, f *bench.File, n int, wood materials.Card, o design.Options) ([]Row, error) {
	p := &f.Presses[n]
	l := newLoading(f, p, wood)
	if err := l.standing(f, n); err != nil {
		return nil, err
	}
	o.NoFlow = true
	var reps [2]*answer.Report
	var spreads [2]*study.Spread
	for k, c := range []*cases.Case{l.without, l.with} {
		if c == nil { // nothing is on it
			continue
		}
		s, err := design.Solve(ctx, c, o)
		if err != nil {
			return nil, err
		}
		if spreads[k], err = study.FindSpread(ctx, s, o); err != nil {
			return nil, err
		}
		reps[k] = answer.Summarize(s)
	}
	var rows []Row
	for i := range p.Gauges {
		g := &p.Gauges[i]
		if g.Measured != nil {
			continue
		}
		a := study.GaugeApart(i, reps[0], reps[1], spreads[0], spreads[1])
		r := Row{Press: p.Name, State: p.State, Gauge: g.Name, At: g.At, Force: p.Newtons(), Sink: study.Ranged{Value: a.Value, SD: a.Wood}, Mesh: a.Mesh,
			PerKilo: a.Value / answer.Num(p.Newtons()/bench.StandardGravity), Target: answer.None(), Changes: []Change{}}
		if g.Target > 0 {
			r.Target = answer.Num(g.Target)
			var err error
			if r.Changes, err = l.meet(ctx, i, float64(g.Target), float64(a.Value), o); err != nil {
				return nil, err
			}
		}
		rows = append(rows, r)
	}
	return rows, nil
}
