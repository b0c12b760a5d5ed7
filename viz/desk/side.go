package desk

import (
	"fmt"
	"math"
	"slices"

	"archload/cases"
	"archload/cases/tree"
	"archload/viz/desk/air"
	"archload/viz/desk/caliper"
	"archload/viz/desk/grip"
	"archload/viz/desk/numbers"
	"archload/viz/desk/section"
	"archload/viz/desk/tones"
	"archload/viz/panel"
	"archload/viz/passage"
	"archload/viz/scale"
	"archload/viz/scene"
	"archload/viz/stage"
	"archload/viz/tool"
)

// drawSide draws the numbers and the tools.
func (d *Desk) drawSide() {
	if d.lay.Side.Empty() {
		return
	}
	d.panel.Sheet(d.lay.Side)
	above, below := d.lay.Side.Inset(1, 1), d.lay.Side.Inset(1, 1)
	above.H = math.Round(numbersShare * above.H)
	below.Y, below.H = above.Bottom(), below.H-above.H
	c := panel.NewColumn(d.panel.Scroll("numbers", above), 12, 4)
	d.drawWork(c)
	d.drawChanged(c)
	if d.shown != nil {
		d.drawNumbers(c)
	}
	d.panel.EndScroll(c.Used(12))
	d.panel.List().Level(below.X, below.Right(), below.Y, 1, panel.Pencil())
	c = panel.NewColumn(d.panel.Scroll("side", below), 12, 4)
	d.drawKeep(c)
	if d.shown != nil {
		d.drawTools(c)
		d.drawGauges(c)
	}
	d.drawCaution(c)
	d.panel.EndScroll(c.Used(12))
}

// numbersShare is how much of the side the numbers take, which stay where they
// are while the controls below them are scrolled.
const numbersShare = 0.46

// drawWork says whether the picture still lags behind the hand.
func (d *Desk) drawWork(c *panel.Column) {
	row := c.Row(2 * panel.Small.LineHeight())
	d.panel.Hint("work", row, "Numbers and picture always belong together; while a new state is worked out both stay as they were. Under the hand both are of the shape as carved (linear); when it rests they become those of the case solved afresh, on the shape as it has moved (second order).")
	switch {
	case d.shown == nil:
	case d.busy:
		d.panel.List().TextIn(row, panel.SmallBold, panel.Left, panel.Rust(), "Working… this is still the state before.")
	default:
		d.panel.Note(row, d.workWords())
	}
}

// workWords say which command gives the numbers that stand there.
func (d *Desk) workWords() string {
	words, settled := numbers.Command(d.shown, min(d.edit, len(d.shown.Designs)-1))
	switch {
	case d.shown.Want.Load < leastLoad:
		if d.shown.Designs[0].Full.Top.Built.Case.Strings == nil {
			return "No load is on."
		}
		return "Slack strings."
	case settled:
		return "The numbers are final (in a terminal: " + words + ")."
	case d.shown.Second:
		return "Under the hand: linear. It settles to the moved shape when the hand rests."
	}
	return "Under the hand. It settles when the hand rests."
}

// leastLoad is the share of the load below which nothing moves.
const leastLoad = 0.01

// numbers is the column of numbers of this frame.
func (d *Desk) numbers() numbers.Side {
	return numbers.Side{Panel: &d.panel, Atlas: d.atlas, Shown: d.shown}
}

// drawNumbers draws what is read, part by part.
func (d *Desk) drawNumbers(c *panel.Column) {
	n := d.numbers()
	if d.shown.Want.Field == scene.Tone && d.fold(c, "Tones", "the lowest tones of the top, as archload tones finds them; press one to see it swing") {
		d.want.Display = tones.List(&d.panel, c, d.shown, d.want.Display)
	}
	if d.shown.Want.Aired() && d.fold(c, "In other air", "what drier or damper air does to the design, as archload seasons finds it") {
		d.want.Display = air.List(&d.panel, d.atlas, c, d.shown, d.want.Display)
	}
	if d.fold(c, "Now", fmt.Sprintf("the numbers at %s of string load, as the picture shows them", scale.Percent(d.shown.Want.Load))) {
		n.Now(c)
	}
	if d.fold(c, "Warnings", "what archload solve says is too much, or not sure, at full string load") {
		n.Warnings(c)
		d.drawGoThere(c)
	}
	if d.fold(c, foldWays, "what the strings press with at full load, and what holds it up") {
		n.Ways(c)
	}
	if d.fold(c, "At pitch", "the headline numbers at full string load, as archload compare prints them") {
		n.AtPitch(c)
	}
}

