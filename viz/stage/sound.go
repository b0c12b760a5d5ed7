package stage

import (
	"context"
	"fmt"
	"math"
	"slices"

	"archload/cases"
	"archload/cases/design"
	"archload/cases/tone"
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

// tonesFound is how many tones are found.
const tonesFound = 12

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

// sound finds the tones of a design, as archload tones does. Where they cannot be had
// the rest of the answer still stands.
func (a *Answerer) sound(ctx context.Context, d *Answered, w Want) error {
	c := d.Live.Case()
	state := stateOf(c, w)
	if d.Sound != nil && d.Sound.State == state {
		return nil
	}
	d.Sound = nil
	r, shapes, err := tone.FindTones(ctx, c, state, tonesFound, a.options)
	if ctx.Err() != nil {
		return ctx.Err()
	}
	if err != nil {
		d.Soundless = err.Error()
		return nil
	}
	m := shapes.Moving
	rest := m.Solution
	if rest == nil {
		rest = &design.Solution{Top: &design.Top{Built: m.Built},
			Result: &contact.Result{Result: fem.Result{U: make([]float64, 6*len(m.Built.Model.Nodes))}}}
	}
	d.Sound = &Sound{State: state, Report: r, Shapes: shapes, Skeleton: scene.NewSkeleton(rest), rest: rest}
	return nil
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
	if t.Error.Known() {
		words += fmt.Sprintf(" ± %s by the triangles", scale.Fixed(float64(t.Error)*t.Hz, 1))
	}
	words += ", " + StateWords(o.State) + ": " + t.Pattern
	if t.Bridge != nil {
		words += "; the bridge " + t.Bridge.Words
	}
	return words + fmt.Sprintf("; the bold line stays still; drawn slowly, and to %s mm where it swings most, in truth thousandths", scale.Fixed(most, 0))
}

// StateWords say in a few words what vibrates.
func StateWords(s design.State) string {
	switch s {
	case design.Free:
		return "the plate in the hand"
	case design.Bare:
		return "on its edge, no strings"
	}
	return "strung, strings muted"
}

// ToneOf is which tone of design i is drawn, from 0: the wanted one of the first design,
// and of the second the one that swings most alike; -1: none.
func (s *Shown) ToneOf(i int) int {
	d := s.Designs[i]
	if d.Sound == nil || s.Designs[0].Sound == nil {
		return -1
	}
	n := max(1, s.Want.Tone)
	if i == 0 {
		if n > len(d.Sound.Report.Tones) {
			return -1
		}
		return n - 1
	}
	for _, l := range s.Like {
		if l.First == n {
			return l.Tone - 1
		}
	}
	return -1
}

// matched sets the tones of the second design beside those of the first by their shapes.
func (s *Shown) matched() []tone.Likeness {
	if len(s.Designs) < 2 || s.Designs[0].Sound == nil || s.Designs[1].Sound == nil {
		return nil
	}
	a, b := s.Designs[0].Sound, s.Designs[1].Sound
	r := *b.Report
	r.Match(b.Shapes, a.Report, a.Shapes)
	return r.Like
}

// Swung are the scenes at a share of the swing, from -1 to 1, of the tone that is drawn.
func (s *Shown) Swung(share float64) []*scene.Scene {
	var out []*scene.Scene
	for i := range s.Designs {
		out = append(out, s.swung(i, share))
	}
	return out
}

// swung is the scene of one design.
func (s *Shown) swung(i int, share float64) *scene.Scene {
	d, k := s.Designs[i], s.ToneOf(i)
	if k < 0 {
		words := d.Soundless
		switch {
		case words != "":
		case d.Sound == nil:
			words = "tones are found when the hand rests"
		default:
			words = fmt.Sprintf("none of its tones swings like tone %d of A", max(1, s.Want.Tone))
		}
		return d.Skeleton.Build(scene.Show{Solution: d.Now, Load: s.Want.Load, Field: scene.Wood, Enlarge: 1, Strings: s.Want.Strings, Statement: words})
	}
	o := d.Sound
	by, most := o.swing(k)
	values := o.Shapes.Normal[k]
	if i > 0 && s.against(k) {
		by, values = -by, times(values, -1)
	}
	return o.Skeleton.Build(scene.Show{Solution: o.moved(k, share*by), Load: 1, Field: scene.Tone, Values: values, Range: &[2]float64{-1, 1}, Enlarge: 1,
		Strings: s.Want.Strings && o.State == design.Strung, Statement: o.words(k, most)})
}

// against tells whether tone k of the second design is written in the opposite sense to
// that of the first one beside it: up where that goes down most.
func (s *Shown) against(k int) bool {
	a, b := s.Designs[0].Sound, s.Designs[1].Sound
	at := slices.Index(a.Shapes.Normal[s.ToneOf(0)], 1)
	if at < 0 {
		return false
	}
	p, inside := b.Shapes.Moving.Built.OnOuter(a.Shapes.Moving.Built.Mesh.Points[at])
	if !inside {
		return false
	}
	sum := 0.0
	for c, n := range b.Shapes.Moving.Built.Mesh.Tris[p.Shell] {
		sum += p.L[c] * b.Shapes.Normal[k][n]
	}
	return sum < 0
}
