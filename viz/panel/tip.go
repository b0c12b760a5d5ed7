package panel

import "image/color"

const (
	tipDelay = 0.5 // s
	tipWidth = 260 // points, at most
)

// tipFor notes that the pointer is over a control, or that the keyboard has
// reached one that cannot be used.
func (p *Panel) tipFor(c Control, over bool) {
	text := c.Tip
	if c.Off != "" {
		if text != "" {
			text += "\n"
		}
		text += "Not now: " + c.Off
	}
	asked := c.Off != "" && p.byKeys && p.focus == c.ID
	if text == "" || !over && !asked || p.tip.met && !over {
		return
	}
	if p.tip.id != c.ID {
		p.tip = tip{id: c.ID, since: p.in.Now}
	}
	p.tip.at, p.tip.text, p.tip.met = p.seen(c.At), text, true
}

// Hint gives a tooltip to a part of the page that is no control. The id must
// be unlike any other.
func (p *Panel) Hint(id string, at Rect, text string) {
	p.tipFor(Control{ID: id, At: at, Tip: text}, p.under(at))
}

// drawTip shows the note once the pointer has rested.
func (p *Panel) drawTip() {
	if !p.tip.met {
		p.tip = tip{}
		return
	}
	p.tip.met = false
	if p.in.Down[LeftButton] || p.in.Pressed[LeftButton] {
		p.tip.quiet = true
	}
	if p.tip.quiet {
		return
	}
	if wait := p.tip.since + tipDelay - p.in.Now; wait > 0 {
		p.wakeAfter(wait)
		return
	}
	p.slip(p.tip.at, p.tip.text, Ink())
}

// slip lays a note under a part of the page, or over it if there is no room
// below, when everything else is drawn.
func (p *Panel) slip(by Rect, text string, k color.NRGBA) {
	page := p.page
	p.after = append(p.after, func(l *List) {
		const air = 8.0
		lines := l.Atlas.Wrap(Small, text, min(tipWidth, page.W-4*air))
		w := 0.0
		for _, line := range lines {
			w = max(w, l.Atlas.TextWidth(Small, line))
		}
		r := Rect{by.X, by.Bottom() + 4, w + 2*air, float64(len(lines))*Small.LineHeight() + air}
		if r.Bottom() > page.Bottom()-2 {
			r.Y = by.Y - 4 - r.H
		}
		r.X = max(2, min(r.X, page.Right()-r.W-2))
		r.Y = max(2, r.Y)
		l.Rect(Rect{r.X + 2, r.Y + 2, r.W, r.H}, faded(Ink(), 0.10))
		l.Rect(r, Slip())
		l.Frame(r, 1, Pencil())
		for i, line := range lines {
			l.TextIn(Rect{r.X + air, r.Y + air/2 + float64(i)*Small.LineHeight(), w + 1, Small.LineHeight()}, Small, Left, k, line)
		}
	})
}

// TipShown returns the text of the note that shows now, "" if none.
func (p *Panel) TipShown() string {
	if p.tip.id == "" || p.tip.quiet || p.in.Now < p.tip.since+tipDelay {
		return ""
	}
	return p.tip.text
}