// drawGoThere draws the button that leads to the place where most of the strength is
// used.
func (d *Desk) drawGoThere(c *panel.Column) {
	one := d.design()
	if one == nil || one.Worst() == nil {
		return
	}
	w := one.Worst()
	row := c.Row(32)
	d.panel.Note(panel.Rect{X: row.X, Y: row.Y, W: row.W - 118, H: row.H}, fmt.Sprintf("strength used, %s", w.Text))
	if d.panel.Button(panel.Control{ID: "go there", At: panel.Rect{X: row.Right() - 112, Y: row.Y, W: 112, H: panel.ButtonHeight}, Label: "Go there", Key: "J",
		Tip: "comes near the place where most of the strength is used"}) {
		d.goThere()
	}
}

// goThere brings the camera near the worst place, on the face where it lies.
func (d *Desk) goThere() {
	one := d.design()
	if one == nil || one.Worst() == nil || d.edit >= len(d.shown.Scenes) {
		return
	}
	w := *one.Worst()
	d.want.Field = scene.StrengthUsed
	view := "at an angle"
	if w.Inside {
		view = "from inside"
	}
	p, ok := one.Skeleton.Place(d.shown.Scenes[d.edit], one.Now, w)
	if !ok {
		return
	}
	s := d.shown.Scenes[d.edit]
	c := s.Seen(view, 100, 100)
	c.Target, c.Distance = p, nearWorst
	for k := 0; s.Hides(c, [][3]float64{p})[0] && k < 7; k++ { // from another side
		c = c.Orbited(45, 0)
	}
	d.aim, d.looks.View, d.again = c, "", true
	d.fly = passage.Flight{From: d.camera, Since: d.now, On: true}
	d.drag, d.arrived = drag{}, arrival{at: p, when: d.now + passage.FlightTime}
}

// drawArrival draws rings that close in on the place to which the camera flies, for a while.
func (d *Desk) drawArrival(l *panel.List, view panel.Rect) {
	const long, period, wide = 2.0, 1.0, 46.0 // s, s, points
	gone := d.now - d.arrived.when + passage.FlightTime
	if d.arrived.when == 0 || gone > passage.FlightTime+long {
		return
	}
	d.again = true
	if x, y, ok := d.project(view, d.arrived.at); ok {
		_, u := math.Modf(gone / period)
		l.Circle(panel.Point{X: x, Y: y}, 8+wide*(1-u), 2.5, panel.Rust())
	}
}

// nearWorst is how near the camera comes to the worst place, mm.
const nearWorst = 420

// drawGauges lists the gauges of the case, and the pins.
func (d *Desk) drawGauges(c *panel.Column) {
	if one := d.design(); d.fold(c, "Gauges and pins", "click on the plate to pin a place") && one != nil {
		d.numbers().Gauges(c, one, d.unpin)
	}
}

// drawTools draws what can be changed of a design.
func (d *Desk) drawTools(c *panel.Column) {
	if len(d.want.Designs) == 2 {
		d.panel.Choice(panel.Choice{Control: panel.Control{ID: "edit", At: c.Row(17 + panel.ChoiceHeight), Label: "Change"},
			Words: []string{"design A", "design B"}}, &d.edit)
		k := int(d.want.Arrange)
		if d.panel.Choice(panel.Choice{Control: panel.Control{ID: "arrange", At: c.Row(17 + panel.ChoiceHeight), Label: "Show", Key: "D"},
			Words: []string{"side by side", "B less A"}}, &k) {
			d.want.Arrange = stage.Arrange(k)
		}
		pair := c.Cells(panel.ButtonHeight, 2)
		for i, label := range []string{"A alone", "B alone"} {
			if d.panel.Button(panel.Control{ID: fmt.Sprintf("alone %d", i), At: pair[i], Label: label, Tip: "takes the other design away", Off: d.offBeside()}) {
				d.aloneWith(i)
				return
			}
		}
	}
	one := d.design()
	if one == nil {
		return
	}
	tools := d.tools(one)
	d.drawChanges(c, tools)
	for _, f := range tool.Groups() {
		d.drawFold(c, f, tools)
	}
	if d.fold(c, foldGraduation, "how thick the top is from place to place, and what to take off or leave on") {
		g := caliper.Of(one, d.box.ahead)
		if set, changed := d.caliper.Draw(&d.panel, c, g); changed {
			d.regraduate(set)
		}
	}
}

