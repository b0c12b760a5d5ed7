package study

import (
	"context"
	"math"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/quantity"
	"archload/cases/tree"
)

// edgeStep is something of what holds the edge that a maker does not know to the last
// tenth: a measure, by how much it scatters, and the case with a smaller one.
type edgeStep struct {
	name  string
	cv    float64 // coefficient of variation, 1
	times func(c *cases.Case, by float64)
}

// How far the measures of the edge scatter, 1 (common practice, no published source): a
// side bent and scraped, a lining cut by hand and planed to the edge, how much of its
// width the glue really holds, a back graduated by hand.
const (
	sideScatter   = 0.08
	liningScatter = 0.15
	backScatter   = 0.05
)

// edgeSteps lists what of a case's edge scatters; nothing where no sides hold it: what
// an edge that is taken as hinged or clamped may really be no step tells.
func edgeSteps(c *cases.Case) []edgeStep {
	if !c.Rim.Sided() {
		return nil
	}
	scaled := func(l tree.Length, by float64) tree.Length { return tree.Length(float64(l) * by) }
	out := []edgeStep{{"side thickness", sideScatter, func(c *cases.Case, by float64) { c.Rim.SideThickness = scaled(c.Rim.SideThickness, by) }}}
	if c.Rim.Lining[0] > 0 && c.Rim.Lining[1] > 0 {
		out = append(out, edgeStep{"lining and its glue", liningScatter, func(c *cases.Case, by float64) {
			c.Rim.Lining = [2]tree.Length{scaled(c.Rim.Lining[0], by), scaled(c.Rim.Lining[1], by)}
		}})
	}
	if c.Bodied() {
		out = append(out, edgeStep{"back thickness", backScatter, func(c *cases.Case, by float64) {
			b := *c.Body
			b.Back.ThicknessScale *= by
			c.Body = &b
		}})
	}
	return out
}

// smaller is the case with a step's measure smaller by one standard deviation.
func (e edgeStep) smaller(c *cases.Case) *cases.Case {
	out := *c
	e.times(&out, math.Exp(-logDeviation(e.cv)))
	return &out
}

// EdgeRanges is one standard deviation of each number of a solved case by what scatters at
// its edge, by the key of its quantity and in that quantity's unit; nil where no sides hold it. Each
// measure is made smaller on the companion mesh, as FindSpread does. An error is a cancelled context alone.
func EdgeRanges(ctx context.Context, s *design.Solution, o design.Options) (map[string]answer.Num, error) {
	steps := edgeSteps(s.Top.Built.Case)
	if len(steps) == 0 {
		return nil, nil
	}
	on := scatterMesh(s)
	sp := &Spread{companion: on != s, base: answer.SummarizeCompanion(on), edges: make([]*answer.Report, len(steps))}
	if sp.own = sp.base; sp.companion {
		sp.own = answer.SummarizeCompanion(s)
	}
	err := inParallel(ctx, o, len(steps), func(i int) {
		if other, err := answerIn(ctx, on, steps[i].smaller(on.Top.Built.Case)); err == nil {
			sp.edges[i] = reportOf(other, on, sp.base)
		}
	})
	if err != nil {
		return nil, err
	}
	out := map[string]answer.Num{}
	for _, q := range quantity.Where(func(q quantity.Quantity) bool { return q.Compare != quantity.UnderMesh }) {
		if v := sp.edge(q); v.Known() {
			out[q.Key] = v
		}
	}
	return out, nil
}

// edge is one standard deviation of a number by what scatters at the edge, to first
// order; none where nothing of the edge is modelled.
func (sp *Spread) edge(q quantity.Quantity) answer.Num {
	if len(sp.edges) == 0 {
		return answer.None()
	}
	base, scale, sum := float64(q.Get(sp.base)), companionScale(q, sp.own, sp.base), 0.0
	for _, r := range sp.edges {
		if r == nil {
			return answer.None()
		}
		d := scale * (base - float64(q.Get(r)))
		sum += d * d
	}
	return answer.Num(math.Sqrt(sum))
}
