//go:build cgo

package window

import (
	"encoding/json"
	"fmt"
	"image/color"
	"io"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"

	"archload/internal/screen"
	"archload/viz/desk"
	"archload/viz/panel"
)

// asChild is set where the test program is to open a window itself: GLFW
// wants the first thread, which tests do not run on.
const asChild = "ARCHLOAD_TEST_WINDOW"

func TestMain(m *testing.M) {
	if title := os.Getenv(asChild); title != "" {
		if err := Run(title, [2]int{820, 600}, &teller{out: json.NewEncoder(os.Stdout)}); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		return
	}
	os.Exit(m.Run())
}

// pass is what the child tells of one call of Frame, or of one drawn frame.
type pass struct {
	Width, Height int
	Density       float64
	In            panel.Input
	Drawn         int
	CPU, Used     float64 // s, of this frame and of the program so far
	Woken         bool    // the goroutine that was started by the key w has asked
}

// moving is how long things move after the key m.
const moving = 500 * time.Millisecond

// teller is an App that tells what it gets.
type teller struct {
	out   *json.Encoder
	wake  func()
	rang  chan bool
	drawn int
	quit  bool
	copy  bool
	moves time.Time // until when things move
}

func (a *teller) Waker(wake func()) { a.wake, a.rang = wake, make(chan bool, 1) }
func (a *teller) Moving() bool      { return time.Now().Before(a.moves) }
func (a *teller) Done() bool        { return a.quit }

func (a *teller) Clipboard() (string, bool) {
	was := a.copy
	a.copy = false
	return "0.42 mm", was
}

func (a *teller) Drawn(cpu, _ float64) {
	a.drawn++
	_ = a.out.Encode(pass{Drawn: a.drawn, CPU: cpu, Used: processorTime()})
}

func (a *teller) Frame(width, height int, density float64, in panel.Input) *desk.Frame {
	p := pass{Width: width, Height: height, Density: density, In: in}
	select {
	case p.Woken = <-a.rang:
	default:
	}
	for _, k := range in.Keys {
		switch {
		case k.Key == panel.LetterKey('q'):
			a.quit = true
		case k.Key == panel.LetterKey('c') && k.Ctrl:
			a.copy = true
		case k.Key == panel.LetterKey('m'):
			a.moves = time.Now().Add(moving)
		case k.Key == panel.LetterKey('w'):
			go func() {
				time.Sleep(200 * time.Millisecond)
				a.rang <- true
				a.wake()
			}()
		}
	}
	_ = a.out.Encode(p)
	return &desk.Frame{Width: width, Height: height, Density: density, Paper: color.NRGBA{250, 240, 230, 255}}
}

// child is the test program with a window on the screen.
type child struct {
	*screen.Screen
	t      *testing.T
	cmd    *exec.Cmd
	passes chan pass
	id     string // of the window
}

// opened starts a child and waits until its window has been drawn.
func opened(t *testing.T, s *screen.Screen, title string) *child {
	t.Helper()
	exe, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	c := &child{Screen: s, t: t, cmd: exec.Command(exe), passes: make(chan pass, 1000)}
	c.cmd.Env = s.Env(asChild + "=" + title)
	c.cmd.Stderr = os.Stderr
	out, err := c.cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = c.cmd.Process.Kill() })
	go c.listen(out)
	c.until("the first frame", func(p pass) bool { return p.Drawn == 1 })
	c.id = strings.Fields(s.Do("xdotool", "search", "--sync", "--onlyvisible", "--name", "^"+title+"$"))[0]
	return c
}

func (c *child) listen(r io.Reader) {
	defer close(c.passes)
	for d := json.NewDecoder(r); ; {
		var p pass
		if d.Decode(&p) != nil {
			return
		}
		c.passes <- p
	}
}

// until waits for a pass that fits and returns it.
func (c *child) until(what string, fits func(pass) bool) pass {
	c.t.Helper()
	late := time.After(20 * time.Second)
	for {
		select {
		case p, ok := <-c.passes:
			if !ok {
				c.t.Fatalf("the window closed before %s", what)
			}
			if fits(p) {
				return p
			}
		case <-late:
			c.t.Fatalf("no sign of %s", what)
		}
	}
}

// rest waits until nothing has been told for a while; it returns how many
// frames were drawn before, and the last of them.
func (c *child) rest() (frames int, last pass) {
	c.t.Helper()
	for {
		select {
		case p := <-c.passes:
			if p.Drawn > 0 {
				frames, last = frames+1, p
			}
		case <-time.After(400 * time.Millisecond):
			return frames, last
		}
	}
}

// ends presses the key that ends the child and waits for it.
func (c *child) ends() {
	c.t.Helper()
	c.Do("xdotool", "key", "q")
	if err := c.cmd.Wait(); err != nil {
		c.t.Errorf("the program ended with %v", err)
	}
}

