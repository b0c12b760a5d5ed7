package stage

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"archload/cases"
	"archload/cases/design"
	"archload/cases/tone"
	"archload/cases/tree"
	"archload/fem"
	"archload/fem/contact"
	"archload/viz/scale"
	"archload/viz/scene"
)

// Sound is how a design swings in a state: its lowest tones, and what they are drawn
// from.
type Sound struct {
	State    design.State
	Report   *tone.Report
	Shapes   *tone.Shapes
	Skeleton *scene.Skeleton

	rest *design.Solution // at rest: what a swing is drawn on
}

// tonesFound is how many tones are found, and fewer where the triangles carry no more.
const tonesFound = 12

func fewerTones() []int { return []int{tonesFound, 8, 5, 2} }

// States are the states that a design can sound in, the usual one first.
func States(c *cases.Case) []design.State {
	if c.Strings != nil && c.Bridge != nil {
		return []design.State{design.Strung, design.Bare, design.Free}
	}
	if c.InTheHand() {
		return []design.State{design.Free}
	}
	return []design.State{design.Bare, design.Free}
}

// stateOf is the state of a want in which a design sounds.
func stateOf(c *cases.Case, w Want) design.State {
	all := States(c)
	if s := design.State(w.State); slices.Contains(all, s) {
		return s
	}
	return all[0]
}

// findSound finds the tones of a case in a state, as archload tones does. Where they cannot
// be had it says why; an error is a cancelled context alone.
func findSound(ctx context.Context, c *cases.Case, state design.State, o design.Options) (found *Sound, why string, err error) {
	var r *tone.Report
	var shapes *tone.Shapes
	for _, n := range fewerTones() {
		r, shapes, err = tone.FindTones(ctx, c, state, n, o)
		var coarse *tree.FileError
		if !errors.As(err, &coarse) || coarse.Key != "mesh.size" {
			break
		}
	}
	if ctx.Err() != nil {
		return nil, "", ctx.Err()
	}
	if err != nil {
		return nil, err.Error(), nil
	}
	m := shapes.Moving
	rest := m.Solution
	if rest == nil {
		rest = &design.Solution{Top: &design.Top{Built: m.Built},
			Result: &contact.Result{Result: fem.Result{U: make([]float64, 6*len(m.Built.Model.Nodes))}}}
	}
	return &Sound{State: state, Report: r, Shapes: shapes, Skeleton: scene.NewSkeleton(rest), rest: rest}, "", nil
}

// moved is the design displaced by a tone's shape times a factor, nothing else.
func (o *Sound) moved(k int, by float64) *design.Solution {
	shape := o.Shapes.Tones.List[k].Shape
	r := *o.rest.Result
	n := len(r.U)
	r.U = times(shape[:n], by)
	r.Body = times(shape[n:], by)
	if r.State != nil {
		st := *r.State
		st.SlackRest = [6]float64{}
		r.State = &st
	}
	s := *o.rest
	s.Result = &r
	return &s
}

func times(v []float64, by float64) []float64 {
	out := make([]float64, len(v))
	for i := range v {
		out[i] = by * v[i]
	}
	return out
}

// swingShare is how far the place that swings most is drawn to go, as a share of the
// plate's width.
const swingShare = 0.02

// swing is the factor by which a tone's shape is drawn at the end of its swing, and how
// far the plate then goes, square to it, mm.
func (o *Sound) swing(k int) (by, most float64) {
	b := o.Shapes.Moving.Built
	at := 0
	for i, v := range o.Shapes.Normal[k] {
		if math.Abs(v) > math.Abs(o.Shapes.Normal[k][at]) {
			at = i
		}
	}
	n, u := b.Model.Nodes[at].N, o.Shapes.Tones.List[k].Shape[6*at:][:3]
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, i := range b.Mesh.Rim {
		lo, hi = math.Min(lo, b.Mesh.Points[i][0]), math.Max(hi, b.Mesh.Points[i][0])
	}
	most = swingShare * (hi - lo)
	return most / (n[0]*u[0] + n[1]*u[1] + n[2]*u[2]), most
}

// words say what is seen of a tone.
func (o *Sound) words(k int, most float64) string {
	t := &o.Report.Tones[k]
	words := fmt.Sprintf("tone %d, %s Hz", k+1, scale.Fixed(t.Hz, 1))
	if off := float64(t.Error) * t.Hz; t.Error.Known() && off >= 0.05 {
		words += fmt.Sprintf(" ± %s", scale.Fixed(off, 1))
	}
	words += ", " + StateWords(o.State) + ": " + t.Pattern
	if t.Bridge != nil {
		words += "; the bridge " + t.Bridge.Words
	}
	return words + fmt.Sprintf("; bold line: still; drawn slowly, and far too large: %s mm", scale.Fixed(most, 0))
}

// StateWords say in a few words what vibrates.
func StateWords(s design.State) string {
	switch s {
	case design.Free:
		return "in the hand"
	case design.Bare:
		return "on its edge"
	}
	return "strung"
}
