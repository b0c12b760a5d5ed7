package surface

import (
	"errors"
	"math"
	"runtime"
	"slices"
	"strings"
	"testing"

	"archload/mesh/plane"
)

func height(z float64) *float64 { return &z }

// plateOval is a small outline that keeps these tests quick.
var plateOval = oval{70, 90}

// quadratic is a surface that third derivatives leave free.
func quadratic(p plane.Point) float64 {
	return 12 - 1e-3*p[0]*p[0] + 4e-4*p[0]*p[1] - 6e-4*p[1]*p[1] + 0.01*p[0]
}

// gridOf samples f inside the outline every step mm.
func gridOf(o plane.Region, step float64, f func(plane.Point) float64) (out []Sample) {
	rim, _ := rimOf(o)
	for x := rim.lo[0]; x <= rim.hi[0]; x += step {
		for y := rim.lo[1]; y <= rim.hi[1]; y += step {
			if p := (plane.Point{x, y}); rim.contains(p) {
				out = append(out, Sample{p, f(p)})
			}
		}
	}
	return out
}

func TestFitKeepsQuadratics(t *testing.T) {
	s, report, err := Fit(Data{Outline: plateOval, Points: gridOf(plateOval, 15, quadratic), Noise: 0.001})
	if err != nil {
		t.Fatal(err)
	}
	if len(report.Warnings) > 0 {
		t.Errorf("warnings %v, want none", report.Warnings)
	}
	for _, p := range []plane.Point{{0, 0}, {33, -20}, {-50, 40}} {
		if got, want := s.At(p).Z, quadratic(p); math.Abs(got-want) > 0.002 {
			t.Errorf("height at %v = %.5f mm, want %.5f (quadratic through all data)", p, got, want)
		}
	}
}

func TestFitOfAGraduation(t *testing.T) {
	ring := func(scale float64) []plane.Point {
		return slices.Collect(every(oval{70 * scale, 90 * scale}.Polyline(0), 20))
	}
	for _, c := range []struct {
		name   string
		data   Data
		at     plane.Point
		want   float64 // mm
		tol    float64
		source string
	}{
		{"four equal readings", Data{Points: []Sample{{plane.Point{-40, 0}, 5}, {plane.Point{40, 0}, 5}, {plane.Point{0, 60}, 5}, {plane.Point{0, -60}, 5}}},
			plane.Point{30, 30}, 5, 1e-3, "all readings are 5"},
		{"three readings on a plane", Data{Points: []Sample{{plane.Point{-40, 0}, 4}, {plane.Point{40, 0}, 6}, {plane.Point{0, 60}, 5}}},
			plane.Point{20, -50}, 5.5, 0.02, "plane through three points"},
		{"thickness contours", Data{Lines: []ContourLine{
			{ID: "1", Height: 4, Points: ring(0.9)}, {ID: "2", Height: 5, Points: ring(0.6)}, {ID: "3", Height: 5.5, Points: ring(0.3)}}},
			plane.Point{0, 54}, 5, 0.02, "on the second line"},
	} {
		c.data.Outline = plateOval
		s, report, err := Fit(c.data)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if got := s.At(c.at).Z; math.Abs(got-c.want) > c.tol {
			t.Errorf("%s: thickness at %v = %.4f mm, want %.4f ± %g (%s)", c.name, c.at, got, c.want, c.tol, c.source)
		}
		if len(report.Warnings) > 0 {
			t.Errorf("%s: warnings %v, want none: a graduation has no recurve", c.name, report.Warnings)
		}
	}
}

// every yields each n-th point.
func every(pts []plane.Point, n int) func(func(plane.Point) bool) {
	return func(yield func(plane.Point) bool) {
		for i := 0; i < len(pts); i += n {
			if !yield(pts[i]) {
				return
			}
		}
	}
}

// bump is an arch over plateOval: 5 mm at the outline, 15 in the middle.
func bump(p plane.Point) float64 {
	r := 1 - p[0]*p[0]/4900 - p[1]*p[1]/8100
	return 5 + 10*r*r
}

func TestDataOnTheOutlineWinOverAnUnstatedRim(t *testing.T) {
	points := gridOf(plateOval, 12, func(p plane.Point) float64 { return bump(p) - 0.8 })
	for k, p := range plateOval.Polyline(0) {
		if k%60 == 0 {
			points = append(points, Sample{p, bump(p) - 0.8})
		}
	}
	inside := slices.DeleteFunc(slices.Clone(points), func(s Sample) bool { return bump(s.At) < 5.05 })
	for _, c := range []struct {
		name   string
		points []Sample
		want   float64 // mm at the outline
		source string
	}{
		{"readings on the outline", points, 4.2, "the readings, 0.8 below the default rim height"},
		{"readings inside only", inside, 5, "the default rim height"},
	} {
		s, _, err := Fit(Data{Outline: plateOval, Points: c.points, Rim: height(5), Noise: 0.05})
		if err != nil {
			t.Fatal(err)
		}
		for _, a := range []float64{0.4, 1.9, 4} {
			p := plane.Point{70 * math.Cos(a), 90 * math.Sin(a)}
			if got := s.At(p).Z; math.Abs(got-c.want) > 0.1 {
				t.Errorf("%s: rim at %.0f° = %.3f mm, want %g (%s)", c.name, a*180/math.Pi, got, c.want, c.source)
			}
		}
	}
}

