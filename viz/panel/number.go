package panel

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Number is a number that is typed.
type Number struct {
	Control
	Unit     string
	Min, Max float64 // Min = Max: no ends
	Step     float64 // of the arrow keys up and down; 0: none
	Decimals int     // at most, as shown; zeros at the end are not
	Cell     bool    // of a table: the entry takes the whole width
	// Parse reads what is no plain number with or without the unit; for entries like "0.012 in".
	Parse func(text string) (float64, error)
}

// read returns the number typed, or what is wrong with it.
func (n Number) read(text string) (float64, error) {
	v, err := n.plain(text)
	if err != nil && n.Parse != nil && strings.TrimSpace(text) != "" {
		v, err = n.Parse(text)
	}
	if err != nil {
		return 0, err
	}
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, fmt.Errorf("want a number, found %q", text)
	}
	if n.Min < n.Max && (v < n.Min || v > n.Max) {
		return 0, fmt.Errorf("want %s to %s", n.bare(n.Min), withUnit(n.bare(n.Max), n.Unit))
	}
	return v, nil
}

// plain reads a number with or without the unit; a comma is a point.
func (n Number) plain(text string) (float64, error) {
	t := strings.TrimSpace(text)
	if n.Unit != "" {
		t = strings.TrimSpace(strings.TrimSuffix(t, n.Unit))
	}
	t = strings.NewReplacer("−", "-", ",", ".").Replace(t)
	if t == "" {
		return 0, errors.New("want a number, found nothing")
	}
	v, err := strconv.ParseFloat(t, 64)
	if err != nil {
		return 0, fmt.Errorf("want a number, found %q", text)
	}
	return v, nil
}

// bare writes v without zeros at the end.
func (n Number) bare(v float64) string {
	t := number(v, n.Decimals)
	if strings.Contains(t, ".") {
		t = strings.TrimRight(strings.TrimRight(t, "0"), ".")
	}
	return t
}

// Number draws a label and a line to write on, and tells whether v was
// changed. Enter takes what is typed, Escape gives it back.
func (p *Panel) Number(n Number, v *float64) bool {
	was := *v
	f := p.touch(n.Control)
	if p.left.id == n.ID {
		if w, err := n.read(string(p.left.text)); err == nil && p.left.fresh(n, *v) {
			*v = w
		}
		p.left = entry{}
	}
	if n.Off == "" && f.focused {
		p.numberHand(n, f, v)
		p.numberKeys(n, v)
	} else if p.entry.id == n.ID {
		p.entry = entry{}
	}
	p.drawNumber(n, f, *v)
	return *v != was && !(math.IsNaN(*v) && math.IsNaN(was))
}

// fresh tells whether the text differs from v as shown: a number that was
// not touched keeps the digits that are not shown.
func (e entry) fresh(n Number, v float64) bool { return string(e.text) != n.bare(v) }

// open begins typing with everything selected.
func (p *Panel) open(n Number, v float64) {
	text := []rune(n.bare(v))
	if math.IsNaN(v) {
		text = nil
	}
	p.entry = entry{id: n.ID, text: text, caret: len(text), all: true}
}

// numberHand opens the entry on a click or when the focus comes by Tab; a
// second click puts the caret there.
func (p *Panel) numberHand(n Number, f feel, v *float64) {
	typing := p.entry.id == n.ID
	switch {
	case !typing && (f.pressed || f.ring && p.aimed == n.ID):
		p.open(n, *v)
	case typing && f.pressed:
		p.entry.caret = p.caretAt(n, p.in.X)
		p.entry.all = f.double
	}
	p.aimed = ""
}

// caretAt returns the letter gap nearest to x.
func (p *Panel) caretAt(n Number, x float64) int {
	a := p.list.Atlas
	left := p.entryLeft(p.entryBox(n))
	best, gap := 0, math.Inf(1)
	for i := 0; i <= len(p.entry.text); i++ {
		if d := abs(left + a.TextWidth(Body, string(p.entry.text[:i])) - x); d < gap {
			best, gap = i, d
		}
	}
	return best
}

// numberKeys types.
func (p *Panel) numberKeys(n Number, v *float64) {
	if p.entry.id != n.ID {
		p.idleKeys(n, v)
		return
	}
	for i, k := range p.in.Keys {
		if p.taken[i] || k.leaves() {
			continue
		}
		p.taken[i] = true
		switch k.Key {
		case KeyEnter:
			p.accept(n, v)
		case KeyEscape:
			p.entry = entry{}
		case KeyUp, KeyDown:
			p.stepEntry(n, k, v)
		default:
			p.entry.edit(k)
		}
		if p.entry.id == "" {
			return
		}
	}
	for _, r := range p.in.Text {
		p.entry.insert(r)
	}
}

