package main

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
)

// word is a line that is written in the window.
type word struct {
	at   [4]float64 // what is seen of it
	how  string     // "whole", "shortened", "cut" or "covered"
	text string
}

// wordOf reads what the window tells of a line.
func wordOf(line string) (w word) {
	part := strings.SplitN(line, " ", 7)
	for k := range w.at {
		w.at[k], _ = strconv.ParseFloat(part[1+k], 64)
	}
	w.how, w.text = part[5], part[6]
	return w
}

// has tells whether a line of the frame begins so.
func (f told) has(begins string) bool {
	return slices.ContainsFunc(f.words, func(w word) bool { return strings.HasPrefix(w.text, begins) })
}

// line is the first line of the frame that has some words in it.
func (f told) line(part string) word {
	for _, w := range f.words {
		if strings.Contains(w.text, part) {
			return w
		}
	}
	return word{}
}

// beside is what stands at the right of a name, in its row: a number with its unit.
func (f told) beside(name string) float64 {
	for _, n := range f.words {
		if n.text != name {
			continue
		}
		for _, w := range f.words {
			if w.at[0] > n.at[0]+n.at[2] && math.Abs(w.at[1]-n.at[1]) < 3 && w.at[0] < n.at[0]+300 {
				text, _, _ := strings.Cut(w.text, " ")
				v, err := strconv.ParseFloat(strings.ReplaceAll(text, "−", "-"), 64)
				if err == nil {
					return v
				}
			}
		}
	}
	return math.NaN()
}

