package desk

import (
	"math"
	"strconv"

	"archload/viz/desk/layout"
	"archload/viz/desk/looks"
	"archload/viz/panel"
	"archload/viz/scene"
)

// fieldWords are the fields' words on the bar and their keys, which count them.
func fieldWords() (words, keys []string) {
	for i, f := range scene.Fields() {
		words, keys = append(words, f.Short()), append(keys, strconv.Itoa(i))
	}
	return words, keys
}

// viewTip says what hands do to a view.
const viewTip = "Drag to turn, wheel to come nearer, right button to shift."

// layout.Form is the fullest that has room on a page, of whose width so much is free beside the
// panel, points.
func (d *Desk) barForm(page, free float64) layout.Form {
	for f, width := range []float64{layout.Beside: free, layout.Across: page, layout.Plain: page} {
		if d.barFits(layout.Form(f), width-2*layout.BarPadding) {
			return layout.Form(f)
		}
	}
	return layout.Folded
}

func (d *Desk) barFits(f layout.Form, width float64) bool {
	fields, fieldKeys := fieldWords()
	views, viewKeys := looks.ViewWords()
	return d.wordsWidth(fields, fieldKeys, f.Keyed()) <= width && d.wordsWidth(views, viewKeys, f.Keyed())+10+d.togglesWidth(f.Keyed()) <= width
}

// wordsWidth is what the words of a choice need in a row, points.
func (d *Desk) wordsWidth(words, keys []string, keyed bool) float64 {
	sum := 0.0
	for i, w := range words {
		if keyed {
			w += " [" + keys[i] + "]"
		}
		sum += d.atlas.TextWidth(panel.Body, w) + 10
	}
	return sum
}

// fieldChoice is the choice of what is seen.
func (d *Desk) fieldChoice(keyed bool) panel.Choice {
	words, keys := fieldWords()
	c := panel.Choice{Control: panel.Control{ID: "field"}, Words: words}
	for i, f := range scene.Fields() {
		tip := f.Words()
		if !keyed {
			tip += " Key: " + keys[i] + "."
		}
		c.Tips = append(c.Tips, tip)
	}
	if keyed {
		c.Keys = keys
	}
	return c
}

// chooseField draws that choice and follows it; it tells whether another was chosen.
func (d *Desk) chooseField(c panel.Choice) bool {
	field := int(d.want.Field)
	if !d.panel.Choice(c, &field) {
		return false
	}
	d.see(scene.Fields()[field])
	return true
}

// viewChoice is the choice of where it is seen from.
func (d *Desk) viewChoice(keyed bool) panel.Choice {
	words, keys := looks.ViewWords()
	c := panel.Choice{Control: panel.Control{ID: "view"}, Words: words}
	for i, tip := range looks.ViewTips() {
		tip += " " + viewTip
		if !keyed {
			tip += " Key: " + keys[i] + "."
		}
		c.Tips = append(c.Tips, tip)
	}
	if keyed {
		c.Keys = keys
	}
	return c
}

// chooseView draws that choice and follows it; it tells whether another was chosen.
func (d *Desk) chooseView(c panel.Choice) bool {
	view := -1
	for i, v := range scene.Views() {
		if v.Name == d.looks.View {
			view = i
		}
	}
	if !d.panel.Choice(c, &view) || view < 0 {
		return false
	}
	d.look(scene.Views()[view].Name)
	return true
}

// drawBar draws what is seen, and from where.
func (d *Desk) drawBar() {
	d.panel.Sheet(d.lay.Bar)
	c := panel.NewColumn(d.lay.Bar, layout.BarPadding, 0)
	if d.lay.Form == layout.Folded {
		d.drawMenus(c.Row(panel.ButtonHeight))
		return
	}
	keyed := d.lay.Form.Keyed()
	fields := d.fieldChoice(keyed)
	fields.At = c.Row(panel.ChoiceHeight)
	d.chooseField(fields)
	row := c.Row(panel.ChoiceHeight)
	views := d.viewChoice(keyed)
	views.At = row
	views.At.W = math.Round(row.W - d.togglesWidth(keyed) - 10)
	d.chooseView(views)
	d.drawToggles(panel.Rect{X: views.At.Right() + 10, Y: row.Y, W: row.Right() - views.At.Right() - 10, H: row.H}, keyed)
}

// menu is a button of the folded bar, and the list that it opens.
type menu struct {
	sheet overlay
	id    string
	label string // what is chosen now
	tip   string
}

func (d *Desk) menus() []menu {
	view := "Turned"
	words, _ := looks.ViewWords()
	for i, v := range scene.Views() {
		if v.Name == d.looks.View {
			view = words[i]
		}
	}
	return []menu{
		{fieldMenu, "menu field", d.want.Field.Short(), "what is seen"},
		{viewMenu, "menu view", view, "where it is seen from. " + viewTip},
		{drawnMenu, "menu drawn", "Drawn", "what is drawn besides"},
	}
}

// drawMenus draws the buttons of the folded bar.
func (d *Desk) drawMenus(row panel.Rect) {
	x, off := row.X, ""
	if len(d.want.Designs) == 0 {
		off = "no design is open"
	}
	for _, m := range d.menus() {
		words := m.label + " ▼"
		at := panel.Rect{X: x, Y: row.Y, W: d.atlas.TextWidth(panel.Body, words) + 22, H: row.H}
		if d.panel.Button(panel.Control{ID: m.id, At: at, Label: words, Tip: m.tip, Off: off}) {
			d.openSheet(m.sheet)
			d.page.menuAt = x
		}
		x = at.Right() + 6
	}
}

// drop lays a list of n rows under the button that opened it, and closes it when the hand
// presses elsewhere.
func (d *Desk) drop(n int, width float64) panel.Rect {
	bar := d.lay.Bar
	r := panel.Rect{X: math.Min(d.page.menuAt, d.lay.Page.Right()-width-8), Y: bar.Bottom() - 2, W: width, H: 16 + panel.ToggleHeight*float64(n)}
	r.H = math.Min(r.H, d.lay.Page.Bottom()-r.Y-8)
	in := d.panel.Input()
	at := panel.Point{X: in.X, Y: in.Y}
	if in.Pressed[panel.LeftButton] && !r.Holds(at) && !bar.Holds(at) || d.lay.Form != layout.Folded {
		d.over = noSheet
	}
	d.panel.Lid(r)
	return d.panel.Scroll("menu", r.Inset(8, 8))
}

// drawMenu draws the list that is open.
func (d *Desk) drawMenu() {
	const wide = 210.0
	chosen := false
	switch d.over {
	case fieldMenu:
		chosen = d.dropped(d.fieldChoice(true), wide, d.chooseField)
	case viewMenu:
		chosen = d.dropped(d.viewChoice(true), wide, d.chooseView)
	case drawnMenu:
		rows := panel.NewColumn(d.drop(len(toggles()), wide), 0, 0)
		for _, t := range toggles() {
			at := rows.Row(panel.ToggleHeight)
			d.panel.Toggle(panel.Control{ID: t.id, At: at, Label: t.label, Key: t.key, Tip: t.tip, Off: t.why(d)}, t.on(d))
		}
		d.panel.EndScroll(rows.Used(0))
	}
	if chosen {
		d.over = noSheet
	}
}

// dropped draws a choice as a list that is open, so many points wide, and says whether one of it was chosen.
func (d *Desk) dropped(c panel.Choice, wide float64, choose func(panel.Choice) bool) bool {
	c.Upright = true
	c.At = d.drop(len(c.Words), wide)
	c.At.H = c.Height()
	chosen := choose(c)
	d.panel.EndScroll(c.At.H)
	return chosen
}
