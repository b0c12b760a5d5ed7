package main

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"archload/cases/answer"
	"archload/cases/lesson"

	"archload/cmd/internal/shell"
	"archload/viz/window/windowtest"
)

// asChild holds the command line with which the test program is to be archview
// itself: a window wants the first thread, which tests do not run on.
const asChild = "ARCHVIEW_TEST_ARGS"

func TestMain(m *testing.M) {
	if args := os.Getenv(asChild); args != "" {
		os.Exit(run(context.Background(), strings.Split(args, "\n"), os.Stdout, os.Stderr))
	}
	os.Exit(m.Run())
}

// late is how long a test waits for the next frame, which only a window that hangs
// does not show.
const late = 5 * time.Minute

// told is what the window told of its last frame.
type told struct {
	values map[string]string
	places map[string][4]float64
	words  []word
}

// number is a value of the frame.
func (f told) number(name string) float64 {
	v, err := strconv.ParseFloat(f.values[name], 64)
	if err != nil {
		return math.NaN()
	}
	return v
}

// person drives archview on a screen.
type person struct {
	*windowtest.Screen
	t      testing.TB
	cmd    *exec.Cmd
	frames chan told
	last   told
	id     string // of the window
	dir    string // where it stands
}

// sit opens archview with a command line and waits for its first answer.
func sit(t testing.TB, args ...string) *person {
	t.Helper()
	return sitAt(t, t.TempDir(), args...)
}

// sitAt does so in a folder.
func sitAt(t testing.TB, dir string, args ...string) *person {
	t.Helper()
	p := begin(t, dir, args...)
	p.settled()
	return p
}

// begin opens archview in a folder and waits for its window.
func begin(t testing.TB, dir string, args ...string) *person {
	t.Helper()
	exe, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	p := &person{Screen: windowtest.Start(t), t: t, cmd: exec.Command(exe), frames: make(chan told, 10000), dir: dir}
	p.cmd.Dir = p.dir
	p.cmd.Env = p.Env(asChild+"="+strings.Join(append(args, "--tell"), "\n"), "HOME="+p.dir, "XDG_CONFIG_HOME="+filepath.Join(p.dir, "settings"))
	p.cmd.Stderr = os.Stderr
	out, err := p.cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := p.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = p.cmd.Process.Kill() })
	go p.listen(out)
	p.id = strings.Fields(p.Do("xdotool", "search", "--sync", "--onlyvisible", "--name", "^archview"))[0]
	return p
}

// listen reads the lines of each frame.
func (p *person) listen(r io.Reader) {
	defer close(p.frames)
	f := told{places: map[string][4]float64{}}
	s := bufio.NewScanner(r)
	s.Buffer(nil, 1<<20)
	for s.Scan() {
		word := strings.Fields(s.Text())
		switch word[0] {
		case "place":
			var at [4]float64
			for k := range at {
				at[k], _ = strconv.ParseFloat(word[2+k], 64)
			}
			f.places[word[1]] = at
		case "word":
			f.words = append(f.words, wordOf(s.Text()))
		case "frame":
			f.values = map[string]string{"frame": word[1]}
			for _, w := range word[2:] {
				k, v, _ := strings.Cut(w, "=")
				if _, twice := f.values[k]; twice {
					k += "+"
				}
				f.values[k] = v
			}
			p.frames <- f
			f = told{places: map[string][4]float64{}}
		}
	}
}

// until waits for a frame that fits.
func (p *person) until(what string, fits func(f told) bool) told {
	p.t.Helper()
	for {
		select {
		case f, ok := <-p.frames:
			if !ok {
				p.t.Fatalf("the window closed before %s", what)
			}
			p.last = f
			if fits(f) {
				return f
			}
		case <-time.After(late):
			p.t.Fatalf("no sign of %s; the last frame told %v", what, p.last.values)
		}
	}
}

// settled waits for a frame whose numbers are all there.
func (p *person) settled() told {
	p.t.Helper()
	return p.until("the answer", func(f told) bool { return f.values["settled"] == "true" && f.values["busy"] == "false" })
}

// point moves the pointer to a share of a control: across, and in the middle
// of its height.
func (p *person) point(id string, share float64) (x, y string) {
	p.t.Helper()
	at, ok := p.last.places[id]
	if !ok || at[2] == 0 {
		p.t.Fatalf("there is no %s to be seen", id)
	}
	x, y = fmt.Sprintf("%.0f", at[0]+share*at[2]), fmt.Sprintf("%.0f", at[1]+at[3]/2)
	p.Do("xdotool", "mousemove", "--window", p.id, x, y)
	return x, y
}

// click presses and lets go on a control.
func (p *person) click(id string) {
	p.t.Helper()
	p.point(id, 0.5)
	p.Do("xdotool", "click", "1")
}

