package panel

import (
	"image"
	"image/color"
	"image/draw"
	"math"
	"testing"
)

// page is a sheet with every control on it.
type page struct {
	Panel
	load, tint float64
	lines      bool
	beads      bool
	field      int
	side       int
	width      float64
	height     float64
	open, more bool
	pressed    int
	list       *List
	atlas      *Atlas
	now        float64
	w, h       float64
}

// newPage returns the page at a density, laid out once.
func newPage(t testing.TB, density float64) *page {
	t.Helper()
	a, err := NewAtlas(density)
	if err != nil {
		t.Fatal(err)
	}
	s := &page{load: 60, tint: 0.3, lines: true, width: 13, height: 24.5, open: true, atlas: a, w: 760, h: 560}
	s.step(Input{Away: true})
	return s
}

// step is one frame.
func (s *page) step(in Input) {
	if in.Now == 0 {
		s.now += 0.05
		in.Now = s.now
	}
	s.now = in.Now
	s.Begin(in, s.atlas, s.w, s.h)
	s.left()
	s.right()
	s.list = s.End()
}

func (s *page) left() {
	sheet := Rect{12, 12, 300, 536}
	s.Sheet(sheet)
	c := NewColumn(sheet, 12, 6)
	s.Title(c.Row(28), "Course guitar")
	in := s.Scroll("left", c.Rest())
	c = NewColumn(in, 3, 6)
	s.Choice(Choice{Control: Control{ID: "field", At: c.Row(ChoiceHeight + choiceLabel), Label: "What is shown"},
		Words: []string{"Sink", "Stress", "Flow"}, Keys: []string{"1", "2", "3"}}, &s.field)
	load := Slider{Control: Control{ID: "load", Label: "String load", Key: "L", Tip: "How much of the strings' pull is on. A double click brings full load back."},
		Unit: "%", Max: 100, Step: 1, Default: 100, Marks: []Mark{{0, "none"}, {41, "ends bear"}, {50, "closed"}, {100, "full"}}}
	load.At = c.Row(load.Height())
	s.Slider(load, &s.load)
	s.Slider(Slider{Control: Control{ID: "tint", At: c.Row(SliderHeight), Label: "Relief at the middle"},
		Unit: "mm", Max: 0.5, Step: 0.01, Decimals: 2, Default: 0.12}, &s.tint)
	s.Slider(Slider{Control: Control{ID: "asleep", At: c.Row(SliderHeight), Label: "Post height", Off: "this bridge is one piece", Tip: "The height of both posts."},
		Unit: "mm", Max: 10, Step: 0.5, Decimals: 1, Default: 5}, new(float64))
	s.Toggle(Control{ID: "lines", At: c.Row(ToggleHeight), Label: "Lines of equal value", Key: "I"}, &s.lines)
	s.Toggle(Control{ID: "beads", At: c.Row(ToggleHeight), Label: "Beads on the flow lines", Off: "no flow is shown"}, &s.beads)
	if s.Section(Control{ID: "bridge", At: c.Row(HeadHeight), Label: "Bridge"}, &s.open) {
		s.Number(Number{Control: Control{ID: "width", At: c.Row(NumberHeight), Label: "Width of the foot"}, Unit: "mm", Min: 4, Max: 30, Step: 0.5, Decimals: 2}, &s.width)
		s.Number(Number{Control: Control{ID: "height", At: c.Row(NumberHeight), Label: "Saddle height"}, Unit: "mm", Min: 5, Max: 60, Step: 0.5, Decimals: 2}, &s.height)
		s.Number(Number{Control: Control{ID: "held", At: c.Row(NumberHeight), Label: "Length", Off: "the demonstration holds it"}, Unit: "mm", Decimals: 1}, new(float64))
		side := Choice{Control: Control{ID: "side", Label: "Seen"}, Words: []string{"from outside", "from the tail", "from inside"}, Keys: []string{"F1", "", "B"}, Upright: true}
		side.At = c.Row(side.Height())
		s.Choice(side, &s.side)
		b := c.Cells(ButtonHeight, 2)
		if s.Button(Control{ID: "fit", At: b[0], Label: "Fit again", Key: "R", Tip: "Fits the feet to the unloaded top."}) {
			s.pressed++
		}
		s.Button(Control{ID: "keep", At: b[1], Label: "Keep as a file", Off: "nothing was changed"})
	}
	if s.Section(Control{ID: "more", At: c.Row(HeadHeight), Label: "More"}, &s.more) {
		text := "The middle first touches at 41 % of the strings’ load and has closed at 50 %."
		c.Space(s.Paragraph(Rect{c.at.X, c.Next(), c.Width(), 0}, text) + 6)
	}
	s.EndScroll(c.Used(3))
}

