package opening

import (
	"io/fs"
	"path"
	"path/filepath"
	"strings"

	"archload/cases/lesson"
	"archload/viz/panel"
)

// Options are where files are.
type Options struct {
	FS           fs.FS
	Folder, Home string // the folder that names of FS are relative to, and the user's own, from the root; "": not known
	Wake         func() // asks for another frame, from any goroutine
}

// Sheets are the sheets of the window on which something is opened.
type Sheets struct {
	o      Options
	read   reader
	beside bool // what is opened stands beside the design that is shown

	text    string // the path that is typed
	fault   string // why it cannot be opened
	started bool   // the line has had the keyboard
}

// New makes the sheets.
func New(o Options) *Sheets {
	s := &Sheets{o: o, read: reader{fsys: o.FS, wake: o.Wake}}
	s.text = o.Folder
	if s.text != "" && !strings.HasSuffix(s.text, "/") {
		s.text += "/"
	}
	return s
}

// SetWake sets the function that asks for another frame.
func (s *Sheets) SetWake(wake func()) { s.read.wake = wake }

// Show begins a sheet anew: folders are read again. Beside: what is opened shall stand beside the design that is shown.
func (s *Sheets) Show(beside bool) {
	forget(&s.read, &s.read.folder)
	forget(&s.read, &s.read.file)
	s.fault, s.started, s.beside = "", false, beside
	s.text, _ = s.parts() // of what was opened last the folder stays
}

// parts are the folder of what is typed, and the beginning of a name in it.
func (s *Sheets) parts() (dir, name string) {
	k := strings.LastIndexByte(filepath.ToSlash(s.text), '/') + 1
	return s.text[:k], s.text[k:]
}

// On is what a sheet is drawn on, and what is shown.
type On struct {
	Panel *panel.Panel
	Last  []string // designs shown last
	Now   string   // the first design that is shown; "": none is
}

// Wish says what the hand has asked for on a sheet.
type Wish uint8

// The wishes.
const (
	Nothing   Wish = iota
	ToClose        // the sheet
	ToLessons      // the list of lessons
	ToFiles        // the sheet of files
	ToDesign       // Choice.Name, beside the first design if so
	ToLesson       // Choice.Name, or Choice.Lesson if it has been read
)

// Choice is what the hand has chosen.
type Choice struct {
	Wish   Wish
	Name   string
	Beside bool
	Lesson *lesson.Lesson
}

// lid lays a sheet in the middle of the page.
func lid(p *panel.Panel, w, h float64) panel.Rect {
	page := p.Page()
	w, h = min(w, page.W-24), min(h, page.H-24)
	r := panel.Rect{X: (page.W - w) / 2, Y: (page.H - h) / 2, W: w, H: h}
	p.Lid(r)
	return r
}

// closeRoom is the height at the foot of a sheet for its button, points.
const closeRoom = 30.0

// closes draws the button that closes a sheet, and tells whether it was pressed.
func closes(p *panel.Panel, r panel.Rect) bool {
	return p.Button(panel.Control{ID: "close", At: panel.Rect{X: r.Right() - 118, Y: r.Bottom() - 42, W: 100, H: panel.ButtonHeight}, Label: "Close", Key: "Esc"})
}

// Stem is a case's name without folder and ending.
func Stem(name string) string { return strings.TrimSuffix(path.Base(name), ".toml") }

// IsFile tells whether a design is a file's, and no bundled one.
func IsFile(name string) bool { return strings.ContainsAny(name, `/\`) || path.Ext(name) == ".toml" }

// drawBeside asks how what is opened shall stand, if a design is shown.
func (s *Sheets) drawBeside(on On, c *panel.Column) {
	if on.Now == "" {
		s.beside = false
		return
	}
	k := 0
	if s.beside {
		k = 1
	}
	if on.Panel.Choice(panel.Choice{Control: panel.Control{ID: "beside", At: c.Row(panel.ChoiceHeight)}, Words: []string{"alone", "beside " + Stem(on.Now)},
		Tips: []string{"in place of what is shown", "both under one scale, as design B beside A: two designs to compare"}}, &k) {
		s.beside = k == 1
	}
}

// design is the choice of a design.
func (s *Sheets) design(name string) Choice {
	return Choice{Wish: ToDesign, Name: name, Beside: s.beside}
}

// Lessons draws the list of the lessons that come with the program.
func (s *Sheets) Lessons(on On) (chosen Choice) {
	p := on.Panel
	l := once(&s.read, &s.read.lessons, lesson.Bundled)
	var infos []lesson.Info
	if l != nil {
		infos = l.infos
	}
	r := lid(p, 620, 620)
	c := panel.NewColumn(r, 18, 6)
	p.Title(c.Row(28), "Lessons")
	switch {
	case l == nil:
		p.Note(c.Row(20), "Reading…")
	case l.err != nil:
		p.Paragraph(c.Row(40), l.err.Error())
	}
	list := c.Rest()
	list.H -= closeRoom
	c = panel.NewColumn(p.Scroll("lessons list", list), 0, 6)
	if p.Focus() == "" && len(infos) > 0 {
		p.SetFocus("lesson " + infos[0].Name) // Enter begins the first
	}
	for _, l := range infos {
		words := p.Atlas().ParagraphHeight(panel.Small, l.About, c.Width()-98)
		row := c.Row(max(panel.ButtonHeight, 22+words+4))
		if p.Button(panel.Control{ID: "lesson " + l.Name, At: panel.Rect{X: row.X, Y: row.Y + 2, W: 84, H: panel.ButtonHeight}, Label: "Begin"}) {
			chosen = Choice{Wish: ToLesson, Name: l.Name}
		}
		at := panel.Rect{X: row.X + 98, Y: row.Y, W: row.W - 98, H: 20}
		p.Heading(at, l.Title)
		p.Note(panel.Rect{X: at.X, Y: row.Y + 22, W: at.W, H: words}, l.About)
	}
	p.EndScroll(c.Used(0))
	if closes(p, r) {
		chosen = Choice{Wish: ToClose}
	}
	return chosen
}
