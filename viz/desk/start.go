package desk

import (
	"archload/viz/desk/opening"
	"archload/viz/stage"
	"archload/viz/teach"
)

// openOn is what sheets that open something are drawn on.
func (d *Desk) openOn() opening.On {
	on := opening.On{Panel: &d.panel, Last: d.looks.Designs()}
	if d.lesson == nil && len(d.want.Designs) > 0 {
		on.Now = d.want.Designs[0].Name
	}
	return on
}

// opens does what was chosen on a sheet.
func (d *Desk) opens(c opening.Choice) {
	switch c.Wish {
	case opening.ToClose:
		d.escape()
	case opening.ToLessons:
		d.over = lessonSheet
	case opening.ToFiles:
		d.over = fileSheet
	case opening.ToDesign:
		d.openDesign(c.Name, c.Beside)
	case opening.ToLesson:
		if c.Lesson != nil {
			d.begin(teach.Begin(c.Lesson))
		} else if err := d.openLesson(c.Name); err != nil {
			d.fault, d.over = faultWords(err), noSheet
		}
	}
}

// show lays a sheet on which something is opened over the page; beside: it shall stand beside the first design.
func (d *Desk) show(o overlay, beside bool) {
	d.open.Show(beside)
	d.over = o
}

// openDesign shows a design, alone or beside the first of those that are shown.
func (d *Desk) openDesign(name string, beside bool) {
	designs := []stage.Design{d.freshly(stage.Design{Name: name})}
	if beside && d.lesson == nil && len(d.want.Designs) > 0 {
		a := d.want.Designs[0]
		if a.Name == name { // it beside itself, as its file says
			designs[0].Read = a.Read
		}
		designs = append([]stage.Design{a}, designs...)
	}
	d.setDesigns(designs)
	d.want.Pins = nil
	d.look(usualView(d.looks.View))
}

// alone shows one of two designs alone, as the hand has set it.
func (d *Desk) aloneWith(k int) {
	d.setDesigns([]stage.Design{d.want.Designs[k]})
	d.look(usualView(d.looks.View))
}

// setDesigns shows other designs.
func (d *Desk) setDesigns(designs []stage.Design) {
	d.want.Designs = designs
	d.lesson, d.over, d.fault, d.edit = nil, noSheet, "", 0
}
