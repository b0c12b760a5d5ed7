package legend

import (
	"testing"

	"archload/viz/panel"
	"archload/viz/scale"
)

// The colours stay within their column, however low it is, with every value that they show on the page.
func TestLegendKeepsToItsColumn(t *testing.T) {
	atlas, err := panel.NewAtlas(1)
	if err != nil {
		t.Fatal(err)
	}
	s := scale.New(-3, 2, scale.Signed)
	for tall := 20.0; tall < 700; tall += 20 {
		column := panel.Rect{X: 6, Y: 50, W: 84, H: tall}
		strip := Strip(column, 1)
		if strip.Empty() {
			if tall >= Least+44 {
				t.Errorf("no legend in a column %g high", tall)
			}
			continue
		}
		if g := Ground(column, strip); strip.H < Least || g.Bottom() > column.Bottom() {
			t.Errorf("a column %g high has colours at %+v down to %g", tall, strip, g.Bottom())
		}
		p := panel.Panel{}
		p.Begin(panel.Input{Away: true}, atlas, 200, 800)
		p.Watch()
		l := p.List()
		Draw(l, column, strip, s, "MPa", "")
		zero := false
		for _, w := range l.Written() {
			zero = zero || w.Text == "0"
			if w.Text != w.Whole || w.At.Right() > column.Right()+1 || w.At.Bottom() > column.Bottom() {
				t.Errorf("a column %g high: %q of %q stands at %+v", tall, w.Text, w.Whole, w.At)
			}
		}
		if !zero && len(l.Written()) > 0 {
			t.Errorf("a column %g high does not say where zero is", tall)
		}
	}
}

// A measure has the first round size whose bar is neither a stroke nor a mast.
func TestRoundMeasures(t *testing.T) {
	for unit, want := range map[float64]string{40: "0.5", 200: "0.2", 10: "1", 1: ""} {
		if m, _ := Round(unit, []float64{0.5, 0.2, 0.1, 1, 2}); m.Size != want {
			t.Errorf("%g points to a unit: %q, want %q", unit, m.Size, want)
		}
	}
}
