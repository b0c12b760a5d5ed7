package say

import (
	"bytes"
	"math"
	"regexp"
	"strings"
	"testing"

	"archload/cases/casetest"
	"archload/cases/design"
	"archload/cases/study"
)

// TestVerdict: the first sentences name what an apex to the treble does most, and
// every number in them stands in the table.
func TestVerdict(t *testing.T) {
	c := compared(t, casetest.Open(t, "course-guitar"), casetest.Open(t, "course-guitar-treble"), casetest.Open(t, "course-guitar-relief"))
	v := Verdict(c)
	if len(v) != 2 || !strings.HasPrefix(v[0], "B against A: ") || !strings.HasPrefix(v[1], "C against A: ") {
		t.Fatalf("verdicts %q, want one of B and one of C", v)
	}
	first, _, _ := strings.Cut(v[0], ". ")
	for _, want := range []string{"bass end of the bridge sinks ", "treble end of the bridge sinks ", "bridge leans sideways 0.", "(bass side lower) instead of 0.0"} {
		if !strings.Contains(first, want) {
			t.Errorf("of the apex to the treble: %q, want %q in it", first, want)
		}
	}
	if !strings.Contains(v[1], "middle of the foot first touches at") || strings.Contains(v[0]+v[1], "energy") {
		t.Errorf("verdicts %q, want the relief's touch in the second and no energies", v)
	}
	var table bytes.Buffer
	if err := WriteComparison(&table, c); err != nil {
		t.Fatal(err)
	}
	_, rows, _ := strings.Cut(table.String(), "What decides")
	for _, n := range regexp.MustCompile(`\d+\.\d+`).FindAllString(strings.Join(v, " "), -1) {
		if !strings.Contains(rows, n) {
			t.Errorf("the verdict says %s, which is not in the table", n)
		}
	}
}

// TestVerdictOfEqualDesigns: nothing differs.
func TestVerdictOfEqualDesigns(t *testing.T) {
	plate := casetest.Open(t, "bench-plate")
	v := Verdict(compared(t, plate, plate))
	if want := "B against A: no difference in what decides that another plank could not turn round. No difference: "; len(v) != 1 || !strings.HasPrefix(v[0], want) {
		t.Errorf("%q, want %q", v, want)
	}
}

func TestSemitonesBelow(t *testing.T) {
	for _, c := range []struct{ p, want float64 }{{1, 0}, {0.25, 12}, {0.5, 6}, {1.0 / 16, 24}} { // tension goes with the square of pitch
		if got := study.SemitonesBelow(c.p); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%g of full load: %g semitones below, want %g", c.p, got, c.want)
		}
	}
}

// TestTrialText: the text names the tuning of the closing load, and ends with
// the command to go on with.
func TestTrialText(t *testing.T) {
	p, err := design.Prepare(t.Context(), casetest.Open(t, "course-guitar"), design.Options{Workers: 2, Refine: 0.4})
	if err != nil {
		t.Fatal(err)
	}
	depth := 0.12
	o := study.TrialOptions{Depths: []float64{0, 0.1, 0.2}, Shapes: []string{"parabola"}}
	for _, c := range []struct {
		sheet       *float64
		wants, lack []string
	}{
		{nil, []string{"what to take off, how to check it", "\n  archload relief x --depth 0.1\n"}, []string{"semitones"}},
		{&depth, []string{"semitones below pitch", "an octave below is 25 %", "\n  archload relief x --depth 0.12 -o bench\n", "of the foot's force"}, []string{"1/m"}},
	} {
		o.Sheet = c.sheet
		tr, err := study.Try(t.Context(), p, o)
		if err != nil {
			t.Fatal(err)
		}
		tr.Command = "archload relief x"
		var b bytes.Buffer
		if err := WriteTrial(&b, tr); err != nil {
			t.Fatal(err)
		}
		for _, want := range c.wants {
			if !strings.Contains(b.String(), want) {
				t.Errorf("the text lacks %q:\n%s", want, b.String())
			}
		}
		for _, bad := range c.lack {
			if strings.Contains(b.String(), bad) {
				t.Errorf("the text holds %q", bad)
			}
		}
	}
}
