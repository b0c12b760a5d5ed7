package panel

import (
	"image/color"
	"math"
	"strconv"
	"strings"
)

// Slider is a number between two ends, moved along a rule.
type Slider struct {
	Control
	Unit     string
	Min, Max float64 // Min < Max
	Step     float64 // 0: any value
	Default  float64 // a double click or Backspace goes there
	Decimals int     // of the value as shown
	Marks    []Mark  // under the rule
	// Format writes the value in place of Decimals and Unit, if it is given.
	Format func(v float64) string
	Typed  bool                               // the value can be typed, too
	Parse  func(text string) (float64, error) // reads what is typed and no plain number; nil: nothing else is read
	// Shorter are words in place of the label where it has no room, the longest first.
	Shorter []string
}

// Mark is a place on a slider's rule.
type Mark struct {
	At    float64
	Label string // may be empty
}

const (
	handleHalf = 6.0  // half a handle's width, points
	labelLine  = 21.0 // of a slider's words above its rule
	ruleBelow  = 14.0 // from the words to the rule
)

// Height returns the height that suits the slider, points.
func (s Slider) Height() float64 {
	for _, m := range s.Marks {
		if m.Label != "" {
			return SliderHeight + 12
		}
	}
	return SliderHeight
}

// Tall is the height that suits the slider at a value in a width, points: words that have no room beside the value have a line
// of their own.
func (s Slider) Tall(a *Atlas, width, v float64) float64 {
	room := width - typedWidth
	if !s.typed() {
		room = width - a.TextWidth(Body, s.text(v)) - 8
	}
	if a.TextWidth(Small, s.said(v)) > room {
		return s.Height() + labelLine
	}
	return s.Height()
}

// typed tells whether the value can be typed now.
func (s Slider) typed() bool { return s.Typed && s.Off == "" }

// said is what stands over the rule at a value that is not typed.
func (s Slider) said(v float64) string {
	if s.typed() && s.Format != nil {
		return s.words() + ": " + s.text(v)
	}
	return s.words()
}

// within returns v between the ends; what is no number is the default.
func (s Slider) within(v float64) float64 {
	if math.IsNaN(v) {
		v = s.Default
	}
	if math.IsNaN(v) {
		v = s.Min
	}
	return min(max(v, s.Min), s.Max)
}

// kept returns v on a step and between the ends.
func (s Slider) kept(v float64) float64 {
	v = s.within(v)
	if s.Step > 0 && v < s.Max {
		v = s.Min + math.Round((v-s.Min)/s.Step)*s.Step
		v = tidy(v, s.Step)
	}
	return min(max(v, s.Min), s.Max)
}

// tidy takes the last bits off a multiple of a step: 0.3, not 0.30000000000000004.
func tidy(v, step float64) float64 {
	if abs(v) < step*1e-9 {
		return 0
	}
	t, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 12, 64), 64)
	if err != nil {
		return v
	}
	return t
}

// text writes the value.
func (s Slider) text(v float64) string {
	if s.Format != nil {
		return s.Format(v)
	}
	return withUnit(number(v, s.Decimals), s.Unit)
}

// number writes v with a true minus sign; a rounded zero has none.
func number(v float64, decimals int) string {
	t := strconv.FormatFloat(v, 'f', max(0, decimals), 64)
	if strings.Trim(t, "-0.") == "" {
		t = strings.TrimPrefix(t, "-")
	}
	return strings.Replace(t, "-", "−", 1)
}

func withUnit(t, unit string) string {
	switch unit {
	case "":
		return t
	case "°", "′", "″":
		return t + unit
	}
	return t + " " + unit
}

// extra is the height of a line of its own for the words, points.
func (s Slider) extra() float64 {
	if s.At.H >= s.Height()+labelLine {
		return labelLine
	}
	return 0
}

// track returns where the handle's middle can be.
func (s Slider) track() Rect {
	return Rect{s.At.X + handleHalf, s.At.Y + s.extra() + labelLine, max(1, s.At.W-2*handleHalf), ruleBelow}
}

