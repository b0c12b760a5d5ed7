package figure

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"archload/mesh"
	"archload/viz/canvas"
	"archload/viz/scale"
)

// demoSection is a made-up cross-arch with openings at the f-slots; high is
// the arch's height, sink scales the movement.
func demoSection(name string, high, sink float64) Section {
	s := Section{Name: name}
	for i := 0; i <= 160; i++ {
		x := -190 + 380*float64(i)/160
		u := math.Abs(x) / 190
		z := 5 + high*math.Pow(math.Cos(math.Pi*u/2), 1.6) - 1.5*math.Exp(-math.Pow((u-0.9)/0.06, 2))
		h := 5.2 - 1.2*u
		if a := math.Abs(x); a > 89 && a < 96 {
			z = math.NaN()
		}
		s.X = append(s.X, x)
		s.Outer = append(s.Outer, z)
		s.Inner = append(s.Inner, z-h)
		s.Sink = append(s.Sink, sink*demoSink(mesh.Point{x, 0}))
		s.Across = append(s.Across, 0.04*sink*math.Sin(math.Pi*x/190))
	}
	z := func(x float64) float64 { return 5 + high*math.Pow(math.Cos(math.Pi*math.Abs(x)/380), 1.6) }
	var under, over []mesh.Point
	for x := -70.0; x <= 70; x += 5 {
		under = append(under, mesh.Point{x, z(x)})
		over = append(over, mesh.Point{-x, z(-x) + 5 + 8*(1-math.Abs(x)/70)})
	}
	s.Bridge = [][]mesh.Point{append(under, over...)}
	return s
}

// demoFoot is a made-up foot of n stations from a to b with parabolic relief.
func demoFoot(name string, a, b float64, n int) FootSection {
	f := FootSection{Name: name}
	for i := 0; i < n; i++ {
		x := a + (b-a)*(float64(i)+0.5)/float64(n)
		u := x / 66
		gap := math.Max(0, 0.12*(1-u*u)-0.085)
		f.X = append(f.X, x)
		f.Relief = append(f.Relief, 0.12*(1-u*u))
		f.Gap = append(f.Gap, gap)
		force := 2 + 14*math.Pow(math.Abs(u), 4)
		if gap > 0 {
			force = 0
		}
		f.Force = append(f.Force, force)
	}
	return f
}

// demoThirds sums a foot's forces by thirds.
func demoThirds(f FootSection) []Share {
	out := []Share{{"bass end", -66, -22, 0}, {"middle", -22, 22, 0}, {"treble end", 22, 66, 0}}
	for i, x := range f.X {
		for k := range out {
			if x >= out[k].From && x < out[k].To {
				out[k].Force += f.Force[i]
			}
		}
	}
	return out
}

func demoCross() CrossArchInput {
	f := demoFoot("foot", -66, 66, 22)
	return CrossArchInput{
		Caption: demoCaption(), Section: demoSection("as drawn", 17, 1),
		Feet: []FootSection{f}, Shares: demoThirds(f),
	}
}

func demoFootForce() FootForceInput {
	in := FootForceInput{Caption: demoCaption(), Lines: []FootLine{{Name: "bass end"}, {Name: "middle"}, {Name: "treble end"}}, Events: []Event{
		{0.23, "the middle first touches"}, {0.31, "the middle has closed"}, {0.86, "the neck edge lifts under the treble end"},
	}}
	for i := 0; i <= 50; i++ {
		l := float64(i) / 50
		m := math.Max(0, 46*(l-0.23))
		in.Load = append(in.Load, l)
		in.Lines[1].Force = append(in.Lines[1].Force, m)
		in.Lines[0].Force = append(in.Lines[0].Force, (148*l-m)*0.49)
		in.Lines[2].Force = append(in.Lines[2].Force, (148*l-m)*0.51)
	}
	return in
}

