package stage

import (
	"testing"

	"archload/cases/design"
)

// A window that has shown many designs holds the newest few, not all.
func TestOldDesignsAreForgotten(t *testing.T) {
	a := NewAnswerer(nil, design.Options{Workers: 2, Refine: 0.3, NoError: true})
	var last *Shown
	names := []string{"first", "flat-plate", "course-guitar", "bowed-layout", "bowed-layout-no-post"}
	for _, name := range append(names, names[0]) {
		s, err := a.Answer(t.Context(), Want{Designs: []Design{{Name: name}}, Display: Display{Load: 1}}, last)
		if err != nil {
			t.Fatal(err)
		}
		if last = s; len(a.opened) > mostOpened || a.opened[name] == nil {
			t.Errorf("after %s, %d designs are held, it among them: %v; want it and at most %d", name, len(a.opened), a.opened[name] != nil, mostOpened)
		}
	}
	if a.opened[names[1]] != nil {
		t.Errorf("%s is held still, wanted longest ago", names[1])
	}
}
