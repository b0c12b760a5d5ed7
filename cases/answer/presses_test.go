package answer

import (
	"testing"

	"archload/cases/body"
	"archload/cases/pull"
)

// What the strings press with is told anew only of a whole body, and only where it shows.
func TestPressesNow(t *testing.T) {
	r := &Report{Strings: &pull.StringsReport{Downforce: 155.9}, Flow: &FlowReport{Load: 154.2}}
	if _, another := r.PressesNow(); another {
		t.Error("a top alone is told to have strings that follow it")
	}
	r.Body = &body.Report{}
	if now, another := r.PressesNow(); !another || now != 154.2 {
		t.Errorf("a body gives %g N, another number: %v; want 154.2 N", now, another)
	}
	r.Flow.Load = 155.87
	if now, another := r.PressesNow(); another {
		t.Errorf("%g N and 155.9 N read alike, but are told apart", now)
	}
}
