package cases

import (
	"archload/materials"

	"errors"

	"archload/cases/drawing"
	"archload/cases/tree"
	"archload/mesh/plane"
)

// smallest and largest size of an outline in a drawing, mm.
const (
	leastTop = 100
	mostTop  = 2000
)

// drawnSheet is a drawing that was read, and its file.
type drawnSheet struct {
	drawing.Sheet
	src *tree.Source
}

// fromDrawing reads an outline or a hole from a drawing.
func (o *Outline) fromDrawing(d *tree.Decoder, n *tree.Node, key, value string) {
	o.File = value
	w, rings, err := ringsOf(d, n, key, value)
	var none *drawing.EmptyError
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
		drawingFault(d, w.src, key, err)
		return
	}
	o.Points, o.Corner = rings[0].Points, rings[0].Corner
	for range o.Points {
		o.Lines = append(o.Lines, tree.Place{Src: w.src, Line: rings[0].Selected().Line})
	}
}

// fromDrawing reads contour lines and spot heights from a drawing.
func (h *HeightTable) fromDrawing(d *tree.Decoder, n *tree.Node, key, value string) {
	h.File, h.Drawn = value, true
	w, rings, err := ringsOf(d, n, key, value)
	if w == nil {
		return
	}
	var lines []drawing.Level
	var none *drawing.EmptyError
	if errors.As(err, &none) {
		err = none.Label.Fault("want closed lines with their heights, found no shape")
	} else if err == nil {
		lines, err = drawing.Levels(rings, w.Metric())
	}
	if err != nil {
		drawingFault(d, w.src, key, err)
		return
	}
	for _, l := range lines {
		for _, p := range l.Points {
			h.Lines = append(h.Lines, l.Name)
			h.X, h.Y, h.Height = append(h.X, p[0]), append(h.Y, p[1]), append(h.Height, l.Height)
			h.Rows = append(h.Rows, tree.Place{Src: w.src, Line: l.Line})
		}
	}
}

// ringsOf opens the drawing and reads what a key names. The drawing is nil if
// a fault was recorded already; the error is one within the drawing.
func ringsOf(d *tree.Decoder, n *tree.Node, key, value string) (*drawnSheet, []drawing.Ring, error) {
	file, name, _ := drawing.Named(value)
	if name == "" {
		d.Fault(n, key, "want the name of an element as well, as in %q", file+"#outline")
		return nil, nil, nil
	}
	w := openDrawing(d, n, key, file)
	if w == nil {
		return nil, nil, nil
	}
	rings, err := w.Rings(name)
	var inside *drawing.Fault
	var none *drawing.EmptyError
	if err != nil && !errors.As(err, &inside) && !errors.As(err, &none) {
		d.Fault(n, key, "%q: %w", value, err)
		return nil, nil, nil
	}
	return w, rings, err
}

// openDrawing reads a drawing beside the file of n, once; nil if it is faulty.
func openDrawing(d *tree.Decoder, n *tree.Node, key, name string) *drawnSheet {
	_, label := n.Src.Beside(name)
	drawings := keptBy(d).drawings
	if w, ok := drawings[label]; ok {
		d.SpoilIf(w == nil, key)
		return w
	}
	drawings[label] = nil
	src, err := tree.OpenBeside(n.Src, name)
	if err != nil {
		d.Fault(n, key, "%q: %w", name, err)
		return nil
	}
	d.Rep.Order = append(d.Rep.Order, src)
	sheet, err := drawing.Read(name, src.Data)
	if err != nil {
		drawingFault(d, src, key, err)
		return nil
	}
	if sheet.Mirrored() {
		d.Rep.Notes = append(d.Rep.Notes, &tree.FileError{File: label, Line: sheet.Line(),
			Err: errors.New("the drawing shows the top from inside (by its marks, treble lies to the left of the neck); it is read mirrored")})
	}
	w := &drawnSheet{sheet, src}
	drawings[label] = w
	return w
}

// drawingFault records a fault of a drawing.
func drawingFault(d *tree.Decoder, src *tree.Source, key string, err error) {
	at, name := tree.Place{Src: src, Line: 1}, ""
	var f *drawing.Fault
	if errors.As(err, &f) {
		at.Line, name = f.Line, f.Name
	}
	d.Rep.Add(at, name, err)
	d.SpoilIf(true, key)
}

// kept is what the keys of a case share while they are read.
type kept struct {
	cards    map[string]materials.Card // bundled cards found, by name
	drawings map[string]*drawnSheet    // by label; nil: faulty
}

// keptBy returns what the decoder of a case keeps.
func keptBy(d *tree.Decoder) *kept { return d.Own.(*kept) }

// CardsFound are the bundled wood cards that the decoder of a case has looked up,
// by name. What is put among them is not looked up again.
func CardsFound(d *tree.Decoder) map[string]materials.Card { return keptBy(d).cards }