// tools of a design as the hand has set them, which may be ahead of what is
// shown; as they are shown if the hand has set what is not possible.
func (d *Desk) tools(one *stage.Answered) []tool.Tool {
	want := d.want.Designs[d.edit]
	if d.box.of.Same(want) && d.box.tools != nil {
		return d.box.tools
	}
	box := toolbox{of: want, usual: map[string]float64{}}
	c := one.Live.Case()
	if ahead, err := d.caseWith(one, want.Name, want.Keys); err == nil {
		c = ahead
	}
	box.tools, box.ahead = tool.Of(c, d.o.Woods), c
	if own, err := d.caseWith(one, want.Name, nil); err == nil {
		c = own
	}
	for _, t := range tool.Of(c, d.o.Woods) {
		box.usual[t.ID] = t.Value
	}
	top := one.Full.Top.Built
	for i := range box.tools {
		if box.tools[i].ID == tool.ArchHeight {
			box.tools[i].Measured(top.PlateAt(grip.Apex(one.Full.Top)).Height / top.Case.Plate.Arch.HeightScale)
		}
	}
	d.box = box
	return box.tools
}

// caseWith is the case of a name with keys set; that of the design shown is not read again for it.
func (d *Desk) caseWith(one *stage.Answered, name string, keys []tree.KeyValue) (*cases.Case, error) {
	if one.Live.Name() == name {
		return one.Live.CaseWith(keys...)
	}
	return cases.OpenChanged(d.o.FS, name, "hand", keys)
}

// drawFold draws the tools of one fold.
func (d *Desk) drawFold(c *panel.Column, name string, tools []tool.Tool) {
	found := false
	for _, t := range tools {
		found = found || t.Group == name
	}
	if !found || !d.fold(c, name, "") {
		return
	}
	for i := range tools {
		if tools[i].Group == name {
			d.drawTool(c, &tools[i])
		}
	}
}

func (d *Desk) drawTool(c *panel.Column, t *tool.Tool) {
	control := panel.Control{ID: t.ID, Label: t.Label, Tip: t.Tip, Off: t.Why}
	if t.Most > t.Least {
		v := t.Value
		s := panel.Slider{Control: control, Unit: t.Unit, Min: math.Min(t.Least, v), Max: math.Max(t.Most, v), Step: t.Step,
			Default: d.box.usual[t.ID], Decimals: tool.Digits(t.Step), Format: t.Show, Typed: true, Parse: tool.Parser(t.Unit)}
		s.At = c.Row(s.Tall(d.atlas, c.Width(), v))
		if d.panel.Slider(s, &v) {
			d.change(t.Set(v))
			if v == d.box.usual[t.ID] {
				d.forget(t.Set(v))
			}
		}
		return
	}
	choice := panel.Choice{Control: control, Words: t.Words, Upright: len(t.Words) > 2}
	choice.At = c.Row(choice.Height())
	k := t.Chosen
	if d.panel.Choice(choice, &k) {
		d.change(t.Pick(k))
	}
}

// change sets keys of the design that is edited.
func (d *Desk) change(set []tree.KeyValue) {
	d.want.Designs = append([]stage.Design(nil), d.want.Designs...)
	d.want.Designs[d.edit] = d.want.Designs[d.edit].With(set...)
	d.note, d.fault = "", ""
}

// forget takes keys off the design that is edited: what they say its file says,
// too.
func (d *Desk) forget(set []tree.KeyValue) {
	keys := d.want.Designs[d.edit].Keys
	d.want.Designs[d.edit].Keys = slices.DeleteFunc(slices.Clone(keys), func(k tree.KeyValue) bool {
		return slices.ContainsFunc(set, func(o tree.KeyValue) bool { return o.Key == k.Key })
	})
}

// regraduate sets thicknesses at places; where nothing is changed in the end, the key goes.
func (d *Desk) regraduate(set []tree.KeyValue) {
	d.change(set)
	one := d.design()
	if d.tools(one); one != nil && !caliper.Of(one, d.box.ahead).Changed() {
		d.forget(set)
	}
}

