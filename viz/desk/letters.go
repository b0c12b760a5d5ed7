package desk

import "archload/viz/desk/looks"

// letterScale is how many times as large everything is written in a window: as the looks
// say, as far as the page keeps room for a picture.
func (d *Desk) letterScale(width, height int, density float64) float64 {
	leastWide, leastTall := 440.0, 320.0 // points
	if d.lesson != nil {                 // its words need room, too
		leastWide, leastTall = 520, 390
	}
	most := looks.MostLetters
	for ; most > 0; most-- {
		k := density * looks.LetterStep(most)
		if float64(width) >= leastWide*k && float64(height) >= leastTall*k {
			break
		}
	}
	d.page.mostSteps, d.page.steps = most, min(d.looks.Letters, most)
	return looks.LetterStep(d.page.steps)
}

// enlargeLetters writes everything larger by a step, or smaller. Beyond what the window has room
// for it does nothing.
func (d *Desk) enlargeLetters(by int) {
	want := d.page.steps + by
	if want > d.page.mostSteps {
		d.say("This window has no room for larger letters.")
	}
	d.looks.Letters = max(0, min(want, d.page.mostSteps))
}

// offLetters is why letters cannot grow or shrink by a step; "": they can.
func (d *Desk) offLetters(by int) string {
	switch n := d.page.steps + by; {
	case n < 0:
		return "letters are as small as they get"
	case n > d.page.mostSteps:
		return "this window has no room for larger letters"
	}
	return ""
}