// slide drags a slider's handle to a share of its rule.
func (p *person) slide(id string, share float64) {
	p.t.Helper()
	p.point(id+"/handle", 0.5)
	p.Do("xdotool", "mousedown", "1")
	p.point(id+"/track", share)
	p.Do("xdotool", "mouseup", "1")
}

func (p *person) key(k ...string) {
	p.t.Helper()
	p.Do("xdotool", append([]string{"key", "--delay", "30"}, k...)...)
}

// leave presses the key that closes the window.
func (p *person) leave() {
	p.t.Helper()
	p.key("ctrl+q")
	if err := p.cmd.Wait(); err != nil {
		p.t.Errorf("archview ended with %v", err)
	}
}

func TestWindowAsAMakerWould(t *testing.T) {
	p := sit(t, "course-guitar-relief")
	p.orbitAndZoom()
	p.everyField()
	p.loadAndPlay()
	p.pinAndSection()
	p.reliefAndKeep()
	p.leave()
	looks, err := os.ReadFile(filepath.Join(p.dir, "settings", "archload", "archview.txt"))
	if err != nil || !strings.Contains(string(looks), "section = cross\n") || !strings.Contains(string(looks), "view = from outside\n") {
		t.Errorf("the window remembers %q, %v; want the section and the view as they were left", looks, err)
	}
}

func (p *person) orbitAndZoom() {
	t := p.t
	was := p.last
	p.Do("xdotool", "mousemove", "--window", p.id, "450", "420", "mousedown", "1")
	p.Do("xdotool", "mousemove", "--window", p.id, "520", "440")
	p.Do("xdotool", "mousemove", "--window", p.id, "560", "470")
	p.Do("xdotool", "mouseup", "1")
	got := p.until("another yaw", func(f told) bool { return f.number("yaw") < was.number("yaw")-20 })
	if got.number("pitch") <= was.number("pitch") || got.number("distance") != was.number("distance") {
		t.Errorf("after a drag to the lower right: %v, before %v", got.values, was.values)
	}
	p.Do("xdotool", "click", "4")
	p.until("a shorter distance", func(f told) bool { return f.number("distance") < 0.95*was.number("distance") })
	p.key("o")
	p.until("the view from outside", func(f told) bool { return f.number("pitch") == 90 && f.number("yaw") == 0 })
}

func (p *person) everyField() {
	for i, word := range lesson.Fields() {
		if i%2 == 0 {
			p.key(strconv.Itoa(i))
		} else {
			p.click(fmt.Sprintf("field/%d", i))
		}
		p.until(word, func(f told) bool { return f.values["field"] == strings.ReplaceAll(word, " ", "_") })
	}
	p.key("1")
	p.until("sink again", func(f told) bool { return f.values["field"] == "sink" })
	p.settled()
}

func (p *person) loadAndPlay() {
	t := p.t
	p.slide("load", 0.1)
	f := p.until("a tenth of the load", func(f told) bool {
		return math.Abs(f.number("load")-0.1) < 0.02 && f.values["busy"] == "false"
	})
	if f.number("A.middle") != 0 || !(f.number("A.gap") > 0.01) {
		t.Errorf("at a tenth of the load the middle carries %v over a gap of %v; want nothing over an open gap", f.values["A.middle"], f.values["A.gap"])
	}
	p.key("p")
	p.until("the play", func(f told) bool { return f.values["play"] == "true" })
	f = p.until("its end", func(f told) bool {
		return f.values["play"] == "false" && f.number("load") == 1 && f.values["busy"] == "false"
	})
	if !(f.number("A.middle") > 0.1) {
		t.Errorf("at full load the middle carries %v", f.values["A.middle"])
	}
}

func (p *person) pinAndSection() {
	t := p.t
	p.Do("xdotool", "mousemove", "--window", p.id, "520", "300")
	p.Do("xdotool", "click", "1")
	p.until("a pin", func(f told) bool {
		return strings.Contains(fmt.Sprint(f.values), "pin_1@")
	})
	p.key("x")
	if f := p.until("the section", func(f told) bool { return f.values["section"] == "cross" }); f.number("scenes") != 1 {
		t.Errorf("the section shows %v scenes", f.values["scenes"])
	}
	p.settled()
}