// placeOf returns where on the rule v lies.
func (s Slider) placeOf(v float64) float64 {
	t := s.track()
	return t.X + t.W*(v-s.Min)/(s.Max-s.Min)
}

// Slider draws a rule with a handle, and tells whether the hand changed v. A
// value that the program set stays as it is, off the steps too.
func (p *Panel) Slider(s Slider, v *float64) bool {
	if !(s.Max > s.Min) {
		s.Max = s.Min + 1
	}
	was := s.within(*v)
	now := was
	f := p.touch(s.Control)
	if s.Off == "" {
		p.slide(s, f, &now)
		p.sliderKeys(s, f, &now)
		p.sliderWheel(s, f, &now)
	}
	if now != was {
		*v = now
	}
	p.drawSlider(s, f, now)
	if s.Typed && s.Off == "" {
		typed := now
		if p.Number(s.number(), &typed) {
			*v = typed
			return true
		}
	}
	return now != was
}

// typedWidth is the room for a value that can be typed, points.
const typedWidth = 112.0

// number is the line on which the slider's value is typed.
func (s Slider) number() Number {
	at := Rect{s.At.Right() - typedWidth, s.At.Y + s.extra() - 1, typedWidth, labelLine}
	unit := s.Unit
	if unit == "degrees" {
		unit = "deg"
	}
	return Number{Control: Control{ID: s.ID + "/value", At: at, Tip: s.Tip}, Unit: unit, Min: s.Min, Max: s.Max, Step: s.Step, Decimals: s.Decimals + 1, Parse: s.Parse}
}

// slide follows the pointer. A press beside the handle brings it there, one on
// the words only gives the focus; a second one sets the default where it is let go without being
// moved: who takes the handle soon after a click drags it.
func (p *Panel) slide(s Slider, f feel, v *float64) {
	if f.pressed {
		p.grab = s.placeOf(*v) - p.in.X
		p.rest, p.twice = p.in.X, f.double
		if abs(p.grab) > handleHalf && !f.double {
			p.grab, p.rest = 0, math.NaN()
		}
	}
	t := s.track()
	if p.twice && f.held && !math.IsNaN(p.rest) && p.in.X == p.rest {
		if p.in.Released[LeftButton] {
			*v, p.twice = s.kept(s.Default), false
		}
		return
	}
	if f.pressed && p.in.Y < t.Y {
		p.held = ""
		return
	}
	if f.held && p.in.X != p.rest {
		p.rest = math.NaN()
		*v = s.kept(s.Min + (p.in.X+p.grab-t.X)/t.W*(s.Max-s.Min))
	}
}

// stride is what an arrow key adds: a step, or a hundredth of the range.
func (s Slider) stride() float64 {
	if s.Step > 0 {
		return s.Step
	}
	return (s.Max - s.Min) / 100
}

func (p *Panel) sliderKeys(s Slider, f feel, v *float64) {
	if !f.focused {
		return
	}
	for {
		k, ok := p.key(KeyLeft, KeyDown, KeyRight, KeyUp, KeyHome, KeyEnd, KeyPageUp, KeyPageDown, KeyBackspace)
		if !ok {
			return
		}
		by := s.stride()
		if k.Shift {
			by *= 10
		}
		switch k.Key {
		case KeyLeft, KeyDown:
			*v = s.kept(*v - by)
		case KeyRight, KeyUp:
			*v = s.kept(*v + by)
		case KeyPageDown:
			*v = s.kept(*v - 10*s.stride())
		case KeyPageUp:
			*v = s.kept(*v + 10*s.stride())
		case KeyHome:
			*v = s.Min
		case KeyEnd:
			*v = s.Max
		case KeyBackspace:
			*v = s.kept(s.Default)
		}
	}
}

// sliderWheel moves the slider under the pointer a step for each notch, but not
// in an area that can scroll: scrolling past it would change it unseen.
func (p *Panel) sliderWheel(s Slider, f feel, v *float64) {
	if !f.hot || p.in.Wheel[1] == 0 || p.wheeled || p.canScroll() {
		return
	}
	p.wheeled = true
	p.spin += p.in.Wheel[1]
	n := math.Trunc(p.spin)
	p.spin -= n
	if n != 0 {
		*v = s.kept(*v + n*s.stride())
	}
}

