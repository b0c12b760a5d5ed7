package desk

import "archload/viz/desk/opening"

// sheets draws what lies over the page: help, or the list of lessons.
func (d *Desk) sheets() {
	switch d.over {
	case helpSheet:
		d.opens(opening.Help(d.openOn(), helpRows()))
	case lessonSheet:
		d.opens(d.open.Lessons(d.openOn()))
	case startSheet:
		d.opens(d.open.Start(d.openOn()))
	case fileSheet:
		d.opens(d.open.Files(d.openOn()))
	case fieldMenu, viewMenu, drawnMenu:
		d.drawMenu()
	}
}

// helpRows are the keys of the help sheet, each with what it does.
func helpRows() (rows [][2]string) {
	for _, s := range shortcuts() {
		if s.name != "" {
			rows = append(rows, [2]string{s.name, s.words})
		}
	}
	return rows
}
