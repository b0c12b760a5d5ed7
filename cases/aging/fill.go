package aging

import (
	"archload/cases/answer"
	"archload/cases/body"
	"archload/cases/design"
	"archload/mesh"
)

// fill reads the numbers of the made state.
func (r *MadeReport) fill(made *design.Solution) {
	s := answer.Strength(made)
	r.Strength, r.Bridge = &s, answer.BridgeNow(made)
	r.Thrust = body.ThrustOf(made)
}

// fill reads a season's numbers; made is the state from which movements count.
func (r *SeasonReport) fill(was, is state, ch change) {
	r.fillFrom(was.shown(), is.shown(), ch)
	if is.moved == nil {
		return
	}
	var beside SeasonReport
	beside.fillFrom(was.linear, is.linear, ch)
	r.Linear = beside.numbers()
}

// numbers are those that stand beside others.
func (r *SeasonReport) numbers() *LinearSeason {
	l := &LinearSeason{ArchRise: r.ArchRise, Sink: answer.None(), Action: answer.None(), GapLeft: answer.None(), Middle: answer.None(),
		Across: r.Across.Used, Used: r.Strength.Used, rises: r.rises()}
	if b := r.Bridge; b != nil {
		l.Sink, l.Action, l.GapLeft, l.Middle = answer.Num(b.Sink), answer.Num(b.ActionChange), answer.Num(b.GapLeft), answer.Num(b.Share.Middle)
	}
	return l
}

// fillFrom is fill by one theory.
func (r *SeasonReport) fillFrom(made, now *design.Solution, ch change) {
	whole := answer.Summarize(now)
	r.Change = ChangeReport{Outer: ch.outer, Inner: ch.inner}
	r.Strength, r.Energy, r.Error = whole.Strength, whole.Energy, whole.Error
	r.Error.Discretisation = answer.None()
	r.Braces = []GlueUse{}
	for _, b := range whole.Braces {
		r.Braces = append(r.Braces, GlueUse{Name: b.Name, ShearUsed: b.Glue.ShearUsed, PeelUsed: b.Glue.PeelUsed})
	}
	r.Across, r.NeckTurn = across(now), answer.None()
	if whole.Body != nil {
		r.NeckTurn = answer.Num(whole.Body.NeckTurn - answer.Summarize(made).Body.NeckTurn)
	}
	r.Thrust = body.ThrustOf(now)
	if now.Top.Built.Bridge != nil {
		r.Bridge = bridgeFrom(made, now, ch.outer)
	}
	m := movement{made: made, now: now}
	if now.Top.Built.Case.SwellsAlone() {
		m.settle()
	}
	r.Gauges = whole.Gauges
	for i := range r.Gauges {
		g := &r.Gauges[i]
		g.Displacement = m.at(mesh.Point{g.X, g.Y})
		if now.Top.Built.Case.Gauges[i].On == "back" {
			g.Displacement = m.atBack(mesh.Point{g.X, g.Y})
		}
		g.Sink = -g.Displacement[2]
	}
	top := mesh.Point{whole.Top.Apex.X, whole.Top.Apex.Y}
	if !whole.Top.Arched() {
		top = middle(now.Top.Built)
	}
	r.Apex = [2]float64(top)
	r.ArchRise = m.at(top)[2] - m.rim()
	r.Cross = m.cross(top[1])
}

// bridgeFrom is the bridge as it stands, its movements from the made state; the saddle rises
// with its own wood.
func bridgeFrom(made, now *design.Solution, water float64) *answer.BridgeReport {
	r, before := answer.BridgeNow(now), answer.BridgeNow(made)
	r.Sink -= before.Sink
	r.Tilt.ForeAft -= before.Tilt.ForeAft
	r.Tilt.Sideways -= before.Tilt.Sideways
	r.ActionChange -= before.ActionChange + bridgeFree{now.Top.Built, water}.saddleRise()/2
	for k := range r.EndSink {
		r.EndSink[k] -= before.EndSink[k]
	}
	return r
}
