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

// Least size of the window, in points of the layout.
const (
	leastWidth  = 800
	leastHeight = 560
)

// Run opens a window of so many points, of a program of some name, and shows the app in it until the app
// is done or the window is closed. It must be called on the goroutine of
// main. While nothing happens it sleeps.
func Run(name string, size [2]int, app App) (err error) {
	defer plain(&err)
	if err := start(); err != nil {
		return err
	}
	defer glfw.Terminate()
	w, err := open(name, size, true)
	if err != nil {
		return err
	}
	defer w.Destroy()
	p, err := NewPainter()
	if err != nil {
		return err
	}
	defer p.Close()
	p.inWindow = true
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

	title string // as it stands over the window, once the app has said so

	stale bool // the app wants a turn whatever the hands do
	again bool // and one more after this: controls settle after a press
	torn  bool // the screen has lost what it showed

	page  *desk.Frame // to be shown; nil: it is on the screen
	due   float64     // s: when it is shown at the latest
	since float64     // s: since when there has been something to show
	spent spent       // on the page

	turned, shown float64 // s: when the app had its last turn, and when its page came to the screen

	bell   sync.Mutex // guards what follows
	woken  bool       // somebody asked for a frame
	closed bool       // the window is gone, waking is of no use
}

// listen has GLFW report what hands do and what happens to the window.
func (l *loop) listen() {
	l.hands.listen(l.window)
	l.window.SetRefreshCallback(func(*glfw.Window) { l.stale, l.torn = true, true })
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

// run gives the app its turns and shows its pages when there is a reason to, and sleeps in
// between.
func (l *loop) run() error {
	l.shown = glfw.GetTime() - frameTime
	for !l.window.ShouldClose() && !l.app.Done() {
		news := l.rung()
		now := glfw.GetTime()
		why := reasons{any: l.stale || l.again || l.app.Moving(), news: news, hands: l.hands.any(), edges: l.hands.edges()}
		turn := toTurn(why, now-l.turned, now-l.shown)
		show := math.Inf(1)
		if l.page != nil {
			show = l.due - now
		}
		switch rest := min(turn, show); {
		case math.IsInf(rest, 1):
			glfw.WaitEvents()
			continue
		case rest > leastWait:
			glfw.WaitEventsTimeout(rest)
			continue
		case show <= leastWait && !why.news && !why.edges:
			if err := l.show(); err != nil {
				return err
			}
		default:
			l.turn(news)
		}
		glfw.PollEvents()
	}
	return nil
}

// turn gives the app what the hands did, pass by pass, and keeps the page that comes of it.
// News: somebody asked for it.
func (l *loop) turn(news bool) {
	began, cpu := glfw.GetTime(), processorTime()
	width, height := l.window.GetFramebufferSize()
	density := l.density()
	l.hands.scale(l.window, width, height, density)
	l.turned, l.stale, l.again = began, false, false
	at := l.hands.edges() || news
	passes := l.hands.take(began)
	if width == 0 || height == 0 { // iconified
		return
	}
	page := l.app.Frame(width, height, density, passes[0])
	for _, in := range passes[1:] {
		if l.app.Done() {
			return
		}
		page = l.app.Frame(width, height, density, in)
	}
	l.again = touched(passes)
	if text, ok := l.app.Clipboard(); ok {
		l.window.SetClipboardString(text)
	}
	if page == nil {
		return
	}
	l.point(page.Cursor)
	if t := l.app.Title(); t != l.title {
		l.title = t
		l.window.SetTitle(t)
	}
	if l.page == nil {
		l.since = began
	}
	now := glfw.GetTime()
	l.page, l.due = page, toShow(at, l.app.Soon(), now, l.since, l.shown)
	l.spent = spent{processorTime() - cpu, now - began}
}

// show brings the page to the screen, unless it looks as what is there.
func (l *loop) show() error {
	began, cpu := glfw.GetTime(), processorTime()
	if l.torn || !l.painter.Shows(l.page) {
		if err := l.painter.Paint(l.page); err != nil {
			return err
		}
		l.window.SwapBuffers()
	}
	now := glfw.GetTime()
	l.page, l.torn, l.shown = nil, false, began
	l.app.Drawn(l.spent.cpu+processorTime()-cpu, l.spent.wall+now-began)
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
func open(name string, size [2]int, visible bool) (*glfw.Window, error) {
	glfw.DefaultWindowHints()
	glfw.WindowHint(glfw.ContextVersionMajor, 3)
	glfw.WindowHint(glfw.ContextVersionMinor, 3)
	glfw.WindowHint(glfw.OpenGLProfile, glfw.OpenGLCoreProfile)
	glfw.WindowHint(glfw.OpenGLForwardCompatible, glfw.True)
	glfw.WindowHint(glfw.DepthBits, 0)
	glfw.WindowHint(glfw.StencilBits, 0)
	glfw.WindowHint(glfw.ScaleToMonitor, glfw.True)
	glfw.WindowHint(glfw.CocoaRetinaFramebuffer, glfw.True)
	glfw.WindowHintString(glfw.X11ClassName, name) // by which a desktop knows windows of one program
	glfw.WindowHintString(glfw.X11InstanceName, name)
	if !visible {
		glfw.WindowHint(glfw.Visible, glfw.False)
	}
	w, err := glfw.CreateWindow(max(size[0], 1), max(size[1], 1), name, nil, nil)
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
