package section

import (
	"archload/viz/panel"
	"archload/viz/stage"
)

// Strip draws sections; it keeps how the last one was fitted, so that nothing jumps under
// the hand. The zero value is ready.
type Strip struct {
	frame stripFrame
	shown *stage.Shown
	in    Input
}

// Input is what one frame shows.
type Input struct {
	Shown  *stage.Shown // nil before the first answer
	Cut    stage.CutKind
	Edit   int              // the design whose foot is drawn
	Scales stage.Scales     // by which this frame is drawn
	Beside func(panel.Rect) // draws what stands beside the section; nil: the foot
}

// stripFrame places millimetres of a section on the page.
type stripFrame struct {
	x0, z0   float64 // points, of along = 0 and z = 0
	sx, sz   float64 // points to a millimetre along, and up
	at       panel.Rect
	floor    float64 // points: the lower edge of the room for the section
	lo, hi   float64 // mm along
	low, top float64 // mm in height
	measured bool    // heights are written beside it
}

func (f stripFrame) place(along, z float64) panel.Point {
	return panel.Point{X: f.x0 + along*f.sx, Y: f.z0 - z*f.sz}
}

// low is the height of a strip below which its words are short, points.
const low = 130.0
