package viz

import (
	"io"

	"archload/cases/answer"
	"archload/cases/design"

	"archload/viz/canvas"
	"archload/viz/figure"
	"archload/viz/scale"
)

// Page is a picture that is drawn when it is asked for, with the name that its
// file takes.
type Page struct {
	Name  string
	Part  Part   // of a report, where it belongs
	Words string // what it shows and how it is read, one paragraph

	draw func(bare bool) (*canvas.Picture, error)
}

// Write draws the page in one of Formats.
func (p Page) Write(w io.Writer, format string) error {
	pic, err := p.draw(false)
	if err != nil {
		return err
	}
	return pic.Write(w, format, 0)
}

// Bare draws the page for a place that says itself what the page is about:
// without title, facts and footer.
func (p Page) Bare() (*canvas.Picture, error) { return p.draw(true) }

// Part is the part of a report to which a page belongs.
type Part int

// The parts of a report that hold pages, in their order.
const (
	OfDesign Part = iota
	OfForces
	OfSink
	OfFoot
	OfPaths
	OfStrength
)

// view is one kind of page of a solved case.
type view struct {
	name  string
	part  Part
	words string
	has   func(u subject) bool // whether the case has it; nil: every case
	draw  func(u subject) (*canvas.Picture, error)
}

// views lists the pages of a solved case in the order of a report. A new page is
// a row here and what draws it.
func views() []view {
	return []view{
		{"design-arch", OfDesign, "The design in plan, from outside, neck up, bass left: height of the outer surface above the rim's gluing surface, mm. Dashed: braces underneath.",
			nil, subject.drawHeight},
		{"design-measures", OfDesign, "The design in plan, from outside: thickness, mm. Dashed: braces underneath.",
			subject.graduated, subject.drawThickness},
		{"sink", OfSink, "The sink in plan, from outside, neck up, bass left, mm: from line to line it is always the step that the legend names.",
			nil, subject.drawSink},
		{"back-sink", OfSink, "How the back moves, in plan, seen through the top, neck up, bass left, mm: out of the body positive, as the legend says.",
			subject.bodied, subject.drawBackSink},
		{"cross-arch", OfSink, "The cut across the top at the bridge, seen from the tail: as carved, and under load with the movement exaggerated as the picture says.",
			nil, func(u subject) (*canvas.Picture, error) { return figure.CrossArch(u.crossArch()) }},
		{"foot-force", OfFoot, "What each third of the foot carries, N, while the strings are brought up to pitch, % of full load.",
			subject.bridged, func(u subject) (*canvas.Picture, error) { return figure.FootForce(u.footForce()) }},
		{"foot-pressure", OfFoot, "Where the foot presses on the top, MPa: single spots above (white: no pressure), averaged over 8 mm of foot below.",
			subject.bridged, func(u subject) (*canvas.Picture, error) { return figure.FootPressure(u.footPressure()) }},
		{"load-flow", OfPaths, "Where the load goes: every line carries the same force, in N as the key says, from the foot to the edge. The colour is the force that goes through each mm of plate and braces, N/mm.",
			subject.flows, subject.drawLoadFlow},
		{"rim-reaction", OfPaths, "What the edge holds up from place to place, N on each mm.",
			subject.flows, subject.drawRimReaction},
		{"sides-onward", OfPaths, "Where the load goes on from the edge of the top: what each side takes from the top and gives to the back, N on each mm of its length, and what it carries along toward the tail block, N, negative toward the neck block. The sides are unrolled.",
			subject.goesOn, subject.drawSides},
		{"strength-used", OfStrength, "How much of the wood's short-term strength is used, %. The triangle marks the worst place, taken on its worse face; the map shows means of the places around, and may stay below it.",
			subject.strong, subject.drawStrengthUsed},
		{"back-strength-used", OfStrength, "How much of the back's short-term strength is used, %, in plan, seen through the top. The triangle marks the worst place.",
			subject.backStrong, subject.drawBackStrength},
		{"stress-along", OfStrength, "Stress along the grain at the outer face, MPa; pull is positive.",
			nil, func(u subject) (*canvas.Picture, error) { return u.drawStress(false, false) }},
		{"stress-along-inner", OfStrength, "Stress along the grain at the inner face, MPa; pull is positive.",
			nil, func(u subject) (*canvas.Picture, error) { return u.drawStress(true, false) }},
		{"stress-across", OfStrength, "Stress across the grain at the outer face, MPa; pull is positive. Wood is weakest this way.",
			nil, func(u subject) (*canvas.Picture, error) { return u.drawStress(false, true) }},
		{"stress-across-inner", OfStrength, "Stress across the grain at the inner face, MPa; pull is positive.",
			nil, func(u subject) (*canvas.Picture, error) { return u.drawStress(true, true) }},
	}
}

// Pictures lists the pages of a solved case.
func Pictures(s *design.Solution, r *answer.Report) []Page {
	return listPages(s, r, func(p Part) bool { return p != OfDesign })
}

// DesignPictures lists the pages of the design itself, before any load.
func DesignPictures(s *design.Solution, r *answer.Report) []Page {
	return listPages(s, r, func(p Part) bool { return p == OfDesign })
}

func listPages(s *design.Solution, r *answer.Report, wanted func(Part) bool) []Page {
	var out []Page
	for _, v := range views() {
		if wanted(v.part) && (v.has == nil || v.has(subject{s: s, r: r})) {
			out = append(out, Page{v.name, v.part, v.words, func(bare bool) (*canvas.Picture, error) { return v.draw(subject{s, r, bare}) }})
		}
	}
	return out
}

func (u subject) bridged() bool { return u.r.Bridge != nil }

func (u subject) flows() bool { return u.r.Flow != nil && len(u.r.Flow.Lines) > 0 }

func (u subject) strong() bool { return u.r.Strength.Used.Known() }

// sinkField is the sink over the plate.
func sinkField(s *design.Solution) figure.Field {
	return figure.Field{Name: "sink of the outer surface", Unit: "mm", Nodal: answer.SinkField(s), Kind: scale.Sinking}
}

func (u subject) drawSink() (*canvas.Picture, error) {
	return u.drawLoaded(drawingOf(u.s, u.r), sinkField(u.s))
}
