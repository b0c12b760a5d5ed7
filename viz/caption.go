package viz

import (
	"strings"
	"unicode"
)

// Caption is the text around a picture. Every part may be empty.
type Caption struct {
	Title    string   // the case's title
	Subtitle string   // what is shown, the load
	Facts    []string // what the numbers rest on: wood, making, hold, rim
	Footer   string   // last line of the page: program, version, checks

	bare bool // in a report, which says all but the subtitle itself
}

// shown is what of the caption stands on the page.
func (c Caption) shown() Caption {
	if c.bare {
		return Caption{Subtitle: c.Subtitle, bare: true}
	}
	return c
}

// setLine is a line of text with its place.
type setLine struct {
	at   pt
	text string
	s    style
}

// captionLayout is the caption with its place on a page.
type captionLayout struct {
	lines []setLine
	rules [][2]pt
	free  rect // what is left for the picture
	bare  bool // without a border
}

// layCaption sets the caption on a page: the title above, the footer below.
func (p *page) layCaption(c Caption) captionLayout {
	c = c.shown()
	l := captionLayout{bare: c.bare}
	w := p.w - 2*margin
	y := p.h - margin
	down := func(lines []string, s style, lead float64) {
		for _, t := range lines {
			y -= lead
			l.lines = append(l.lines, setLine{pt{margin, y}, t, s})
		}
	}
	title := p.titleStyle(c.Title, w)
	down(p.most(p.wrap(clean(c.Title), title, w), 3, title, w), title, 1.22*title.size)
	sub := style{9.5, regular, inkColor()}
	if c.Subtitle != "" {
		y -= 2
		down(p.most(p.wrap(clean(c.Subtitle), sub, w), 3, sub, w), sub, 12)
	}
	if len(c.Facts) > 0 {
		y -= 2
		down(p.most(p.wrapItems(c.Facts, small(), w), 4, small(), w), small(), 10.5)
	}
	y -= 6
	l.rules = append(l.rules, [2]pt{{margin, y}, {p.w - margin, y}})
	l.free = rect{margin, margin, p.w - margin, y - 8}
	foot := p.most(p.wrap(clean(c.Footer), small(), w), 3, small(), w)
	if len(foot) == 0 {
		return l
	}
	y = margin + 10.5*float64(len(foot)) - 1
	l.rules = append(l.rules, [2]pt{{margin, y + 3}, {p.w - margin, y + 3}})
	l.free.Y0 = y + 11
	down(foot, small(), 10.5)
	return l
}

// captionHeight returns how much of a page the caption and the margins take,
// points.
func captionHeight(c Caption) float64 {
	const h = 1000
	l := newMeasure(pageWidth, h).layCaption(c)
	return h - l.free.height()
}

// titleStyle is large for a short title, smaller for one of many lines.
func (p *page) titleStyle(title string, w float64) style {
	s := style{14, bold, inkColor()}
	if len(p.wrap(title, s, w)) > 2 {
		s.size = 11
	}
	return s
}

// most keeps n lines at most; the last kept line ends in an ellipsis if more
// followed.
func (p *page) most(lines []string, n int, s style, w float64) []string {
	if len(lines) <= n {
		return lines
	}
	lines = lines[:n:n]
	lines[n-1] = p.shorten(lines[n-1]+" "+strings.Repeat("…", 40), s, w)
	lines[n-1] = strings.TrimRight(lines[n-1], "… ") + " …"
	return lines
}

// wrapItems joins items with a middle dot and breaks lines between them.
func (p *page) wrapItems(items []string, s style, w float64) []string {
	var lines []string
	line := ""
	for _, it := range items {
		it = clean(it)
		if joined := line + "  ·  " + it; line != "" && p.width(joined, s) <= w {
			line = joined
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		parts := p.wrap(it, s, w)
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

// drawCaption draws the sheet's border and the caption.
func (p *page) drawCaption(l captionLayout) {
	const edge = 9.0 // points from the paper's edge to the border line
	if !l.bare {
		p.stroke([][]pt{box(rect{edge, edge, p.w - edge, p.h - edge})}, true, thin())
	}
	for _, r := range l.rules {
		p.line(r[0], r[1], thin())
	}
	p.setLines(l.lines)
}

func (p *page) setLines(lines []setLine) {
	for _, t := range lines {
		p.text(t.at, t.text, t.s, 0)
	}
}

// clean makes text from a file fit to be set: one line, no control
// characters, valid UTF-8.
func clean(s string) string {
	s = strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || unicode.IsSpace(r) {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(s, "?"))
	return strings.Join(strings.Fields(s), " ")
}
