package viz

import (
	"fmt"
	"io"
	"math"

	"archload/cases"
	"archload/mesh"
)

// Page is a picture of a solved case with the name that its file takes.
type Page struct {
	Name    string
	picture func() (*Picture, error)
}

// Write draws the page in one of Formats.
func (p Page) Write(w io.Writer, format string) error {
	pic, err := p.picture()
	if err != nil {
		return err
	}
	return pic.Write(w, format, 0)
}

// Pictures lists the pages of a solved case.
func Pictures(s *cases.Solution, r *cases.Report) []Page { return subject{s, r, false}.pictures() }

// subject is what pages are about.
type subject struct {
	s    *cases.Solution
	r    *cases.Report
	bare bool // pages of a report, which says itself what they are about
}

func (u subject) caption() Caption {
	c := captionOf(u.s, u.r)
	c.bare = u.bare
	return c
}

func (u subject) pictures() []Page {
	s, r := u.s, u.r
	d := drawingOf(s, r)
	sink := Field{Name: "sink of the outer surface", Unit: "mm", Nodal: s.SinkField(), Signed: true}
	pages := []Page{u.planPage("sink", d, sink)}
	pages = append(pages, u.stressPages(d, 1)...)
	pages = append(pages, Page{
		Name: "cross-arch", picture: func() (*Picture, error) { return CrossArch(u.crossArch()) },
	})
	pages = append(pages, u.strengthPages(d)...)
	pages = append(pages, u.flowPages(d)...)
	if r.Bridge != nil {
		pages = append(pages, Page{Name: "foot-force", picture: func() (*Picture, error) { return FootForce(u.footForce()) }},
			Page{Name: "foot-pressure", picture: func() (*Picture, error) { return FootPressure(u.footPressure()) }})
	}
	return pages
}

func (u subject) planPage(name string, d Drawing, f Field) Page {
	return Page{Name: name, picture: func() (*Picture, error) {
		c := u.caption()
		c.Subtitle = f.Name + ", " + loadWords(u.r)
		return PlanView(PlanInput{Caption: c, Plan: u.s.Top.Built.Mesh.Plan, Field: &f, Drawing: d})
	}}
}

func loadWords(r *cases.Report) string {
	if r.Strings == nil {
		return fmt.Sprintf("under %.0f N on the plate", math.Abs(r.Reactions.Applied[2]))
	}
	return fmt.Sprintf("strings pressing with %.0f N", r.Strings.Downforce)
}

func captionOf(s *cases.Solution, r *cases.Report) Caption {
	c := s.Top.Built.Case
	facts := []string{c.Plate.Wood + ", " + c.Plate.Made, edgeWords(c.Rim.Support)}
	if c.Bridge != nil && r.Bridge != nil {
		facts = append(facts, "bridge of "+c.Bridge.Wood+", "+c.Bridge.Hold)
	}
	foot := fmt.Sprintf("archload; %d nodes", r.Mesh.Nodes)
	if r.Error.Discretisation.Known() {
		foot += fmt.Sprintf(", mesh error about %.1f %%", 100*float64(r.Error.Discretisation))
	}
	if bad := r.Error.Failed(); len(bad) > 0 {
		foot += "; BUILT-IN CHECKS FAILED"
	} else {
		foot += "; built-in checks passed"
	}
	return Caption{Title: r.Title, Facts: facts, Footer: foot}
}

// edgeWords says in a few words how the edge is held.
func edgeWords(support string) string {
	switch support {
	case "hinged":
		return "edge held, free to turn"
	case "clamped":
		return "edge held, not free to turn"
	case "free":
		return "edge free"
	}
	return "edge on elastic sides"
}

func drawingOf(s *cases.Solution, r *cases.Report) Drawing {
	d := Drawing{Grain: float64(s.Top.Built.Case.Plate.GrainAngle)}
	d.Outline, d.Holes = s.Outlines()
	for i := range s.Top.Built.Case.Braces {
		if b := &s.Top.Built.Case.Braces[i]; b.Fitted {
			d.Braces = append(d.Braces, Strip{Name: b.Name, Line: b.Line, Half: []float64{b.Width.Max() / 2}})
		}
	}
	for _, g := range r.Gauges {
		m := Mark{Name: g.Name, At: mesh.Point{g.X, g.Y}, Value: g.Sink, Unit: "mm"}
		if g.Measured.Known() {
			v := float64(g.Measured)
			m.Measured = &v
		}
		d.Gauges = append(d.Gauges, m)
	}
	if b := s.Top.Built.Case.Bridge; b != nil && r.Bridge != nil {
		for i := range b.Feet {
			lo, hi := b.FootRect(i)
			d.Feet = append(d.Feet, []mesh.Point{lo, {hi[0], lo[1]}, hi, {lo[0], hi[1]}})
		}
	}
	return d
}

func sectionOf(s *cases.Solution, name string) Section {
	y := 0.0
	if s.Top.Built.Case.Bridge != nil {
		y = s.Top.Built.Case.Bridge.At[1]
	}
	c := s.CrossCut(y)
	return Section{Name: name, X: c.X, Outer: c.Outer, Inner: c.Inner, Sink: c.Sink, Across: c.Across}
}