func TestRunAsAPersonWould(t *testing.T) {
	s := screen.Start(t)
	c := opened(t, s, "one")
	mouse := func(args ...string) { t.Helper(); s.Do("xdotool", args...) }

	mouse("mousemove", "--window", c.id, "100", "120")
	c.until("the pointer at 100, 120", func(p pass) bool { return p.In.X == 100 && p.In.Y == 120 && !p.In.Away })
	mouse("mousedown", "1")
	c.until("the press", func(p pass) bool { return p.In.Pressed[0] && p.In.Down[0] && p.In.X == 100 })
	mouse("mousemove", "--window", c.id, "140", "150")
	c.until("the drag", func(p pass) bool { return p.In.Down[0] && !p.In.Pressed[0] && p.In.X == 140 && p.In.Y == 150 })
	mouse("mouseup", "1")
	c.until("the release", func(p pass) bool { return p.In.Released[0] && !p.In.Down[0] })
	mouse("mousemove", "--window", c.id, "200", "210", "click", "--delay", "0", "3", "click", "4")
	c.until("the right button at 200, 210", func(p pass) bool { return p.In.Pressed[2-1] && p.In.X == 200 && p.In.Y == 210 })
	c.until("its release", func(p pass) bool { return p.In.Released[panel.RightButton] })
	c.until("the wheel away from the hand", func(p pass) bool { return p.In.Wheel == [2]float64{0, 1} })
	mouse("click", "7")
	c.until("the wheel to the right", func(p pass) bool { return p.In.Wheel == [2]float64{1, 0} })

	pressed := func(p pass, k panel.KeyPress) bool { return len(p.In.Keys) == 1 && p.In.Keys[0] == k }
	mouse("key", "shift+a")
	c.until("shift and a", func(p pass) bool {
		return pressed(p, panel.KeyPress{Key: panel.LetterKey('a'), Shift: true}) && string(p.In.Text) == "A" && p.In.Shift
	})
	mouse("key", "Left")
	c.until("the arrow key", func(p pass) bool { return pressed(p, panel.KeyPress{Key: panel.KeyLeft}) && !p.In.Shift })
	mouse("key", "ctrl+c", "ctrl+v")
	c.until("the clipboard's text", func(p pass) bool { return string(p.In.Text) == "0.42 mm" })

	s.Do("xdotool", "windowsize", c.id, "900", "640")
	c.until("the new size", func(p pass) bool { return p.Width == 900 && p.Height == 640 && p.Density == 1 })
	mouse("key", "w")
	c.until("the waking from another goroutine", func(p pass) bool { return p.Woken })

	if hints := s.Do("xprop", "-id", c.id, "WM_NORMAL_HINTS"); !strings.Contains(hints, "minimum size: 800 by 560") {
		t.Errorf("the window may become smaller than 800 x 560: %s", hints)
	}
	c.ends()
}

func TestRunDrawsWhenThereIsAReason(t *testing.T) {
	s := screen.Start(t)
	c := opened(t, s, "two")
	c.rest()
	s.Do("xdotool", "key", "Home")
	frames, before := c.rest()
	if frames != 2 {
		t.Errorf("a key gave %d frames, want 2: controls settle after a press", frames)
	}
	select {
	case p := <-c.passes:
		t.Errorf("an idle window got a pass: %+v", p)
	case <-time.After(700 * time.Millisecond):
	}
	s.Do("xdotool", "key", "m")
	first := c.until("a frame after the rest", func(p pass) bool { return p.Drawn > 0 })
	if used := first.Used - first.CPU - before.Used; used > 0.05 {
		t.Errorf("a window that shows nothing new for a second used %.3f s of the processor, want at most 0.05", used)
	}
	// 60 frames a second at most; how few there are depends on the machine.
	if frames, _ = c.rest(); frames < 3 || frames > int(moving.Seconds()*60)+3 {
		t.Errorf("%v of movement gave %d frames, want more than 2 and at most 60 a second", moving, frames)
	}
	c.ends()
}

func TestRunOnAFineScreen(t *testing.T) {
	s := screen.Start(t)
	s.Do("xprop", "-root", "-f", "RESOURCE_MANAGER", "8s", "-set", "RESOURCE_MANAGER", "Xft.dpi:\t192\n")
	c := opened(t, s, "fine")
	s.Do("xdotool", "mousemove", "--window", c.id, "100", "120")
	p := c.until("the pointer at 50, 60 points", func(p pass) bool { return p.In.X == 50 && p.In.Y == 60 })
	if p.Density != 2 || p.Width != 1640 || p.Height != 1200 {
		t.Errorf("the page has %d x %d pixels at %g to a point, want 1640 x 1200 at 2", p.Width, p.Height, p.Density)
	}
	if hints := s.Do("xprop", "-id", c.id, "WM_NORMAL_HINTS"); !strings.Contains(hints, "minimum size: 1600 by 1120") {
		t.Errorf("the window may become smaller than 800 x 560 points: %s", hints)
	}
	c.ends()
}

func TestRunWithoutADriver(t *testing.T) {
	s := screen.Start(t, "-extension", "GLX")
	exe, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(exe)
	cmd.Env = s.Env(asChild + "=none")
	out, err := cmd.CombinedOutput()
	if err == nil || !strings.Contains(string(out), "libgl1-mesa-dri") || strings.Contains(string(out), "goroutine") {
		t.Errorf("got %v, %s, want an error that says what to install", err, out)
	}
}

func TestRunWithoutAScreen(t *testing.T) {
	exe, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ display, want string }{
		{"", "no window can be opened: there is no display server (DISPLAY is not set)"},
		{":987", "no window can be opened: the display server :987 (from DISPLAY) does not answer"},
	} {
		cmd := exec.Command(exe)
		cmd.Env = append(os.Environ(), "DISPLAY="+c.display, asChild+"=none")
		out, err := cmd.CombinedOutput()
		if err == nil || !strings.HasPrefix(string(out), c.want) {
			t.Errorf("DISPLAY=%q: got %v, %q, want an error that begins %q", c.display, err, out, c.want)
		}
	}
}
