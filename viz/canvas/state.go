package canvas

import (
	"image/color"
	"math"

	"gonum.org/v1/plot/vg"
)

// state is what holds for what is drawn next.
type state struct {
	m     [6]float64 // x' = m0 x + m2 y + m4, y' = m1 x + m3 y + m5, y up
	color color.NRGBA
	width float64 // points
	dash  []vg.Length
	shift vg.Length
}

// states is the half of a vg.Canvas that every kind of file has alike: the
// state, and those that were pushed.
type states struct {
	now   state
	stack []state
}

// upright is a state in the page's own axes.
func upright() states { return states{now: state{m: [6]float64{1, 0, 0, 1, 0, 0}}} }

// SetLineWidth sets the width of the lines to come, as a vg.Canvas does.
func (s *states) SetLineWidth(w vg.Length) { s.now.width = float64(w) }

// SetLineDash sets the dashes of the lines to come, as a vg.Canvas does.
func (s *states) SetLineDash(pattern []vg.Length, offset vg.Length) {
	s.now.dash, s.now.shift = pattern, offset
}

// SetColor sets the colour of what comes, as a vg.Canvas does.
func (s *states) SetColor(k color.Color) {
	if k == nil {
		k = color.Black
	}
	s.now.color = color.NRGBAModel.Convert(k).(color.NRGBA)
}

// Rotate turns what comes by rad, as a vg.Canvas does.
func (s *states) Rotate(rad float64) {
	sin, cos := math.Sincos(rad)
	s.now.m = then(s.now.m, [6]float64{cos, sin, -sin, cos, 0, 0})
}

// Translate moves what comes, as a vg.Canvas does.
func (s *states) Translate(p vg.Point) {
	s.now.m = then(s.now.m, [6]float64{1, 0, 0, 1, float64(p.X), float64(p.Y)})
}

// Scale stretches what comes, as a vg.Canvas does.
func (s *states) Scale(x, y float64) { s.now.m = then(s.now.m, [6]float64{x, 0, 0, y, 0, 0}) }

// Push keeps colours, pens and places until Pop.
func (s *states) Push() { s.stack = append(s.stack, s.now) }

// Pop goes back to what Push kept.
func (s *states) Pop() {
	s.now = s.stack[len(s.stack)-1]
	s.stack = s.stack[:len(s.stack)-1]
}

// place takes a point to the page's own axes, points, y up.
func (s *states) place(p vg.Point) (x, y float64) {
	m, u, v := s.now.m, float64(p.X), float64(p.Y)
	return m[0]*u + m[2]*v + m[4], m[1]*u + m[3]*v + m[5]
}

// then is first n, then m.
func then(m, n [6]float64) [6]float64 {
	return [6]float64{
		m[0]*n[0] + m[2]*n[1], m[1]*n[0] + m[3]*n[1],
		m[0]*n[2] + m[2]*n[3], m[1]*n[2] + m[3]*n[3],
		m[0]*n[4] + m[2]*n[5] + m[4], m[1]*n[4] + m[3]*n[5] + m[5],
	}
}
