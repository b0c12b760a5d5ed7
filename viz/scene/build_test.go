package scene

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/fem"
	"archload/fem/contact"
	"archload/fem/vec3"
	"archload/viz/scale"
)

// volume is the signed volume inside solids that together close, mm³.
func volume(list ...*Solid) float64 {
	v := 0.0
	for _, o := range list {
		for _, t := range o.Tris {
			v += vec3.Dot(o.Points[t[0]], vec3.Cross(o.Points[t[1]], o.Points[t[2]])) / 6
		}
	}
	return v
}

// open is the sum of the triangles' areas as vectors: none if they close.
func open(list ...*Solid) (sum vec, all float64) {
	for _, o := range list {
		for _, t := range o.Tris {
			n := vec3.Scale(vec3.Cross(vec3.Sub(o.Points[t[1]], o.Points[t[0]]), vec3.Sub(o.Points[t[2]], o.Points[t[0]])), 0.5)
			sum, all = vec3.Add(sum, n), all+vec3.Norm(n)
		}
	}
	return sum, all
}

func named(s *Scene, name string) *Solid {
	for _, o := range s.Solids {
		if o.Name == name {
			return o
		}
	}
	return nil
}

// TestScenesOfAllCases builds every field of every bundled case.
func TestScenesOfAllCases(t *testing.T) {
	list, err := cases.Bundled()
	if err != nil || len(list) < 14 {
		t.Fatalf("%d bundled cases, %v", len(list), err)
	}
	for _, info := range list {
		s := solved(t, info.Name, 0.5)
		k := NewSkeleton(s)
		if !k.Fits(s) {
			t.Errorf("%s: the skeleton does not fit its own solution", info.Name)
		}
		flow, err := answer.FlowLines(s)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range Fields() {
			sc := k.Build(Show{Solution: s, Field: f, Load: 1, Strings: true, Flow: flow})
			checkScene(t, info.Name+", "+f.Name(), sc)
			if f.OnFoot() && s.Top.Built.Bridge == nil {
				continue
			}
			if (sc.Scale == nil) != (f == Wood) {
				t.Errorf("%s, %s: scale %v", info.Name, f.Name(), sc.Scale)
			}
		}
		checkVolumes(t, info.Name, s, k.Build(Show{Solution: s, Enlarge: 1e-9}))
	}
}

// checkScene wants whole lists, unit normals and finite places.
func checkScene(t *testing.T, name string, sc *Scene) {
	t.Helper()
	if !(sc.Radius > 50) || sc.Statement == "" || sc.Enlarge < 1 {
		t.Errorf("%s: radius %g, statement %q, enlarged %g", name, sc.Radius, sc.Statement, sc.Enlarge)
	}
	for _, o := range sc.Solids {
		if len(o.Normals) != len(o.Points) || o.Values != nil && len(o.Values) != len(o.Points) || len(o.Tris) == 0 {
			t.Errorf("%s, %s: %d points, %d normals, %d values, %d triangles", name, o.Name, len(o.Points), len(o.Normals), len(o.Values), len(o.Tris))
		}
		for i, n := range o.Normals {
			if math.Abs(vec3.Norm(n)-1) > 1e-9 {
				t.Errorf("%s, %s: normal %v of point %d is not a unit", name, o.Name, n, i)
				break
			}
		}
	}
	for _, l := range sc.Lines {
		for _, p := range l.Points {
			if v := vec3.Norm(p); !(v < 2000) {
				t.Errorf("%s: a line runs through %v", name, p)
			}
		}
	}
}

