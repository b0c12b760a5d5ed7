package cases

import (
	"errors"
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"archload/cases/tree"
)

// strung loads a small plate with strings of the given keys.
func strung(keys string) (*Case, error) {
	text := `format = 1
[plate]
wood = "sitka-spruce"
outline = [[0, -250], [200, -130], [140, 0], [150, 150], [0, 240], [-150, 150], [-140, 0], [-200, -130]]
thickness = 5
arch.formula = { height = 20 }
[bridge]
[strings]
front_angle = 5
back_angle = 9
scale = 640
` + keys
	return Load(fstest.MapFS{"a.toml": {Data: []byte(text)}}, "a.toml")
}

// TestGauges wants a list of gauges to be what the same strings are one by one, also over
// strings that had other weights or tensions.
func TestGauges(t *testing.T) {
	const list = `gauges = "13 17 26w 56w"` + "\n"
	single, err := strung(`wrap = "nickel"
each = [{ note = "E4", plain = "0.013 in" }, { note = "B3", plain = "0.017 in" }, { note = "G3", wound = "0.026 in" }, { note = "E2", wound = "0.056 in" }]`)
	if err != nil {
		t.Fatal(err)
	}
	want := single.StringForces(0)
	for _, keys := range []string{
		list + `notes = "E4 B3 G3 E2"` + "\nwrap = 'nickel'",
		list + "wrap = 'nickel'\n" + `each = [{ note = "E4", plain = 0.25 }, { note = "B3", unit_weight = 1e-3 }, { note = "G3", tension = 90 }, { note = "E2", wound = 1 }]`,
	} {
		c, err := strung(keys)
		if err != nil {
			t.Errorf("%s: %v", keys, err)
			continue
		}
		for i, f := range c.StringForces(0) {
			if f.Name != want[i].Name || math.Abs(f.Tension/want[i].Tension-1) > 1e-12 || f.X != want[i].X {
				t.Errorf("%s: string %d is %+v, want %+v", keys, i+1, f, want[i])
			}
		}
		if !strings.Contains(c.Strings.WoundNote(), "no published source") {
			t.Errorf("nothing is said of how sure the wound strings are")
		}
	}
}

// TestCourses wants pairs beside each other, the pairs spread evenly, and the outermost
// strings as far apart as the spread says.
func TestCourses(t *testing.T) {
	c, err := strung("spread = 46\ncourse = 2\ncourse_gap = 4\neach = [" + strings.Repeat("{ tension = 80 }, ", 8) + "]")
	if err != nil {
		t.Fatal(err)
	}
	for i, f := range c.StringForces(0) {
		if want := []float64{23, 19, 9, 5, -5, -9, -19, -23}[i]; math.Abs(f.X-want) > 1e-12 {
			t.Errorf("string %d at %g mm, want %g", i+1, f.X, want)
		}
	}
}

func TestGaugeFaults(t *testing.T) {
	for keys, want := range map[string]string{
		`gauges = "13 17"` + "\n" + `notes = "E4 B3 G3"`:                                                                     "strings.gauges: want a gauge for each of the 3 strings, found 2",
		`gauges = "13 light"` + "\n" + `notes = "E4 B3"`:                                                                     `strings.gauges: want gauges as in "13 17 26w 35w 45w 56w", found "light"`,
		`gauges = "13 17"` + "\n" + `notes = "E4 H3"`:                                                                        `strings.notes: want a note with its octave`,
		`gauges = "13 17"` + "\n" + `each = [{ tension = 9 }, { tension = 9 }]`:                                              "string 1: want tension, or note with",
		`each = [{ note = "E4", plain = 0.3, wound = 0.4 }]`:                                                                 "want one of plain, wound (diameters) and unit_weight, found plain and wound",
		`course = 2` + "\n" + `each = [{ tension = 9 }]`:                                                                     "strings.course: want strings by the pair, found 1 of them",
		`course = 2` + "\ncourse_gap = 40\n" + `each = [{ tension = 9 }, { tension = 9 }, { tension = 9 }, { tension = 9 }]`: "strings.course_gap: want less than",
		`scale = 600`: "twice",
	} {
		_, err := strung(keys)
		var faults tree.Faults
		if !errors.As(err, &faults) || !strings.Contains(faults.Error(), want) {
			t.Errorf("%s: %v, want %q", keys, err, want)
		}
	}
}
