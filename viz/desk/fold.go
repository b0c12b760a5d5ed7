package desk

import (
	"archload/viz/panel"
	"archload/viz/tool"
)

// The folds of the tools, in order.
const (
	foldWays    = "Where the load goes"
	foldChanges = "Changes"

	foldGraduation = "Graduation"
)

// usualFolds are the parts of the side that are folded away at first.
func usualFolds() map[string]bool {
	return map[string]bool{tool.Top: true, tool.Strings: true, tool.Bridge: true, foldWays: true, tool.Posts: true, tool.Arch: true, foldGraduation: true}
}

// fold draws the line that folds a part away, and says whether it is open.
func (d *Desk) fold(c *panel.Column, name, tip string) bool {
	open := !d.folded[name]
	d.panel.Section(panel.Control{ID: "fold " + name, At: c.Row(panel.HeadHeight), Label: name, Tip: tip}, &open)
	d.folded[name] = !open
	return open
}

// sideOpen tells whether numbers and tools stand beside the drawing.
func (d *Desk) sideOpen(controls bool) bool {
	if d.page.narrow {
		return controls && d.page.asked
	}
	return controls && !d.looks.NoSide
}

// foldSide folds the panel away, and back.
func (d *Desk) foldSide() {
	if d.page.narrow {
		d.page.asked = !d.page.asked
		return
	}
	d.looks.NoSide = !d.looks.NoSide
}

// sideTab is where that tab stands: at the panel's edge.
func (d *Desk) sideTab() panel.Rect {
	v := d.lay.Heads[len(d.lay.Heads)-1]
	return panel.Rect{X: v.Right() - 24, Y: d.lay.View.Y + 7, W: 18, H: 24}
}

// drawSideTab draws the tab that folds the panel away, at the edge of the drawing.
func (d *Desk) drawSideTab() {
	at, tip := d.sideTab(), "folds the panel away [F]"
	c, way := at.Centre(), 1.0 // to where the panel goes
	if d.lay.Side.Empty() {
		tip, way = "brings the panel of numbers and tools [F]", -1
	}
	if d.panel.Button(panel.Control{ID: "fold side", At: at, Tip: tip}) {
		d.foldSide()
		d.again = true
	}
	d.panel.List().Polygon([]panel.Point{{X: c.X - 3*way, Y: c.Y - 5}, {X: c.X + 3*way, Y: c.Y}, {X: c.X - 3*way, Y: c.Y + 5}}, panel.SoftInk())
}
