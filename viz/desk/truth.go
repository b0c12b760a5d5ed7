package desk

import (
	"archload/viz/desk/numbers"
	"archload/viz/panel"
)

// footHeight is how high what stands under a saved picture is, points.
func (d *Desk) footHeight(width float64) float64 {
	lines, _ := numbers.Foot(d.atlas, d.shown, width-28)
	return 10 + float64(len(lines))*panel.Small.LineHeight()
}

// drawFootLines writes it at the foot of the page.
func (d *Desk) drawFootLines() {
	w := d.lay.Page.W
	lines, rust := numbers.Foot(d.atlas, d.shown, w-28)
	l := d.panel.List()
	y := d.lay.Page.Bottom() - d.footHeight(w)
	l.Level(14, w-14, y+2, 1, panel.Hair())
	for i, t := range lines {
		k := panel.SoftInk()
		if i < rust {
			k = panel.Fault()
		}
		l.TextIn(panel.Rect{X: 14, Y: y + 5 + float64(i)*panel.Small.LineHeight(), W: w - 28, H: panel.Small.LineHeight()}, panel.Small, panel.Left, k, t)
	}
}
