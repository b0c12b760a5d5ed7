package desk

import (
	"archload/viz/panel"
	"archload/viz/tool"
)

// The folds of the tools, in order.
const (
	foldWays    = "Where the load goes"
	foldChanges = "Changes"
)

// usualFolds are the parts of the side that are folded away at first.
func usualFolds() map[string]bool {
	return map[string]bool{tool.Top: true, tool.Strings: true, tool.Bridge: true, foldWays: true, tool.Posts: true, tool.Arch: true}
}

// fold draws the line that folds a part away, and says whether it is open.
func (d *Desk) fold(c *panel.Column, name, tip string) bool {
	open := !d.folded[name]
	d.panel.Section(panel.Control{ID: "fold " + name, At: c.Row(panel.HeadHeight), Label: name, Tip: tip}, &open)
	d.folded[name] = !open
	return open
}