func TestSectionErrors(t *testing.T) {
	s := demoSection("ok", 17, 1)
	short, back, foot := s, s, demoFoot("foot", -66, 66, 5)
	short.Sink = s.Sink[1:]
	back.X = append([]float64{5, 4}, s.X[2:]...)
	foot.Gap = nil
	ff := demoFootForce()
	ff.Lines[1].Force = nil
	fall := demoFootForce()
	fall.Load = append([]float64{0.5}, fall.Load[1:]...)
	err := func(_ *canvas.Picture, err error) error { return err }
	for _, c := range []struct {
		err  error
		want string
	}{
		{err(CrossArch(CrossArchInput{})), "at least 2 stations"},
		{err(CrossArch(CrossArchInput{Section: short})), "160 sinks for 161 stations"},
		{err(CrossArch(CrossArchInput{Section: back})), "does not follow"},
		{err(CrossArch(CrossArchInput{Section: s, Feet: []FootSection{foot}})), "equally many"},
		{err(CompareSections(CompareInput{Sections: []Section{s}})), "want 2 to 4"},
		{err(CompareSections(CompareInput{Sections: []Section{s, short}})), "160 sinks"},
		{err(FootForce(ff)), "51 loads and 0 forces"},
		{err(FootForce(fall)), "do not rise"},
		{err(CompareBars(BarsInput{})), "found 0 designs"},
		{err(CompareBars(BarsInput{Designs: []string{"a"}, Rows: []BarRow{{Name: "sink"}}})), "0 values for 1 designs"},
		{err(CompareBars(BarsInput{Designs: []string{"a"}, Rows: []BarRow{{"sink", "mm", []float64{1}, []float64{}}}})), "0 ranges for 1 designs"},
		{err(OverlaySections(CompareInput{})), "want 2 designs, found 0"},
	} {
		if c.err == nil || !strings.Contains(c.err.Error(), c.want) {
			t.Errorf("error %v, want one with %q", c.err, c.want)
		}
	}
}

// TestSectionFrame checks the stated exaggerations against the drawing.
func TestSectionFrame(t *testing.T) {
	s := demoSection("ok", 17, 1)
	f := frameSections([]Section{s}, canvas.Box(30, 400, 470, 540), sectionSize{})
	i, sink := s.deepest()
	at, moved := f.at(s.X[i], s.Outer[i]), f.moved(s, i, s.Outer[i])
	if got, want := at.Y-moved.Y, sink*f.enlarge*f.scale; math.Abs(got-want) > 1e-9 {
		t.Errorf("sink of %g mm drawn %g points down, want %g", sink, got, want)
	}
	if got, want := f.at(0, 10).Y-f.at(0, 0).Y, f.stretch*(f.at(10, 0).X-f.at(0, 0).X); math.Abs(got-want) > 1e-9 {
		t.Errorf("10 mm of height drawn %g points, want %g times the width", got, want)
	}
	words := fmt.Sprintf("heights drawn %g times, movement %g times as large as widths", f.stretch, f.enlarge)
	if f.words() != words {
		t.Errorf("words %q, want %q", f.words(), words)
	}
	given := frameSections([]Section{s}, canvas.Box(30, 400, 470, 540), sectionSize{stretch: 3, enlarge: 70})
	if given.stretch != 3 || given.enlarge != 70 {
		t.Errorf("exaggeration %g and %g, want the given 3 and 70", given.stretch, given.enlarge)
	}
	for _, v := range []float64{0.9, 1, 7.3, 20, 49.9, 3e-4} {
		if m := scale.StepBelow(v); m > v*(1+1e-9) || scale.StepAbove(m) != m && math.Abs(scale.StepAbove(m)-m) > 1e-12*m || m < v/2.5 {
			t.Errorf("niceBelow(%g) = %g", v, m)
		}
	}
}

// TestEventRows checks that no event's line passes through another's text.
func TestEventRows(t *testing.T) {
	g := canvas.NewMeasure(canvas.PageWidth, 500)
	x := canvas.TightAxis(0, 100, 10, 60, 390)
	rows := placeEvents(g, demoFootForce().Events, x)
	for i, e := range rows {
		for j, o := range rows {
			if i != j && o.row >= e.row && o.x > e.from && o.x < e.to {
				t.Errorf("the line of event %d passes through the text of event %d", j, i)
			}
		}
		if e.to > canvas.PageWidth-canvas.Margin+1e-9 {
			t.Errorf("event %d ends at %g points, over the margin", i, e.to)
		}
	}
}
