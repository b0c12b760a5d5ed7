package desk

import (
	"fmt"
	"math"
	"strings"

	"archload/viz/scale"
	"archload/viz/scene"
	"archload/viz/stage"
)

// growTime is how long that takes, s.
const growTime = 0.6

// enlarged is how many times as large movements are drawn in this frame.
func (d *Desk) enlarged() float64 {
	if d.shown == nil {
		return 1
	}
	g := &d.grow
	u := (d.now - g.since) / growTime
	if g.of != d.shown || g.from == 0 || u >= 1 {
		return d.shown.Enlarge
	}
	u = u * u * (3 - 2*u)
	return g.from * math.Pow(g.to/g.from, math.Max(0, u))
}

// scenes are the scenes of this frame: those that are shown, or on the way from
// one enlargement to another.
func (d *Desk) scenes() []*scene.Scene {
	if d.swings() {
		return d.swing.At(d.shown, d.now).Scenes
	}
	e := d.enlarged()
	if e == d.shown.Enlarge {
		d.grow.drawn = nil
		return d.shown.Scenes
	}
	d.again = true
	d.grow.drawn = d.shown.Drawn(e)
	return d.grow.drawn.Scenes
}

// swings tells whether a tone is seen in motion.
func (d *Desk) swings() bool { return d.moving && d.shown != nil && d.shown.Want.Field == scene.Tone }

// rescaled notes that scales have changed since what was shown before, and
// begins to show it.
func (d *Desk) rescaled(was *stage.Shown) {
	s := d.shown
	if was == nil || len(was.Designs) != len(s.Designs) || was.Want.Designs[0].Name != s.Want.Designs[0].Name {
		return
	}
	var words []string
	if was.Enlarge != s.Enlarge {
		d.grow = growth{from: was.Enlarge, to: s.Enlarge, since: d.now, of: s}
		words = append(words, fmt.Sprintf("movement is now drawn %g times as large, before %g", s.Enlarge, was.Enlarge))
	}
	if a, b := was.Scenes[0].Scale, s.Scenes[0].Scale; a != nil && b != nil && was.Want.Field == s.Want.Field && was.Want.Arrange == s.Want.Arrange &&
		was.Want.Inside == s.Want.Inside && was.Want.Behind == s.Want.Behind && was.Want.Field != scene.Tone && (a.Hi != b.Hi || a.Lo != b.Lo) {
		words = append(words, fmt.Sprintf("the colours now reach to %s %s, before %s", scale.Reading(b.Hi), s.Scenes[0].Unit, scale.Reading(a.Hi)))
	}
	if len(words) > 0 {
		d.say("Another scale: " + strings.Join(words, "; "))
	}
}
