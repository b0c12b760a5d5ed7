package aging

import (
	"context"
	"maps"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/season"
)

// Outlook says which numbers of time shall stand among the answers of a design.
type Outlook struct {
	Seasons     bool // those of its seasons, or, if it has none, of season.Usual
	Years       bool // those of ten and fifty years
	SecondOrder bool // on the moved shape
}

// Asked says whether any are wanted.
func (l Outlook) Asked() bool { return l.Seasons || l.Years }

// Words name what is wanted.
func (l Outlook) Words() string {
	switch {
	case l.Seasons && l.Years:
		return "seasons and years"
	case l.Seasons:
		return "seasons"
	case l.Years:
		return "years"
	}
	return ""
}

// AddTo puts them among the answers of a prepared top, under the keys of their quantities (package quantity). Errors
// are those of Seasons and Years.
func (l Outlook) AddTo(ctx context.Context, r *answer.Report, t *design.Top, o design.Options) error {
	out := map[string]float64{}
	c := *t.Built.Case
	if l.Seasons {
		if c.Season == nil {
			c.Season = season.Usual()
		}
		s, err := seasons(ctx, t, &c, Wish{SecondOrder: l.SecondOrder}, o)
		if err != nil {
			return err
		}
		maps.Copy(out, seasonNumbers(s))
	}
	if l.Years {
		w := Wish{Ages: []Age{{"10y", 10}, {"50y", 50}}, SecondOrder: l.SecondOrder}
		life, err := live(ctx, t, &c, w, o)
		if err != nil {
			return err
		}
		maps.Copy(out, life.report(w).numbers())
	}
	if l.Asked() {
		r.Outlook = out
	}
	return nil
}

// numbersOf collects numbers that can be had.
type numbersOf map[string]float64

func (n numbersOf) add(key string, v answer.Num) {
	if v.Known() {
		n[key] = float64(v)
	}
}

// seasonNumbers are those of the driest and the dampest season, as far as they are drier and damper than the made state,
// and the worst ones of all seasons.
func seasonNumbers(r *SeasonsReport) map[string]float64 {
	n := numbersOf{}
	var dry, damp *SeasonReport
	gap, across, glue, used := answer.None(), answer.None(), answer.None(), answer.None()
	most := func(to *answer.Num, v answer.Num) {
		if v.Known() && !(v <= *to) {
			*to = v
		}
	}
	for i := range r.Seasons {
		s := &r.Seasons[i]
		mean := func(s *SeasonReport) float64 { return s.Change.Outer + s.Change.Inner }
		if mean(s) < 0 && (dry == nil || mean(s) < mean(dry)) {
			dry = s
		}
		if mean(s) > 0 && (damp == nil || mean(s) > mean(damp)) {
			damp = s
		}
		if s.Bridge != nil {
			most(&gap, answer.Num(s.Bridge.GapLeft))
		}
		most(&across, 100*s.Across.Used)
		most(&used, 100*s.Strength.Used)
		most(&glue, 100*s.MostGlue())
	}
	n.season("dry", dry)
	n.season("damp", damp)
	n.add("season_gap", gap)
	n.add("season_across", across)
	n.add("season_glue", glue)
	n.add("season_used", used)
	return n
}

// season adds those of one season.
func (n numbersOf) season(name string, s *SeasonReport) {
	if s == nil {
		return
	}
	n.add(name+"_arch", answer.Num(s.ArchRise))
	if b := s.Bridge; b != nil {
		n.add(name+"_action", answer.Num(b.ActionChange))
		if !b.TwoFeet() {
			n.add(name+"_middle", answer.Num(100*b.Share.Middle))
		}
	}
}

// numbers are those of ten and fifty years.
func (r *YearsReport) numbers() map[string]float64 {
	n := numbersOf{}
	for i, a := range r.Years {
		age := [2]string{"_ten_years", "_fifty_years"}[i]
		n.add("sink"+age, a.Sink.Mid)
		n.add("sink"+age+"_least", a.Sink.Low)
		n.add("sink"+age+"_most", a.Sink.High)
		n.add("action"+age, a.Action.Mid)
		n.add("gap"+age, a.GapLeft.Mid)
		n.add("used"+age, 100*a.Strength.Used.Mid)
	}
	return n
}
