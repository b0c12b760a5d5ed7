package desk

import (
	"math"

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
	d.drawSideTab()
}

// drawRuler draws the string load, from nothing to full, with what happens at
// the foot on the way.
func (d *Desk) drawRuler() {
	d.panel.Sheet(d.lay.Ruler)
	in := d.lay.Ruler.Inset(12, 4)
	play := "Play"
	if d.play.on || d.swings() {
		play = "Stop"
	}
	button := panel.Rect{X: in.X, Y: in.Y + 12, W: 84, H: panel.ButtonHeight}
	key := "P"
	if in.W < narrowRuler {
		button.W, key = 50, ""
	}
	if d.panel.Button(panel.Control{ID: "play", At: button, Label: play, Key: key, Tip: "brings the strings up to pitch, from nothing to full [P]"}) {
		d.togglePlay()
	}
	load := d.want.Load
	s := panel.Slider{Control: panel.Control{ID: "load", At: panel.Rect{X: button.Right() + 16, Y: in.Y, W: in.Right() - button.Right() - 16, H: in.H},
		Label: d.loadName() + d.eventWords(), Tip: "how far the load is brought up to full", Off: d.offLoad()}, Shorter: []string{d.loadName(), "Load", ""},
		Min: 0, Max: 1, Step: 0.01, Default: 1, Format: scale.Percent, Marks: d.eventMarks()}
	if d.panel.Slider(s, &load) {
		d.want.Load, d.play.on = load, false
	}
}

// narrowRuler is the width below which the button beside the ruler goes without its key, points.
const narrowRuler = 260.0

// offLoad is why the load cannot be changed; "": it can.
func (d *Desk) offLoad() string {
	if d.want.Aired() {
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