// idleKeys are the keys of a field that has the focus but is not typed in.
func (p *Panel) idleKeys(n Number, v *float64) {
	if _, ok := p.key(KeyEnter, KeySpace); ok {
		p.open(n, *v)
		return
	}
	if n.Step > 0 {
		for {
			k, ok := p.key(KeyUp, KeyDown)
			if !ok {
				return
			}
			n.step(k, v)
		}
	}
}

// step adds a step to v, or ten with Shift, within the ends.
func (n Number) step(k KeyPress, v *float64) {
	by := n.Step
	if k.Shift {
		by *= 10
	}
	if k.Key == KeyDown {
		by = -by
	}
	w := tidy(*v+by, n.Step)
	if n.Min < n.Max {
		w = min(max(w, n.Min), n.Max)
	}
	if !math.IsNaN(w) && !math.IsInf(w, 0) {
		*v = w
	}
}

// stepEntry takes what is typed and adds a step.
func (p *Panel) stepEntry(n Number, k KeyPress, v *float64) {
	if n.Step <= 0 || !p.accept(n, v) {
		return
	}
	n.step(k, v)
	p.open(n, *v)
}

// accept takes what is typed, or keeps it open and says what is wrong.
func (p *Panel) accept(n Number, v *float64) bool {
	w, err := n.read(string(p.entry.text))
	if err != nil {
		p.entry.fault = err.Error()
		return false
	}
	if p.entry.fresh(n, *v) {
		*v = w
	}
	p.entry = entry{}
	p.byKeys = true
	return true
}

// entryBox returns where the number is written: the right part of the field,
// before the unit.
func (p *Panel) entryBox(n Number) Rect {
	unit := 0.0
	if n.Unit != "" {
		unit = p.list.Atlas.TextWidth(Body, n.Unit) + 6
	}
	w := min(84, n.At.W/2)
	if n.Cell {
		w = n.At.W - unit
	}
	return Rect{n.At.Right() - unit - w, n.At.Y + 2, w, n.At.H - 4}
}

// drawNumber draws the label, the line to write on, the unit, and what is
// wrong with what is typed.
func (p *Panel) drawNumber(n Number, f feel, v float64) {
	l, box := p.list, p.entryBox(n)
	typing := p.entry.id == n.ID
	shown := n.bare(v)
	if typing {
		shown = string(p.entry.text)
	}
	p.place(n.Control, NumberPlace, shown)
	p.wash(n.At, feel{hot: f.hot && !typing})
	l.TextIn(Rect{n.At.X, n.At.Y, box.X - n.At.X - 8, n.At.H}, Body, Left, n.ink(), n.words())
	l.TextIn(Rect{box.Right() + 6, n.At.Y, n.At.Right() - box.Right() - 6, n.At.H}, Body, Left, n.ink(), n.Unit)
	line := SoftInk()
	if n.Off != "" {
		line = Hair()
	}
	if !typing {
		l.Level(box.X, box.Right(), box.Bottom()-1, 1, line)
		l.TextIn(box.Inset(4, 0), Body, Right, n.ink(), shown)
		p.ring(n.At, f)
		return
	}
	l.Rect(box, Slip())
	p.drawEntry(box)
	edge := Rust()
	if p.entry.fault != "" {
		edge = Fault()
		p.slip(box, p.entry.fault, Fault())
	}
	l.Frame(box, 1.5, edge)
}

// entryLeft is where what is typed begins in its box: a long entry is moved so that the caret shows.
func (p *Panel) entryLeft(box Rect) float64 {
	in := box.Inset(4, 0)
	return in.X - max(0, p.list.Atlas.TextWidth(Body, string(p.entry.text[:p.entry.caret]))-in.W+2)
}

// drawEntry draws what is typed, what is selected and the caret.
func (p *Panel) drawEntry(box Rect) {
	l, e := p.list, p.entry
	in := box.Inset(4, 0)
	width := func(n int) float64 { return l.Atlas.TextWidth(Body, string(e.text[:n])) }
	x := p.entryLeft(box)
	l.Clip(box.Inset(2, 0))
	if e.all && len(e.text) > 0 {
		l.Rect(Rect{x - 1, in.Y + 3, width(len(e.text)) + 2, in.H - 6}, faded(Rust(), 0.22))
	}
	l.Text(Point{x, in.Y + (in.H+l.Atlas.capHeight(Body))/2}, Body, Left, Ink(), string(e.text))
	if !e.all {
		l.Upright(x+width(e.caret), in.Y+3, in.Bottom()-3, 1, Ink())
	}
	l.Unclip()
}
