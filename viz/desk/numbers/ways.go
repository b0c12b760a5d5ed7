package numbers

import (
	"fmt"
	"math"

	"archload/cases/answer"
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
			from := c.Next()
			s.keyValue(c, r.name, r.value)
			if r.why != "" {
				s.Panel.Hint(fmt.Sprintf("way %d %s", i, r.name), panel.Rect{X: c.Rest().X, Y: from, W: c.Width(), H: c.Next() - from - 2}, r.why)
			}
		}
	}
}

// way is a row of that list.
type way struct{ name, value, why string }

// ways are the forces straight down and up at full load, so that each sum stands under its parts.
func ways(a *stage.Answered) []way {
	r := a.Report
	var out []way
	because := func(name string, n float64, why string) {
		out = append(out, way{name, fmt.Sprintf("%s N (%s kg)", scale.Fixed(n, 1), scale.Fixed(n/gravity, 2)), why})
	}
	add := func(name string, n float64) { because(name, n, "") }
	if r.Strings != nil {
		add("strings press down with", r.Strings.Downforce)
		if now, another := r.PressesNow(); another {
			add("once the body has moved, with", now)
		}
	}
	foot(a, because)
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
	return out
}

// foot adds what the foot gives to the top: square to the surface, the part of that which points straight
// down, and what its drag along the slopes adds to that.
func foot(a *stage.Answered, because func(name string, n float64, why string)) {
	b, s := a.Report.Bridge, a.AtPitch()
	if b == nil || s == nil {
		return
	}
	square, along := answer.FootDown(s)
	because("foot: square to the top", b.Pressed(), "The sum of what the foot presses with, each place of it square to the surface under it. On slopes these forces point apart, so that their sum is not what presses down.")
	because("of that straight down", square, "What of it points straight down.")
	if math.Abs(along) >= 0.05 {
		because("its drag along the slopes bears", along, "Wood that does not slide is also dragged along the slope under it. Of that drag, this points straight down.")
	}
	because("the foot together", square+along, "What presses straight down on the top, as the strings do on the bridge.")
	if b.TwoFeet() {
		because("of what is square, the bass foot", b.Feet[0].Share*b.Pressed(), "")
		because("the treble foot", b.Feet[1].Share*b.Pressed(), "")
	}
}

// gravity takes newtons to the weight of kilograms, m/s²: the standard one, as where a case is read.
const gravity = 9.80665