// coarse sits down before bundled cases on coarse triangles, as carved, which answer soon.
func coarse(t testing.TB, args []string, names ...string) *person {
	t.Helper()
	dir := t.TempDir()
	args = append(args, "--linear", "--size", "1040x700")
	for _, name := range names {
		text := fmt.Sprintf("format = 1\nbase = %q\n[mesh]\nrefine = 0.25\n", name)
		if err := os.WriteFile(filepath.Join(dir, name+".toml"), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		args = append(args, name+".toml")
	}
	return sitAt(t, dir, args...)
}

// reads waits for a frame in which a line begins so.
func (p *person) reads(begins string) told {
	p.t.Helper()
	return p.until(strconv.Quote(begins), func(f told) bool { return f.has(begins) && f.values["busy"] == "false" })
}

// still takes frames until none has come for a while.
func (p *person) still() {
	for {
		select {
		case f, ok := <-p.frames:
			if ok {
				p.last = f
				continue
			}
		case <-time.After(400 * time.Millisecond):
		}
		return
	}
}

// scrolled turns the wheel over a part of the page until a line begins so.
func (p *person) scrolled(id, begins string) told {
	p.t.Helper()
	p.point(id, 0.3)
	for range 40 {
		if f := p.last; f.line(begins).how == "whole" {
			return f
		}
		n := p.last.number("frame")
		p.Do("xdotool", "click", "5")
		p.until("a turn of the wheel", func(f told) bool { return f.number("frame") > n })
		p.still() // what it scrolls to may take another frame
	}
	p.t.Fatalf("the wheel does not bring %q into sight; there are %v", begins, p.last.words)
	return told{}
}

// openWays opens the list of forces, once nothing changes it any more, and reads what the strings press with, N.
func (p *person) openWays() float64 {
	p.t.Helper()
	if p.last.values["ranged"] != "true" {
		p.until("the last of the numbers", func(f told) bool { return f.values["ranged"] == "true" && f.values["busy"] == "false" })
	}
	p.still()
	p.scrolled("numbers", "Where the load goes")
	p.click("fold_Where_the_load_goes")
	p.reads("strings press down with")
	return p.scrolled("numbers", "strings press down with").beside("strings press down with")
}

// A pointer that rests on a word of what is seen, or from where, reads what that word means, below it, whatever
// is chosen.
func TestTipsAreOfTheirWord(t *testing.T) {
	p := coarse(t, nil, "course-guitar-relief")
	for _, c := range [][2]string{{"field/2", "Pull (brown) and push"}, {"field/5", "Force that goes through"}, {"field/7", "Air that is left"},
		{"view/2", "Level, from the tail"}, {"view/4", "From inside"}} {
		p.point(c[0], 0.5)
		w, at := p.reads(c[1]).line(c[1]), p.last.places[c[0]]
		if w.at[1] < at[1]+at[3] || w.at[1] > at[1]+at[3]+30 || math.Abs(w.at[0]-at[0]) > 200 {
			t.Errorf("the words of %s at %v stand at %v", c[0], at, w.at)
		}
	}
	p.leave()
}

// Under the hand a deeper relief lets the picture sink deeper by the same scales, which change afterwards and say so.
// At a part of the load the foot's axes are those of all of it. The arch is drawn as high in every window.
func TestScalesStayUnderTheHand(t *testing.T) {
	p := coarse(t, []string{"--section", "cross", "--forces"}, "course-guitar-relief")
	drawn := func() string {
		_, words, _ := strings.Cut(p.last.line("movement and gaps drawn").text, ", full string load; ")
		return words
	}
	axes := func() (out []string) { // what stands beside both axes of the foot
		foot := p.last.line("above, mm: relief")
		for _, w := range p.last.words {
			if _, err := strconv.ParseFloat(w.text, 64); err == nil && w.at[1] > foot.at[1] && w.at[0] > foot.at[0]-10 && w.at[0] < foot.at[0]+40 {
				out = append(out, w.text)
			}
		}
		return out
	}
	var press float64
	if _, err := fmt.Sscanf(p.last.line("strings ").text, "strings %g N", &press); err != nil {
		t.Fatal(err)
	}
	words, legend, axis, sink := drawn(), p.last.values["legend"], axes(), p.last.number("A.sink")
	if words == "" || len(axis) != 3 {
		t.Fatalf("over the picture stands %q, at the foot's axes %q", words, axis)
	}
	p.point("relief.depth/handle", 0.5)
	p.Do("xdotool", "mousedown", "1")
	for _, share := range []float64{0.7} {
		p.point("relief.depth/track", share)
		p.until("a deeper sink", func(f told) bool { return f.number("A.sink") > sink+0.01 && f.values["busy"] == "false" })
		if sink = p.last.number("A.sink"); drawn() != words || p.last.values["legend"] != legend || !slices.Equal(axes(), axis) {
			t.Errorf("under the hand: %q, legend %s, axes %q; before %q, %s, %q", drawn(), p.last.values["legend"], axes(), words, legend, axis)
		}
	}
	p.Do("xdotool", "mouseup", "1")
	p.reads("Another scale: ")
	p.slide("load", 0.07)
	p.until("a part of the load", func(f told) bool {
		return f.number("load") < 0.1 && f.values["busy"] == "false" && f.values["A.sure"] == "true"
	})
	if got, want := p.last.line("strings ").text, fmt.Sprintf("strings %.0f N", press*p.last.number("load")); got != want {
		t.Errorf("at a part of the load an arrow says %q, want %q", got, want)
	}
	axis = axes()
	p.slide("load", 0.9)
	p.until("most of the load", func(f told) bool { return f.number("load") > 0.85 && f.values["busy"] == "false" })
	if got := axes(); !slices.Equal(got, axis) {
		t.Errorf("at most of the load the foot's axes end at %q, at a little of it at %q", got, axis)
	}
	for _, size := range [][2]string{{"1300", "800"}, {"820", "620"}} {
		was := p.last.places["play"]
		p.Do("xdotool", "windowsize", p.id, size[0], size[1])
		p.until("another size", func(f told) bool { return f.places["play"] != was })
		if p.last.line("heights 2 ").text == "" {
			t.Errorf("in a window of %s x %s the section says %q", size[0], size[1], p.last.line("heights").text)
		}
	}
	p.until("the end of the note", func(f told) bool { return f.values["note"] == "" })
	p.leave()
}

// What the picture and the panel say: a pin's number, the paths of the load flow, what happens while the
// load plays, and forces whose sums close.
func TestWhatTheWindowSays(t *testing.T) {
	p := coarse(t, nil, "course-guitar-relief")
	p.Do("xdotool", "mousemove", "--window", p.id, "400", "250", "click", "1")
	pin := p.reads("pin 1: ").line("pin 1: ")
	if !strings.HasSuffix(pin.text, " mm") {
		t.Errorf("the pin says %q", pin.text)
	}
	p.key("5")
	p.until("the paths", func(f told) bool { return f.line("each path carries").text != "" })
	p.point("flow", 0.5)
	if w := p.reads("Not now: ").line("Not now: "); !strings.Contains(w.text, "load flow") {
		t.Errorf("the tick of the paths says %q", w.text)
	}
	p.key("1")
	p.until("the sink", func(f told) bool { return f.values["field"] == "sink" })
	for _, event := range []string{"the middle first touches", "the middle has closed"} {
		if w := p.last.line(event); w.how != "whole" {
			t.Errorf("under the ruler %q is written %q", event, w.how)
		}
	}
	strings := p.openWays()
	f := p.scrolled("numbers", "the foot together")
	foot, parts := f.beside("the foot together"), f.beside("of that straight down")+f.beside("its drag along the slopes bears")
	all := p.scrolled("numbers", "At pitch").beside("together")
	if !(strings > 100) || math.Abs(foot-strings) > 0.11 || math.Abs(all-strings) > 0.11 || math.Abs(parts-foot) > 0.11 {
		t.Errorf("strings %g N, foot %g N of parts %g N, held up %g N", strings, foot, parts, all)
	}
	p.leave()
}

// apart fails where two lines of the drawing lie on each other, or one is cut or covered.
func (p *person) apart() {
	p.t.Helper()
	top, left := p.last.places["view"], p.last.places["numbers"][0]
	var in []word
	for _, w := range p.last.words {
		if w.at[1] > top[1]+top[3] && w.at[0]+w.at[2] < left && w.at[1] < p.last.places["load"][1] {
			in = append(in, w)
		}
	}
	for i, a := range in {
		if a.how != "whole" {
			p.t.Errorf("%q is %s", a.text, a.how)
		}
		for _, b := range in[:i] {
			if a.at[0] < b.at[0]+b.at[2] && b.at[0] < a.at[0]+a.at[2] && a.at[1] < b.at[1]+b.at[3] && b.at[1] < a.at[1]+a.at[3] {
				p.t.Errorf("%q at %v lies on %q at %v", a.text, a.at, b.text, b.at)
			}
		}
	}
}

// Of two feet and a post picture and list say what each bears; no word of the load flow, from wherever it is seen,
// lies on another.
func TestTwoFeetAndAPost(t *testing.T) {
	p := coarse(t, []string{"--field", "load flow", "--forces", "--view", "from outside"}, "bowed-layout")
	for _, view := range []string{"0", "1", "2", "3"} {
		p.click("view/" + view)
		p.Do("xdotool", "mousemove", "--window", p.id, "20", "500")
		p.still()
		p.apart()
		for _, part := range []string{"post ", "bass foot ", "treble foot ", "strings "} {
			if w := p.last.line(part); !strings.HasSuffix(w.text, " N") {
				t.Errorf("view %s: the picture says %q of the %s", view, w.text, part)
			}
		}
	}
	if w := p.last.line("middle of the foot"); w.text != "" {
		t.Errorf("two feet have no middle: %q", w.text)
	}
	strings := p.openWays()
	f := p.scrolled("numbers", "At pitch")
	post, all := f.beside("by post"), f.beside("together")
	if !(post > 0.4*strings) || math.Abs(all-strings) > 0.11 {
		t.Errorf("strings %g N, the post %g N, held up together %g N", strings, post, all)
	}
	p.leave()
}

// Of two designs the list's columns stand under each other, whatever the unit; their difference has one name.
func TestTwoDesignsInColumns(t *testing.T) {
	p := coarse(t, nil, "course-guitar", "course-guitar-treble")
	f := p.until("two designs", func(f told) bool { return f.number("scenes") == 2 && f.has("A 0.") })
	var right []float64
	for _, w := range f.words {
		if strings.HasPrefix(w.text, "A ") && strings.Contains(w.text, "  B ") {
			for _, d := range f.words {
				if d.at[0] > w.at[0]+w.at[2] && math.Abs(d.at[1]-w.at[1]) < 3 {
					right = append(right, d.at[0]+d.at[2])
				}
			}
		}
	}
	if len(right) < 4 || slices.Max(right)-slices.Min(right) > 1.5 {
		t.Errorf("the differences end at %v", right)
	}
	if !f.has("at 100 % of string load; at the right B less A") {
		t.Error("the list does not say what its last column is")
	}
	p.apart()
	p.key("d")
	p.reads("B less A: sink")
	p.leave()
}

// What is changed is listed, from what to what, and said under the picture alone; the arch is said in
// millimetres. Taken back, nothing is listed.
func TestChangesAreSaid(t *testing.T) {
	p := coarse(t, nil, "course-guitar-relief")
	p.click("fold_Arch")
	p.reads("Arch height: 22.0 mm")
	p.slide("relief.depth", 0.5)
	p.reads("0.120 mm → 0.25")
	p.key("v")
	p.reads("Changed: Depth at the middle 0.120 mm → 0.25")
	p.key("v", "ctrl+z")
	p.until("nothing changed", func(f told) bool {
		return f.values["A.keys"] == "0" && !f.has("0.120 mm → ") && f.has("Keep the case")
	})
	p.leave()
}
