package panel

import (
	"math"
)

// Begin starts a frame on a page of w by h points.
func (p *Panel) Begin(in Input, a *Atlas, w, h float64) {
	in.X, in.Y = bounded(in.X, 1e6), bounded(in.Y, 1e6)
	in.Wheel[0], in.Wheel[1] = bounded(in.Wheel[0], 100), bounded(in.Wheel[1], 100)
	in.Now = bounded(in.Now, 1e12)
	p.in = in
	p.page = Rect{0, 0, w, h}
	room := 0
	if p.list != nil {
		room = len(p.list.Vertices) * 9 / 8 // about as much as the last frame
	}
	p.list = NewList(a)
	p.list.watched = p.watched
	p.list.Vertices = make([]Vertex, 0, room)
	p.list.Clip(p.page)
	p.hot = ""
	p.order, p.before = p.before[:0], p.order
	p.covers, p.covered = p.covered[:0], p.covers
	p.lidBefore, p.lid = p.lid, Rect{}
	p.underLid = !p.lidBefore.Empty()
	p.places = nil
	p.taken = make([]bool, len(in.Keys))
	p.wheeled = false
	p.wake = math.Inf(1)
	p.after = nil
	p.areas = p.areas[:0]
	p.aimed = ""
	p.walk()
}

// bounded returns v within -most to most; 0 for what is no number.
func bounded(v, most float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return min(max(v, -most), most)
}

// End finishes the frame and returns everything that was drawn.
func (p *Panel) End() *List {
	for len(p.areas) > 0 {
		p.EndScroll(0)
	}
	p.drawTip()
	for _, draw := range p.after {
		draw(p.list)
	}
	if p.in.Pressed[LeftButton] && p.held == "" && p.hot != p.focus { // beside every control
		p.leaveEntry()
		p.focus = ""
	}
	if !p.in.Down[LeftButton] {
		p.held = ""
	}
	p.aim = ""
	if p.focus != "" && !contains(p.order, p.focus) {
		p.focus = "" // its control is gone
	}
	if p.in.Pressed[LeftButton] || p.in.Released[LeftButton] || len(p.in.Keys) > 0 {
		p.wake = 0
	}
	return p.list
}

func contains(list []string, s string) bool {
	for _, t := range list {
		if t == s {
			return true
		}
	}
	return false
}
