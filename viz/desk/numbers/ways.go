package numbers

import (
	"fmt"

	"archload/viz/panel"
	"archload/viz/scale"
	"archload/viz/stage"
)

// Ways lists who presses and who holds up, so that the sums close: strings and foot
// above, edge, posts and other supports below.
func (s Side) Ways(c *panel.Column) {
	for i, a := range s.Shown.Designs {
		if a.Report == nil {
			s.Panel.Note(c.Row(18), "Working…")
			continue
		}
		if len(s.Shown.Designs) > 1 {
			s.Panel.Note(c.Row(16), "design "+string(rune('A'+i)))
		}
		for _, r := range ways(a) {
			s.Panel.KeyValue(c.Row(panel.RowHeight-2), r[0], r[1])
		}
	}
}

// ways are the forces straight down and up at full load, as names and values.
func ways(a *stage.Answered) [][2]string {
	r := a.Report
	var out [][2]string
	add := func(name string, n float64) {
		out = append(out, [2]string{name, fmt.Sprintf("%s N (%s kg)", scale.Fixed(n, 1), scale.Fixed(n/gravity, 2))})
	}
	if r.Strings != nil {
		add("strings press down with", r.Strings.Downforce)
		if now, another := r.PressesNow(); another {
			add("once the body has moved, with", now)
		}
	}
	if f := r.Flow; f != nil {
		if r.Strings == nil {
			add("load on the top", f.Load)
		}
		add("held up by the neck block", f.Sectors.Neck)
		add("by the tail block", f.Sectors.Tail)
		add("by the bass side", f.Sectors.Bass)
		add("by the treble side", f.Sectors.Treble)
		posts := 0.0
		for _, p := range r.Reactions.Posts {
			add("by "+p.Name, p.Force)
			posts += p.Force
		}
		if rest := f.Supports - posts; len(r.Reactions.Posts) == 0 && rest > 0.05 {
			add("by other supports", rest)
			posts = rest
		}
		add("together", f.Sectors.Neck+f.Sectors.Tail+f.Sectors.Bass+f.Sectors.Treble+posts)
	}
	if b := r.Bridge; b != nil {
		add("the foot presses square to the top", b.Pressed())
		if b.TwoFeet() {
			add("of that the bass foot", b.Feet[0].Share*b.Pressed())
			add("the treble foot", b.Feet[1].Share*b.Pressed())
		}
	}
	return out
}

// gravity takes newtons to the weight of kilograms, m/s²: the standard one, as where a case is read.
const gravity = 9.80665
