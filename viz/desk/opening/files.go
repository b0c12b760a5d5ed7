package opening

import (
	"path"
	"path/filepath"
	"strings"

	"archload/viz/panel"
)

// lineID names the line on which the path is typed.
const lineID = "path"

// of is the name for FS of a path as it is typed: a relative one is below the folder that the window stands in.
func (s *Sheets) of(typed string) string {
	p := filepath.ToSlash(typed)
	if rest, ok := strings.CutPrefix(p, "~/"); ok && s.o.Home != "" {
		p = s.o.Home + "/" + rest
	}
	if p == "" {
		p = "."
	}
	return s.named(p)
}

// named is a path as short as FS takes it: what lies below the folder that the window stands in is named from there, as
// in a terminal.
func (s *Sheets) named(p string) string {
	p = path.Clean(p)
	if s.o.Folder != "" {
		if p == s.o.Folder {
			return "."
		}
		if rest, ok := strings.CutPrefix(p, strings.TrimSuffix(s.o.Folder, "/")+"/"); ok {
			p = rest
		}
	}
	return p
}

// Whole is the path of a design's file from the root, if it is known; a bundled design keeps its name.
func (s *Sheets) Whole(name string) string {
	if s.o.Folder == "" || filepath.IsAbs(filepath.FromSlash(name)) || !IsFile(name) {
		return name
	}
	return path.Join(s.o.Folder, name)
}

// Files draws the line for a path with what its folder has, and tells what was opened.
func (s *Sheets) Files(on On) (chosen Choice) {
	p := on.Panel
	if found := s.read.found(); found != nil {
		chosen = s.follow(*found)
	}
	r := lid(p, 720, 620)
	c := panel.NewColumn(r, 18, 6)
	p.Title(c.Row(28), "Open a case file or a lesson")
	s.drawBeside(on, c)
	if !s.started || p.Focus() == "" {
		s.started = true
		p.SetFocus(lineID)
	}
	changed, key := p.Line(panel.Control{ID: lineID, At: c.Row(panel.ButtonHeight), Label: "path"}, &s.text)
	if changed {
		s.fault = ""
		forget(&s.read, &s.read.file)
	}
	dir, typed := s.parts()
	list := s.read.list(s.of(dir), typed)
	s.say(p, c, list)
	area := c.Rest()
	area.H -= closeRoom
	in := panel.NewColumn(p.Scroll("files", area), 3, 2)
	rows := s.drawRows(on, in, dir, list)
	p.EndScroll(in.Used(3))
	s.goOn(p, key, rows, list)
	if closes(p, r) {
		chosen = Choice{Wish: ToClose}
	}
	return chosen
}

// say says in two lines what is wrong, or what the hand can do.
func (s *Sheets) say(p *panel.Panel, c *panel.Column, list *Listing) {
	const lines = 2
	at := c.Row(lines * panel.Small.LineHeight())
	switch {
	case s.fault != "":
		p.List().Paragraph(at, panel.Small, panel.Fault(), s.fault)
	case s.read.looking():
		p.Note(at, "Reading…")
	case list == nil:
		p.Note(at, "Reading the folder…")
	case list.Err != nil:
		p.List().Paragraph(at, panel.Small, panel.Fault(), "This folder "+list.Err.Error()+".")
	case list.More:
		p.Note(at, "There is more here than these: type the beginning of the name.")
	default:
		p.Note(at, "Type a path, or press a row: folders, case files and lessons. The arrow keys go through the rows, Enter opens.")
	}
}

