package aging

import (
	"archload/cases/answer"
	"archload/materials"
)

// Meeting is an age with a season.
type Meeting struct {
	At       string     `json:"at"`
	Years    float64    `json:"years"`
	Season   string     `json:"season"`
	ArchRise float64    `json:"arch_rise"`     // mm over the rim, from the day that it was strung
	Action   answer.Num `json:"action_change"` // mm at the octave, from the day that it was strung, positive when strings come lower; null without a bridge
	GapLeft  answer.Num `json:"gap_left"`      // mm, greatest under the foot
	Middle   answer.Num `json:"share_middle"`  // of the foot's force on its middle third
	Used     answer.Num `json:"used"`          // of the strength that a load of this age leaves
	Across   answer.Num `json:"across_used"`   // of the strength across the grain that it leaves
}

// Worst is the age and the season of a worst number.
type Worst struct {
	At     string     `json:"at"`
	Season string     `json:"season"`
	Value  answer.Num `json:"value"` // in the number's unit
}

// WorstMeetings are the ages with the seasons that ask most of a design; null where there is none.
type WorstMeetings struct {
	Lowest  *Worst `json:"action_lowest"`  // strings come lowest, mm lower
	Highest *Worst `json:"action_highest"` // strings come highest, mm lower, mostly below 0
	Gap     *Worst `json:"gap_left"`
	Used    *Worst `json:"used"`
	Across  *Worst `json:"across_used"`
}

// meetSeasons takes the design to each season on the day that it is strung and at each age that was asked for.
func (l *life) meetSeasons(r *YearsReport, w Wish) error {
	strung := *l.walk.path[0].stands
	steps, _ := stepsOf(l.c.Season)
	if n := len(l.c.Season.To); n > 0 {
		steps = steps[:n] // without the way back of a cycle
	}
	o := l.o
	o.Swells = true
	for _, a := range append([]Age{{"strung", 0}}, w.Ages...) {
		at := l.walk.stageAt(a)
		for _, s := range steps {
			o.Say(a.Name + ", " + s.report.Name)
			ch := s.change
			if ch.cards != nil || a.Years > 0 {
				ch.cards = l.crept(s.change.cards, a.Years)
			}
			now, err := onward(l.ctx, *at.stands, l.c, ch, o)
			if err != nil {
				return err
			}
			s.report.fill(strung, now, ch)
			r.Together = append(r.Together, meetingOf(a, &s.report))
		}
	}
	r.Worst = worst(r.Together)
	return nil
}

// meetingOf reads an age with a season off a season's numbers.
func meetingOf(a Age, s *SeasonReport) Meeting {
	left := answer.Num(materials.LastingShare(a.Years))
	m := Meeting{At: a.Name, Years: a.Years, Season: s.Name, ArchRise: s.ArchRise, Action: answer.None(), GapLeft: answer.None(), Middle: answer.None(),
		Used: s.Strength.Used / left, Across: s.Across.Used / left}
	if b := s.Bridge; b != nil {
		m.Action, m.GapLeft, m.Middle = answer.Num(b.ActionChange), answer.Num(b.GapLeft), answer.Num(b.Share.Middle)
	}
	return m
}

// worst finds the meetings that ask most.
func worst(all []Meeting) *WorstMeetings {
	w := &WorstMeetings{}
	for i := range all {
		m := &all[i]
		note := func(to **Worst, v answer.Num, sign answer.Num) {
			if v.Known() && (*to == nil || sign*v > sign*(*to).Value) {
				*to = &Worst{At: m.At, Season: m.Season, Value: v}
			}
		}
		note(&w.Lowest, m.Action, 1)
		note(&w.Highest, m.Action, -1)
		note(&w.Gap, m.GapLeft, 1)
		note(&w.Used, m.Used, 1)
		note(&w.Across, m.Across, 1)
	}
	return w
}
