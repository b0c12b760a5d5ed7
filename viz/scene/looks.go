package scene

import (
	"image/color"

	"archload/viz/scale"
)

// Looks are the numbers that Paint draws by, for other painters that shall
// draw the same.
type Looks struct {
	Darkest, Brightest  float64     // factor of light on a face turned away, and toward it
	TurnedOff, TurnedOn float64     // cosines between normal and light where these two begin
	ContourHalf         float64     // half width of a contour line, points
	ZeroHalf            float64     // and of the one at zero, points
	ContourRoom         float64     // distance of contour lines, points, below which they fade
	ContourInk          float64     // opacity
	DashCell            float64     // points of a dash of the lines below zero, which stay apart without colours
	HatchCell           float64     // points across, and down, from line to line of the hatch on one side of zero, the other means of it
	HatchHalf           float64     // half width of its lines, points
	HatchInk            float64     // opacity
	Halo                float64     // width of a line's light edge, points
	HaloPaint           color.NRGBA // its colour and opacity
	BeadRadius          float64     // points
	BeadSpacing         float64     // mm
	BeadEdge            float64     // its light edge stands out by so much of radius less half the line's width
	BeadEdgeInk         float64     // opacity
	Nearer              float64     // mm that lines are drawn nearer to the eye
	LateStep, LeastWide float64     // of LateSums, mm: from entry to entry; stretches are taken no shorter
	Late, Warm          [3]float64  // what late wood takes of red, green and blue; what shade takes less of them
	Gloss               [3]float64  // of wood: how bright, its power, how much less a slope along the grain counts
}

// TheLooks returns the numbers.
func TheLooks() Looks {
	return Looks{
		Darkest: darkest, Brightest: brightest, TurnedOff: turnedOff, TurnedOn: turnedOn,
		ContourHalf: contourHalf, ZeroHalf: zeroHalf, ContourRoom: contourRoom, ContourInk: contourInk, DashCell: dashCell,
		HatchCell: hatchCell, HatchHalf: hatchHalf, HatchInk: hatchInk,
		Halo:       haloWidth,
		HaloPaint:  unpacked(haloPaint, haloInk),
		BeadRadius: beadRadius, BeadSpacing: beadSpacing, BeadEdge: beadEdge, BeadEdgeInk: beadEdgeInk,
		Nearer:   lineNearer,
		LateStep: lateStep, LeastWide: leastWide,
		Late: [3]float64{lateRed, lateGreen, lateBlue}, Warm: [3]float64{warmRed, warmGreen, warmBlue},
		Gloss: [3]float64{glossBright, glossPower, glossStretch},
	}
}

// Tones returns the colours of a scale from its lower to its upper end, and
// the ink of a contour line on each, in n equal steps (at least 2).
func Tones(s *scale.Scale, n int) (tone, ink []color.NRGBA) {
	f := newFieldPaint(s, PaintOptions{}, 1)
	for i := range n {
		k := (i*tones + (n-1)/2) / (n - 1)
		tone, ink = append(tone, unpacked(f.tone[k], 1)), append(ink, unpacked(f.ink[k], 1))
	}
	return tone, ink
}

func unpacked(v uint32, opacity float64) color.NRGBA {
	return color.NRGBA{uint8(v >> 16), uint8(v >> 8), uint8(v), uint8(255*opacity + 0.5)}
}