func (u subject) crossArch() CrossArchInput {
	s, r := u.s, u.r
	in := CrossArchInput{Caption: u.caption(), Section: sectionOf(s, r.Title)}
	in.Caption.Subtitle = "cross-arch at the bridge, seen from the tail, " + loadWords(r)
	for _, c := range s.FootColumns() {
		if c.Foot == len(in.Feet) {
			in.Feet = append(in.Feet, FootSection{Name: footName(c.Foot, len(s.Top.Built.Case.Bridge.Feet))})
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
			in.Shares = append(in.Shares, Share{Name: p.name, From: lo + float64(k)*t, To: lo + float64(k+1)*t,
				Force: p.share * footForce(r)})
		}
	}
	return in
}

func footForce(r *cases.Report) float64 {
	sum := 0.0
	for _, c := range r.Bridge.Contact {
		sum += c.Force
	}
	return sum
}

func footName(i, n int) string {
	if n == 1 {
		return "foot"
	}
	return [2]string{"bass foot", "treble foot"}[min(i, 1)]
}

func (u subject) footForce() FootForceInput {
	r := u.r
	in := FootForceInput{Caption: u.caption()}
	in.Caption.Subtitle = "what each third of the foot carries while the strings are brought up to pitch"
	for _, l := range r.Bridge.ByLoad {
		in.Load = append(in.Load, l.Load)
		in.BassEnd = append(in.BassEnd, l.Thirds[0])
		in.Middle = append(in.Middle, l.Thirds[1])
		in.TrebEnd = append(in.TrebEnd, l.Thirds[2])
	}
	for _, e := range []struct {
		at    cases.Num
		words string
	}{{r.Bridge.MiddleTouchesAt, "the middle first touches"}, {r.Bridge.MiddleClosesAt, "the middle has closed"}} {
		if e.at.Known() && e.at > 0 {
			in.Events = append(in.Events, Event{At: float64(e.at), Words: e.words})
		}
	}
	return in
}

// ComparePictures lists the pages that set solved cases side by side.
func ComparePictures(sols []*cases.Solution, c *cases.Comparison) []Page {
	return comparePages(sols, c, false)
}

// comparePages are those of ComparePictures; bare ones for a report.
func comparePages(sols []*cases.Solution, c *cases.Comparison, bare bool) []Page {
	bars := BarsInput{Caption: Caption{bare: bare, Title: "The designs side by side"}, Designs: c.Titles}
	if ranged(c) {
		bars.Caption.Subtitle = "first what the design changes most; stroke over the end of a bar: what another plank makes of it (one standard deviation)"
	}
	for _, r := range c.Rows {
		row := BarRow{Name: r.Name, Unit: r.Unit}
		for i, v := range r.Values {
			if r.IsNought(i) {
				v = 0
			}
			row.Values = append(row.Values, float64(v))
		}
		for _, v := range r.Ranges {
			row.Wood = append(row.Wood, float64(v.Wood))
		}
		if len(bars.Rows) < mostBars/len(sols) {
			bars.Rows = append(bars.Rows, row)
		}
	}
	pages := crossArchPages(sols, c, bare)
	if len(bars.Rows) > 0 { // more designs than bars fit on a page leave none
		pages = append(pages, Page{Name: "bars", picture: func() (*Picture, error) { return CompareBars(bars) }})
	}
	if len(sols) == 2 {
		pages = append(pages, overlayPage(sols, c, bare))
	}
	return append(pages, oneScalePages(sols, c, bare)...)
}

// overlayPage lays the cross-arches of two designs over each other.
func overlayPage(sols []*cases.Solution, c *cases.Comparison, bare bool) Page {
	in := CompareInput{Caption: Caption{bare: bare, Title: "Cross-arches at the bridge, one over the other", Subtitle: "A and B on one scale"}}
	for i, s := range sols {
		in.Sections = append(in.Sections, sectionOf(s, c.Titles[i]))
	}
	return Page{Name: "cross-arches-overlaid", picture: func() (*Picture, error) { return OverlaySections(in) }}
}

// crossArchPages lays the designs' cross-arches on as many pages as they need,
// shared out evenly so that none stands alone.
func crossArchPages(sols []*cases.Solution, c *cases.Comparison, bare bool) []Page {
	var out []Page
	pages := (len(sols) + mostSections - 1) / mostSections
	for k := range pages {
		first, end := k*len(sols)/pages, (k+1)*len(sols)/pages
		in := CompareInput{Caption: Caption{bare: bare, Title: "Cross-arches at the bridge", Subtitle: "carved shape, and loaded shape with the sink exaggerated"}}
		for i := first; i < end; i++ {
			in.Sections = append(in.Sections, sectionOf(sols[i], c.Titles[i]))
		}
		name := "cross-arches"
		if pages > 1 {
			name = fmt.Sprintf("cross-arches-%d", k+1)
		}
		out = append(out, Page{Name: name, picture: func() (*Picture, error) { return CompareSections(in) }})
	}
	return out
}