// drawRows draws the way up and what of the folder can be opened, and returns the controls in order.
func (s *Sheets) drawRows(on On, in *panel.Column, dir string, list *Listing) (ids []string) {
	const kindWide = 62.0 // points
	row := func(id, label, what, tip string) bool {
		at := in.Row(panel.RowHeight)
		ids = append(ids, id)
		on.Panel.List().TextIn(panel.Rect{X: at.Right() - kindWide, Y: at.Y, W: kindWide, H: at.H}, panel.Small, panel.Right, panel.SoftInk(), what)
		at.W -= kindWide + 6
		return on.Panel.Pick(panel.Control{ID: id, At: at, Label: label, Tip: tip}, "", false)
	}
	if up := s.above(dir); up != "" && row("up", "..", "folder", up) {
		s.to(on.Panel, up)
	}
	if list == nil {
		return ids
	}
	for _, r := range list.Rows {
		switch label := r.Name; {
		case r.Kind == Folder && row("row "+label, label+"/", "folder", ""):
			s.to(on.Panel, dir+label+"/")
		case r.Kind == Folder:
		case row("row "+label, label, [...]string{Case: "case", Lesson: "lesson"}[r.Kind], ""):
			s.text = dir + label
			s.fault = ""
			s.read.find(s.file(s.text))
		}
	}
	return ids
}

// above is the folder above, as it is typed; "": there is none.
func (s *Sheets) above(dir string) string {
	whole := s.of(dir)
	if !filepath.IsAbs(filepath.FromSlash(whole)) {
		whole = path.Join(s.o.Folder, whole)
	}
	if whole == "." || strings.HasPrefix(whole, "..") { // the folder of the window is not known
		return path.Join("..", whole) + "/"
	}
	up := path.Dir(whole)
	if up == whole {
		return ""
	}
	return strings.TrimSuffix(up, "/") + "/"
}

// to goes to a folder.
func (s *Sheets) to(p *panel.Panel, dir string) {
	s.text, s.fault = dir, ""
	p.SetFocus(lineID)
}

// file is the name of a file for FS, which bundled designs cannot be taken for.
func (s *Sheets) file(typed string) string {
	n := s.of(typed)
	if !IsFile(n) {
		n = "./" + n
	}
	return n
}

// goOn does what the keys ask for: up and down go through the rows, Enter on the line opens what is typed or the one row
// that it can mean.
func (s *Sheets) goOn(p *panel.Panel, key panel.Key, rows []string, list *Listing) {
	at := -1 // the line
	for i, id := range rows {
		if p.Focus() == id {
			at = i
		}
	}
	if key == panel.NoKey && at >= 0 {
		for _, k := range p.Unused() {
			if k.Key == panel.KeyUp || k.Key == panel.KeyDown {
				key = k.Key
			}
		}
	}
	if more := string(p.Input().Text); p.Focus() != lineID && strings.TrimSpace(more) != "" && !p.Input().Ctrl { // typing goes on
		s.text, s.fault = s.text+more, ""
		p.SetFocus(lineID)
	}
	switch {
	case key == panel.KeyDown && at+1 < len(rows):
		p.SetFocus(rows[at+1])
	case key == panel.KeyUp && at > 0:
		p.SetFocus(rows[at-1])
	case key == panel.KeyUp && at == 0:
		p.SetFocus(lineID)
	case key == panel.KeyEnter:
		s.enter(list)
	}
}

// enter opens what is typed.
func (s *Sheets) enter(list *Listing) {
	dir, typed := s.parts()
	if typed == "" {
		s.fault = "name a file, or press a row"
		return
	}
	if list != nil && len(list.Rows) == 1 && !list.More && !strings.HasPrefix(typed, "..") {
		s.text = dir + list.Rows[0].Name
	}
	s.fault = ""
	s.read.find(s.file(s.text))
}

// follow does what a path leads to.
func (s *Sheets) follow(f Found) Choice {
	switch {
	case f.Err != nil:
		s.fault = s.text + ": " + words(f.Err)
		if faults := words(f.Err); strings.HasPrefix(faults, f.Path) {
			s.fault = faults
		}
		return Choice{}
	case f.Kind == Folder:
		s.text = strings.TrimSuffix(path.Clean(filepath.ToSlash(s.text)), "/") + "/"
		return Choice{}
	case f.Kind == Lesson:
		return Choice{Wish: ToLesson, Name: f.Path, Lesson: f.Lesson}
	}
	return s.design(f.Path)
}
