package panel

import "fmt"

// Written is a line of text as it stands on the page.
type Written struct {
	Text  string // as it is written
	Whole string // as it was to be written, had it room
	At    Rect   // from the top of its capitals to below its baseline, points
	Seen  Rect   // what of it lies within the page and the areas that cut it
	Under bool   // something that was drawn later hides a part of it
}

// String is the line for scripts: left, top, width and height of what can be seen of it, points, whether that is
// all of it ("whole"), shortened, cut or covered, and its text.
func (w Written) String() string {
	how := "whole"
	switch {
	case w.Text != w.Whole:
		how = "shortened"
	case w.Seen.W < w.At.W-0.5 || w.Seen.H < w.At.H-0.5:
		how = "cut"
	case w.Under:
		how = "covered"
	}
	return fmt.Sprintf("%.0f %.0f %.0f %.0f %s %s", w.Seen.X, w.Seen.Y, w.Seen.W, w.Seen.H, how, w.Text)
}

// solid is the opacity from which a ground hides what was written under it.
const solid = 160

// Watch makes every page from the next frame on keep what is written on it, for Written: tests
// ask whether it can be read.
func (p *Panel) Watch() { p.watched = true }

// Written returns the lines that were written on a watched page and can be read wholly or in
// part, those on the uppermost lid or note alone if there is one.
func (l *List) Written() []Written { return l.written }

// note keeps a line whose baseline begins at x, y, pixels.
func (l *List) note(x, y float64, f Face, s, whole string) {
	if !l.watched || s == "" && whole == "" {
		return
	}
	d, tall := l.Atlas.Density, l.Atlas.capHeight(f)
	w := Written{Text: s, Whole: whole, At: Rect{x / d, y/d - tall, l.Atlas.TextWidth(f, s), 1.2 * tall}}
	w.Seen = w.At
	if n := len(l.clips); n > 0 {
		c := l.clips[n-1]
		w.Seen = w.At.Meet(Rect{c.x0 / d, c.y0 / d, max(0, c.x1-c.x0) / d, max(0, c.y1-c.y0) / d})
	}
	if w.Text != "" && w.Seen.Empty() {
		return // scrolled away
	}
	l.written = append(l.written, w)
}

// hide notes that a ground lies over what was written before.
func (l *List) hide(r Rect, opacity uint8) {
	if !l.watched || opacity < solid {
		return
	}
	kept := l.written[:0]
	for _, w := range l.written {
		m := w.At.Meet(r)
		switch {
		case m.W >= w.At.W-0.5 && m.H >= w.At.H-0.5 && w.Text != "":
			continue // not seen at all
		case m.W > 1 && m.H > 1:
			w.Under = true
		}
		kept = append(kept, w)
	}
	l.written = kept
}
