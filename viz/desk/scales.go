package desk

import (
	"math"
	"strings"

	"archload/viz/scene"
	"archload/viz/stage"
)

// growTime is how long that takes, s.
const growTime = 0.6

// scales are those of this frame.
func (d *Desk) scales() stage.Scales {
	if d.shown == nil {
		return stage.Scales{Enlarge: 1}
	}
	u := (d.now - d.grow.since) / growTime
	if d.grow.of != d.shown || u >= 1 {
		return d.shown.Scales
	}
	u = math.Max(0, u)
	d.again = true
	return d.grow.from.Toward(d.shown.Scales, u*u*(3-2*u))
}

// scenes are the scenes of this frame: those that are shown, or on the way from
// one scale to another.
func (d *Desk) scenes() []*scene.Scene {
	if d.swings() {
		return d.swing.At(d.shown, d.now).Scenes
	}
	by := d.scales()
	if by.Enlarge == d.shown.Enlarge && (by.Arrow == d.shown.Arrow || !d.shown.Want.Forces) {
		d.grow.drawn = nil
		return d.shown.Scenes
	}
	if w := d.grow.drawn; w == nil || w.Enlarge != by.Enlarge || w.Arrow != by.Arrow {
		d.grow.drawn = d.shown.Drawn(by)
	}
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
	words, colours := s.Rescaled(was)
	if colours && len(d.last) > 0 {
		d.was, d.fade = d.last, d.now // one colour goes over into the other
	}
	if len(words) > 0 {
		d.grow = growth{from: was.Scales, since: d.now, of: s}
		d.say("Another scale: " + strings.Join(words, "; "))
	}
}
