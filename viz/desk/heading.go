package desk

import (
	"fmt"
	"image/color"
	"math"
	"slices"
	"strings"

	"archload/cases/tree"
	"archload/viz/desk/layout"
	"archload/viz/desk/numbers"
	"archload/viz/panel"
	"archload/viz/scale"
	"archload/viz/scene"
)

// heading is what stands over a drawing, in lines.
type heading struct {
	face   panel.Face
	title  []string
	shared []string // what is seen in all drawings alike, over the first
	said   []string // what is seen in this one
	remark []string
	ink    color.NRGBA // of the remark
}

// layout.HeadTall is how high the headings are in a width, points.
func (d *Desk) headTall(width layout.HeadWide) layout.HeadTall {
	if d.shown == nil {
		return layout.HeadTall{}
	}
	var t layout.HeadTall
	lines := 1 // one is kept for a remark
	for i := range d.shown.Scenes {
		h := d.heading(i, width)
		t.Title = math.Max(t.Title, h.titleTall())
		t.Shared = math.Max(t.Shared, float64(len(h.shared))*panel.Small.LineHeight())
		t.Said = math.Max(t.Said, float64(len(h.said))*panel.Small.LineHeight())
		if d.fault == "" { // what is not possible passes, and stands over the drawing
			lines = max(lines, len(h.remark))
		}
	}
	room := &d.page.room
	if of := d.names() + d.shown.Want.Field.Word() + d.namedView(); room.lines == nil || room.of != of || len(room.lines) > mostRooms {
		*room = headRoom{of: of, lines: map[layout.HeadWide]int{}}
	}
	room.lines[width] = max(room.lines[width], lines)
	t.Remark = float64(room.lines[width]) * panel.Small.LineHeight()
	return t
}

// mostRooms is for how many widths the room of remarks is remembered.
const mostRooms = 64

// sameClause tells whether two clauses say the same, gaps aside: they are drawn as large as the movement.
func sameClause(a, b string) bool {
	const gaps = " and gaps"
	return strings.Replace(a, gaps, "", 1) == strings.Replace(b, gaps, "", 1)
}

// clauses are what is said of drawing i: what is true of all of them, and what of this one alone.
func (d *Desk) clauses(i int) (shared, own string) {
	const between = "; "
	s := d.shown.Scenes
	words := d.statement(i, s[i])
	if len(s) == 1 {
		return "", words
	}
	var all, one []string
	other := strings.Split(d.statement(1-i, s[1-i]), between)
	for _, c := range strings.Split(words, between) {
		k := slices.IndexFunc(other, func(o string) bool { return sameClause(o, c) })
		switch {
		case k < 0:
			one = append(one, c)
		case len(other[k]) > len(c):
			all = append(all, other[k])
		default:
			all = append(all, c)
		}
	}
	return strings.Join(all, between), strings.Join(one, between)
}

// heading of design i.
func (d *Desk) heading(i int, width layout.HeadWide) heading {
	h := heading{face: panel.TitleBold}
	say := d.title
	if width.Line {
		say = d.ownTitle
	}
	for _, smaller := range []panel.Face{panel.BodyBold, panel.SmallBold} {
		for k := range d.shown.Scenes { // all in one size
			if d.atlas.TextWidth(h.face, say(k)) > width.One && (smaller == panel.BodyBold || width.Line) {
				h.face = smaller
			}
		}
	}
	h.title = d.atlas.Wrap(h.face, say(i), width.One)
	shared, own := d.clauses(i)
	if i == 0 {
		h.shared = d.lines(shared, width.All, width.Line)
	}
	h.said = d.lines(own, width.One, width.Line)
	var words string
	if words, h.ink = d.remark(i, width); d.fault != "" {
		words, h.ink = "Not possible: "+d.fault+". The design stays as it was.", panel.Fault()
	}
	if words != "" {
		h.remark = d.atlas.Wrap(panel.Small, words, width.One)
	}
	return h
}

