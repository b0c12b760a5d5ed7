package desk

import (
	"strings"

	"archload/viz/desk/numbers"
	"archload/viz/panel"
	"archload/viz/tool"
)

// footLines are what stands under a saved picture of a width; the first of them, so many, are warnings.
func (d *Desk) footLines(width float64) (lines []string, warnings int) {
	lines, warnings = numbers.Foot(d.atlas, d.shown, width, d.page.saved)
	if one := d.design(); one != nil && d.lesson == nil && len(one.Live.Keys()) > 0 {
		var words []string
		tools := d.tools(one)
		for _, k := range one.Live.Keys() {
			name, value := tool.Words(k, tools, d.box.usual)
			words = append(words, name+" "+value)
		}
		lines = append(lines, d.atlas.Wrap(panel.Small, "Changed: "+strings.Join(words, "; "), width)...)
	}
	return lines, warnings
}

// footHeight is how high what stands under a saved picture is, points.
func (d *Desk) footHeight(width float64) float64 {
	lines, _ := d.footLines(width - 28)
	return 10 + float64(len(lines))*panel.Small.LineHeight()
}

// drawFootLines writes it at the foot of the page.
func (d *Desk) drawFootLines() {
	w := d.lay.Page.W
	lines, rust := d.footLines(w - 28)
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
