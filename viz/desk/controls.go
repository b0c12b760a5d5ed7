package desk

import (
	"fmt"
	"math"
	"strconv"

	"archload/viz/panel"
	"archload/viz/scale"
	"archload/viz/scene"
)

// drawControls draws everything that can be pressed and moved, and does what
// the hand asks for.
func (d *Desk) drawControls() {
	d.drawBar()
	d.drawStrip()
	d.drawCaption(true)
	d.drawRuler()
	d.drawSide()
}

// fieldWords are the fields' words on the bar and their keys, which count them.
func fieldWords() (words, keys []string) {
	for i, f := range scene.Fields() {
		words, keys = append(words, f.Short()), append(keys, strconv.Itoa(i))
	}
	return words, keys
}

// fieldTips say what each field shows.
func fieldTips() []string {
	var out []string
	for _, f := range scene.Fields() {
		out = append(out, f.Words())
	}
	return out
}

// drawBar draws what is seen, and from where, in as many rows as the words
// need.
func (d *Desk) drawBar() {
	d.panel.Sheet(d.lay.bar)
	c := panel.NewColumn(d.lay.bar, barPadding, 0)
	field := int(d.want.Field)
	fieldNames, fieldKeys := fieldWords()
	if d.rows(c, panel.Choice{Control: panel.Control{ID: "field"}, Words: fieldNames, Keys: fieldKeys, Tips: fieldTips()}, &field) {
		d.see(scene.Fields()[field])
	}
	words, keys := viewWords()
	view := -1
	for i, v := range scene.Views() {
		if v.Name == d.looks.View {
			view = i
		}
	}
	views := panel.Choice{Control: panel.Control{ID: "view",
		Tip: "where the top is seen from; drag to turn, wheel to come nearer, right button to shift"}, Words: words, Keys: keys}
	if d.oneRow(d.lay.bar.W) {
		row := c.Row(panel.ChoiceHeight)
		views.At = row
		views.At.W = math.Round(row.W - d.togglesWidth() - 10)
		if d.panel.Choice(views, &view) && view >= 0 {
			d.look(scene.Views()[view].Name)
		}
		d.drawToggles(panel.Rect{X: views.At.Right() + 10, Y: row.Y, W: row.Right() - views.At.Right() - 10, H: row.H})
		return
	}
	if d.rows(c, views, &view) && view >= 0 {
		d.look(scene.Views()[view].Name)
	}
	d.drawToggles(c.Row(panel.ToggleHeight))
}

const barPadding = 4.0

// oneRow tells whether views and toggles share a row.
func (d *Desk) oneRow(width float64) bool {
	words, keys := viewWords()
	return d.rowsFor(words, keys, width-2*barPadding-d.togglesWidth()-10) == 1
}

// barHeight is how high the bar must be, points.
func (d *Desk) barHeight(width float64) float64 {
	in := width - 2*barPadding
	words, keys := fieldWords()
	h := 2*barPadding + float64(d.rowsFor(words, keys, in))*panel.ChoiceHeight
	if d.oneRow(width) {
		return h + panel.ChoiceHeight
	}
	words, keys = viewWords()
	return h + float64(d.rowsFor(words, keys, in))*panel.ChoiceHeight + panel.ToggleHeight
}

// rowsFor is how many rows the words of a choice need in a width, points.
func (d *Desk) rowsFor(words, keys []string, width float64) int {
	for n := 1; n < len(words); n++ {
		fits := true
		for k := range n {
			sum := 0.0
			for i := k * len(words) / n; i < (k+1)*len(words)/n; i++ {
				sum += d.atlas.TextWidth(panel.Body, words[i]+" ["+keys[i]+"]") + 10
			}
			fits = fits && sum <= width
		}
		if fits {
			return n
		}
	}
	return len(words)
}

// rows draws a choice in as many rows as it needs.
func (d *Desk) rows(c *panel.Column, choice panel.Choice, chosen *int) bool {
	n, changed := d.rowsFor(choice.Words, choice.Keys, c.Width()), false
	was := *chosen
	for k := range n {
		from, to := k*len(choice.Words)/n, (k+1)*len(choice.Words)/n
		part := choice
		if choice.Tips != nil {
			part.Tips = choice.Tips[from:to]
		}
		part.Words, part.Keys, part.At = choice.Words[from:to], choice.Keys[from:to], c.Row(panel.ChoiceHeight)
		if k > 0 {
			part.ID = fmt.Sprintf("%s row %d", choice.ID, k+1)
		}
		at := -1
		if was >= from && was < to {
			at = was - from
		}
		if d.panel.Choice(part, &at) && at >= 0 {
			*chosen, changed = from+at, true
		}
	}
	return changed
}