// lines breaks words to a width, or shortens them to one line of it.
func (d *Desk) lines(words string, width float64, one bool) []string {
	switch {
	case words == "":
		return nil
	case one:
		return []string{d.atlas.Shortened(panel.Small, words, width)}
	}
	return d.atlas.Wrap(panel.Small, words, width)
}

func (h heading) titleTall() float64 {
	return float64(len(h.title))*h.face.LineHeight() + 3
}

// ownTitle is a title without the clauses with which those of both designs begin, where there is little room.
func (d *Desk) ownTitle(i int) string {
	const between = ", "
	title := d.title(i)
	if len(d.shown.Scenes) != 2 {
		return title
	}
	name, own, _ := strings.Cut(title, ": ")
	_, other, _ := strings.Cut(d.title(1-i), ": ")
	for {
		a, rest, ok := strings.Cut(own, between)
		b, others, too := strings.Cut(other, between)
		if !ok || !too || a != b {
			return name + ": " + own
		}
		own, other = rest, others
	}
}

// title names design i.
func (d *Desk) title(i int) string {
	title := d.shown.Scenes[i].Title
	keys := d.shown.Designs[i].Live.Keys()
	if len(keys) > 0 && !slices.ContainsFunc(keys, func(k tree.KeyValue) bool { return k.Key == "title" }) {
		title += ", changed"
	}
	switch {
	case len(d.shown.Scenes) == 2:
		title = string(rune('A'+i)) + ": " + title
	case len(d.shown.Designs) == 2:
		title = "B less A: " + d.shown.Scenes[0].Field
	}
	return title
}

// drawHeads names the designs, and says in a line what is seen.
func (d *Desk) drawHeads(l *panel.List) {
	for i := range d.shown.Scenes {
		r := d.lay.Heads[i]
		h := d.heading(i, d.lay.Wide)
		y := r.Y + layout.HeadTop
		if r.W > d.lay.Views[i].W { // a strip begins below it
			l.Rect(r, paperColor())
		}
		written(l, r.X+layout.HeadLeft, y, h.face, panel.Ink(), h.title)
		y += d.lay.Head.Title
		d.panel.Hint(fmt.Sprintf("seen %d", i), panel.Rect{X: r.X, Y: y, W: r.W, H: d.lay.Head.Shared + d.lay.Head.Said}, d.rest(i))
		written(l, r.X+layout.HeadLeft, y, panel.Small, panel.SoftInk(), h.shared)
		if r.Y == d.lay.Heads[0].Y { // beside each other: all begin under the shared words
			y += d.lay.Head.Shared
		}
		written(l, r.X+layout.HeadLeft, y, panel.Small, panel.SoftInk(), h.said)
		if r.Y == d.lay.Heads[0].Y || len(h.said) > 0 {
			y += d.lay.Head.Said
		}
		written(l, r.X+layout.HeadLeft, y, panel.Small, h.ink, h.remark)
	}
}

// rest is what is said of drawing i where one line of it stands over the drawing; "": all stands there.
func (d *Desk) rest(i int) string {
	if !d.lay.Wide.Line {
		return ""
	}
	return d.title(i) + ". " + d.statement(i, d.shown.Scenes[i])
}

// written writes lines on a thin ground of paper, so that they can be read over a drawing.
func written(l *panel.List, x, y float64, f panel.Face, k color.NRGBA, lines []string) {
	ground := paperColor()
	ground.A = 216
	for i, t := range lines {
		r := panel.Rect{X: x, Y: y + float64(i)*f.LineHeight(), W: l.Atlas.TextWidth(f, t), H: f.LineHeight()}
		l.Rect(r.Inset(-4, 0), ground)
		l.TextIn(r, f, panel.Left, k, t)
	}
}

