package desk

import (
	"math"
	"slices"

	"archload/viz/desk/looks"
	"archload/viz/panel"
	"archload/viz/scene"
	"archload/viz/stage"
)

// shortcuts lists every key that the window knows besides those of the
// controls; the help sheet is made from it.
func shortcuts() []shortcut {
	letter := panel.LetterKey
	out := []shortcut{}
	_, digits := fieldWords()
	for i, f := range scene.Fields() {
		out = append(out, shortcut{panel.DigitKey(i), false, digits[i], "shows: " + f.Name(), func(d *Desk) { d.see(f) }})
	}
	_, keys := looks.ViewWords()
	for i, v := range scene.Views() {
		out = append(out, shortcut{letter(rune(keys[i][0])), false, keys[i], "looks " + v.Name, func(d *Desk) { d.look(v.Name) }})
	}
	for _, s := range toggles() {
		out = append(out, s.shortcut())
	}
	return append(out,
		shortcut{letter('p'), false, "P", "plays the load from nothing to full", (*Desk).togglePlay},
		shortcut{panel.KeyBracketLeft, false, "[", "less string load", func(d *Desk) { d.step(-0.05) }},
		shortcut{panel.KeyBracketRight, false, "]", "more string load", func(d *Desk) { d.step(0.05) }},
		shortcut{letter('e'), false, "E", "draws the movement larger, and back", (*Desk).enlarge},
		shortcut{letter('x'), false, "X", "section strip: across, along, none", (*Desk).nextCut},
		shortcut{letter('d'), false, "D", "two designs: side by side, or their difference", (*Desk).arrange},
		shortcut{letter('j'), false, "J", "goes to where most strength is used", (*Desk).goThere},
		shortcut{letter('k'), false, "K", "keeps the case", (*Desk).keepCase},
		shortcut{letter('s'), false, "S", "writes a picture", (*Desk).keepPicture},
		shortcut{letter('z'), true, "Ctrl Z", "undoes the last change", (*Desk).undo},
		shortcut{letter('y'), true, "Ctrl Y", "does it again", (*Desk).redo},
		shortcut{letter('f'), false, "F", "folds the panel away, and back", (*Desk).foldSide},
		shortcut{letter('v'), false, "V", "the picture and its caption alone, and back", func(d *Desk) { d.alone = !d.alone }},
		shortcut{panel.KeyPlus, true, "Ctrl +", "larger letters", func(d *Desk) { d.enlargeLetters(1) }},
		shortcut{panel.KeyMinus, true, "Ctrl −", "smaller letters", func(d *Desk) { d.enlargeLetters(-1) }},
		shortcut{letter('z'), false, "Z", "takes back all changes of the design", (*Desk).takeBack},
		shortcut{letter('n'), true, "Ctrl N", "another design, alone or beside this one", func(d *Desk) { d.openSheet(startSheet) }},
		shortcut{letter('o'), true, "Ctrl O", "opens a case file or a lesson", func(d *Desk) { d.openSheet(fileSheet) }},
		shortcut{letter('r'), true, "Ctrl R", "reads the design's files again", (*Desk).readAgain},
		shortcut{letter('l'), false, "L", "lessons", func(d *Desk) { d.openSheet(lessonSheet) }},
		shortcut{panel.KeyPeriod, false, ".", "next step of a lesson", func(d *Desk) { d.walk(1) }},
		shortcut{panel.KeyComma, false, ",", "step before", func(d *Desk) { d.walk(-1) }},
		shortcut{letter('h'), false, "H", "this sheet (F1, too)", func(d *Desk) { d.openSheet(helpSheet) }},
		shortcut{panel.KeyF1, false, "", "", func(d *Desk) { d.openSheet(helpSheet) }},
		shortcut{panel.KeyEscape, false, "Esc", "closes a sheet, ends a lesson, lets go", (*Desk).escape},
		shortcut{letter('q'), true, "Ctrl Q", "leaves", func(d *Desk) { d.done = true }},
	)
}

