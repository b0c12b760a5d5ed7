package panel

import (
	"math"
	"testing"
)

func TestTicks(t *testing.T) {
	for _, c := range []struct {
		lo, hi   float64
		most     int
		want     []float64
		decimals int
	}{
		{0, 1, 5, []float64{0, 0.2, 0.4, 0.6, 0.8, 1}, 1},
		{-70, 70, 7, []float64{-60, -40, -20, 0, 20, 40, 60}, 0},
		{0.031, 0.092, 4, []float64{0.04, 0.06, 0.08}, 2},
		{0, 1300, 3, []float64{0, 500, 1000}, 0},
		{1, 1, 3, nil, 0},
		{math.NaN(), 1, 3, nil, 0},
	} {
		got, decimals := Ticks(c.lo, c.hi, c.most)
		ok := len(got) == len(c.want) && decimals == c.decimals
		for i := range got {
			ok = ok && math.Abs(got[i]-c.want[i]) < 1e-12*max(1, abs(c.hi))
		}
		if !ok {
			t.Errorf("%g to %g: %v, %d decimals; want %v, %d", c.lo, c.hi, got, decimals, c.want, c.decimals)
		}
	}
}

func TestChartPlaces(t *testing.T) {
	for _, density := range densities {
		l := NewList(newAtlas(t, density))
		at := Rect{20, 20, 300, 160}
		c := Chart{At: at, Title: "Arch", Across: Axis{Name: "across", Unit: "mm"}, Up: Axis{Unit: "mm", Zero: true},
			Curves: []Curve{{X: []float64{-200, 0, 200}, Y: []float64{5, 17, math.NaN()}}}, Marked: true, Mark: 50}
		plot := l.Chart(c)
		if got := plot.X(-200); math.Abs(got-plot.Inner.X) > 1e-9 {
			t.Errorf("the least value is at x = %g, the plot begins at %g", got, plot.Inner.X)
		}
		if got := plot.Across(plot.X(37)); math.Abs(got-37) > 1e-9 {
			t.Errorf("there and back: %g, want 37", got)
		}
		if got := plot.Y(0); math.Abs(got-plot.Inner.Bottom()) > 1e-9 {
			t.Errorf("0 is at y = %g, the plot ends at %g", got, plot.Inner.Bottom())
		}
		for _, v := range l.Vertices {
			if v.X < at.X*density || v.X > at.Right()*density || v.Y < at.Y*density || v.Y > at.Bottom()*density {
				t.Fatalf("density %g: a vertex at %g, %g outside the chart", density, v.X/density, v.Y/density)
			}
		}
		c.Equal = true
		plot = l.Chart(c)
		across, up := plot.X(10)-plot.X(0), plot.Y(0)-plot.Y(10)
		if math.Abs(across-up) > 1e-9 {
			t.Errorf("10 mm are %g points across and %g up, want equal", across, up)
		}
	}
}

// TestChartPaint finds the curve, the mark and the bars where the plot says.
func TestChartPaint(t *testing.T) {
	l := NewList(newAtlas(t, 1))
	plot := l.Chart(Chart{At: Rect{0, 0, 200, 100}, Up: Axis{Min: 0, Max: 10}, Marked: true, Mark: 3,
		Curves: []Curve{{X: []float64{0, 10}, Y: []float64{5, 5}, Paint: Blue(), Width: 3}}})
	bars := l.Bars(Bars{At: Rect{0, 100, 200, 100}, Values: true, Decimals: 1,
		Bars: []Bar{{0, 1, 4, Blue()}, {1, 2, -4, Blue()}, {2, 3, math.NaN(), Blue()}}})
	m := white(200, 200)
	l.Paint(m)
	if got := m.NRGBAAt(int(plot.X(7)), int(plot.Y(5))); got != Blue() {
		t.Errorf("on the curve %v, want %v", got, Blue())
	}
	if got := m.NRGBAAt(int(plot.X(3)), int(plot.Y(8))); far(got, Rust()) > 40 {
		if got = m.NRGBAAt(int(plot.X(3))-1, int(plot.Y(8))); got != Rust() {
			t.Errorf("on the mark %v, want %v", got, Rust())
		}
	}
	for _, c := range []struct {
		x, y float64
		full bool
	}{{0.5, 2, true}, {0.5, -2, false}, {1.5, -2, true}, {1.5, 2, false}, {2.5, 2, false}} {
		got := m.NRGBAAt(int(bars.X(c.x)), int(bars.Y(c.y)))
		if blue := int(got.B) > int(got.R)+20; blue != c.full {
			t.Errorf("at %g, %g the bars are %v; full: want %v", c.x, c.y, got, c.full)
		}
	}
}

