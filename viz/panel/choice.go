package panel

import (
	"fmt"
)

// Choice is one of several words.
type Choice struct {
	Control
	Words   []string
	Keys    []string // the shortcut of each word, if any
	Tips    []string // what each word means, if any is given
	Upright bool     // one word under the other
}

const choiceLabel = 17 // points, of the label above the words

// Height returns the height that suits the choice, points.
func (c Choice) Height() float64 {
	h := 0.0
	if c.Label != "" {
		h = choiceLabel
	}
	if c.Upright {
		return h + float64(len(c.Words))*ToggleHeight
	}
	return h + ChoiceHeight
}

// Choice draws the words in a row or a column, and tells whether another was
// chosen.
func (p *Panel) Choice(c Choice, chosen *int) bool {
	f := p.touch(c.Control)
	was := *chosen
	p.choiceKeys(c, f, chosen)
	cells := c.cells(p.list.Atlas)
	for i, r := range cells {
		if c.Off == "" && f.let && p.under(r) {
			*chosen = i
		}
	}
	value := ""
	if *chosen >= 0 && *chosen < len(c.Words) {
		value = c.Words[*chosen]
	}
	p.place(c.Control, ChoicePlace, value)
	if c.Label != "" {
		k := SoftInk()
		if c.Off != "" {
			k = asleep()
		}
		p.list.TextIn(Rect{c.At.X, c.At.Y, c.At.W, choiceLabel}, Small, Left, k, c.words())
	}
	for i, r := range cells {
		p.cell(c, f, i, r, i == *chosen)
	}
	if !c.Upright && len(cells) > 0 {
		p.underline(c, cells, *chosen)
	}
	p.ring(c.At, f)
	return *chosen != was
}

// cell draws word i of the choice in its rectangle, with its tip.
func (p *Panel) cell(c Choice, f feel, i int, r Rect, chosen bool) {
	own := c.Control
	own.ID, own.At, own.Label = fmt.Sprintf("%s/%d", c.ID, i), r, c.word(i)
	f.hot = f.hot && p.under(r)
	if i < len(c.Tips) && c.Off == "" {
		tip := own
		tip.Tip = c.Tips[i]
		p.tipFor(tip, p.under(r))
	}
	p.word(c, own, f, chosen)
}

// underline draws the line under a row of words, thick under the chosen one.
func (p *Panel) underline(c Choice, cells []Rect, chosen int) {
	p.list.Level(c.At.X, c.At.Right(), c.At.Bottom()-1, 1, Hair())
	if chosen < 0 || chosen >= len(cells) {
		return
	}
	k := Rust()
	if c.Off != "" {
		k = asleep()
	}
	p.list.Level(cells[chosen].X+3, cells[chosen].Right()-3, c.At.Bottom()-2.5, 2.5, k)
}

// word draws one word of the choice.
func (p *Panel) word(c Choice, own Control, f feel, chosen bool) {
	value := ""
	if chosen {
		value = "chosen"
	}
	p.place(own, WordPlace, value)
	p.wash(own.At, f)
	k := SoftInk()
	if chosen {
		k = Ink()
	}
	if c.Off != "" {
		k = asleep()
	}
	if !c.Upright {
		p.list.TextIn(own.At.Inset(2, 0), Body, Middle, k, own.Label)
		return
	}
	p.spot(Point{own.At.X + 10.5, own.At.Y + own.At.H/2}, chosen, c.Off != "")
	p.list.TextIn(Rect{own.At.X + 25, own.At.Y, own.At.W - 27, own.At.H}, Body, Left, k, own.Label)
}

// spot draws the ring before a word of a column, filled if it is chosen.
func (p *Panel) spot(at Point, chosen, off bool) {
	edge, full := Pencil(), Rust()
	if off {
		edge, full = Hair(), asleep()
	}
	p.list.Disc(at, 6, Slip())
	p.list.Circle(at, 6, 1, edge)
	if chosen {
		p.list.Disc(at, 3.25, full)
	}
}

// word returns the i-th word with its shortcut.
func (c Choice) word(i int) string {
	if i < len(c.Keys) && c.Keys[i] != "" {
		return c.Words[i] + " [" + c.Keys[i] + "]"
	}
	return c.Words[i]
}

// cells returns where the words stand: in a row each as wide as it needs, and
// what is left over shared.
func (c Choice) cells(a *Atlas) []Rect {
	r := c.At
	if c.Label != "" {
		r.Y, r.H = r.Y+choiceLabel, max(0, r.H-choiceLabel)
	}
	n := float64(len(c.Words))
	out := make([]Rect, len(c.Words))
	if c.Upright {
		for i := range out {
			out[i] = Rect{r.X, r.Y + float64(i)*r.H/n, r.W, r.H / n}
		}
		return out
	}
	need := 0.0
	for i := range c.Words {
		out[i].W = a.TextWidth(Body, c.word(i)) + 6
		need += out[i].W
	}
	x := r.X
	for i := range out {
		w := out[i].W + (r.W-need)/n
		if need > r.W {
			w = out[i].W * r.W / need
		}
		out[i] = Rect{x, r.Y, w, r.H}
		x += w
	}
	return out
}

// choiceKeys moves the choice with the arrow keys.
func (p *Panel) choiceKeys(c Choice, f feel, chosen *int) {
	if !f.focused || c.Off != "" || len(c.Words) == 0 {
		return
	}
	k, ok := p.key(KeyLeft, KeyUp, KeyRight, KeyDown, KeyHome, KeyEnd)
	if !ok {
		return
	}
	last := len(c.Words) - 1
	switch k.Key {
	case KeyLeft, KeyUp:
		*chosen = max(0, *chosen-1)
	case KeyRight, KeyDown:
		*chosen = min(last, *chosen+1)
	case KeyHome:
		*chosen = 0
	case KeyEnd:
		*chosen = last
	}
}