// shortcuts does what the keys ask that no control has used.
func (d *Desk) shortcuts() {
	for _, k := range d.panel.Unused() {
		if d.over == startSheet && k.Key == panel.LetterKey('o') {
			k.Ctrl = true // as the button there says; there is nothing to look at from outside
		}
		if d.over == fileSheet && !k.Ctrl && k.Key != panel.KeyEscape {
			continue // letters belong to the path
		}
		for _, s := range shortcuts() {
			if s.key == k.Key && s.ctrl == k.Ctrl && (s.bare() || len(d.want.Designs) > 0) {
				s.do(d)
				d.again = true
			}
		}
	}
	if d.shown != nil && d.over == noSheet {
		d.arrowKeys()
	}
}

// bare tells whether a key does something on the page to choose from, without a design.
func (s shortcut) bare() bool {
	return slices.Contains([]string{"Ctrl +", "Ctrl −", "Ctrl N", "Ctrl O", "L", "H", "", "Esc", "Ctrl Q"}, s.name)
}

// arrowKeys turn the drawing, plus and minus bring it nearer, unless a control
// has the keyboard.
func (d *Desk) arrowKeys() {
	const step = 24 // points of a drag
	for _, k := range d.panel.Unused() {
		if k.Ctrl {
			continue
		}
		switch k.Key {
		case panel.KeyLeft:
			d.turn(-step, 0)
		case panel.KeyRight:
			d.turn(step, 0)
		case panel.KeyUp:
			d.turn(0, step)
		case panel.KeyDown:
			d.turn(0, -step)
		case panel.KeyPlus:
			d.nearer(0, d.lay.Views[0].Centre(), 1.15, d.atlas.Density)
		case panel.KeyMinus:
			d.nearer(0, d.lay.Views[0].Centre(), 1/1.15, d.atlas.Density)
		default:
			continue
		}
		d.again = true
	}
}

// step changes the string load by a fraction of it.
func (d *Desk) step(by float64) {
	d.play.on = false
	d.want.Load = min(1, max(0, math.Round(1e6*(d.want.Load+by))/1e6))
}

// enlarge draws the movement larger: twice, five times, ten times what was
// chosen, then as chosen again.
func (d *Desk) enlarge() {
	if d.shown == nil {
		return
	}
	if d.want.Enlarge == 0 {
		d.chosen = d.shown.Enlarge
	}
	switch now := d.want.Enlarge; {
	case now == 0:
		d.want.Enlarge = 2 * d.chosen
	case now < 3*d.chosen:
		d.want.Enlarge = 5 * d.chosen
	case now < 7*d.chosen:
		d.want.Enlarge = 10 * d.chosen
	default:
		d.want.Enlarge = 0
	}
}

func (d *Desk) nextCut() {
	next := map[stage.CutKind]stage.CutKind{stage.NoCut: stage.CrossArch, stage.CrossArch: stage.LongArch, stage.LongArch: stage.NoCut, stage.FreeCut: stage.NoCut}
	d.want.Cut = stage.Cut{Kind: next[d.want.Cut.Kind]}
}

func (d *Desk) arrange() {
	if len(d.want.Designs) == 2 {
		d.want.Arrange = 1 - d.want.Arrange
	}
}

func (d *Desk) openSheet(o overlay) {
	if d.over == o && len(d.want.Designs) > 0 {
		o = noSheet
	}
	d.show(o, false)
}

// escape closes what lies on top.
func (d *Desk) escape() {
	switch {
	case d.over != noSheet && len(d.want.Designs) > 0:
		d.over = noSheet
	case d.over == lessonSheet || d.over == helpSheet || d.over == fileSheet:
		d.show(startSheet, false)
	case d.play.on:
		d.play.on = false
	case d.alone:
		d.alone = false
	case d.lesson != nil:
		d.lesson = nil
		d.want.InAir, d.want.AirA = false, 0 // the hand's fields are of the air that it was made in
		d.looks.View = usualView(d.looks.View)
	case d.panel.Focus() != "":
		d.panel.SetFocus("")
	}
}

func usualView(v string) string {
	if v == "" {
		return scene.Views()[0].Name
	}
	return v
}
