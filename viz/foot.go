package viz

import (
	"archload/cases/answer"

	"archload/viz/figure"
)

func (u subject) crossArch() figure.CrossArchInput {
	s, r := u.s, u.r
	in := figure.CrossArchInput{Caption: u.caption(), Section: sectionOf(s, r.Title)}
	in.Caption.Subtitle = "cross-arch at the bridge, seen from the tail, " + loadWords(r)
	for _, c := range answer.FootColumns(s) {
		if c.Foot == len(in.Feet) {
			in.Feet = append(in.Feet, figure.FootSection{Name: footName(c.Foot, len(s.Top.Built.Case.Bridge.Feet))})
		}
		f := &in.Feet[c.Foot]
		f.X, f.Relief = append(f.X, c.X), append(f.Relief, c.Relief)
		f.Gap, f.Force = append(f.Gap, c.Gap), append(f.Force, c.Force)
	}
	if b := r.Bridge; b != nil && len(in.Feet) == 1 {
		x := in.Feet[0].X
		lo, hi := x[0], x[len(x)-1]
		for k, p := range []struct {
			name  string
			share float64
		}{{"bass end", b.Share.BassEnd}, {"middle", b.Share.Middle}, {"treble end", b.Share.TrebleEnd}} {
			t := (hi - lo) / 3
			in.Shares = append(in.Shares, figure.Share{Name: p.name, From: lo + float64(k)*t, To: lo + float64(k+1)*t,
				Force: p.share * r.Bridge.Pressed()})
		}
	}
	return in
}

func (u subject) footForce() figure.FootForceInput {
	b := u.r.Bridge
	in := figure.FootForceInput{Caption: u.caption()}
	in.Caption.Subtitle = "what each third of the foot carries while the strings are brought up to pitch"
	names, touches, closed := []string{"bass end", "middle", "treble end"}, "the middle first touches", "the middle has closed"
	firstAt, allAt := b.MiddleTouchesAt, b.MiddleClosesAt
	force := func(l answer.LoadReport) []float64 { return l.Thirds[:] }
	if b.TwoFeet() {
		in.Caption.Subtitle = "what each heel of the two feet carries while the strings are brought up to pitch"
		names = []string{"bass outer", "bass inner", "treble inner", "treble outer"}
		touches, closed = "an inner heel first touches", "both inner heels have closed"
		firstAt, allAt = answer.HeelsTouchAt(b.Feet), answer.HeelsCloseAt(b.Feet)
		force = func(l answer.LoadReport) []float64 { return l.Heels }
	}
	for k, name := range names {
		line := figure.FootLine{Name: name}
		for _, l := range b.ByLoad {
			line.Force = append(line.Force, force(l)[k])
		}
		in.Lines = append(in.Lines, line)
	}
	for _, l := range b.ByLoad {
		in.Load = append(in.Load, l.Load)
	}
	for _, e := range []struct {
		at    answer.Num
		words string
	}{{firstAt, touches}, {allAt, closed}} {
		if e.at.Known() && e.at > 0 {
			in.Events = append(in.Events, figure.Event{At: float64(e.at), Words: e.words})
		}
	}
	return in
}

func (u subject) footPressure() figure.FootPressureInput {
	s, r := u.s, u.r
	in := figure.FootPressureInput{Caption: u.caption(), Limit: answer.CrushingLimit(s.Top.Built.Case)}
	for _, c := range answer.FootCells(s) {
		in.Cells = append(in.Cells, figure.FootCell(c))
	}
	for _, m := range answer.FootMeans(s) {
		in.Means = append(in.Means, figure.FootMean{Foot: m.Foot, X: m.X, Pressure: m.Pressure})
	}
	in.Caption.Subtitle = "pressure under the foot, " + loadWords(r)
	for i := range s.Top.Built.Case.Bridge.Feet {
		in.Names = append(in.Names, footName(i, len(s.Top.Built.Case.Bridge.Feet)))
	}
	return in
}
