package desk

import (
	"archload/viz/panel"
)

// The folds of the tools, in order.
const (
	foldRelief  = "Relief under the foot"
	foldBridge  = "Bridge"
	foldStrings = "Strings"
	foldTop     = "Top and bars"
	foldWays    = "Where the load goes"
	foldArch    = "Arch"
	foldPosts   = "Posts"
	foldChanges = "Changes"
)

// usualFolds are the parts of the side that are folded away at first.
func usualFolds() map[string]bool {
	return map[string]bool{foldTop: true, foldStrings: true, foldBridge: true, foldWays: true, foldPosts: true, foldArch: true}
}

// fold draws the line that folds a part away, and says whether it is open.
func (d *Desk) fold(c *panel.Column, name, tip string) bool {
	open := !d.folded[name]
	d.panel.Section(panel.Control{ID: "fold " + name, At: c.Row(panel.HeadHeight), Label: name, Tip: tip}, &open)
	d.folded[name] = !open
	return open
}
