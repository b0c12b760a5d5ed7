package desk

import (
	"bytes"
	"fmt"
	"image/png"
	"path"
	"strings"

	"archload/viz/panel"
	"archload/viz/scene"
)

// keepCase writes what was changed of the edited design as a case file.
func (d *Desk) keepCase() {
	one := d.design()
	if one == nil || d.o.Keep == nil {
		return
	}
	if !sameKeys(one.Live.Keys(), d.want.Designs[d.edit].Keys) && d.busy {
		d.note = "still working on the last change; keep the case when the picture shows it"
		return
	}
	if len(one.Live.Keys()) == 0 {
		d.note = "nothing was changed yet; there is nothing to keep"
		return
	}
	name := stem(one.Live.Name()) + "-changed.toml"
	data, err := one.Live.Kept(name)
	if err == nil {
		name, err = d.o.Keep(name, data)
	}
	if err != nil {
		d.note = "not kept: " + err.Error()
		return
	}
	d.note = "kept as " + name + "; archload solve " + name + " gives the same numbers"
	d.copied = name
}

// drawNote shows what was just done, at the foot of the drawing, until
// something else is.
func (d *Desk) drawNote() {
	if d.note == "" {
		return
	}
	l, in := d.panel.List(), d.lay.view
	w := min(l.Atlas.TextWidth(panel.Body, d.note)+24, in.W-40)
	lines := l.Atlas.Wrap(panel.Body, d.note, w-24)
	h := float64(len(lines))*panel.Body.LineHeight() + 12
	r := panel.Rect{X: in.X + (in.W-w)/2, Y: in.Bottom() - h - 14, W: w, H: h}
	l.Rect(r, panel.Slip())
	l.Frame(r, 1, panel.Pencil())
	l.Paragraph(panel.Rect{X: r.X + 12, Y: r.Y + 6, W: w - 24, H: h}, panel.Body, panel.Ink(), d.note)
}

// stem is a case's name without folder and ending.
func stem(name string) string { return strings.TrimSuffix(path.Base(name), ".toml") }

// Size of a picture that is written from the window, pixels.
const (
	pictureWidth  = 1600
	pictureHeight = 1000
)

// keepPicture writes the drawing as a PNG.
func (d *Desk) keepPicture() {
	if d.shown == nil || d.o.Keep == nil || d.o.Picture == nil {
		return
	}
	data, err := d.PNG(pictureWidth, pictureHeight, 1.5)
	name := stem(d.shown.Designs[0].Live.Name()) + "-" + strings.ReplaceAll(d.shown.Want.Field.Word(), " ", "-") + ".png"
	if d.shown.Want.Field == scene.Wood {
		name = stem(d.shown.Designs[0].Live.Name()) + ".png"
	}
	if err == nil {
		name, err = d.o.Keep(name, data)
	}
	if err != nil {
		d.note = "no picture: " + err.Error()
		return
	}
	d.note = "picture written to " + name + "; its path is on the clipboard"
	d.copied = name
}

// PNG is the drawing without controls as a PNG of width by height pixels.
func (d *Desk) PNG(width, height int, density float64) ([]byte, error) {
	return d.encoded(d.Sheet(width, height, density))
}

// WindowPNG is the whole window as a PNG of width by height pixels.
func (d *Desk) WindowPNG(width, height int, density float64) ([]byte, error) {
	in := panel.Input{Away: true}
	d.Frame(width, height, density, in) // a scroll area knows its height from the frame before
	return d.encoded(d.Frame(width, height, density, in))
}

func (d *Desk) encoded(f *Frame) ([]byte, error) {
	if d.o.Picture == nil {
		return nil, fmt.Errorf("there is nothing to paint with")
	}
	img, err := d.o.Picture(f)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}
