package scene

import (
	"math"
	"testing"

	"archload/cases/answer"
	"archload/fem/vec3"
	"archload/mesh"
)

// The arrows that press and those that hold are as long in all as the strings press, to
// one scale, and point down and up.
func TestArrowsClose(t *testing.T) {
	s := solved(t, "course-guitar-relief", 0.3)
	f, err := answer.FlowLines(s)
	if err != nil {
		t.Fatal(err)
	}
	const per = 0.5
	sc := NewSkeleton(s).Build(Show{Solution: s, Load: 1, Field: Sink, Forces: &Forces{Flow: f, PerNewton: per, Share: 1}, Enlarge: 1})
	down, up := 0.0, 0.0
	for _, l := range sc.Lines {
		if !l.Over || l.Width != 3 {
			continue
		}
		if d := l.Points[1][2] - l.Points[0][2]; d > 0 {
			up += d / per
		} else {
			down -= d / per
		}
		if l.Points[0][0] != l.Points[1][0] || l.Points[0][1] != l.Points[1][1] {
			t.Errorf("an arrow leans from %v to %v", l.Points[0], l.Points[1])
		}
	}
	press := 0.0
	for _, w := range s.Top.Built.Geometry.StringForces() {
		press += w.Downforce
	}
	foot := 0.0
	for _, c := range answer.FootColumns(s) {
		foot += c.Force
	}
	if math.Abs(down-press-foot) > 1e-6*press {
		t.Errorf("strings and foot press with %.4f N; the arrows down make %.4f N", press+foot, down)
	}
	if math.Abs(up-press) > 2e-3*press {
		t.Errorf("the strings press with %.4f N; the arrows up make %.4f N", press, up)
	}
}

// An arrow of a pin begins at its place, over it if it stands above, and ends there if it points
// down; its words stand at the end that is free.
func TestPinArrows(t *testing.T) {
	s := solved(t, "course-guitar-relief", 0.3)
	k := NewSkeleton(s)
	at := mesh.Point{60, 40}
	on, _ := k.Place(k.Build(Show{Solution: s, Load: 1, Enlarge: 1}), s, Mark{At: at})
	for _, p := range []Pin{
		{At: at, Text: "out", Arrow: [3]float64{30, 0, 0}},
		{At: at, Text: "swings", Arrow: [3]float64{0, 0, 20}, Above: 10, Swings: true},
		{At: at, Text: "presses", Arrow: [3]float64{0, 0, -20}, Above: 10},
	} {
		sc := k.Build(Show{Solution: s, Load: 1, Enlarge: 1, Pins: []Pin{p}})
		var shaft []vec
		heads := 0
		for _, l := range sc.Lines {
			switch {
			case l.Over && l.Width == 3:
				shaft = l.Points
			case l.Over && l.Width == 2.4:
				heads++
			}
		}
		from := plus(on, p.Above, vec{0, 0, 1})
		to, free := vec3.Add(from, p.Arrow), vec3.Add(from, p.Arrow)
		if p.Arrow[2] < 0 {
			from, to = vec3.Sub(from, p.Arrow), from
			free = from
		}
		want := 2 // strokes of a head
		if p.Swings {
			want = 4
		}
		if len(shaft) != 2 || vec3.Norm(vec3.Sub(shaft[0], from)) > 1 || vec3.Norm(vec3.Sub(shaft[1], to)) > 1 || heads != want {
			t.Errorf("%s: the arrow runs along %v with %d strokes of heads, want from %v to %v with %d", p.Text, shaft, heads, from, to, want)
		}
		for _, l := range sc.Labels {
			if l.Text == p.Text && vec3.Norm(vec3.Sub(l.At, free)) > 1 {
				t.Errorf("%s stands at %v, want %v", p.Text, l.At, free)
			}
		}
	}
}

// A mark lies on the face that it names.
func TestMarkOnItsFace(t *testing.T) {
	s := solved(t, "course-guitar-relief", 0.3)
	k := NewSkeleton(s)
	sc := k.Build(Show{Solution: s, Load: 1, Field: Sink, Enlarge: 1})
	at := mesh.Point{60, 40}
	out, ok1 := k.Place(sc, s, Mark{At: at})
	in, ok2 := k.Place(sc, s, Mark{At: at, Inside: true})
	h := s.Top.Built.PlateAt(at).Thickness
	if !ok1 || !ok2 || math.Abs(math.Hypot(math.Hypot(out[0]-in[0], out[1]-in[1]), out[2]-in[2])-h) > 0.05*h || out[2] < in[2] {
		t.Errorf("the outer face at %v, the inner one at %v; the plate is %g mm thick", out, in, h)
	}
	if _, ok := k.Place(sc, s, Mark{At: mesh.Point{1e4, 0}}); ok {
		t.Error("a mark off the wood has a place")
	}
}