// reliefAndKeep drags the relief, keeps the case, and has archload solve it:
// the gauge reads the same to the digits shown.
func (p *person) reliefAndKeep() {
	t := p.t
	p.slide("relief.depth", 0.5)
	p.until("the new relief", func(f told) bool { return f.values["A.keys"] == "1" && f.values["busy"] == "false" })
	f := p.until("the last of the numbers", func(f told) bool { return f.values["ranged"] == "true" && f.values["busy"] == "false" })
	p.key("k")
	p.until("the kept case", func(f told) bool {
		return strings.HasPrefix(f.values["note"], "kept_as_course-guitar-relief-changed.toml")
	})
	exe := filepath.Join(t.TempDir(), "archload")
	if out, err := exec.Command("go", "build", "-o", exe, "archload/cmd/archload").CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	solve := exec.Command(exe, "solve", "course-guitar-relief-changed.toml", "--json", "-")
	solve.Dir = p.dir
	out, err := solve.Output()
	if err != nil {
		t.Fatal(err)
	}
	var r answer.Report
	if err := json.NewDecoder(bytes.NewReader(out)).Decode(&r); err != nil {
		t.Fatal(err)
	}
	if got, want := f.values["A.sink"], fmt.Sprintf("%.6f", r.Bridge.Sink); got != want {
		t.Errorf("the window says that the bridge sinks %s mm, archload solve says %s", got, want)
	}
	g := r.Gauges[0]
	want := fmt.Sprintf("%s@%.1f,%.1f:%.6f", strings.ReplaceAll(g.Name, " ", "_"), g.X, g.Y, g.Sink)
	if got := f.values["A.gauge"]; got != want {
		t.Errorf("the window's gauge reads %s, archload solve says %s", got, want)
	}
}

func TestWindowWithTwoDesignsAndALesson(t *testing.T) {
	p := sit(t, "course-guitar", "course-guitar-treble")
	if p.last.number("scenes") != 2 {
		t.Fatalf("two designs give %v", p.last.values)
	}
	p.key("d")
	f := p.until("the difference", func(f told) bool { return f.number("scenes") == 1 && f.values["busy"] == "false" })
	if lo, hi, _ := strings.Cut(f.values["legend"], ".."); !strings.HasPrefix(lo, "-") || strings.HasPrefix(hi, "-") || hi == "0" {
		t.Errorf("the difference's legend runs %s, want from less in B to more", f.values["legend"])
	}
	p.key("l")
	p.until("the list of lessons", func(f told) bool { _, ok := f.places["lesson_2-relief"]; return ok })
	p.click("lesson_2-relief")
	steps := 8
	for k := 1; k <= steps; k++ {
		want := fmt.Sprintf("%d/%d", k, steps)
		p.until("step "+want, func(f told) bool {
			return f.values["step"] == want && f.values["busy"] == "false" && f.values["play"] == "false" && f.values["settled"] == "true"
		})
		if p.last.values["fault"] != "" {
			t.Errorf("step %d: %s", k, p.last.values["fault"])
		}
		if k < steps {
			p.click("step_on")
		}
	}
	p.key("Escape")
	p.until("the lesson's end", func(f told) bool { return f.values["step"] == "" })
	p.leave()
}

// What cannot be shown is said in a plain line, with an exit code.
func TestPlainFaults(t *testing.T) {
	exe, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		args, display, want string
		code                int
	}{
		{"course-guitar", "", "DISPLAY", shell.ExitCannot},
		{"course-guitar", ":987", "display", shell.ExitCannot},
		{"nonesuch", "", "no bundled case of this name", shell.ExitFaulty},
		{"course-guitar\n--field\nsinking", "", `--field: want one of "none", "sink"`, shell.ExitFaulty},
		{"course-guitar\n--set\nbridge.relief.depth = -1", "", "bridge.relief.depth", shell.ExitFaulty},
		{"a\nb\nc", "", "found 3 cases", shell.ExitFaulty},
		{"--lesson\nnonesuch", "", "no bundled lesson of this name", shell.ExitFaulty},
		{"course-guitar\n--size\n12", "", "--size: want WIDTHxHEIGHT", shell.ExitFaulty},
		{"course-guitar\n--load\nhalf", "", "want a number", shell.ExitFaulty},
		{"course-guitar\n--difference", "", "--difference: want two cases", shell.ExitFaulty},
		{"course-guitar\n--step\n3", "", "--step: want --lesson", shell.ExitFaulty},
		{"course-guitar\n--asking", "", "--asking: want --lesson", shell.ExitFaulty},
		{"--lesson\n2-relief\n--step\n99\n--snapshot\nx.png", "", "want a step from 1 to 8", shell.ExitCannot},
		{"course-guitar\n--snapshot\nx.jpg", "", "ends in .png", shell.ExitFaulty},
		{"course-guitar\n--snapshot\nnonesuch/x.png", "", "cannot write nonesuch/x.png", shell.ExitCannot},
	} {
		cmd := exec.Command(exe)
		cmd.Env = append(os.Environ(), asChild+"="+c.args, "DISPLAY="+c.display, "WAYLAND_DISPLAY=")
		out, err := cmd.CombinedOutput()
		if cmd.ProcessState.ExitCode() != c.code || !strings.Contains(string(out), c.want) || strings.Contains(string(out), "goroutine") {
			t.Errorf("archview %q: exit %d (%v), %s; want exit %d and %q", c.args, cmd.ProcessState.ExitCode(), err, out, c.code, c.want)
		}
		if n := strings.Count(strings.TrimSpace(string(out)), "\n"); n > 0 {
			t.Errorf("archview %q says %d lines, want one: %s", c.args, n+1, out)
		}
	}
}