// TestChartsOfAnything: no data, one place, no room.
func TestChartsOfAnything(t *testing.T) {
	l := NewList(newAtlas(t, 1))
	nan, inf := math.NaN(), math.Inf(1)
	for _, at := range []Rect{{0, 0, 200, 100}, {0, 0, 1, 1}, {5, 5, 0, 0}} {
		for _, y := range [][]float64{nil, {1}, {0, 0}, {nan, nan}, {inf, 1, -inf}, {1e300, -1e300}, {1e-300, 2e-300}} {
			x := make([]float64, len(y))
			for i := range x {
				x[i] = float64(i)
			}
			l.Chart(Chart{At: at, Title: "t", Across: Axis{Name: "n"}, Curves: []Curve{{X: x, Y: y, Under: true, Name: "k"}}, Marked: true, Mark: nan})
			var bars []Bar
			for i, v := range y {
				bars = append(bars, Bar{x[i], x[i] + 1, v, Ink()})
			}
			l.Bars(Bars{At: at, Bars: bars, Values: true})
		}
	}
	for _, v := range l.Vertices {
		if math.IsNaN(v.X+v.Y+v.U+v.V) || math.IsInf(v.X+v.Y, 0) {
			t.Fatal("a vertex is no number")
		}
	}
}

func TestWordsDoNotOverlap(t *testing.T) {
	var c crowd
	for _, r := range []struct {
		at   Rect
		want bool
	}{{Rect{0, 0, 10, 10}, true}, {Rect{5, 5, 10, 10}, false}, {Rect{10, 0, 10, 10}, true}, {Rect{12, 9, 1, 1}, false}} {
		if got := c.room(r.at); got != r.want {
			t.Errorf("room for %v: %v, want %v", r.at, got, r.want)
		}
	}
}

func TestTable(t *testing.T) {
	for _, c := range []struct {
		text string
		want numeral
	}{{"−0.31", numeral{"−", "0", ".31"}}, {"-12", numeral{"−", "12", ""}}, {"+7 %", numeral{"+", "7", " %"}}, {"none", numeral{"", "", "none"}}} {
		if got := cutNumber(c.text); got != c.want {
			t.Errorf("%q is cut to %v, want %v", c.text, got, c.want)
		}
	}
	table := Table{Columns: []TableColumn{{Head: "Gauge"}, {Head: "Sink\nmm", Numbers: true}}, Rows: []TableRow{
		{Cells: []string{"apex", "−1.25"}}, {Cells: []string{"foot", "+12.5"}}, {Cells: []string{"edge", "3.125"}},
	}}
	var p Panel
	p.Begin(Input{}, newAtlas(t, 1), 300, 200)
	got := p.Table(Rect{10, 10, 200, 0}, table)
	p.End()
	if want := 2*15 + 6 + 3*20 + 1.0; got != want || table.Height() != want {
		t.Errorf("height %g and %g, want %g", got, table.Height(), want)
	}
	if places := p.Places(); len(places) != 3 || places[1].Label != "foot" || places[1].Value != "+12.5" {
		t.Errorf("places %+v", places)
	}
	w := table.widths(newAtlas(t, 1), 1)
	a := newAtlas(t, 1)
	if want := a.TextWidth(Body, "12") + a.TextWidth(Body, ".125") + a.TextWidth(Body, "−"); w.all < want {
		t.Errorf("the column is %g wide, want at least %g", w.all, want)
	}
}
