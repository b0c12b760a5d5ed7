package cases

import (
	"bytes"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// TestVerdict: the first sentences name what an apex to the treble does most, and
// every number in them stands in the table.
func TestVerdict(t *testing.T) {
	c := compareAll(t, solveAll(t, rough(), mustOpen(t, "course-guitar"), mustOpen(t, "course-guitar-treble"), mustOpen(t, "course-guitar-relief")))
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

// TestParts: the rows stand part by part, and in each by weight; a percentage of
// what may as well be zero is left out.
func TestParts(t *testing.T) {
	c := compareAll(t, solveAll(t, rough(), mustOpen(t, "course-guitar"), mustOpen(t, "course-guitar-relief")))
	if !slices.IsSortedFunc(c.Rows, byWeight) {
		t.Error("the rows are not in order")
	}
	for _, r := range c.Rows {
		d := r.Differences[0]
		switch p := r.Part(); {
		case r.bare() != (p == OfMesh):
			t.Errorf("%s stands in part %d", r.Name, p)
		case p == Alike && math.Abs(float64(d.Value)) >= 0.5*math.Pow10(-r.of.Digits):
			t.Errorf("%s, %+g %s: stands among those without a difference", r.Name, d.Value, r.Unit)
		case p == Scatter && !d.Within:
			t.Errorf("%s stands within the wood's scatter, %+g ± %g %s", r.Name, d.Value, d.Wood, r.Unit)
		case p == Decides && strings.HasPrefix(r.Name, "energy"):
			t.Errorf("%s stands among what decides", r.Name)
		}
		if a := math.Abs(float64(r.Values[0])); !r.bare() && d.Percent.Known() && a < float64(r.Ranges[0].Wood) {
			t.Errorf("%s: %+g %% of %g ± %g %s, want none", r.Name, d.Percent, a, r.Ranges[0].Wood, r.Unit)
		}
	}
}

// TestVerdictOfEqualDesigns: nothing differs.
func TestVerdictOfEqualDesigns(t *testing.T) {
	s := solveAll(t, rough(), mustOpen(t, "bench-plate"))
	v := Verdict(compareAll(t, append(s, s...)))
	if want := "B against A: no difference in what decides that another plank could not turn round. No difference: "; len(v) != 1 || !strings.HasPrefix(v[0], want) {
		t.Errorf("%q, want %q", v, want)
	}
}

func TestSemitonesBelow(t *testing.T) {
	for _, c := range []struct{ p, want float64 }{{1, 0}, {0.25, 12}, {0.5, 6}, {1.0 / 16, 24}} { // tension goes with the square of pitch
		if got := SemitonesBelow(c.p); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%g of full load: %g semitones below, want %g", c.p, got, c.want)
		}
	}
}

// TestTrialText: the text names the tuning of the closing load, and ends with
// the command to go on with.
func TestTrialText(t *testing.T) {
	p := mustPrepare(t, "course-guitar", 0.4)
	depth := 0.12
	o := TrialOptions{Depths: []float64{0, 0.1, 0.2}, Shapes: []string{"parabola"}}
	for _, c := range []struct {
		sheet       *float64
		wants, lack []string
	}{
		{nil, []string{"what to take off, how to check it", "\n  archload relief x --depth 0.1\n"}, []string{"semitones"}},
		{&depth, []string{"semitones below pitch", "an octave below is 25 %", "\n  archload relief x --depth 0.12 -o bench\n", "of the foot's force"}, []string{"1/m"}},
	} {
		o.Sheet = c.sheet
		tr, err := p.Try(t.Context(), o)
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