func (s *page) right() {
	sheet := Rect{324, 12, 424, 536}
	s.Sheet(sheet)
	c := NewColumn(sheet, 12, 8)
	s.Heading(c.Row(22), "Numbers at full load")
	s.KeyValue(c.Row(RowHeight), "Bridge sinks", "0.312 mm")
	s.KeyValue(c.Row(RowHeight), "Tilt toward the neck", "−0.04°")
	t := Table{Columns: []TableColumn{{Head: "Gauge"}, {"Tight\nmm", true}, {"Relieved\nmm", true}, {"Change\nmm", true}}, Rows: []TableRow{
		{Cells: []string{"over the bass foot", "0.312", "0.298", "−0.014"}},
		{Cells: []string{"apex", "0.274", "0.281", "+0.007"}},
		{Cells: []string{"recurve, treble", "−0.031", "−0.0285", "+0.0025"}, Strong: true},
		{Cells: []string{"tail block", "12.4", "9.75", "−2.65"}, Paint: Fault()},
	}}
	c.Row(s.Table(Rect{c.at.X, c.Next(), c.Width(), 0}, t))
	x, y, z := make([]float64, 81), make([]float64, 81), make([]float64, 81)
	for i := range x {
		x[i] = -200 + 5*float64(i)
		u := x[i] / 200
		y[i] = 17 * math.Exp(-3*u*u)
		z[i] = y[i] - 3*math.Exp(-8*u*u)
	}
	s.list = s.List()
	s.list.Chart(Chart{At: c.Row(150), Title: "Across at the bridge", Across: Axis{Name: "bass to treble", Unit: "mm"}, Up: Axis{Unit: "mm", Zero: true},
		Curves: []Curve{{X: x, Y: y, Name: "unloaded", Paint: Blue()}, {X: x, Y: z, Name: "loaded ×10", Paint: Rust(), Under: true}}, Marked: true, Mark: -44})
	var bars []Bar
	for i := range 14 {
		f := float64(i)
		bars = append(bars, Bar{From: -70 + 10*f, To: -60 + 10*f, Value: 0.9 + 0.09*(f-6.5)*(f-6.5) - 2.2*math.Exp(-(f-4)*(f-4))})
	}
	s.list.Bars(Bars{At: c.Row(110), Title: "Pressure of the feet", Across: Axis{Unit: "mm"}, Up: Axis{Unit: "N/mm²"}, Bars: bars, Decimals: 1, Values: true})
	var legend []color.NRGBA
	for i := range 9 {
		f := uint8(i * 20)
		legend = append(legend, color.NRGBA{245 - f, 230 - f/2, 200 - f, 255})
	}
	s.list.Strip(c.Row(12), legend, false)
	s.list.Paragraph(c.Row(30), Small, SoftInk(), "° µ × − – — ’ ‘ “ ” … → ← ↑ ↓ ▸ ▾ σ ε ½ · ✓ Größe, café, Ω ≤ ≥ ≈ √ ″ ′ 0123456789 Hamburgefonstiv")
}

// painted returns the page as a picture.
func (s *page) painted() *image.NRGBA {
	d := s.atlas.Density
	out := image.NewNRGBA(image.Rect(0, 0, int(s.w*d), int(s.h*d)))
	draw.Draw(out, out.Rect, image.NewUniform(color.NRGBA{255, 255, 255, 255}), image.Point{}, draw.Src)
	s.list.Paint(out)
	return out
}

// BenchmarkPage lays out and paints the page with every control.
func BenchmarkPage(b *testing.B) {
	s := newPage(b, 1)
	b.Run("lay out", func(b *testing.B) {
		for b.Loop() {
			s.step(Input{X: 100, Y: 120})
		}
	})
	b.Run("paint", func(b *testing.B) {
		m := s.painted()
		for b.Loop() {
			s.list.Paint(m)
		}
	})
}
