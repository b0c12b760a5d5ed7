package cases

import (
	"fmt"
	"strings"

	"archload/cases/gauge"
	"archload/cases/tree"
)

// fillGauges makes the strings of a list of notes and gives them the gauges of a list as
// bought; gauges take the place of what each string weighed before.
func (c *Case) fillGauges(r *tree.FaultLog) {
	s := c.Strings
	if s == nil || !r.Clean("strings") {
		return
	}
	notes := strings.FieldsFunc(s.Notes, func(r rune) bool { return strings.ContainsRune(" ,;\t-", r) })
	if len(notes) > 0 && len(s.Each) == 0 {
		s.Each = make([]String, len(notes))
	}
	if len(notes) > 0 {
		s.fillNotes(r, notes)
	}
	if s.Gauges == "" {
		return
	}
	list, err := gauge.ParseList(s.Gauges)
	switch {
	case err != nil:
		r.AddKey("strings.gauges", "%w", err)
	case len(list) != len(s.Each):
		r.AddKey("strings.gauges", "want a gauge for each of the %d strings, found %d; strings without a list of their own want notes", len(s.Each), len(list))
	default:
		for i, g := range list {
			e := &s.Each[i]
			e.Tension, e.Plain, e.Wound, e.UnitWeight, e.Core = 0, g.Diameter, 0, 0, 0
			if g.Wound {
				e.Plain, e.Wound = 0, g.Diameter
			}
		}
	}
}

// fillNotes gives the strings the notes of a list.
func (s *Strings) fillNotes(r *tree.FaultLog, notes []string) {
	if len(notes) != len(s.Each) {
		r.AddKey("strings.notes", "want a note for each of the %d strings, found %d", len(s.Each), len(notes))
		return
	}
	for i, name := range notes {
		f, err := ParseNote(name)
		if err != nil {
			r.AddKey("strings.notes", "%w", err)
			return
		}
		s.Each[i].Note = Note{Name: name, Freq: f}
	}
}

// checkCourses wants whole courses, and room between them.
func (s *Strings) checkCourses(r *tree.FaultLog) {
	n := len(s.Each)
	switch {
	case s.Course == 1 || !r.Clean("strings.course", "strings.course_gap", "strings.spread"):
	case n%s.Course != 0:
		r.AddKey("strings.course", "want strings by the pair, found %d of them", n)
	case float64(s.Spread) < float64(s.CourseGap)*float64(n-1):
		r.AddKey("strings.course_gap", "want less than the %.3g mm between strings spread evenly, found %g", float64(s.Spread)/float64(n-1), float64(s.CourseGap))
	}
}

// spreadX is where string i stands unless it has a place of its own, mm from the bridge's
// middle: evenly, or courses evenly with their strings beside each other; the first string at
// half the spread, the last at minus that.
func (s *Strings) spreadX(i int) float64 {
	courses := len(s.Each) / max(s.Course, 1)
	inner := float64(s.CourseGap)
	if s.Course < 2 {
		inner = 0
	}
	half := (float64(s.Spread) - inner) / 2 // of the courses' middles
	middle := 0.0
	if courses > 1 {
		middle = half * (1 - 2*float64(i/max(s.Course, 1))/float64(courses-1))
	}
	if s.Course < 2 {
		return middle
	}
	return middle + inner*(0.5-float64(i%s.Course))
}

// UnitWeightOf returns the mass per length of string i, kg/m, and whether a wound string's
// build was guessed; 0 if only its tension is known.
func (s *Strings) UnitWeightOf(i int) (mu tree.LineMass, guessed bool) {
	e := &s.Each[i]
	switch {
	case e.Plain > 0:
		return gauge.PlainWeight(e.Plain, gauge.SteelDensity), false
	case e.Wound > 0:
		return gauge.WoundWeight(e.Wound, s.Wrap), true
	}
	return e.UnitWeight, false
}

// WoundNote says how sure the weights of wound strings are that were given by their
// gauge; "" if there are none.
func (s *Strings) WoundNote() string {
	for i := range s.Each {
		if _, guessed := s.UnitWeightOf(i); guessed {
			return fmt.Sprintf("wound strings given by their gauge weigh within %.0f %% of what is taken (round %s on a steel core; common practice, no published source), and pull so",
				100*gauge.Spread, s.Wrap)
		}
	}
	return ""
}
