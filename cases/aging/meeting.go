package aging

import (
	"archload/cases/answer"
	"archload/materials"
)

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