// remark is what must be said of a design besides: that there is nothing to
// see, or what archload solve warns of.
func (d *Desk) remark(i int, width layout.HeadWide) (words string, ink color.NRGBA) {
	a, w := d.shown.Designs[i], d.shown.Want
	switch {
	case w.Field.OnFoot() && a.Bridge == nil:
		return "There is no bridge on this top, so there is no foot to show.", panel.SoftInk()
	case w.Field.OnFoot() && d.camera.Pitch < 0:
		return "Seen from inside, the plate hides the foot.", panel.SoftInk()
	}
	// A page without controls lists them all at its foot.
	if all := numbers.Warned(a); len(all) > 0 && w.Load == 1 && !d.lay.Bar.Empty() {
		words = "Warning: " + all[0]
		switch {
		case width.Brief:
			words = fmt.Sprintf("%d warnings: see the panel", len(all))
			if len(all) == 1 {
				words = d.warned("Warning: "+all[0], width.One)
			}
		case len(all) > 1:
			words = fmt.Sprintf("%d warnings, the first: %s", len(all), all[0])
		}
		return words, panel.Fault()
	}
	return a.Pathless, panel.SoftInk()
}

// warned is a warning in one line of a width: as much of it as says something, or that there is one.
func (d *Desk) warned(words string, width float64) string {
	const least = 0.4 // of its words
	if width < least*d.atlas.TextWidth(panel.Small, words) {
		words = "a warning: see the panel"
	}
	return d.atlas.Shortened(panel.Small, words, width)
}

// statement says what is seen, in a line or two.
func (d *Desk) statement(i int, s *scene.Scene) string {
	words := s.Statement
	if d.lesson != nil && d.lesson.Step().View == fromInside {
		words = "seen from inside, with the bass on the right; " + words
	}
	if len(d.shown.Scenes) < len(d.shown.Designs) {
		words += "; A: " + d.shown.Designs[0].Now.Top.Built.Case.Title + "; B: " + d.shown.Designs[1].Now.Top.Built.Case.Title
	}
	words += d.behindWords(i)
	if b := d.shown.Designs[i].Bridge; b != nil && d.shown.Want.Field == scene.RemainingGap && b.GapLeft < scene.ClosedGap && d.shown.Want.Load > 0 {
		words += "; it has closed everywhere"
	}
	if c := s.Scale; c != nil && c.Kind != scale.Counting {
		words += d.signWords(c)
	}
	if a := d.shown.Designs[i]; d.lesson == nil && d.shown.Second && d.shown.Want.Load >= leastLoad && d.shown.Want.Field != scene.Tone {
		if c := a.Sure(); c != nil && c.Moved != nil {
			words += "; on the shape as it has moved"
		} else {
			words += "; on the shape as carved"
		}
	}
	if f := d.shown.Designs[i].Flow; f != nil && len(f.Lines) > 0 && (d.shown.Want.Flow || d.shown.Want.Field == scene.LoadFlow) && len(d.shown.Scenes) == len(d.shown.Designs) {
		words += fmt.Sprintf("; each path carries %s N, %s %% of the load", scale.Fixed(f.Lines[0].Force, 1), scale.Fixed(100*f.Lines[0].Force/f.Load, 1))
	}
	return words
}

// behindWords say what is seen of a whole body from behind.
func (d *Desk) behindWords(i int) string {
	switch {
	case !d.shown.Want.Behind || d.shown.Designs[i].Full.Top.Built.Back == nil:
		return ""
	case d.shown.Want.Field == scene.Tone:
		return "; the top, seen through the back"
	}
	return "; the back, down is out of the body"
}

// fromInside is the view in which bass and treble have changed sides.
const fromInside = "from inside"

// signWords say what the two colours of a scale mean, as far as both are used.
func (d *Desk) signWords(s *scale.Scale) string {
	switch {
	case len(d.shown.Scenes) < len(d.shown.Designs):
		if d.shown.Want.Field == scene.Sink {
			return "; brown, hatched: lower in B than in A; blue, dashed: higher"
		}
		return "; brown, hatched: more in B; blue, dashed: less"
	case d.shown.Want.Field == scene.Tone:
		return "; brown (hatched) against blue (dashed)"
	case s.Kind == scale.Sinking && d.shown.Least() > -s.Step: // no line of the legend lies above zero
		return ""
	case s.Kind == scale.Sinking && s.Hi == 0:
		return "; brown, hatched: has come up"
	case s.Kind == scale.Sinking:
		return "; green to blue has gone down; brown, hatched: come up"
	}
	return "; brown, hatched: pull; blue, dashed: push"
}
