package scene

import (
	"slices"
	"testing"

	"archload/cases/answer"
)

// From behind the back is solid and has the field's colours; from elsewhere it lets the
// top be seen.
func TestBackFromBehind(t *testing.T) {
	s := solved(t, "course-guitar-body", 0.3)
	k := NewSkeleton(s)
	for _, behind := range []bool{false, true} {
		back := named(k.Build(Show{Solution: s, Load: 1, Field: Sink, Enlarge: 1, Behind: behind}), "back")
		if back == nil {
			t.Fatal("the body has no back")
		}
		if solid := back.Paint.A == 255; solid != behind {
			t.Errorf("from behind %v: the back's opacity is %d", behind, back.Paint.A)
		}
		if behind && !slices.Equal(back.Values, answer.BackSinkField(s)) || !behind && back.Values != nil {
			t.Errorf("from behind %v: %d values on a back of %d points", behind, len(back.Values), len(back.Points))
		}
	}
	if v := BackValues(s, LoadFlow, Outer); v != nil {
		t.Errorf("a field of the top alone has %d values on the back", len(v))
	}
}