// checkVolumes wants the plate to hold its mass of wood, and every part to be
// closed with its faces outward.
func checkVolumes(t *testing.T, name string, s *design.Solution, sc *Scene) {
	t.Helper()
	plate := []*Solid{named(sc, "plate outside"), named(sc, "plate inside"), named(sc, "plate edge")}
	const density = 400 // kg/m³: any
	want := s.Top.Built.Mesh.Mass(density) / density * 1e6
	if got := volume(plate...); math.Abs(got-want) > 0.01*want {
		t.Errorf("%s: the plate holds %.0f mm³, want %.0f", name, got, want)
	}
	if sum, all := open(plate...); vec3.Norm(sum) > 1e-9*all {
		t.Errorf("%s: the plate's skins leave %v mm² open", name, sum)
	}
	for _, o := range sc.Solids[3:] {
		if o.Name == Shadow || o.Name == "back" {
			continue // skins
		}
		if o.Name == "sides" {
			continue
		}
		if sum, all := open(o); vec3.Norm(sum) > 1e-9*all {
			t.Errorf("%s, %s: %v mm² open", name, o.Name, sum)
		}
		if v := volume(o); !(v > 10) {
			t.Errorf("%s, %s: volume %g mm³, want a solid turned outward", name, o.Name, v)
		}
	}
}

// TestBraceVolume compares the drawn braces with their mass: 1 % and what is
// let into the plate.
func TestBraceVolume(t *testing.T) {
	s := solved(t, "course-guitar", 0.5)
	sc := NewSkeleton(s).Build(Show{Solution: s, Enlarge: 1e-9})
	for _, name := range []string{"bass bar", "treble bar"} {
		// 255.1 mm of line, 7 mm wide; heights 3, 13, 13, 3 mm at 0, 0.15, 0.85, 1,
		// and 0.3 mm let into the plate.
		const length, width = 255.125, 7.0
		want := length * width * (0.7*13 + 0.3*8 + 0.3)
		if got := volume(named(sc, name)); math.Abs(got-want) > 0.01*want {
			t.Errorf("%s: %.0f mm³, want %.0f by hand", name, got, want)
		}
	}
}

// TestBridgeOnTheTop wants the foot of a fitted bridge to lie on the top, and
// a relieved one to stand off by its relief, enlarged like the movement.
func TestBridgeOnTheTop(t *testing.T) {
	for _, name := range []string{"course-guitar", "course-guitar-relief", "course-guitar-two-feet", "course-guitar-posts"} {
		s := solved(t, name, 0.5)
		const enlarge = 7
		sc := NewSkeleton(s).Build(Show{Solution: s, Enlarge: enlarge})
		out := named(sc, "plate outside")
		k := NewSkeleton(s)
		gaps := s.FootGaps()
		parts := s.Top.Built.BridgeParts()
		b := &build{s: s, e: enlarge}
		for i, c := range answer.FootCells(s) {
			p := near(s, parts[0], s.Top.Built.Case.Bridge.At[0]+c.X, s.Top.Built.Case.Bridge.At[1]+c.Y)
			at, _ := s.Top.Built.OnOuter([2]float64{p.At[0], p.At[1]})
			top := k.spot(at).on(out.Points)
			// The bedding gives way by some hundredths, and the corner of a section
			// lies up to some millimetres from the cell's middle.
			if got, want := b.bridgePoint(p)[2]-top[2], enlarge*gaps[i]; math.Abs(got-want) > enlarge*0.045+0.06 {
				t.Errorf("%s at x = %.1f: the foot is drawn %.3f mm above the top, want %.3f", name, c.X, got, want)
			}
		}
	}
}

// near is the corner of a foot nearest to a place in plan. Corners that stand
// clear of the top by custom are none of a foot.
func near(s *design.Solution, part design.BridgePart, x, y float64) design.BridgePoint {
	var best design.BridgePoint
	least := math.Inf(1)
	for _, sec := range part.Sections {
		for _, k := range []int{0, 1, 4, 5} {
			at := sec[k].At
			if d := math.Hypot(at[0]-x, at[1]-y); d < least && at[2] == s.Top.Built.Plate.Outer.At([2]float64{at[0], at[1]}).Z {
				best, least = sec[k], d
			}
		}
	}
	return best
}

// TestParts wants the parts that a maker expects.
func TestParts(t *testing.T) {
	for _, c := range []struct {
		name string
		want []string
		not  string
	}{
		{"course-guitar-posts", []string{"base", "post", "saddle beam", "bass bar", "treble bar"}, "saddle"},
		{"course-guitar-elastic", []string{"sides", "base", "saddle"}, "post"},
		{"bowed-layout", []string{"base", "bass bar"}, "sides"},
		{"bench-plate", []string{"plate outside"}, "base"},
	} {
		s := solved(t, c.name, 0.5)
		sc := NewSkeleton(s).Build(Show{Solution: s})
		for _, part := range c.want {
			if named(sc, part) == nil {
				t.Errorf("%s: no %q", c.name, part)
			}
		}
		if named(sc, c.not) != nil {
			t.Errorf("%s: a %q, want none", c.name, c.not)
		}
	}
}