func TestTemplatesAreFitted(t *testing.T) {
	d := Data{Outline: plateOval, Rim: height(5), Templates: []Template{
		template("cross", plane.Point{-70, 0}, plane.Point{70, 0}), template("long", plane.Point{0, -90}, plane.Point{0, 90}),
		template("upper", plane.Point{-52, 60}, plane.Point{52, 60}), template("lower", plane.Point{-52, -60}, plane.Point{52, -60}),
	}}
	s, report, err := Fit(d)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range []plane.Point{{0, 0}, {30, 0}, {0, -45}, {25, 25}} {
		if got, want := s.At(p).Z, bump(p); math.Abs(got-want) > 0.15 {
			t.Errorf("height at %v = %.3f mm, want %.3f (the arch the templates were cut to)", p, got, want)
		}
	}
	if n := report.Classes[1].Count; report.Classes[1].Class != "spots and templates" || n != 4*15 {
		t.Errorf("class %q with %d data, want 60 from the templates", report.Classes[1].Class, n)
	}
}

// template takes 15 heights of bump, rounded to 0.1, on a straight line.
func template(id string, a, b plane.Point) Template {
	t := Template{ID: id}
	for k := range 15 {
		u := float64(k) / 14
		p := plane.Point{a[0] + u*(b[0]-a[0]), a[1] + u*(b[1]-a[1])}
		t.Points = append(t.Points, p)
		t.Heights = append(t.Heights, roundTo(bump(p), 0.1))
	}
	return t
}

func TestFaultyDataAreRefused(t *testing.T) {
	circle := func(r float64, x float64) []plane.Point {
		pts := oval{r, r}.Polyline(0)
		out := slices.Collect(every(pts, 20))
		for i := range out {
			out[i][0] += x
		}
		return out
	}
	spots := []ContourLine{{ID: "a", Height: 12, Points: []plane.Point{{10, 0}}}, {ID: "b", Height: 13, Points: []plane.Point{{10, 0.02}}}}
	wrong := template("long", plane.Point{0, -90}, plane.Point{0, 90})
	for k := range wrong.Heights {
		wrong.Heights[k] += 0.7
	}
	slip := gridOf(plateOval, 12, bump)
	slip[40].Z += 6
	profile := func() (out []ContourLine) {
		for _, s := range slip {
			out = append(out, ContourLine{ID: "s", Height: roundTo(s.Z, 0.1), Points: []plane.Point{s.At}})
		}
		return out
	}
	for _, c := range []struct {
		name string
		data Data
		set  string
		line int32
		want string
	}{
		{"nothing", Data{Rim: height(5)}, "points", -1, "no heights"},
		{"not a number", Data{Points: []Sample{{plane.Point{0, 0}, 3}, {plane.Point{1, math.NaN()}, 3}}}, "points", 1, "finite"},
		{"infinite rim", Data{Points: []Sample{{plane.Point{0, 0}, 3}}, Rim: height(math.Inf(1))}, "outline", -1, "rim height"},
		{"two points", Data{Points: []Sample{{plane.Point{0, 0}, 3}, {plane.Point{9, 9}, 3}}}, "points", -1, "at least 3"},
		{"one line", Data{Points: []Sample{{plane.Point{0, 0}, 3}, {plane.Point{9, 9}, 3}, {plane.Point{20, 20}, 4}}}, "points", 0, "along one line"},
		{"outside", Data{Points: []Sample{{plane.Point{0, 0}, 3}, {plane.Point{90, 0}, 3}}, Rim: height(5)}, "points", 1, "20.0 mm outside"},
		{"same place", Data{Lines: spots, Rim: height(5)}, "contours", 1, "12 mm at the same place"},
		{"crossing contours", Data{Lines: []ContourLine{{ID: "a", Height: 8, Points: circle(40, 0)}, {ID: "b", Height: 11, Points: circle(30, 20)}},
			Rim: height(5)}, "contours", 64, "line b at 11 mm crosses line a at 8 mm"},
		{"crossing templates", Data{Templates: []Template{template("cross", plane.Point{-70, 0}, plane.Point{70, 0}), wrong}, Rim: height(5)},
			"templates", 21, "stations cross and long cross and differ by 0.70 mm"},
		{"template lengths", Data{Templates: []Template{{ID: "x", Points: make([]plane.Point, 2), Heights: make([]float64, 3)}}}, "templates", -1, "2 points but 3 heights"},
		{"stated rim", Data{Points: []Sample{{plane.Point{0, 0}, 9}, {plane.Point{70, 0}, 8}}, Rim: height(5), RimStated: true}, "points", 1, "stated as 5 mm"},
		{"slip of the pen", Data{Lines: profile(), Rim: height(5)}, "contours", 40, "contradicts its neighbours"},
	} {
		c.data.Outline = plateOval
		_, _, err := Fit(c.data)
		var e *DataError
		if !errors.As(err, &e) {
			t.Errorf("%s: error %v, want a DataError that says %q", c.name, err, c.want)
			continue
		}
		if e.Set != c.set || e.Line != c.line || !strings.Contains(e.Error(), c.want) {
			t.Errorf("%s: set %q row %d: %v; want set %q row %d saying %q", c.name, e.Set, e.Line, e, c.set, c.line, c.want)
		}
	}
}

