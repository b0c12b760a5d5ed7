package main

import (
	"fmt"
	"io"
	"os/exec"
	"slices"
	"testing"
	"time"
)

// BenchmarkPointerToPicture drags sliders of the window in steps and presses the words of choices, each begun
// when the picture of the one before is on the screen, and tells the median from moving or pressing the pointer
// to the new picture shown.
func BenchmarkPointerToPicture(b *testing.B) {
	const high = "1280x1300" // for the tools of the bridge
	for _, c := range []struct {
		id, fold string
		size     string  // of the window: high enough for the tools of the fold
		from, to float64 // shares of the slider
		words    []int   // of the choice, from 0; none: it is a slider
	}{
		{"relief.depth", "", "1280x800", 0.2, 0.4, nil},
		{"relief.shape", "", "1280x800", 0, 0, []int{0, 1, 2}},
		{"strings.tension", "fold_Strings", "1280x800", 0.4, 0.6, nil},
		{"bridge.saddle_height", "fold_Bridge", high, 0.45, 0.55, nil},
		{"bridge.wood", "fold_Bridge", high, 0, 0, []int{0, 1}},
		{"bridge.hollow", "fold_Bridge", high, 0.1, 0.4, nil},
		{"bridge.foot", "fold_Bridge", high, 0.7, 0.85, nil},
	} {
		b.Run(c.id, func(b *testing.B) {
			p := sit(b, "course-guitar-relief", "--size", c.size)
			hand := p.hand()
			var step func(i int)
			if c.words == nil {
				p.unfold(c.fold, c.id+"/handle")
				p.point(c.id+"/handle", 0.5)
				p.Do("xdotool", "mousedown", "1")
				p.moveHand(hand, c.id, c.from)
				step = func(i int) { p.moveHand(hand, c.id, c.from+(c.to-c.from)*float64(i%5+1)/5) }
			} else {
				p.unfold(c.fold, c.id+"/0")
				step = func(i int) { p.pressWord(hand, c.id, c.words[i%len(c.words)]) }
				step(0)
				p.settled()
			}
			var took []time.Duration
			for i := 1; b.Loop() || len(took) < 20; i++ {
				was := p.last.values["A.sink"]
				began := time.Now()
				step(i)
				p.until("another sink", func(f told) bool { return f.values["A.sink"] != was })
				took = append(took, time.Since(began))
			}
			p.Do("xdotool", "mouseup", "1")
			slices.Sort(took)
			b.ReportMetric(1e3*took[len(took)/2].Seconds(), "median-ms")
			b.ReportMetric(1e3*took[len(took)*9/10].Seconds(), "ninth-tenth-ms")
		})
	}
}

// unfold opens a fold of the tools in which a control stands.
func (p *person) unfold(fold, id string) {
	if fold == "" {
		return
	}
	p.click("fold_Relief_under_the_foot")
	p.until("a fold", func(f told) bool { return f.places["relief.depth/handle"] == [4]float64{} })
	p.click(fold)
	p.until("the tools of "+fold, func(f told) bool { return f.places[id][3] > 0 })
}

// hand is a pointer that moves without the start of a program.
func (p *person) hand() io.Writer {
	p.t.Helper()
	c := exec.Command("xdotool", "-")
	c.Env = p.Env()
	w, err := c.StdinPipe()
	if err != nil {
		p.t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		p.t.Fatal(err)
	}
	p.t.Cleanup(func() { _ = w.Close(); _ = c.Wait() })
	return w
}

// moveHand moves it to a share of a slider.
func (p *person) moveHand(hand io.Writer, id string, share float64) {
	at := p.last.places[id+"/track"]
	fmt.Fprintf(hand, "mousemove --window %s %.0f %.0f\n", p.id, at[0]+share*at[2], at[1]+at[3]/2)
}

// pressWord presses word i of a choice.
func (p *person) pressWord(hand io.Writer, id string, i int) {
	at := p.last.places[fmt.Sprintf("%s/%d", id, i)]
	fmt.Fprintf(hand, "mousemove --window %s %.0f %.0f click --delay 0 1\n", p.id, at[0]+at[2]/2, at[1]+at[3]/2)
}
