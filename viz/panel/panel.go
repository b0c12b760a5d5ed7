package panel

// Panel is what the controls remember from one frame to the next: what the
// pointer holds, what has the focus, how far an area is scrolled, what is
// being typed. The zero value is ready. A frame is Begin, the controls, End.
type Panel struct {
	list *List
	in   Input
	page Rect

	hot    string // under the pointer, this frame
	held   string // pressed and not yet let go
	focus  string
	byKeys bool      // the focus came by the keyboard: its ring is drawn
	grab   float64   // from the pointer to the middle of what is held, points
	rest   float64   // where the pointer took a handle, until it moves; points
	twice  bool      // the press is the second of two
	spin   float64   // of the wheel, less than a notch
	last   lastPress // for the second of two clicks

	order  []string // what can have the focus, of this frame, in order
	before []string // of the last frame

	scrolls map[string]*scroll
	areas   []area // scroll areas that are open now, innermost last
	entry   entry  // what is being typed
	left    entry  // what was typed when the focus went elsewhere, not yet taken
	aim     string // reached by Tab: to be scrolled into view
	aimed   string // and found, in this frame
	tip     tip

	covers, covered []Rect // the panel's own ground, of this frame and the last
	lid, lidBefore  Rect   // lies over everything else, of this frame and the last
	underLid        bool   // the controls drawn now lie under the lid

	places  []Place
	taken   []bool // for each key of the input: a control has used it
	wheeled bool   // the wheel has been used
	wake    float64
	after   []func(*List) // drawn over everything, at the end
	watched bool          // its pages keep what is written on them
}

// lastPress is where and when the pointer last went down on a control.
type lastPress struct {
	id   string
	at   Point
	when float64 // s
}

// List returns the page of the frame being laid out, for the caller's own
// drawing among the controls.
func (p *Panel) List() *List { return p.list }

// Atlas returns the letters of the frame being laid out.
func (p *Panel) Atlas() *Atlas { return p.list.Atlas }

// Page returns the whole page, points.
func (p *Panel) Page() Rect { return p.page }

// Input returns what the hand did, as Begin was told.
func (p *Panel) Input() Input { return p.in }

// Holds tells whether the pointer, and the keyboard, belong to the panel:
// then the scene must not turn and letters are no shortcuts. It is right
// after End, and between Begin and the first control for the frame before.
func (p *Panel) Holds() (pointer, keyboard bool) {
	return p.held != "" || p.overPanel(), p.entry.id != ""
}

// leaves tells whether a key is Ctrl Q.
func (k KeyPress) leaves() bool { return k.Ctrl && k.Key == LetterKey('q') }

// Unused returns the keys of this frame that no control has used, for the
// caller's shortcuts; while a number is being typed none but Ctrl Q, which means nothing to it and by which
// one must always be able to leave.
func (p *Panel) Unused() []KeyPress {
	var out []KeyPress
	for i, k := range p.in.Keys {
		if !p.taken[i] && (p.entry.id == "" || k.leaves()) {
			out = append(out, k)
		}
	}
	return out
}

// WheelUsed tells whether a control or a scroll area has used the wheel.
func (p *Panel) WheelUsed() bool { return p.wheeled }

// Wake returns after how many seconds another frame is wanted even if the
// hand does nothing: 0 at once, infinite never.
func (p *Panel) Wake() float64 { return p.wake }

// wakeAfter asks for another frame in s seconds.
func (p *Panel) wakeAfter(s float64) { p.wake = min(p.wake, max(0, s)) }

// pointer returns where the pointer is.
func (p *Panel) pointer() Point { return Point{p.in.X, p.in.Y} }

// overPanel tells whether the pointer is over the panel's ground or a
// control, as of this frame or, early in it, the last.
func (p *Panel) overPanel() bool {
	if p.in.Away {
		return false
	}
	at := p.pointer()
	for _, r := range append(p.covers, p.covered...) {
		if r.Holds(at) {
			return true
		}
	}
	return p.lid.Holds(at) || p.lidBefore.Holds(at)
}

// Cover says that a part of the page is the panel's own: the pointer there
// does not reach the scene.
func (p *Panel) Cover(r Rect) {
	if r = r.Meet(p.page); !r.Empty() {
		p.covers = append(p.covers, r)
	}
}

// Sheet lays a paper with a thin edge, and covers it.
func (p *Panel) Sheet(r Rect) {
	p.Cover(r)
	p.list.Rect(r, Paper())
	p.list.Frame(r, 1, Hair())
}

// Lid lays a paper over everything drawn before; the controls drawn after it
// belong to it: Tab reaches them alone, and those before do not feel the
// pointer through it.
func (p *Panel) Lid(r Rect) {
	p.lid = r
	p.underLid = false
	p.order = p.order[:0]
	p.Cover(r)
	p.list.written = nil
	p.list.Rect(Rect{r.X + 3, r.Y + 3, r.W, r.H}, faded(Ink(), 0.12))
	p.list.Rect(r, Slip())
	p.list.Frame(r, 1, Pencil())
}

// SetFocus moves the keyboard to a control, with its ring; "" to none.
func (p *Panel) SetFocus(id string) {
	if p.entry.id != id {
		p.leaveEntry()
	}
	p.focus, p.byKeys, p.aim = id, id != "", id
}

// Focus returns the control that has the keyboard, "" if none.
func (p *Panel) Focus() string { return p.focus }

// scroll is what a scroll area remembers.
type scroll struct {
	offset  float64 // of what lies above the area's top, points
	content float64 // height of everything
}

// area is a scroll area that is being laid out.
type area struct {
	id string
	at Rect
	s  *scroll
}

// tip is the note that comes when the pointer rests.
type tip struct {
	id    string
	at    Rect
	text  string
	since float64 // s, when the pointer came
	met   bool    // in this frame
	quiet bool    // a press sent it away
}

// leaveEntry ends typing because the focus goes elsewhere; the field takes
// what was typed, if it is good, when it is drawn next.
func (p *Panel) leaveEntry() {
	if p.entry.id != "" {
		p.left = p.entry
	}
	p.entry = entry{}
}

// Held returns the control that the pointer has pressed and not let go, "" if
// none.
func (p *Panel) Held() string { return p.held }
