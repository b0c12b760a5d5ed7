package carve

import (
	"cmp"
	"context"
	"fmt"
	"maps"
	"math"
	"slices"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/bench"
	"archload/cases/design"
	"archload/cases/shape"
	"archload/cases/tone"
	"archload/cases/tree"
	"archload/materials"
	"archload/mesh"
	"archload/mesh/plane"
)

// Report is a plate on its way. Thicknesses and places mm, weights g, tones Hz.
type Report struct {
	Target    string   `json:"target"`    // title of the case
	Tolerance float64  `json:"tolerance"` // from which a place counts as too thick or too thin
	Places    []Place  `json:"places"`    // where the caliper was, in the order of the table
	Map       []Place  `json:"map"`       // on a grid; now is the surface through the readings
	Most      *Place   `json:"most"`      // place of the readings where most is to come off; null if none is too thick
	Thin      *Place   `json:"thin"`      // place of the readings that is too thin by most; null if none is
	TooThick  int      `json:"too_thick"` // readings
	TooThin   int      `json:"too_thin"`
	Thinnest  float64  `json:"thinnest"` // of the readings
	Weight    Pair     `json:"weight"`   // of the plate, without braces
	Tones     []Tone   `json:"tones"`    // of the free plate with the braces that the target has
	Sink      Pair     `json:"sink"`     // of the bridge under the target's strings, mm; null without
	Used      Pair     `json:"strength_used"`
	Cautions  []string `json:"cautions"`

	Built   *design.Built `json:"-"` // of the target, for pictures
	TakeOff []float64     `json:"-"` // at its nodes, mm
}

// Place is one place of the plate.
type Place struct {
	X       float64 `json:"x"`
	Y       float64 `json:"y"`
	Now     float64 `json:"now"`
	Target  float64 `json:"target"`
	TakeOff float64 `json:"take_off"` // negative: too thin already
}

// Pair is a number of the plate as it is and as it shall become.
type Pair struct {
	Now    answer.Num `json:"now"`
	Target answer.Num `json:"target"`
}

// Tone is one tone, by its number.
type Tone struct {
	Pair
	Pattern       string `json:"pattern"`        // as it is
	TargetPattern string `json:"target_pattern"` // as it shall become
}

// tones is how many tones are told.
const tones = 6

// gridStep is the distance of the places of the map, mm.
const gridStep = 10.0

// Look sets the plate that a file says is being carved, in a wood, beside its target. Errors are those of a case that cannot be
// built or solved.
func Look(ctx context.Context, f *bench.File, wood materials.Card, o design.Options) (*Report, error) {
	o.NoError, o.NoFlow = true, true
	aim := in(f.Aim, wood)
	target, err := shape.NewGeometry(aim)
	if err != nil {
		return nil, err
	}
	is := *aim
	rim := tree.Length(target.RimHeight)
	is.Plate.Thickness = cases.Heights{Points: f.Carving.Readings, Noise: f.Carving.Noise}
	is.Plate.ThicknessScale, is.Plate.ThicknessChange = 1, nil
	is.Plate.Arch.RimHeight = &rim
	now, err := shape.NewGeometry(&is)
	if err != nil {
		return nil, err
	}
	r := &Report{Target: f.Aim.Title, Tolerance: float64(f.Carving.Tolerance), Places: []Place{}, Map: []Place{}, Tones: []Tone{}, Cautions: []string{}}
	for _, w := range now.Warnings {
		r.Cautions = append(r.Cautions, w.Error())
	}
	r.places(f.Carving.Readings, target)
	r.grid(now, target)
	if err := r.weigh(now, target, wood); err != nil {
		return nil, err
	}
	if err := r.swing(ctx, &is, aim, o); err != nil {
		return nil, err
	}
	return r, r.load(ctx, &is, aim, o)
}

// in is a case whose plate is of another wood.
func in(c *cases.Case, wood materials.Card) *cases.Case {
	out := *c
	out.Cards = maps.Clone(c.Cards)
	out.Cards["plate.wood"] = wood
	return &out
}

