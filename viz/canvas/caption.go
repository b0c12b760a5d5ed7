package canvas

import (
	"strings"
	"unicode"
)

// Caption is the text around a picture. Every part may be empty.
type Caption struct {
	Title    string   // the case's title
	Subtitle string   // what is shown, the load
	Facts    []string // what the numbers rest on: wood, making, hold, rim
	Warnings []string // what is too much or not sure, over the footer
	Footer   string   // last line of the page: program, version, checks

	Bare bool // in a report, which says all but the subtitle itself
}

// shown is what of the caption stands on the page.
func (c Caption) shown() Caption {
	if c.Bare {
		return Caption{Subtitle: c.Subtitle, Bare: true}
	}
	return c
}

// Line is a line of text with its place.
type Line struct {
	At   Point
	Text string
	In   Style
}

// CaptionLayout is the caption with its place on a page.
type CaptionLayout struct {
	lines []Line
	rules [][2]Point
	Free  Rect // what is left for the picture
	bare  bool // without a border
}

// LayCaption sets the caption on a page: the title above, the footer below.
func (p *Page) LayCaption(c Caption) CaptionLayout {
	c = c.shown()
	l := CaptionLayout{bare: c.Bare}
	w := p.W - 2*Margin
	y := p.h - Margin
	down := func(lines []string, s Style, lead float64) {
		for _, t := range lines {
			y -= lead
			l.lines = append(l.lines, Line{Point{Margin, y}, t, s})
		}
	}
	title := p.titleStyle(c.Title, w)
	down(p.AtMost(p.Wrap(Clean(c.Title), title, w), 3, title, w), title, 1.22*title.Size)
	sub := Style{9.5, Regular, Ink()}
	if c.Subtitle != "" {
		y -= 2
		down(p.AtMost(p.Wrap(Clean(c.Subtitle), sub, w), 3, sub, w), sub, 12)
	}
	if len(c.Facts) > 0 {
		y -= 2
		down(p.AtMost(p.wrapItems(c.Facts, Small(), w), 4, Small(), w), Small(), 10.5)
	}
	y -= 6
	l.rules = append(l.rules, [2]Point{{Margin, y}, {p.W - Margin, y}})
	l.Free = Rect{Margin, Margin, p.W - Margin, y - 8}
	warned := Small()
	warned.Color = Fault()
	var warnings []string
	for _, t := range c.Warnings {
		warnings = append(warnings, p.Wrap("Warning: "+Clean(t), warned, w)...)
	}
	foot := p.AtMost(p.Wrap(Clean(c.Footer), Small(), w), 3, Small(), w)
	n := len(warnings) + len(foot)
	if n == 0 {
		return l
	}
	y = Margin + 10.5*float64(n) - 1
	l.rules = append(l.rules, [2]Point{{Margin, y + 3}, {p.W - Margin, y + 3}})
	l.Free.Y0 = y + 11
	down(warnings, warned, 10.5)
	down(foot, Small(), 10.5)
	return l
}

// CaptionHeight returns how much of a page the caption and the margins take,
// points.
func CaptionHeight(c Caption) float64 {
	const h = 1000
	l := NewMeasure(PageWidth, h).LayCaption(c)
	return h - l.Free.Height()
}

// titleStyle is large for a short title, smaller for one of many lines.
func (p *Page) titleStyle(title string, w float64) Style {
	s := Style{14, Bold, Ink()}
	if len(p.Wrap(title, s, w)) > 2 {
		s.Size = 11
	}
	return s
}

// AtMost keeps n lines at most; the last kept line ends in an ellipsis if more
// followed.
func (p *Page) AtMost(lines []string, n int, s Style, w float64) []string {
	if len(lines) <= n {
		return lines
	}
	lines = lines[:n:n]
	lines[n-1] = p.Shorten(lines[n-1]+" "+strings.Repeat("…", 40), s, w)
	lines[n-1] = strings.TrimRight(lines[n-1], "… ") + " …"
	return lines
}

// wrapItems joins items with a middle dot and breaks lines between them.
func (p *Page) wrapItems(items []string, s Style, w float64) []string {
	var lines []string
	line := ""
	for _, it := range items {
		it = Clean(it)
		if joined := line + "  ·  " + it; line != "" && p.TextWidth(joined, s) <= w {
			line = joined
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		parts := p.Wrap(it, s, w)
		if len(parts) == 0 {
			line = ""
			continue
		}
		lines = append(lines, parts[:len(parts)-1]...)
		line = parts[len(parts)-1]
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// DrawCaption draws the sheet's border and the caption.
func (p *Page) DrawCaption(l CaptionLayout) {
	const edge = 9.0 // points from the paper's edge to the border line
	if !l.bare {
		p.Stroke([][]Point{Loop(Rect{edge, edge, p.W - edge, p.h - edge})}, true, Thin())
	}
	for _, r := range l.rules {
		p.Line(r[0], r[1], Thin())
	}
	p.DrawLines(l.lines)
}

// DrawLines sets lines of text where they were laid.
func (p *Page) DrawLines(lines []Line) {
	for _, t := range lines {
		p.Text(t.At, t.Text, t.In, 0)
	}
}

// Clean makes text from a file fit to be set: one line, no control
// characters, valid UTF-8.
func Clean(s string) string {
	s = strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || unicode.IsSpace(r) {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(s, "?"))
	return strings.Join(strings.Fields(s), " ")
}
