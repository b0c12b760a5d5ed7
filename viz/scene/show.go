package scene

import (
	"fmt"
	"math"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/fem/vec3"

	"archload/viz/figure"
	"archload/viz/scale"
)

// Build makes the scene.
func (k *Skeleton) Build(in Show) *Scene {
	b := &build{k: k, in: in, s: in.Solution, e: in.Enlarge, scene: &Scene{}}
	if b.e == 0 {
		b.e = EnlargeFor(in.Solution)
	}
	b.field()
	b.plate()
	b.bars()
	b.posts()
	b.bridge()
	b.foot()
	b.ring()
	b.back()
	b.shadow()
	if in.Strings {
		b.strings()
	}
	b.flow()
	b.forces()
	b.pins()
	b.worst()
	b.cut()
	b.before()
	b.words()
	b.levels()
	c := b.scene
	for _, n := range k.mesh.Rim {
		c.Edge = append(c.Edge, b.outer[n])
	}
	c.Enlarge, c.Title = b.e, b.s.Top.Built.Case.Title
	c.Field, c.Unit = in.Field.Name(), in.Field.Unit()
	c.Statement = b.statement()
	c.bound()
	b.beside.Wait()
	return c
}

// field finds the values and the scale.
func (b *build) field() {
	f := b.in.Field
	if f == Wood {
		return
	}
	v := b.in.Values
	if v == nil && f.OnFoot() {
		v = FootValues(b.s, f)
	} else if v == nil {
		v = Values(b.s, f, b.in.Face)
	}
	if f.OnFoot() {
		b.onFoot = v
	} else {
		b.values = v
	}
	r := b.in.Range
	if r == nil {
		own := b.ownRange(v)
		r = &own
	}
	b.scene.Plain = f == LoadFlow || f.OnFoot()
	bands := f.scaleOf(*r)
	if b.in.Difference {
		bands = scale.New(r[0], r[1], scale.Signed)
	}
	b.scene.Scale = &bands
}

// ownRange is the range of the scene's own values.
func (b *build) ownRange(v []float64) [2]float64 {
	if b.in.Difference {
		lo, hi, _ := figure.Field{Nodal: v}.Extent()
		return [2]float64{lo, hi}
	}
	return Range(b.s, b.in.Field, v)
}

// statement says what is shown in one line.
func (b *build) statement() string {
	f := b.in.Field
	if b.in.Statement != "" {
		return b.in.Statement
	}
	words := f.Name()
	if f == Wood {
		words = "the parts"
	}
	if b.in.Difference {
		words = "difference in " + words
	}
	if f.HasFaces() {
		words += [2]string{", outer face", ", inner face"}[b.in.Face]
	}
	if b.in.Before != nil {
		words += " (long dashes: as its file says)"
	}
	return words + ", " + LoadWords(b.s, b.in.Load) + "; " + b.enlargeWords()
}

// LoadWords say which share of a design's load is on, of 0 to 1.
func LoadWords(s *design.Solution, load float64) string {
	what := "string load"
	if s.Top.Built.Case.Strings == nil {
		what = "load"
	}
	switch share := math.Round(100 * load); {
	case share == 0:
		return "no " + what
	case share < 100:
		return fmt.Sprintf("%.0f %% of the %s", share, what)
	}
	return "full " + what
}

func (b *build) enlargeWords() string {
	what := "movement"
	if b.s.Top.Built.Bridge != nil && deepestGap(b.s) > 0 {
		what = "movement and gaps"
	}
	if b.e == 1 {
		return what + " drawn true to size"
	}
	return fmt.Sprintf("%s drawn %g times as large", what, b.e)
}

// How large the greatest movement is drawn by EnlargeFor: a share of the
// arch's height and a share of the plate's width.
const (
	archShare  = 0.15
	widthShare = 0.01
)

// EnlargeFor returns by how much movements are to be enlarged, 1, so that they
// can be seen on the arch without drowning it: 1, 2 or 5 times a power of ten,
// at least 1. The bridge's relief, drawn as much larger, stays within its
// height. A top at rest has nothing to enlarge: 1.
func EnlargeFor(s *design.Solution) float64 {
	most, lo, hi := 0.0, math.Inf(1), math.Inf(-1)
	for i, n := range s.Top.Built.Mesh.Nodes {
		u := s.Result.U[6*i : 6*i+3]
		most = math.Max(most, vec3.Norm(vec{u[0], u[1], u[2]}))
		z := n.P[2] + n.H/2*n.N[2]
		lo, hi = math.Min(lo, z), math.Max(hi, z)
	}
	left, right := math.Inf(1), math.Inf(-1)
	for _, n := range s.Top.Built.Mesh.Rim {
		x := s.Top.Built.Mesh.Points[n][0]
		left, right = math.Min(left, x), math.Max(right, x)
	}
	if most == 0 {
		return 1
	}
	want := (archShare*(hi-lo) + widthShare*(right-left)) / most
	if s.Top.Built.Bridge != nil {
		if gap := deepestGap(s); gap > 0 {
			want = math.Min(want, reliefShare*lowestBase(s)/gap)
		}
	}
	return math.Max(1, scale.StepNear(want))
}

// reliefShare is how much of the base's least height the relief may take when
// it is drawn enlarged.
const reliefShare = 0.6

// deepestGap is the deepest relief under the foot, mm.
func deepestGap(s *design.Solution) float64 {
	most := 0.0
	for _, c := range answer.FootCells(s) {
		most = math.Max(most, s.Top.Built.Case.Bridge.Gap(c.X, c.Y))
	}
	return most
}

// lowestBase is the base's height where it is lowest over a gap, mm.
func lowestBase(s *design.Solution) float64 {
	least, deep := math.Inf(1), deepestGap(s)
	for _, c := range answer.FootCells(s) {
		if s.Top.Built.Case.Bridge.Gap(c.X, c.Y) > 0.5*deep {
			least = math.Min(least, s.Top.Built.Case.Bridge.Height.Value(c.X))
		}
	}
	return least
}