// drawSlider draws a rule with its marks, and on it a pointed handle.
func (p *Panel) drawSlider(s Slider, f feel, v float64) {
	l, t := p.list, s.track()
	x, y := s.placeOf(v), l.Atlas.snap(t.Bottom())
	handle := s.Control
	handle.ID, handle.At = s.ID+"/handle", Rect{x - handleHalf, t.Bottom() - 13, 2 * handleHalf, 14}
	track := s.Control
	track.ID, track.At = s.ID+"/track", t
	p.place(s.Control, SliderPlace, s.text(v))
	p.place(track, TrackPlace, s.text(v))
	p.place(handle, HandlePlace, s.text(v))

	rule, body, value := SoftInk(), Ink(), Ink()
	if s.Off != "" {
		rule, body, value = Hair(), asleep(), asleep()
	}
	words := Rect{s.At.X, t.Y - labelLine, s.At.W, labelLine - 1}
	shown, said := s.text(v), s.said(v)
	own := s.extra() > 0
	if s.typed() {
		words.W -= typedWidth
	} else {
		l.TextIn(words, Body, Right, value, shown)
		words.W -= l.Atlas.TextWidth(Body, shown) + 8
	}
	if own {
		words = Rect{s.At.X, s.At.Y, s.At.W, labelLine - 1}
	}
	for _, shorter := range s.Shorter {
		if l.Atlas.TextWidth(Small, said) > words.W {
			said = shorter
		}
	}
	l.TextIn(words, l.Atlas.fitting(said, words.W), Left, s.ink(), said)
	l.Level(t.X, t.Right(), y, 1, rule)
	p.marks(s, y, rule)
	if s.Off == "" {
		l.Level(t.X, x, y, 2, Rust())
		switch {
		case f.held:
			body = Rust()
		case f.hot:
			body = color.NRGBA{104, 62, 34, 255}
		}
	}
	x = l.Atlas.snap(x)
	l.Polygon([]Point{{x - handleHalf, y - 12}, {x + handleHalf, y - 12}, {x + handleHalf, y - 5}, {x, y + 1}, {x - handleHalf, y - 5}}, body)
	p.ring(s.At, f)
}

// marks draws the marks under the rule.
func (p *Panel) marks(s Slider, y float64, rule color.NRGBA) {
	l, k := p.list, SoftInk()
	if s.Off != "" {
		k = asleep()
	}
	var taken [][2]float64
	for i, m := range s.Marks {
		if !(m.At >= s.Min && m.At <= s.Max) {
			continue
		}
		l.Upright(s.placeOf(m.At), y, y+5, 1, rule)
		if left, ok := s.labelOf(l.Atlas, i, taken); ok {
			l.Text(Point{left, y + 15}, Small, Left, k, m.Label)
			taken = append(taken, [2]float64{left, left + l.Atlas.TextWidth(Small, m.Label)})
		}
	}
}

// labelOf is where the label of mark i begins: under its middle, or, of two marks close by each other, to the left
// and to the right of them. One without room beside those that are written is left out.
func (s Slider) labelOf(a *Atlas, i int, taken [][2]float64) (left float64, ok bool) {
	const air, tick = 6.0, -2.0 // points: between labels; how far one beside its mark reaches over it
	m := s.Marks[i]
	x, w := s.placeOf(m.At), a.TextWidth(Small, m.Label)
	ways := []float64{x - w/2, x - tick, x - w + tick}
	for _, o := range s.Marks {
		if by := s.placeOf(o.At) - x; o.Label != "" && by > 0 && by < (w+a.TextWidth(Small, o.Label))/2+air {
			ways = []float64{x - w + tick, x - w/2}
		}
	}
	for _, way := range ways {
		left := min(max(way, s.At.X), s.At.Right()-w)
		free := m.Label != "" && left >= s.At.X && (way == x-w/2 || left == way) // beside its mark it stands there or nowhere
		for _, t := range taken {
			free = free && (left >= t[1]+air || left+w <= t[0]-air)
		}
		if free {
			return left, true
		}
	}
	return 0, false
}
