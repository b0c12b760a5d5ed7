package say

import (
	"fmt"

	"archload/cases/body"
)

// onward tells where the load goes on from the edge of a body's top.
func (s *summary) onward() {
	if s.r.Body == nil || s.r.Body.Onward == nil {
		return
	}
	o := s.r.Body.Onward
	for _, side := range []struct {
		name string
		f    *body.SideFlow
	}{{"bass side hands on", &o.Bass}, {"treble side hands on", &o.Treble}} {
		line(&s.Builder, side.name, "of %.1f N from the top: %.1f to the neck block, %.1f to the tail block, %.1f to the back",
			side.f.FromTop, side.f.ToNeck, side.f.ToTail, side.f.ToBack)
	}
	for _, block := range []struct {
		name, key string
		f         *body.BlockFlow
	}{{"neck block bears", "to_neck", &o.Neck}, {"tail block bears", "to_tail", &o.Tail}} {
		share := ""
		if block.f.Share != nil {
			share = fmt.Sprintf(", %s of the load", s.text(block.key))
		} else {
			s.skip(block.key)
		}
		line(&s.Builder, block.name, "%.1f N%s: %.1f straight from the top, %.1f by the bass side, %.1f by the treble side, %.1f by the back",
			block.f.Total, share, block.f.FromTop, block.f.FromBass, block.f.FromTreble, block.f.FromBack)
	}
}
