package report

import (
	"fmt"
	"io"
	"slices"

	"archload/cases/aging"
	"archload/cases/say"
	"archload/viz"
)

// WriteSeasons writes a page of a design's seasons to print: how the arch moves, the action over the year, the fit of
// the foot by season, and the cautions.
func WriteSeasons(w io.Writer, r *aging.SeasonsReport, version string) error {
	p := onePage{Title: titled(r.Title, "seasons") + r.OrderAside(), Failed: r.Failed(), Cautions: r.Cautions, Time: true,
		Note: "from the drawing. Movements count from the state in which it was made."}
	moves := reportTable{Caption: "How it moves", Head: []string{"", "air %", "wood %", "arch rises mm", "strings lower mm", "bridge sinks mm"}}
	foot := reportTable{Caption: "The foot as it stands", Head: []string{"", "bass end %", "middle %", "treble end %", "greatest gap mm"}}
	asks := reportTable{Caption: "What it asks of the wood, of the strength there, if the change came at once", Head: []string{"", "across the grain %", "braces' glue %", "most of all %"}}
	for i := range r.Seasons {
		s := &r.Seasons[i]
		p.Lead = append(p.Lead, say.Season(s))
		row := []string{s.Name, say.Number(s.Humidity, "%.0f"), say.Number(s.Moisture, "%.1f"), fmt.Sprintf("%+.2f", s.ArchRise), "-", "-"}
		if b := s.Bridge; b != nil {
			row[4], row[5] = fmt.Sprintf("%+.2f", b.ActionChange), fmt.Sprintf("%+.2f", b.Sink)
			middle := fmt.Sprintf("%.0f", 100*b.Share.Middle)
			if b.TwoFeet() {
				middle = "-"
			}
			foot.Rows = append(foot.Rows, []string{s.Name, fmt.Sprintf("%.0f", 100*b.Share.BassEnd), middle,
				fmt.Sprintf("%.0f", 100*b.Share.TrebleEnd), fmt.Sprintf("%.3f", b.GapLeft)})
		}
		moves.Rows = append(moves.Rows, row)
		asks.Rows = append(asks.Rows, []string{s.Name, say.Number(100*s.Across.Used, "%.0f"), say.Number(100*s.MostGlue(), "%.0f"), say.Number(100*s.Strength.Used, "%.0f")})
	}
	p.Tables = []reportTable{moves, asks}
	if len(foot.Rows) > 0 {
		p.Tables = []reportTable{moves, foot, asks}
	}
	return p.write(w, version, viz.SeasonPictures(r), "seasons-arch", "seasons-action")
}

// WriteYears writes a page of a design's years to print: sink, action, foot and strength by age with their ranges, what
// season meets which age worst, and the cautions.
func WriteYears(w io.Writer, r *aging.YearsReport, version string) error {
	p := onePage{Title: titled(r.Title, "years under the strings") + r.OrderAside(), Failed: r.Failed(), Cautions: r.Cautions, Time: true,
		Note: fmt.Sprintf("from the drawing. The ranges are those of creep, %.2g to %.2g times the wood cards'.", r.Range[0], r.Range[1])}
	if r.Foot != nil {
		p.Lead = append(p.Lead, "The middle of the foot "+say.FootYears(r.Foot)+".")
	}
	p.Lead = append(p.Lead, say.WorstMeetings(r)...)
	ages := reportTable{Caption: "By age, each with its range", Head: []string{"", "sinks mm", "strings lower mm", "middle of the foot %", "greatest gap mm", "strength used %"}}
	for _, a := range append([]aging.AgeReport{r.Strung}, r.Years...) {
		ages.Rows = append(ages.Rows, []string{a.At, say.RangeText(a.Sink, 1, "%.2f"), say.RangeText(a.Action, 1, "%.2f"),
			say.RangeText(a.Middle, 100, "%.0f"), say.RangeText(a.GapLeft, 1, "%.3f"), say.RangeText(a.Strength.Used, 100, "%.0f")})
	}
	p.Tables = []reportTable{ages}
	return p.write(w, version, []viz.Page{viz.YearsPicture(r)}, "years")
}

// titled is a title with what the page is about.
func titled(title, about string) string {
	if title == "" {
		return about
	}
	return title + ": " + about
}

// write writes a page with some of the pictures, those of the names that there are, at most two.
func (p *onePage) write(w io.Writer, version string, pages []viz.Page, names ...string) error {
	for _, v := range pages {
		if !slices.Contains(names, v.Name) {
			continue
		}
		f, err := embed(v)
		if err != nil {
			return fmt.Errorf("report: %w", err)
		}
		p.Figures = append(p.Figures, f)
	}
	return writePages(w, version, []onePage{*p})
}
