package viz

import (
	"archload/cases/aging"
	"archload/cases/answer"
	"archload/viz/canvas"
	"archload/viz/figure"
)

// SeasonPictures are the seasons of a design: how its arch moves across, and its numbers season by season.
func SeasonPictures(r *aging.SeasonsReport) []Page {
	footer := "archload seasons; from the made state; slow drying relaxes part of the stress"
	var pages []Page
	if len(r.Seasons) > 0 && len(r.Seasons[0].Cross) > 1 {
		pages = append(pages, Page{
			Name:  "seasons-arch",
			Words: "How far the outer surface rises across the arch, season by season, from the made state.",
			draw: func(bare bool) (*canvas.Picture, error) {
				in := figure.ChartInput{Across: "across the arch, mm from the centre line",
					Caption: canvas.Caption{Bare: bare, Title: r.Title, Subtitle: "rise of the outer surface across the arch, from the made state", Footer: footer}}
				panel := figure.ChartPanel{Name: "rise", Unit: "mm"}
				for _, s := range r.Seasons {
					in.Names, in.X = append(in.Names, s.Name), nil
					var line []float64
					for _, c := range s.Cross {
						in.X, line = append(in.X, c.X), append(line, c.Rise)
					}
					panel.Lines = append(panel.Lines, line)
				}
				in.Panels = []figure.ChartPanel{panel}
				return figure.Chart(in)
			},
		})
	}
	if len(r.Seasons) > 0 && r.Seasons[0].Bridge != nil {
		pages = append(pages, actionPage(r, footer))
	}
	return append(pages, Page{
		Name:  "seasons",
		Words: "Arch, action, foot and strength by season, from the made state.",
		draw: func(bare bool) (*canvas.Picture, error) {
			in := figure.ChartInput{Across: "season", Names: []string{r.Title},
				Caption: canvas.Caption{Bare: bare, Title: r.Title, Subtitle: "season by season, from the made state", Footer: footer}}
			for i, s := range r.Seasons {
				in.X, in.Words = append(in.X, float64(i)), append(in.Words, s.Name)
			}
			add := func(name, unit string, read func(s *aging.SeasonReport) float64) {
				line := make([]float64, len(r.Seasons))
				for i := range line {
					line[i] = read(&r.Seasons[i])
				}
				in.Panels = append(in.Panels, figure.ChartPanel{Name: name, Unit: unit, Lines: [][]float64{line}})
			}
			add("arch rises over the rim", "mm", func(s *aging.SeasonReport) float64 { return s.ArchRise })
			if len(r.Seasons) > 0 && r.Seasons[0].Bridge != nil {
				add("strings lower at the octave", "mm", func(s *aging.SeasonReport) float64 { return s.Bridge.ActionChange })
				add("middle of the foot carries", "%", func(s *aging.SeasonReport) float64 { return 100 * s.Bridge.Share.Middle })
				add("greatest gap under the foot", "mm", func(s *aging.SeasonReport) float64 { return s.Bridge.GapLeft })
			}
			add("pull across the grain, of its strength", "%", func(s *aging.SeasonReport) float64 { return 100 * float64(s.Across.Used) })
			add("strength used", "%", func(s *aging.SeasonReport) float64 { return 100 * float64(s.Strength.Used) })
			return figure.Chart(in)
		},
	})
}

// actionPage is the action over the year, from the made state through its seasons in their order.
func actionPage(r *aging.SeasonsReport, footer string) Page {
	return Page{
		Name:  "seasons-action",
		Words: "How much lower the strings come at the octave over the year, from the made state.",
		draw: func(bare bool) (*canvas.Picture, error) {
			in := figure.ChartInput{Across: "season", Joined: true, Names: []string{r.Title}, X: []float64{0}, Words: []string{"made"},
				Caption: canvas.Caption{Bare: bare, Title: r.Title, Subtitle: "strings at the octave over the year", Footer: footer}}
			line := []float64{0}
			for i, s := range r.Seasons {
				in.X, in.Words, line = append(in.X, float64(i+1)), append(in.Words, s.Name), append(line, s.Bridge.ActionChange)
			}
			in.Panels = []figure.ChartPanel{{Name: "strings lower at the octave", Unit: "mm", Lines: [][]float64{line}}}
			return figure.Chart(in)
		},
	}
}

// YearsPicture is a design over the years, each number with its range.
func YearsPicture(r *aging.YearsReport) Page {
	return Page{
		Name:  "years",
		Words: "Sink, action, foot and strength over the years, with the range that creep leaves.",
		draw: func(bare bool) (*canvas.Picture, error) {
			in := figure.ChartInput{Across: "age", Joined: true, Names: []string{"as the cards creep", "least", "most"},
				Caption: canvas.Caption{Bare: bare, Title: r.Title, Subtitle: "over the years under its strings and loads", Footer: "archload years; an indication, not a forecast"}}
			ages := append([]aging.AgeReport{r.Strung}, r.Years...)
			for i, a := range ages {
				in.X, in.Words = append(in.X, float64(i)), append(in.Words, a.At)
			}
			add := func(name, unit string, times float64, read func(a *aging.AgeReport) aging.Range) {
				lines := [3][]float64{}
				for i := range ages {
					v := read(&ages[i])
					for k, n := range [3]answer.Num{v.Mid, v.Low, v.High} {
						lines[k] = append(lines[k], times*float64(n))
					}
				}
				in.Panels = append(in.Panels, figure.ChartPanel{Name: name, Unit: unit, Lines: lines[:]})
			}
			add("sinks", "mm", 1, func(a *aging.AgeReport) aging.Range { return a.Sink })
			if r.Strung.Bridge != nil {
				add("strings lower at the octave", "mm", 1, func(a *aging.AgeReport) aging.Range { return a.Action })
				add("middle of the foot carries", "%", 100, func(a *aging.AgeReport) aging.Range { return a.Middle })
				add("greatest gap under the foot", "mm", 1, func(a *aging.AgeReport) aging.Range { return a.GapLeft })
			}
			add("strength used, of what such a load leaves", "%", 100, func(a *aging.AgeReport) aging.Range { return a.Strength.Used })
			return figure.Chart(in)
		},
	}
}
