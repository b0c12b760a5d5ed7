package desk

import (
	"bytes"
	"fmt"
	"image/png"
	"strings"

	"archload/viz/desk/numbers"
	"archload/viz/desk/opening"
	"archload/viz/panel"
	"archload/viz/scene"
	"archload/viz/stage"
)

// keepCase writes what was changed of the edited design as a case file.
func (d *Desk) keepCase() {
	one := d.design()
	if one == nil || d.o.Keep == nil {
		return
	}
	if !stage.SameKeys(one.Live.Keys(), d.want.Designs[d.edit].Keys) && d.busy {
		d.say("still working on the last change; keep the case when the picture shows it")
		return
	}
	if len(one.Live.Keys()) == 0 {
		d.say("nothing was changed yet; there is nothing to keep")
		return
	}
	name := opening.Stem(one.Live.Name()) + "-changed.toml"
	data, err := one.Live.Kept(name)
	if err == nil {
		name, err = d.o.Keep(name, data)
	}
	if err != nil {
		d.say("not kept: " + err.Error())
		return
	}
	words, settled := numbers.Command(d.shown, d.edit)
	words = strings.Replace(words, "of the kept case", numbers.Typed(name), 1)
	switch stale := one.Live.Stale(); {
	case stale != "":
		d.say("kept as " + name + ", on top of " + stale + "; but that file has changed or gone since it was opened, so " + words + " may give other numbers")
	case settled:
		d.say("kept as " + name + "; " + words + " gives the same numbers")
	default:
		d.say("kept as " + name + "; archload solve " + numbers.Typed(name) + " gives the numbers to which the window settles")
	}
	d.copied = name
}

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
	name := opening.Stem(d.shown.Designs[0].Live.Name()) + "-" + strings.ReplaceAll(d.shown.Want.Field.Word(), " ", "-") + ".png"
	if d.shown.Want.Field == scene.Wood {
		name = opening.Stem(d.shown.Designs[0].Live.Name()) + ".png"
	}
	if err == nil {
		name, err = d.o.Keep(name, data)
	}
	if err != nil {
		d.say("no picture: " + err.Error())
		return
	}
	d.say("picture written to " + name + "; its path is on the clipboard")
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
