package cases

import (
	"errors"

	"archload/mesh/plane"
)

// smallest and largest size of an outline in a drawing, mm.
const (
	leastTop = 100
	mostTop  = 2000
)

// drawnSheet is a drawing that was read, and its file.
type drawnSheet struct {
	Sheet
	src *source
}

// fromDrawing reads an outline or a hole from a drawing.
func (o *Outline) fromDrawing(d *decoder, n *node, key, value string) {
	o.File = value
	w, rings, err := d.ringsOf(n, key, value)
	var none *EmptyError
	switch {
	case w == nil:
		return
	case errors.As(err, &none):
		err = none.Label.Fault("want one closed line, found 0")
	case err == nil && len(rings) != 1:
		err = rings[0].Selected().Fault("want one closed line, found %d", len(rings))
	case err == nil && key == "plate.outline":
		lo, hi := plane.Bounds(rings[0].Points)
		if size := max(hi[0]-lo[0], hi[1]-lo[1]); size < leastTop || size > mostTop {
			err = rings[0].Selected().Fault("measures %.4g x %.4g mm; want %d to %d mm: is the page's size right?", hi[0]-lo[0], hi[1]-lo[1], leastTop, mostTop)
		}
	}
	if err != nil {
		d.drawingFault(w.src, key, err)
		return
	}
	o.Points, o.Corner = rings[0].Points, rings[0].Corner
	for range o.Points {
		o.lines = append(o.lines, place{w.src, rings[0].Selected().Line})
	}
}

// fromDrawing reads contour lines and spot heights from a drawing.
func (h *HeightTable) fromDrawing(d *decoder, n *node, key, value string) {
	h.File, h.drawn = value, true
	w, rings, err := d.ringsOf(n, key, value)
	if w == nil {
		return
	}
	var lines []Level
	var none *EmptyError
	if errors.As(err, &none) {
		err = none.Label.Fault("want closed lines with their heights, found no shape")
	} else if err == nil {
		lines, err = Levels(rings, w.Metric())
	}
	if err != nil {
		d.drawingFault(w.src, key, err)
		return
	}
	for _, l := range lines {
		for _, p := range l.Points {
			h.Lines = append(h.Lines, l.Name)
			h.X, h.Y, h.Height = append(h.X, p[0]), append(h.Y, p[1]), append(h.Height, l.Height)
			h.rows = append(h.rows, place{w.src, l.Line})
		}
	}
}

// ringsOf opens the drawing and reads what a key names. The drawing is nil if
// a fault was recorded already; the error is one within the drawing.
func (d *decoder) ringsOf(n *node, key, value string) (*drawnSheet, []Ring, error) {
	file, name, _ := Named(value)
	if name == "" {
		d.fault(n, key, "want the name of an element as well, as in %q", file+"#outline")
		return nil, nil, nil
	}
	w := d.openDrawing(n, key, file)
	if w == nil {
		return nil, nil, nil
	}
	rings, err := w.Rings(name)
	var inside *Fault
	var none *EmptyError
	if err != nil && !errors.As(err, &inside) && !errors.As(err, &none) {
		d.fault(n, key, "%q: %w", value, err)
		return nil, nil, nil
	}
	return w, rings, err
}

// openDrawing reads a drawing beside the file of n, once; nil if it is faulty.
func (d *decoder) openDrawing(n *node, key, name string) *drawnSheet {
	_, label := n.src.beside(name)
	drawings := keptBy(d).drawings
	if w, ok := drawings[label]; ok {
		d.spoilIf(w == nil, key)
		return w
	}
	drawings[label] = nil
	src, err := openBeside(n.src, name)
	if err != nil {
		d.fault(n, key, "%q: %w", name, err)
		return nil
	}
	d.rep.order = append(d.rep.order, src)
	sheet, err := Read(src.data)
	if err != nil {
		d.drawingFault(src, key, err)
		return nil
	}
	if sheet.Mirrored() {
		d.rep.notes = append(d.rep.notes, &FileError{File: label, Line: sheet.Line(),
			Err: errors.New("the drawing shows the top from inside (by its marks, treble lies to the left of the neck); it is read mirrored")})
	}
	w := &drawnSheet{sheet, src}
	drawings[label] = w
	return w
}

// drawingFault records a fault of a drawing.
func (d *decoder) drawingFault(src *source, key string, err error) {
	at, name := place{src, 1}, ""
	var f *Fault
	if errors.As(err, &f) {
		at.line, name = f.Line, f.Name
	}
	d.rep.add(at, name, err)
	d.spoilIf(true, key)
}