func TestFitIsTheSameWithOneProcessorAndWithTwo(t *testing.T) {
	d := Data{Outline: guitarShape{}, Points: gridOf(guitarShape{}, 25, quadratic)}
	var coef [2][]float64
	old := runtime.GOMAXPROCS(1)
	defer runtime.GOMAXPROCS(old)
	for k := range coef {
		runtime.GOMAXPROCS(k + 1)
		s, _, err := Fit(d)
		if err != nil {
			t.Fatal(err)
		}
		coef[k] = s.coef
	}
	if !slices.Equal(coef[0], coef[1]) {
		t.Error("coefficients differ, want the same bits")
	}
}

// TestFitLikeIsFit: on the equations of another fit the coefficients are the same to the last
// bit; another outline or kind of data has equations of its own.
func TestFitLikeIsFit(t *testing.T) {
	fit := func(d Data, like *Spline) *Spline {
		s, _, err := FitLike(d, like)
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	data := func(o plane.Region, rim *float64, by float64) Data {
		d := Data{Outline: o, Points: gridOf(o, 20, quadratic), Rim: rim}
		for i := range d.Points {
			d.Points[i].Z += by * d.Points[i].At[0]
		}
		return d
	}
	first := fit(data(oval{60, 80}, nil, 0), nil)
	for _, c := range []struct {
		name  string
		data  Data
		share bool
	}{
		{"other heights", data(oval{60, 80}, nil, 0.01), true},
		{"a rim", data(oval{60, 80}, height(2), 0), false},
		{"another outline", data(oval{60, 81}, nil, 0), false},
	} {
		again := fit(c.data, first)
		if !slices.Equal(again.coef, fit(c.data, nil).coef) {
			t.Errorf("%s: coefficients differ from those of a fit by itself, want the same bits", c.name)
		}
		if share := again.ground == first.ground; share != c.share {
			t.Errorf("%s: equations shared %t, want %t", c.name, share, c.share)
		}
	}
}

// FuzzFit feeds short random tables: an error or a finite surface.
func FuzzFit(f *testing.F) {
	f.Add([]byte{10, 20, 30, 40, 50, 60, 70, 80, 90, 1, 2, 3}, byte(0))
	f.Add([]byte{128, 128, 200, 128, 129, 10}, byte(7))
	f.Add([]byte{100, 100, 50, 150, 100, 51, 100, 150, 52, 150, 150, 53, 90, 120, 250}, byte(13))
	f.Fuzz(func(t *testing.T, raw []byte, kind byte) {
		d := Data{Outline: oval{30, 40}, Noise: float64(kind%3) * 0.05}
		if kind&4 != 0 {
			d.Rim = height(5)
		}
		var line ContourLine
		for i := 0; i+2 < len(raw) && i < 120; i += 3 {
			p := plane.Point{(float64(raw[i]) - 128) / 4, (float64(raw[i+1]) - 128) / 3}
			z := float64(raw[i+2]) / 16
			switch {
			case kind&8 == 0:
				d.Points = append(d.Points, Sample{p, z})
			case raw[i+2]%2 == 0:
				d.Lines = append(d.Lines, ContourLine{ID: "s", Height: z, Points: []plane.Point{p}})
			default:
				line.Points, line.Height = append(line.Points, p), z
			}
		}
		d.Lines = append(d.Lines, line)
		s, _, err := Fit(d)
		if err != nil {
			return
		}
		for _, p := range []plane.Point{{0, 0}, {29, 3}, {-10, -38}, {33, 40}} {
			if j := s.At(p); !finite(j.Z/10, j.Zx, j.Zyy) {
				t.Fatalf("jet at %v = %+v from %+v, want finite numbers", p, j, d)
			}
		}
	})
}

func BenchmarkFit(b *testing.B) {
	s := newTruth(b, 2, 1.55)
	for _, c := range []struct {
		name string
		data Data
	}{
		{"contours", contourData(b, s, 3, 16)},
		{"points", scattered(s, 1500, 0.1)},
	} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				if _, _, err := Fit(c.data); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run(c.name+" again", func(b *testing.B) {
			like, _, err := Fit(c.data)
			if err != nil {
				b.Fatal(err)
			}
			for b.Loop() {
				if _, _, err := FitLike(c.data, like); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkFormula(b *testing.B) {
	for b.Loop() {
		if _, err := NewFormula(FormulaSpec{Outline: guitarShape{}, Height: 22, Rim: 5, Apex: plane.Point{22, 10}, RecurveDepth: 1.5}); err != nil {
			b.Fatal(err)
		}
	}
}
