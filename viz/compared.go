package viz

import (
	"fmt"

	"archload/cases/design"
	"archload/cases/say"
	"archload/cases/study"

	"archload/viz/canvas"
	"archload/viz/figure"
)

// ComparePictures lists the pages that set solved cases side by side.
func ComparePictures(sols []*design.Solution, c *study.Comparison) []Page {
	pages := crossArchPages(sols, c)
	if bars := comparedBars(len(sols), c); len(bars.Rows) > 0 { // more designs than bars fit on a page leave none
		pages = append(pages, Page{
			Name:  "bars",
			Words: "The numbers side by side, each on its own scale with its unit; the stroke over the end of a bar is what another plank makes of it.",
			draw: func(bare bool) (*canvas.Picture, error) {
				bars.Caption.Bare = bare
				return figure.CompareBars(bars)
			},
		})
	}
	if len(sols) == 2 {
		pages = append(pages, overlayPage(sols, c))
	}
	return append(pages, oneScalePages(sols, c)...)
}

// comparedBars are the rows of a comparison as far as a page holds them.
func comparedBars(designs int, c *study.Comparison) figure.BarsInput {
	bars := figure.BarsInput{Caption: canvas.Caption{Title: "The designs side by side"}, Designs: c.Titles}
	if c.Wood != nil {
		bars.Caption.Subtitle = "first what the design changes most; stroke over the end of a bar: what another plank makes of it (one standard deviation)"
	}
	for _, r := range c.Rows[:min(len(c.Rows), figure.MostBars/designs)] {
		row := figure.BarRow{Name: r.Name, Unit: r.Unit}
		for i, v := range r.Values {
			if r.IsNought(i) {
				v = 0
			}
			row.Values = append(row.Values, float64(v))
		}
		for _, v := range r.Ranges {
			row.Wood = append(row.Wood, float64(v.Wood))
		}
		bars.Rows = append(bars.Rows, row)
	}
	return bars
}

// overlayPage lays the cross-arches of two designs over each other.
func overlayPage(sols []*design.Solution, c *study.Comparison) Page {
	in := figure.CompareInput{Caption: canvas.Caption{Title: "Cross-arches at the bridge, one over the other", Subtitle: "A and B on one scale"}}
	for i, s := range sols {
		in.Sections = append(in.Sections, sectionOf(s, say.Letter(i)+": "+c.Titles[i]))
	}
	return Page{
		Name:  "cross-arches-overlaid",
		Words: "The cuts across the tops at the bridge laid over each other, seen from the tail: A and B on one scale, mm.",
		draw: func(bare bool) (*canvas.Picture, error) {
			in.Caption.Bare = bare
			return figure.OverlaySections(in)
		},
	}
}

// crossArchPages lays the designs' cross-arches on as many pages as they need,
// shared out evenly so that none stands alone.
func crossArchPages(sols []*design.Solution, c *study.Comparison) []Page {
	var out []Page
	pages := (len(sols) + figure.MostSections - 1) / figure.MostSections
	for k := range pages {
		first, end := k*len(sols)/pages, (k+1)*len(sols)/pages
		in := figure.CompareInput{Caption: canvas.Caption{Title: "Cross-arches at the bridge", Subtitle: "carved shape, and loaded shape with the sink exaggerated"}}
		for i := first; i < end; i++ {
			in.Sections = append(in.Sections, sectionOf(sols[i], c.Titles[i]))
		}
		name := "cross-arches"
		if pages > 1 {
			name = fmt.Sprintf("cross-arches-%d", k+1)
		}
		out = append(out, Page{
			Name:  name,
			Words: "The cuts across the tops at the bridge, seen from the tail: as carved, and under load with the sink exaggerated, mm.",
			draw: func(bare bool) (*canvas.Picture, error) {
				in.Caption.Bare = bare
				return figure.CompareSections(in)
			},
		})
	}
	return out
}
