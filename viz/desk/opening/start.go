package opening

import (
	"path"

	"archload/cases"
	"archload/viz/panel"
)

// mostBeside is how many case files of the folder stand on the start page.
const mostBeside = 24

// drawFolder lists the case files of the folder.
func (s *Sheets) drawFolder(on On, c *panel.Column) (chosen Choice) {
	l := s.read.list(s.of(""), "")
	if l == nil {
		return Choice{}
	}
	var names []string
	for _, r := range l.Rows {
		if r.Kind == Case && len(names) < mostBeside {
			names = append(names, r.Name)
		}
	}
	if len(names) == 0 {
		return Choice{}
	}
	on.Panel.Heading(c.Row(20), "Case files in this folder")
	n := max(1, int(c.Width()/170))
	var row []panel.Rect
	for i, name := range names {
		if i%n == 0 {
			row = c.Cells(panel.ButtonHeight, n)
		}
		if on.Panel.Button(panel.Control{ID: "file " + name, At: row[i%n], Label: Stem(name), Tip: name}) {
			chosen = s.design(name)
		}
	}
	c.Space(4)
	return chosen
}

// drawLast offers the designs shown last.
func (s *Sheets) drawLast(on On, c *panel.Column) (chosen Choice) {
	if len(on.Last) == 0 {
		return Choice{}
	}
	on.Panel.Heading(c.Row(20), "Your last designs")
	row := c.Cells(panel.ButtonHeight, max(2, min(4, int(c.Width()/120))))
	for i, name := range on.Last[:min(len(on.Last), len(row))] {
		if on.Panel.Button(panel.Control{ID: "recent " + name, At: row[i], Label: Stem(name), Tip: path.Clean(name)}) {
			chosen = s.design(s.named(name))
		}
	}
	return chosen
}

// drawBundled lists the designs that come with the program.
func (s *Sheets) drawBundled(on On, in *panel.Column) (chosen Choice) {
	p, l := on.Panel, once(&s.read, &s.read.cases, cases.Bundled)
	p.Heading(in.Row(20), "Designs that come with the program")
	if l == nil {
		p.Note(in.Row(20), "Reading…")
		return Choice{}
	}
	if l.err != nil {
		p.Note(in.Row(20), l.err.Error())
	}
	for _, i := range l.infos {
		at, wide := 178.0, 166.0 // of the words beside the button
		if in.Width() < 460 {    // or under it
			at, wide = 0, in.Width()
		}
		title := p.Atlas().ParagraphHeight(panel.BodyBold, i.Title, in.Width()-at-8)
		words := p.Atlas().ParagraphHeight(panel.Small, i.Shows, in.Width()-at-8)
		under := 0.0
		if at == 0 {
			under = panel.ButtonHeight + 4
		}
		row := in.Row(max(panel.ButtonHeight, under+title+words+4))
		if p.Button(panel.Control{ID: "open " + i.Name, At: panel.Rect{X: row.X, Y: row.Y, W: wide, H: panel.ButtonHeight}, Label: i.Name}) {
			chosen = s.design(i.Name)
		}
		p.List().Paragraph(panel.Rect{X: row.X + at, Y: row.Y + under, W: row.W - at - 8, H: title}, panel.BodyBold, panel.Ink(), i.Title)
		p.Note(panel.Rect{X: row.X + at, Y: row.Y + under + title + 1, W: row.W - at - 8, H: words}, i.Shows)
	}
	return chosen
}

// Start draws the page to choose from: the lessons, a file, the designs shown last, those of the folder and the bundled
// ones.
func (s *Sheets) Start(on On) (chosen Choice) {
	p := on.Panel
	r := lid(p, 720, 620)
	c := panel.NewColumn(r, 18, 6)
	p.Title(c.Row(28), "What do you want to see?")
	s.drawBeside(on, c)
	lessons := "The lessons: how a carved top bears its strings, step by step"
	if c.Width() < 620 {
		lessons = "The lessons, step by step"
	}
	row := c.Row(panel.ButtonHeight)
	file := row
	file.W = min(170, row.W*0.4)
	row.W -= file.W + 6
	file.X = row.Right() + 6
	take := func(o Choice) {
		if o.Wish != Nothing {
			chosen = o
		}
	}
	if p.Button(panel.Control{ID: "start lessons", At: row, Label: lessons, Key: "L"}) {
		take(Choice{Wish: ToLessons})
	}
	if p.Button(panel.Control{ID: "start file", At: file, Label: "Open a file", Key: "O", Tip: "a case file or a lesson in any folder, by its path"}) {
		take(Choice{Wish: ToFiles})
	}
	take(s.drawLast(on, c))
	const own = "A design of your own: archload new NAME in a terminal makes one to begin with; then open its file."
	list := c.Rest()
	wide := list.W
	if on.Now != "" {
		wide -= 112 // beside the button that closes
	}
	foot := max(24, p.Atlas().ParagraphHeight(panel.Small, own, wide))
	list.H -= foot + 6
	in := panel.NewColumn(p.Scroll("start", list), 0, 6)
	take(s.drawFolder(on, in))
	take(s.drawBundled(on, in))
	p.EndScroll(in.Used(0))
	p.Note(panel.Rect{X: list.X, Y: list.Bottom() + 6, W: wide, H: foot}, own)
	if on.Now != "" && closes(p, r) {
		take(Choice{Wish: ToClose})
	}
	return chosen
}
