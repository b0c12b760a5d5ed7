package desk

import (
	"archload/cases/lesson"

	"archload/viz/scene"
)

// walk is a lesson on its way.
type walk struct {
	*lesson.Lesson
	at int // the step
}

func (l *walk) step() *lesson.Step { return &l.Steps[l.at] }

// toolbox is what can be changed of a design, worked out once for each state
// of its keys.
type toolbox struct {
	of    Design
	tools []tool
	usual map[string]float64 // the sliders' values in the design's file
}

// play is the string load running from nothing to full.
type play struct {
	on    bool
	since float64 // s, when it stood at from
	from  float64 // fraction of string load
	to    float64
}

// hiddenWord is a word of one of the views.
type hiddenWord struct {
	view int
	text string
}

// sight is what is known of the words that one camera sees.
type sight struct {
	camera scene.Camera
	hidden map[hiddenWord]bool
}
