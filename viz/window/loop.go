//go:build cgo

package window

import (
	"fmt"
	"math"
	"runtime"
	"slices"
	"sync"

	"github.com/go-gl/gl/v3.3-core/gl"
	"github.com/go-gl/glfw/v3.3/glfw"

	"archload/viz/desk"
	"archload/viz/panel"
)

// The screen belongs to the thread that the program starts on.
func init() { runtime.LockOSThread() }

// frameTime is the least time from one frame to the next while things move, s.
const frameTime = 1.0 / 60

// Least size of the window, in points of the layout.
const (
	leastWidth  = 800
	leastHeight = 560
)

// Run opens a window of so many points and shows the app in it until the app
// is done or the window is closed. It must be called on the goroutine of
// main. While nothing happens it sleeps.
func Run(title string, size [2]int, app App) (err error) {
	defer plain(&err)
	if err := start(); err != nil {
		return err
	}
	defer glfw.Terminate()
	w, err := open(title, size, true)
	if err != nil {
		return err
	}
	defer w.Destroy()
	p, err := NewPainter()
	if err != nil {
		return err
	}
	defer p.Close()
	glfw.SwapInterval(1)
	l := &loop{window: w, painter: p, app: app, stale: true}
	l.listen()
	app.Waker(l.wake)
	defer l.sleep()
	return l.run()
}

// loop is the life of one window.
type loop struct {
	window  *glfw.Window
	painter *Painter
	app     App
	hands   hands

	cursors [3]*glfw.Cursor // by desk.Cursor
	cursor  desk.Cursor     // as it looks now

	stale bool // the page on the screen is not the one to show
	again bool // show one more after this: controls settle after a press

	bell   sync.Mutex // guards what follows
	woken  bool       // somebody asked for a frame
	closed bool       // the window is gone, waking is of no use
}

// listen has GLFW report what hands do and what happens to the window.
func (l *loop) listen() {
	l.hands.listen(l.window)
	l.window.SetRefreshCallback(func(*glfw.Window) { l.stale = true })
	l.window.SetFramebufferSizeCallback(func(*glfw.Window, int, int) { l.stale = true })
	l.window.SetContentScaleCallback(func(*glfw.Window, float32, float32) { l.stale = true })
}

// wake asks for a frame; any goroutine may call it, also after the end.
func (l *loop) wake() {
	l.bell.Lock()
	defer l.bell.Unlock()
	if !l.closed && !l.woken {
		l.woken = true
		glfw.PostEmptyEvent()
	}
}

// rung tells whether wake was called since the last time.
func (l *loop) rung() bool {
	l.bell.Lock()
	defer l.bell.Unlock()
	was := l.woken
	l.woken = false
	return was
}

// sleep ends the waking.
func (l *loop) sleep() {
	l.bell.Lock()
	defer l.bell.Unlock()
	l.closed = true
}

// run draws when there is a reason to, and sleeps in between.
func (l *loop) run() error {
	drawn := glfw.GetTime() - frameTime
	for !l.window.ShouldClose() && !l.app.Done() {
		l.stale = l.rung() || l.hands.any() || l.again || l.app.Moving() || l.stale
		switch rest := pause(l.stale, l.hands.edges(), glfw.GetTime()-drawn); {
		case math.IsInf(rest, 1):
			glfw.WaitEvents()
			continue
		case rest > 0:
			glfw.WaitEventsTimeout(rest)
			continue
		}
		drawn = glfw.GetTime()
		if err := l.frame(); err != nil {
			return err
		}
		glfw.PollEvents()
	}
	return nil
}

// pause returns how long to wait for events before the next frame, s: for ever, +Inf,
// without a reason to draw; not at all after an edge, which should not wait; else until
// frameTime has gone by since the last frame.
func pause(reason, edge bool, sinceDrawn float64) float64 {
	if !reason {
		return math.Inf(1)
	}
	if rest := frameTime - sinceDrawn; rest > 1e-3 && !edge {
		return rest
	}
	return 0
}

// frame gives the app what the hands did, pass by pass, and shows the last
// page.
func (l *loop) frame() error {
	began, cpu := glfw.GetTime(), processorTime()
	width, height := l.window.GetFramebufferSize()
	density := l.density()
	l.hands.scale(l.window, width, height, density)
	l.stale, l.again = false, false
	passes := l.hands.take(began)
	if width == 0 || height == 0 { // iconified
		return nil
	}
	page := l.app.Frame(width, height, density, passes[0])
	for _, in := range passes[1:] {
		page = l.app.Frame(width, height, density, in)
	}
	l.again = touched(passes)
	if text, ok := l.app.Clipboard(); ok {
		l.window.SetClipboardString(text)
	}
	if page == nil {
		return nil
	}
	l.point(page.Cursor)
	if err := l.painter.Paint(page); err != nil {
		return err
	}
	l.painter.show()
	l.window.SwapBuffers()
	l.app.Drawn(processorTime()-cpu, glfw.GetTime()-began)
	return nil
}

