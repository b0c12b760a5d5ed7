package desk

import (
	"math"
	"testing"
)

// A page waits for an answer that is due soon: not before any has come, not for slow ones, not once it is there.
func TestSoon(t *testing.T) {
	d := &Desk{now: 10, busy: true}
	d.wait.since = 9.99
	if s := d.Soon(); s != 0 {
		t.Errorf("without an answer so far the next is due within %g s, want 0: not known", s)
	}
	d.wait.ends(10.01, true)
	if math.Abs(d.wait.took-0.02) > 1e-12 || d.Soon() != 0 {
		t.Errorf("an answer took %g s, want 0.02; the page that has it waits %g s, want 0", d.wait.took, d.Soon())
	}
	d.wait = waiting{since: 10, took: d.wait.took} // the hand goes on
	d.now = 10.005
	if s := d.Soon(); math.Abs(s-0.025) > 1e-12 {
		t.Errorf("5 ms after asking, a page waits %g s more, want 0.025: half as long again as the last answer took", s)
	}
	if d.now = 10.05; d.Soon() != 0 {
		t.Error("an answer that is late is still waited for")
	}
	if d.now, d.wait.took = 10, 0.2; d.Soon() != 0 {
		t.Error("an answer of 200 ms keeps the page back")
	}
	if d.wait.took, d.busy = 0.02, false; d.Soon() != 0 {
		t.Error("with nothing asked something is due")
	}
}