// TestTheSameTwice builds a scene twice and wants the same bits.
func TestTheSameTwice(t *testing.T) {
	s := solved(t, "course-guitar-elastic", 0.5)
	flow, err := answer.FlowLines(s)
	if err != nil {
		t.Fatal(err)
	}
	in := Show{Solution: s, Field: LoadFlow, Strings: true, Flow: flow, Pins: []Pin{{Name: "apex", At: [2]float64{0, 30}}}}
	a, b := NewSkeleton(s).Build(in), NewSkeleton(s).Build(in)
	if !reflect.DeepEqual(a.Solids, b.Solids) || !reflect.DeepEqual(a.Lines, b.Lines) || !reflect.DeepEqual(a.Labels, b.Labels) {
		t.Error("two scenes of one design differ")
	}
}

func TestEnlargeFor(t *testing.T) {
	for _, c := range []struct{ v, want float64 }{{1, 1}, {1.4, 1}, {1.5, 2}, {3.1, 2}, {3.3, 5}, {7.2, 10}, {0.24, 0.2}, {43, 50}} {
		if got := scale.StepNear(c.v); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("scale.StepNear(%g) = %g, want %g", c.v, got, c.want)
		}
	}
	s := solved(t, "course-guitar", 0.5)
	sc := NewSkeleton(s).Build(Show{Solution: s, Field: Sink, Load: 0.6})
	if e := EnlargeFor(s); e != sc.Enlarge || e < 10 || e > 20 {
		t.Errorf("enlarged %g times, drawn %g, want 10 or 20", e, sc.Enlarge)
	}
	for _, want := range []string{"sink", "60 % of the string load", "movement drawn", "times as large"} {
		if !strings.Contains(sc.Statement, want) {
			t.Errorf("statement %q, want %q in it", sc.Statement, want)
		}
	}
	at := *s
	at.Result = &contact.Result{Result: fem.Result{U: make([]float64, len(s.Result.U))}}
	if e := EnlargeFor(&at); e != 1 {
		t.Errorf("a top at rest is enlarged %g times, want 1", e)
	}
}

// TestRimWords wants the four words where they belong.
func TestRimWords(t *testing.T) {
	s := solved(t, "course-guitar", 0.5)
	sc := NewSkeleton(s).Build(Show{Solution: s})
	want := map[string]vec{"neck": {0, 1, 0}, "tail": {0, -1, 0}, "bass": {-1, 0, 0}, "treble": {1, 0, 0}}
	for _, l := range sc.Labels {
		d, ok := want[l.Text]
		if !ok || l.Toward != d || vec3.Dot(l.At, d) < 100 {
			t.Errorf("%q at %v toward %v", l.Text, l.At, l.Toward)
		}
		delete(want, l.Text)
	}
	if len(want) > 0 {
		t.Errorf("missing %v", want)
	}
}

// TestFlowWords wants the newtons at the rim to be those of the report.
func TestFlowWords(t *testing.T) {
	s := solved(t, "course-guitar", 0.5)
	flow, err := answer.FlowLines(s)
	if err != nil {
		t.Fatal(err)
	}
	sc := NewSkeleton(s).Build(Show{Solution: s, Flow: flow})
	var sectors, parts, beads int
	for _, l := range sc.Labels {
		sectors += b2i(l.Kind == SectorForce && strings.HasSuffix(l.Text, " N"))
		parts += b2i(l.Kind == Part && strings.Contains(l.Text, "bar"))
	}
	for _, l := range sc.Lines {
		beads += b2i(l.Beads)
	}
	if want := 2*len(flow.Lines) + 4; sectors != 4 || parts != 2 || beads != want { // a path on each face, an arrow on each part of the rim
		t.Errorf("%d forces at the rim, %d braces, %d moving lines; want 4, 2, %d", sectors, parts, beads, want)
	}
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}