// viewWords are the short words of the views, and their keys.
func viewWords() (words, keys []string) {
	return []string{"Angle", "Outside", "Tail", "Side", "Inside", "Behind"}, []string{"A", "O", "T", "B", "U", "R"}
}

// see shows another field; a tone is seen in motion.
func (d *Desk) see(f scene.Field) {
	d.moving = f == scene.Tone || d.moving && d.want.Field != scene.Tone
	d.want.Field = f
}

// look moves the camera to a named view.
func (d *Desk) look(view string) {
	d.looks.View, d.want.Behind = view, view == scene.Behind
	d.fitted.X = 0
	d.again = true
}

// drawRuler draws the string load, from nothing to full, with what happens at
// the foot on the way.
func (d *Desk) drawRuler() {
	d.panel.Sheet(d.lay.ruler)
	in := d.lay.ruler.Inset(12, 4)
	play := "Play"
	if d.play.on || d.swings() {
		play = "Stop"
	}
	button := panel.Rect{X: in.X, Y: in.Y + 12, W: 84, H: panel.ButtonHeight}
	if d.panel.Button(panel.Control{ID: "play", At: button, Label: play, Key: "P", Tip: "brings the strings up to pitch, from nothing to full"}) {
		d.togglePlay()
	}
	load := d.want.Load
	s := panel.Slider{Control: panel.Control{ID: "load", At: panel.Rect{X: button.Right() + 16, Y: in.Y, W: in.Right() - button.Right() - 16, H: in.H},
		Label: d.loadName() + d.eventWords(), Tip: "how far the load is brought up to full", Off: d.offLoad()},
		Min: 0, Max: 1, Step: 0.01, Default: 1, Format: scale.Percent, Marks: d.eventMarks()}
	if d.panel.Slider(s, &load) {
		d.want.Load, d.play.on = load, false
	}
}

// offLoad is why the load cannot be changed; "": it can.
func (d *Desk) offLoad() string {
	if d.want.Field == scene.Humidity {
		return "the strings stay at pitch"
	}
	if d.want.Field == scene.Tone {
		return "a tone is that of the strings at pitch, or without them"
	}
	return ""
}

// loadName is what the ruler's load is called.
func (d *Desk) loadName() string {
	if one := d.design(); one != nil && one.Live.Case().Strings == nil {
		return "Load"
	}
	return "String load"
}

// eventMarks are the places on the ruler where something happens.
func (d *Desk) eventMarks() []panel.Mark {
	marks := []panel.Mark{{At: 0, Label: "slack"}, {At: 0.25}, {At: 0.5}, {At: 0.75}, {At: 1, Label: "at pitch"}}
	one := d.design()
	if one == nil {
		return marks
	}
	if one.Live.Case().Strings == nil {
		marks[0].Label, marks[4].Label = "none", "full"
	}
	var out []panel.Mark
	for _, e := range one.Events {
		if e.Load > 0.01 && e.Load < 0.99 {
			out = append(out, panel.Mark{At: e.Load, Label: e.Words})
		}
	}
	return append(out, marks...)
}

// eventWords says what has happened last on the way to the load that is shown.
func (d *Desk) eventWords() string {
	one := d.design()
	if one == nil {
		return ""
	}
	last := ""
	for _, e := range one.Events {
		if e.Load <= d.shown.Want.Load+1e-9 {
			last = e.Words
		}
	}
	if last == "" {
		return ""
	}
	return ": " + last
}

// togglePlay starts or stops the run.
func (d *Desk) togglePlay() {
	if d.want.Field == scene.Tone {
		d.moving = !d.moving
		return
	}
	if d.play.on {
		d.play.on = false
		return
	}
	to := 1.0
	if d.lesson != nil && d.lesson.Step().Load > 0 {
		to = d.lesson.Step().Load
	}
	from := d.want.Load
	if from >= to-1e-9 {
		from = 0
	}
	d.play = play{on: true, since: d.now, from: from, to: to}
}

// advance moves the load on while it plays.
func (d *Desk) advance(now float64) {
	if !d.play.on {
		return
	}
	if d.shown == nil || !d.shown.Want.SameDesigns(d.want) {
		d.play.since = now // the picture to play on is not there yet
		return
	}
	v, halt, done := d.course().At(now - d.play.since)
	if done {
		d.play.on = false
	}
	if halt < 0 {
		v = math.Round(500*v) / 500
	}
	d.want.Load = v
}
