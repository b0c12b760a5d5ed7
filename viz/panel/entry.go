package panel

// entry is a number or a line of words being typed.
type entry struct {
	most  int // letters; 0: longestEntry
	id    string
	text  []rune
	caret int
	all   bool // everything is selected: the next letter replaces it
	fault string
}

// edit moves the caret or takes letters away.
func (e *entry) edit(k KeyPress) {
	all := e.all
	switch k.Key {
	case KeyLeft:
		e.caret = max(0, e.caret-1)
	case KeyRight:
		e.caret = min(len(e.text), e.caret+1)
	case KeyHome:
		e.caret = 0
	case KeyEnd:
		e.caret = len(e.text)
	case KeyBackspace:
		if !all && e.caret > 0 {
			e.text = append(e.text[:e.caret-1], e.text[e.caret:]...)
			e.caret--
		}
		e.wipe(all)
	case KeyDelete:
		if !all && e.caret < len(e.text) {
			e.text = append(e.text[:e.caret], e.text[e.caret+1:]...)
		}
		e.wipe(all)
	case LetterKey('a'):
		e.all = k.Ctrl || e.all
		return
	default:
		return
	}
	e.all = false
}

// wipe takes everything away if all is set.
func (e *entry) wipe(all bool) {
	if all {
		e.text, e.caret = nil, 0
	}
	e.fault = ""
}

// insert types a letter.
func (e *entry) insert(r rune) {
	if r < ' ' || r == 0x7f || len(e.text) >= e.longest() && !e.all {
		return
	}
	e.wipe(e.all)
	e.all = false
	e.text = append(e.text[:e.caret:e.caret], append([]rune{r}, e.text[e.caret:]...)...)
	e.caret++
}

// longestEntry is the most letters that a number takes, longestLine a line of words.
const (
	longestEntry = 40
	longestLine  = 4000
)

// longest is the most letters that the entry takes.
func (e *entry) longest() int {
	if e.most > 0 {
		return e.most
	}
	return longestEntry
}

// Line draws a line to write words on. With the keyboard it takes every letter at once; it tells whether text was
// changed, and by which key the hand went on: Enter, up, down or Escape, which end the typing; NoKey: it types on.
func (p *Panel) Line(c Control, text *string) (changed bool, on Key) {
	was := *text
	f := p.touch(c)
	n := Number{Control: c, Cell: true}
	if p.left.id == c.ID {
		p.left = entry{} // every letter was taken at once
	}
	if f.focused && c.Off == "" {
		if p.entry.id != c.ID || string(p.entry.text) != *text {
			t := []rune(*text)
			p.entry = entry{id: c.ID, text: t, caret: len(t), most: longestLine}
		} else if f.pressed {
			p.entry.caret, p.entry.all = p.caretAt(n, p.in.X), f.double
		}
		on = p.lineKeys()
		*text = string(p.entry.text)
		if on != NoKey {
			p.entry = entry{}
		}
	} else if p.entry.id == c.ID {
		p.entry = entry{}
	}
	p.drawLine(n, f, *text)
	return *text != was, on
}

// lineKeys types, up to a key that goes on.
func (p *Panel) lineKeys() Key {
	for i, k := range p.in.Keys {
		if p.taken[i] || k.leaves() {
			continue
		}
		p.taken[i] = k.Key != KeyEscape // which also closes what the line is on
		switch k.Key {
		case KeyEnter, KeyUp, KeyDown, KeyEscape:
			return k.Key
		}
		p.entry.edit(k)
	}
	for _, r := range p.in.Text {
		p.entry.insert(r)
	}
	return NoKey
}

// drawLine draws the line, what is on it, and the caret.
func (p *Panel) drawLine(n Number, f feel, text string) {
	box := p.entryBox(n)
	p.place(n.Control, NumberPlace, text)
	p.list.Rect(box, Slip())
	edge := SoftInk()
	if p.entry.id == n.ID {
		edge = Rust()
		p.drawEntry(box)
	} else {
		p.list.TextIn(box.Inset(4, 0), Body, Left, n.ink(), text)
		p.ring(n.At, f)
	}
	p.list.Frame(box, 1.5, edge)
}
