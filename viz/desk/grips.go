package desk

import (
	"slices"

	"archload/viz/desk/caliper"
	"archload/viz/desk/grip"
	"archload/viz/panel"
	"archload/viz/scene"
	"archload/viz/tool"
)

// lookAt is how view i sees its design.
func (d *Desk) lookAt(i int) grip.Look {
	r := d.lay.Views[i]
	return grip.Look{View: i, Of: d.shown.Designs[i], Scene: d.shown.Scenes[i],
		Project: func(p [3]float64) (x, y float64, ok bool) { return d.project(r, p) }}
}

// grippable tells whether things in the picture can be taken: not in a lesson or for an audience, and not
// where the picture is none of a design as it stands.
func (d *Desk) grippable() bool {
	w := d.shown.Want
	return d.lesson == nil && !d.alone && len(d.shown.Scenes) == len(d.shown.Designs) && w.Field != scene.Tone && !w.Behind && w.Strip == 0
}

// places are those of the graduation in a view, while its table is open.
func (d *Desk) places(view int) []tool.Grip {
	if view != d.edit || d.folded[foldGraduation] || !d.sideOpen(true) {
		return nil
	}
	d.tools(d.shown.Designs[view])
	return d.caliper.Grips(caliper.Of(d.shown.Designs[view], d.box.ahead))
}

// dragGrip moves what the hand holds.
func (d *Desk) dragGrip(view int, at panel.Point, straight bool) {
	set, changed := d.grips.Drag(d.lookAt(view), at, straight)
	switch {
	case !changed:
	case set[0].Key == tool.ChangeKey:
		d.regraduate(set)
	default:
		d.change(set)
	}
}

// letGrip lets go. Where the last place cannot be, the design stays as it was shown.
func (d *Desk) letGrip() {
	d.grips.Let()
	if d.fault != "" && d.shown != nil && !d.busy {
		d.want.Designs = slices.Clone(d.shown.Want.Designs)
	}
}

// drawGrips draws what can be taken in the view under the pointer.
func (d *Desk) drawGrips(l *panel.List) {
	if d.shown == nil {
		return
	}
	view := d.viewAt(panel.Point{X: d.panel.Input().X, Y: d.panel.Input().Y})
	if held, on := d.grips.Holds(); on {
		view = held
	}
	if view >= 0 && view < len(d.shown.Scenes) && d.grippable() && d.over == noSheet {
		d.grips.Draw(l, d.lookAt(view), d.lay.Views[view])
	}
}

// drawTwin marks the place under the pointer on the other design.
func (d *Desk) drawTwin(l *panel.List, h *hover) {
	i := 1
	if h.onB {
		i = 0
	}
	if i >= len(d.shown.Scenes) || len(d.shown.Scenes) < 2 {
		return
	}
	p, ok := d.shown.Designs[i].Skeleton.Place(d.shown.Scenes[i], d.shown.Designs[i].Now, scene.Mark{At: h.place, Inside: d.camera.Pitch < 0})
	if x, y, seen := d.project(d.lay.Views[i], p); ok && seen {
		l.Circle(panel.Point{X: x, Y: y}, 6, 3.5, panel.Slip())
		l.Circle(panel.Point{X: x, Y: y}, 6, 1.5, panel.Rust())
	}
}

// cursor is how the pointer looks.
func (d *Desk) cursor() Cursor {
	switch _, held := d.grips.Holds(); {
	case held, d.drag.what == shifting && d.drag.moved:
		return Moving
	case d.grips.Near():
		return Pointing
	}
	return Arrow
}
