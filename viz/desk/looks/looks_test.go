package looks

import (
	"testing"

	"archload/viz/scene"
	"archload/viz/stage"
)

// What is remembered comes back, and what is no memory gives the usual looks.
func TestLooksRoundTrip(t *testing.T) {
	l := Usual()
	l.Field, l.View, l.Cut, l.Contours, l.Flow = scene.StrengthUsed, "from inside", stage.LongArch, false, true
	if got := Parse(l.Text()); got != l {
		t.Errorf("got %+v, want %+v", got, l)
	}
	if got := Parse("field = rubbish\nview = nowhere\n\x00"); got != Usual() {
		t.Errorf("rubbish gives %+v, want the usual looks", got)
	}
}
