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

	"archload/viz/desk"
	"archload/viz/panel"
	"archload/viz/window/windowtest"
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
	Drawn         int  // frames so far; 0 from Frame
	Turns         int  // how often the loop has gone round
	Woken         bool // the goroutine that reads the standard input has asked
}

// moving is how many frames things move for after the key m.
const moving = 30

// teller is an App that tells what it gets.
type teller struct {
	out   *json.Encoder
	rang  chan bool
	drawn int
	turns int
	quit  bool
	copy  bool
	moves int // frames still to come in which things move
}

// Waker has every byte of the standard input wake the window.
func (a *teller) Waker(wake func()) {
	a.rang = make(chan bool, 1)
	go func() {
		for b := make([]byte, 1); ; {
			if _, err := os.Stdin.Read(b); err != nil {
				return
			}
			a.rang <- true
			wake()
		}
	}()
}

// Moving is asked once each time that the loop goes round.
func (a *teller) Moving() bool {
	a.turns++
	return a.moves > 0
}

func (a *teller) Soon() float64 { return 0 }

func (a *teller) Title() string { return os.Getenv(asChild) }

func (a *teller) Done() bool { return a.quit }

func (a *teller) Clipboard() (string, bool) {
	was := a.copy
	a.copy = false
	return "0.42 mm", was
}

func (a *teller) Drawn(_, _ float64) {
	a.drawn++
	a.moves = max(a.moves-1, 0)
	_ = a.out.Encode(pass{Drawn: a.drawn, Turns: a.turns})
}

func (a *teller) Frame(width, height int, density float64, in panel.Input) *desk.Frame {
	p := pass{Width: width, Height: height, Density: density, In: in, Turns: a.turns}
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
			a.moves = moving
		}
	}
	_ = a.out.Encode(p)
	return &desk.Frame{Width: width, Height: height, Density: density, Paper: color.NRGBA{250, 240, 230, 255}}
}

// child is the test program with a window on the screen.
type child struct {
	*windowtest.Screen
	t      *testing.T
	cmd    *exec.Cmd
	stdin  io.Writer
	passes chan pass
	id     string // of the window
}

// late is how long a test waits for a sign of the window, which only one that hangs
// does not give.
const late = 5 * time.Minute

// opened starts a child and waits until its window has been drawn.
func opened(t *testing.T, s *windowtest.Screen, title string) *child {
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
	if c.stdin, err = c.cmd.StdinPipe(); err != nil {
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

// next waits for the next sign of the window.
func (c *child) next(what string) pass {
	c.t.Helper()
	select {
	case p, ok := <-c.passes:
		if !ok {
			c.t.Fatalf("the window closed before %s", what)
		}
		return p
	case <-time.After(late):
		c.t.Fatalf("no sign of %s", what)
	}
	panic("not reached")
}

// until waits for a pass that fits and returns it.
func (c *child) until(what string, fits func(pass) bool) pass {
	c.t.Helper()
	for {
		if p := c.next(what); fits(p) {
			return p
		}
	}
}

// settle presses a key and waits for its two frames: controls settle after a press.
// All that the display server told the window before the key has been dealt with then.
func (c *child) settle(key string, k panel.Key) pass {
	c.t.Helper()
	c.Do("xdotool", "key", key)
	c.until(key, func(p pass) bool { return len(p.In.Keys) == 1 && p.In.Keys[0].Key == k })
	c.until("the frame of "+key, func(p pass) bool { return p.Drawn > 0 })
	return c.until("the frame after "+key, func(p pass) bool { return p.Drawn > 0 })
}

// wait asks the display server things that are no concern of the window's, which gives a
// window that draws for no reason the time to do so.
func (c *child) wait() {
	c.t.Helper()
	for range 20 {
		c.Do("xdotool", "getmouselocation")
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
	s := windowtest.Start(t)
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
	c.settle("Home", panel.KeyHome)
	c.wait()
	if _, err := c.stdin.Write([]byte{0}); err != nil {
		t.Fatal(err)
	}
	c.until("the waking from another goroutine", func(p pass) bool { return p.Woken })

	if hints := s.Do("xprop", "-id", c.id, "WM_NORMAL_HINTS"); !strings.Contains(hints, "minimum size: 800 by 560") {
		t.Errorf("the window may become smaller than 800 x 560: %s", hints)
	}
	c.ends()
}

// TestRunDrawsWhenThereIsAReason counts what lies between two keys: a key gives two
// frames, after which the window does nothing, whatever time goes by.
func TestRunDrawsWhenThereIsAReason(t *testing.T) {
	s := windowtest.Start(t)
	c := opened(t, s, "two")
	before := c.settle("Home", panel.KeyHome)
	c.wait()
	s.Do("xdotool", "key", "End")
	p := c.next("the key End")
	if p.Drawn != 0 || len(p.In.Keys) != 1 || p.In.Keys[0].Key != panel.KeyEnd {
		t.Fatalf("an idle window told %+v, want nothing before the next key", p)
	}
	// It may go round once for each event: a key let go, a key pressed.
	if turns := p.Turns - before.Turns; turns > 10 {
		t.Errorf("the loop went round %d times between two keys, want at most 10: an idle window sleeps", turns)
	}
	c.until("the frame of End", func(p pass) bool { return p.Drawn == before.Drawn+1 })
	c.until("the frame after End", func(p pass) bool { return p.Drawn == before.Drawn+2 })

	s.Do("xdotool", "key", "m")
	c.until("the last frame of the movement", func(p pass) bool { return p.Drawn == before.Drawn+2+moving })
	c.wait()
	s.Do("xdotool", "key", "Home")
	if p := c.next("the key Home"); p.Drawn != 0 || len(p.In.Keys) != 1 {
		t.Errorf("after %d frames of movement the window told %+v, want nothing before the next key", moving, p)
	}
	c.ends()
}

func TestRunOnAFineScreen(t *testing.T) {
	s := windowtest.Start(t)
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
	s := windowtest.Start(t, "-extension", "GLX")
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
