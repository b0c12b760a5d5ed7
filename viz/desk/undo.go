package desk

import (
	"fmt"

	"archload/cases/tree"
	"archload/viz/panel"
	"archload/viz/stage"
	"archload/viz/tool"
)

// mostSteps is how many steps are remembered.
const mostSteps = 100

func sameDesigns(a, b []stage.Design) bool {
	return stage.Want{Designs: a}.SameDesigns(stage.Want{Designs: b})
}

// noteStep remembers what was set before, once the hand has let go of a change.
func (d *Desk) noteStep() {
	p := &d.past
	switch {
	case d.want.Held || d.lesson != nil || sameDesigns(p.now, d.want.Designs):
		return
	case !(stage.Want{Designs: p.now}).SameNames(d.want):
		*p = past{}
	default:
		p.before, p.after = append(p.before, p.now), nil
		if len(p.before) > mostSteps {
			p.before = p.before[1:]
		}
	}
	p.now = d.want.Designs
}

// forgetLast forgets a step that was refused, before which things stood as they do now.
func (p *past) forgetLast(refused, now []stage.Design) {
	n := len(p.before)
	if n > 0 && sameDesigns(p.now, refused) && sameDesigns(p.before[n-1], now) {
		p.now, p.before = p.before[n-1], p.before[:n-1]
	}
}

// undo goes back to what was set before the last change.
func (d *Desk) undo() {
	d.stepPast(&d.past.before, &d.past.after, "undone", "there is nothing to undo")
}

// redo does again what was undone.
func (d *Desk) redo() {
	d.stepPast(&d.past.after, &d.past.before, "done again", "there is nothing to do again")
}

func (d *Desk) stepPast(from, to *[][]stage.Design, done, none string) {
	n := len(*from)
	if n == 0 {
		d.say(none)
		return
	}
	*to = append(*to, d.want.Designs)
	d.want.Designs = (*from)[n-1]
	*from = (*from)[:n-1]
	d.past.now = d.want.Designs
	d.fault = ""
	d.say(done)
}

// drawChanges lists what differs from the design's file, each with a button that
// takes it back.
func (d *Desk) drawChanges(c *panel.Column, tools []tool.Tool) {
	keys := d.want.Designs[d.edit].Keys
	if len(keys) == 0 || !d.fold(c, foldChanges, "what is set otherwise than in the file of the design") {
		return
	}
	for i, k := range keys {
		name, value := tool.Words(k, tools, d.box.usual)
		if d.atlas.TextWidth(panel.Small, name)+d.atlas.TextWidth(panel.Body, value)+8 > c.Width()-28 {
			d.panel.Note(c.Row(13), name)
			name = ""
		}
		row := c.Row(panel.RowHeight)
		d.panel.KeyValue(panel.Rect{X: row.X, Y: row.Y, W: row.W - 28, H: row.H}, name, value)
		if d.panel.Button(panel.Control{ID: fmt.Sprintf("forget %d", i), At: panel.Rect{X: row.Right() - 24, Y: row.Y, W: 24, H: row.H - 2},
			Label: "×", Tip: "takes this change back"}) {
			d.want.Designs = append([]stage.Design(nil), d.want.Designs...)
			d.forget([]tree.KeyValue{k})
		}
	}
	pair := c.Cells(panel.ButtonHeight, 2)
	if d.panel.Button(panel.Control{ID: "undo", At: pair[0], Label: "Undo", Key: "Ctrl Z"}) {
		d.undo()
	}
	if d.panel.Button(panel.Control{ID: "take back", At: pair[1], Label: "All back", Key: "Z",
		Tip: "sets the design back to what its file says"}) {
		d.takeBack()
	}
}