// point lets the pointer look otherwise.
func (l *loop) point(c desk.Cursor) {
	if c == l.cursor || int(c) >= len(l.cursors) {
		return
	}
	if l.cursors[c] == nil {
		shape := [...]glfw.StandardCursor{desk.Arrow: glfw.ArrowCursor, desk.Pointing: glfw.HandCursor, desk.Moving: glfw.CrosshairCursor}
		l.cursors[c] = glfw.CreateStandardCursor(shape[c])
	}
	l.window.SetCursor(l.cursors[c])
	l.cursor = c
}

// touched tells whether a button or a key was pressed or let go in any pass.
func touched(passes []panel.Input) bool {
	return slices.ContainsFunc(passes, func(in panel.Input) bool {
		return in.Pressed != [3]bool{} || in.Released != [3]bool{} || len(in.Keys) > 0 || len(in.Text) > 0
	})
}

// density returns the pixels to a point of the layout.
func (l *loop) density() float64 {
	x, _ := l.window.GetContentScale()
	if !(x > 0) {
		return 1
	}
	return max(0.5, min(4, float64(x)))
}

// start begins GLFW; it says what is missing.
func start() error {
	if why := noScreen(); why != "" {
		return fmt.Errorf("no window can be opened: %s", why)
	}
	if err := glfw.Init(); err != nil {
		return fmt.Errorf("no window can be opened: %w", err)
	}
	return nil
}

// open makes a window with an OpenGL 3.3 context, current on this thread.
func open(title string, size [2]int, visible bool) (*glfw.Window, error) {
	glfw.DefaultWindowHints()
	glfw.WindowHint(glfw.ContextVersionMajor, 3)
	glfw.WindowHint(glfw.ContextVersionMinor, 3)
	glfw.WindowHint(glfw.OpenGLProfile, glfw.OpenGLCoreProfile)
	glfw.WindowHint(glfw.OpenGLForwardCompatible, glfw.True)
	glfw.WindowHint(glfw.DepthBits, 0)
	glfw.WindowHint(glfw.StencilBits, 0)
	glfw.WindowHint(glfw.ScaleToMonitor, glfw.True)
	glfw.WindowHint(glfw.CocoaRetinaFramebuffer, glfw.True)
	if !visible {
		glfw.WindowHint(glfw.Visible, glfw.False)
	}
	w, err := glfw.CreateWindow(max(size[0], 1), max(size[1], 1), title, nil, nil)
	if err != nil {
		return nil, fmt.Errorf("no window with OpenGL 3.3 can be opened: %w; install a graphics driver (Debian: libgl1-mesa-dri)", err)
	}
	w.MakeContextCurrent()
	if err := gl.Init(); err != nil {
		w.Destroy()
		return nil, fmt.Errorf("the graphics driver lacks a function of OpenGL 3.3: %w", err)
	}
	if visible {
		limit(w)
	}
	return w, nil
}

// limit keeps the window large enough for its panels, where the screen is.
func limit(w *glfw.Window) {
	perPoint := 1.0 // units of the window to a point
	scale, _ := w.GetContentScale()
	if pixels, _ := w.GetFramebufferSize(); pixels > 0 && scale > 0 {
		units, _ := w.GetSize()
		perPoint = float64(scale) * float64(units) / float64(pixels)
	}
	least := [2]int{int(leastWidth * perPoint), int(leastHeight * perPoint)}
	if m := glfw.GetPrimaryMonitor(); m != nil {
		if _, _, width, height := m.GetWorkarea(); width > 0 && height > 0 {
			least = [2]int{min(least[0], width), min(least[1], height)}
			x, y := w.GetSize()
			if x > width || y > height {
				w.SetSize(min(x, width), min(y, height))
			}
		}
	}
	w.SetSizeLimits(least[0], least[1], glfw.DontCare, glfw.DontCare)
}

// plain turns a panic of GLFW into an error that says what to install.
func plain(err *error) {
	switch r := recover().(type) {
	case nil:
	case *glfw.Error:
		*err = fmt.Errorf("no window can be opened: %s; it needs a display server (X11) and an OpenGL 3.3 driver (Debian: libgl1-mesa-dri)", r.Desc)
	default:
		panic(r)
	}
}