// places sets each reading beside the target.
func (r *Report) places(t *cases.HeightTable, target *shape.Geometry) {
	r.Thinnest = math.Inf(1)
	for i := range t.X {
		q := mesh.Point{t.X[i], t.Y[i]}
		p := Place{X: q[0], Y: q[1], Now: t.Height[i], Target: target.Plate.Thickness.At(q).Z}
		p.TakeOff = p.Now - p.Target
		r.Places = append(r.Places, p)
		r.Thinnest = math.Min(r.Thinnest, p.Now)
		if p.TakeOff >= r.Tolerance {
			r.TooThick++
			if r.Most == nil || p.TakeOff > r.Most.TakeOff {
				r.Most = &p
			}
		}
		if p.TakeOff <= -r.Tolerance {
			r.TooThin++
			if r.Thin == nil || p.TakeOff < r.Thin.TakeOff {
				r.Thin = &p
			}
		}
	}
}

// Foremost lists the places of the caliper that matter most, n at most: those that are too thin already, then those where
// most is to come off.
func (r *Report) Foremost(n int) []Place {
	list := slices.Clone(r.Places)
	slices.SortStableFunc(list, func(p, q Place) int {
		if thin := p.TakeOff <= -r.Tolerance; thin != (q.TakeOff <= -r.Tolerance) {
			if thin {
				return -1
			}
			return 1
		}
		return cmp.Compare(math.Abs(q.TakeOff), math.Abs(p.TakeOff))
	})
	return list[:min(len(list), n)]
}

// grid maps what is to come off over the whole plate.
func (r *Report) grid(now, target *shape.Geometry) {
	lo, hi := target.Outline.Bounds()
	for y := math.Ceil(lo[1]/gridStep) * gridStep; y <= hi[1]; y += gridStep {
		for x := math.Ceil(lo[0]/gridStep) * gridStep; x <= hi[0]; x += gridStep {
			q := mesh.Point{x, y}
			hole := func(h *plane.Curve) bool { return h.Contains(q) }
			if !target.Outline.Contains(q) || slices.ContainsFunc(target.Holes, hole) {
				continue
			}
			p := Place{X: x, Y: y, Now: now.Plate.Thickness.At(q).Z, Target: target.Plate.Thickness.At(q).Z}
			p.TakeOff = p.Now - p.Target
			r.Map = append(r.Map, p)
		}
	}
}

// weigh finds the plate's weight now and then.
func (r *Report) weigh(now, target *shape.Geometry, wood materials.Card) error {
	for i, g := range []*shape.Geometry{now, target} {
		b, err := design.MeshAndBuild(g, 1)
		if err != nil {
			return err
		}
		r.Weight.set(i, b.Mesh.Volume()*wood.Wood.Density*1e-6)
		r.Built = b
	}
	for _, q := range r.Built.Mesh.Points {
		r.TakeOff = append(r.TakeOff, now.Plate.Thickness.At(q).Z-target.Plate.Thickness.At(q).Z)
	}
	return nil
}

// set puts one of the two.
func (p *Pair) set(i int, v float64) {
	if i == 0 {
		p.Now = answer.Num(v)
	} else {
		p.Target = answer.Num(v)
	}
}

// swing finds the free plate's tones now and then.
func (r *Report) swing(ctx context.Context, is, aim *cases.Case, o design.Options) error {
	a, _, err := tone.FindTones(ctx, is, design.Free, tones, o)
	if err != nil {
		return err
	}
	b, _, err := tone.FindTones(ctx, aim, design.Free, tones, o)
	if err != nil {
		return err
	}
	for i := range tones {
		t := Tone{Pair: Pair{answer.None(), answer.None()}}
		if i < len(a.Tones) {
			t.Now, t.Pattern = answer.Num(a.Tones[i].Hz), a.Tones[i].Pattern
		}
		if i < len(b.Tones) {
			t.Target, t.TargetPattern = answer.Num(b.Tones[i].Hz), b.Tones[i].Pattern
		}
		r.Tones = append(r.Tones, t)
	}
	return nil
}

// load puts the target's strings on both.
func (r *Report) load(ctx context.Context, is, aim *cases.Case, o design.Options) error {
	r.Sink, r.Used = Pair{answer.None(), answer.None()}, Pair{answer.None(), answer.None()}
	if aim.Strings == nil || aim.Bridge == nil {
		return nil
	}
	for i, c := range []*cases.Case{is, aim} {
		s, err := design.Solve(ctx, c, o)
		if err != nil {
			return fmt.Errorf("under the target's strings: %w", err)
		}
		rep := answer.Summarize(s)
		if rep.Bridge != nil {
			r.Sink.set(i, float64(rep.Bridge.Sink))
		}
		r.Used.set(i, float64(rep.Strength.Used))
	}
	return nil
}
