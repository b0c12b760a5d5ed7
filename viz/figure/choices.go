package figure

import (
	"fmt"
	"math"

	"archload/viz/canvas"
)

// choiceKey is a list of words for which there is no room at their places: they
// are numbered there, and said in full below.
type choiceKey struct {
	head  string
	lines []string
}

// keyLine is the height of a line of such a list, points.
const keyLine = 11.0

// keyed returns the words to set where each has a room, points: themselves, or
// their numbers with the list that says them.
func keyed(head string, words []string, room float64) ([]string, choiceKey) {
	g := canvas.NewMeasure(canvas.PageWidth, 0)
	fit := true
	for _, w := range words {
		fit = fit && g.TextWidth(canvas.Clean(w), canvas.Label()) <= room
	}
	if fit || len(words) < 2 {
		return words, choiceKey{}
	}
	numbers := make([]string, len(words))
	k := choiceKey{head: canvas.Clean(head)}
	for i, w := range words {
		numbers[i] = fmt.Sprint(i + 1)
		for j, t := range g.Wrap(canvas.Clean(w), canvas.Label(), canvas.PageWidth-2*canvas.Margin-24) {
			if j == 0 {
				t = numbers[i] + "   " + t
			} else {
				t = "     " + t
			}
			k.lines = append(k.lines, t)
		}
	}
	return numbers, k
}

// height is the room that the list needs, points; 0 without one.
func (k choiceKey) height() float64 {
	if len(k.lines) == 0 {
		return 0
	}
	return 8 + keyLine*float64(1+len(k.lines))
}

// draw sets the list with its top at y and returns its foot, points.
func (k choiceKey) draw(g *canvas.Page, x, y float64) float64 {
	if len(k.lines) == 0 {
		return y
	}
	y -= 8 + keyLine
	g.Text(canvas.At(x, y), k.head+":", nameStyle(), 0)
	for _, t := range k.lines {
		y -= keyLine
		g.Text(canvas.At(x, y), t, canvas.Label(), 0)
	}
	return y
}

// half is the width of one of two panels that stand beside each other with a
// gap, points.
func half(gap float64) float64 { return (canvas.PageWidth - 2*canvas.Margin - gap) / 2 }

// panelWidth is the width of a panel with its numbers, points.
func (in ChartInput) panelWidth() float64 {
	if len(in.Panels) == 1 {
		return canvas.PageWidth - 2*canvas.Margin
	}
	return half(chartGap)
}

// longest length of a value at the side of a map, points.
const sideRoom = 52.0

// keyed numbers what does not fit along both sides of the maps.
func (in ChoiceMapInput) keyed() (ChoiceMapInput, [2]choiceKey) {
	var keys [2]choiceKey
	each := math.Max(24, (half(mapGap)-sideRoom-17)/float64(len(in.X))-2)
	in.X, keys[0] = keyed(in.Across, in.X, each)
	in.Y, keys[1] = keyed(in.Up, in.Y, sideRoom)
	return in, keys
}

// keyed numbers what does not fit under the panels.
func (in ChartInput) keyed() (ChartInput, choiceKey) {
	var key choiceKey
	if len(in.Words) > 0 {
		in.Words, key = keyed(in.Across, in.Words, (in.panelWidth()-chartSide-4)/float64(len(in.X))-3)
	}
	return in, key
}