// takeBack forgets what was changed of the design that is edited.
func (d *Desk) takeBack() {
	d.want.Designs = append([]stage.Design(nil), d.want.Designs...)
	d.want.Designs[d.edit].Keys = nil
	d.say("the design is as its file says")
	d.fault = ""
}

// unpin takes a pin out.
func (d *Desk) unpin(i int) {
	if i < len(d.want.Pins) {
		d.want.Pins = append(d.want.Pins[:i:i], d.want.Pins[i+1:]...)
	}
}

// drawKeep draws what takes the work along.
func (d *Desk) drawKeep(c *panel.Column) {
	pair := c.Cells(panel.ButtonHeight, 2)
	off := ""
	if d.o.Keep == nil || d.shown == nil {
		off = "nothing can be written here"
	}
	if d.panel.Button(panel.Control{ID: "keep", At: pair[0], Label: "Keep the case", Key: "K", Off: off,
		Tip: "writes what was changed as a new case file beside you: its base and the changed keys"}) {
		d.keepCase()
	}
	if d.panel.Button(panel.Control{ID: "picture", At: pair[1], Label: "Picture", Key: "S", Off: off,
		Tip: "writes the drawing as a PNG; its path goes to the clipboard"}) {
		d.keepPicture()
	}
	row := c.Cells(panel.ButtonHeight, 3)
	if d.panel.Button(panel.Control{ID: "designs", At: row[0], Label: "Designs", Tip: "another design: those that come with the program, those that were open last, those of the folder [Ctrl N]"}) {
		d.show(startSheet, false)
	}
	if d.panel.Button(panel.Control{ID: "open file", At: row[1], Label: "Open", Tip: "a case file or a lesson in any folder, by its path [Ctrl O]"}) {
		d.show(fileSheet, false)
	}
	if d.panel.Button(panel.Control{ID: "put beside", At: row[2], Label: "Beside", Off: d.offBeside(), Tip: "puts another design beside this one, both under one scale, to compare them"}) {
		d.show(startSheet, true)
	}
	row = c.Cells(panel.ButtonHeight, 3)
	if d.panel.Button(panel.Control{ID: "lessons", At: row[0], Label: "Lessons", Key: "L"}) {
		d.over = lessonSheet
	}
	if d.panel.Button(panel.Control{ID: "help", At: row[1], Label: "Help", Key: "H"}) {
		d.over = helpSheet
	}
	half := panel.Rect{X: row[2].X, Y: row[2].Y, W: math.Round(row[2].W/2) - 2, H: row[2].H}
	if d.panel.Button(panel.Control{ID: "smaller letters", At: half, Label: "A −", Tip: "smaller letters [Ctrl −]", Off: d.offLetters(-1)}) {
		d.enlargeLetters(-1)
	}
	half.X = row[2].Right() - half.W
	if d.panel.Button(panel.Control{ID: "larger letters", At: half, Label: "A +", Tip: "larger letters [Ctrl +]", Off: d.offLetters(1)}) {
		d.enlargeLetters(1)
	}
}

// offBeside is why no design can be put beside the one shown; "": one can.
func (d *Desk) offBeside() string {
	switch {
	case d.lesson != nil:
		return "a lesson says what it shows"
	case len(d.want.Designs) == 0:
		return "no design is open"
	}
	return ""
}

// drawCaution says what all this is.
func (d *Desk) drawCaution(c *panel.Column) {
	const caution = "An indication, not a promise: wood scatters by a fifth and more, and string tension can hurt. Your own judgement and a qualified eye come first."
	d.panel.Note(c.Row(d.atlas.ParagraphHeight(panel.Small, caution, c.Width())), caution)
}

// drawStrip draws the section under the drawing, and a lesson's bars.
func (d *Desk) drawStrip() {
	if !d.stripped() || d.lay.Strip.Empty() {
		return
	}
	d.panel.Sheet(d.lay.Strip)
	in := d.sectionInput()
	if d.lesson.Below() {
		in.Beside = func(r panel.Rect) { d.lesson.DrawBelow(d.panel.List(), r) }
	}
	if in.Cut == stage.NoCut || d.lay.Bars {
		in.Beside(d.lay.Strip.Inset(14, 6))
		return
	}
	d.section.Draw(d.panel.List(), d.lay.Strip, in)
}

// sectionInput is what the section shows now.
func (d *Desk) sectionInput() section.Input {
	return section.Input{Shown: d.shown, Cut: d.want.Cut.Kind, Edit: d.edit, Scales: d.scales()}
}
