package design

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"archload/cases"
	"archload/cases/casetest"
	"archload/cases/shape"
)

// TestWarningsOfSlips changes one thing of a sound case each and wants the one
// line that tells of it.
func TestWarningsOfSlips(t *testing.T) {
	t.Parallel()
	sound := casetest.TopText + casetest.RestText
	three := func(middle string) string {
		return strings.Replace(sound, "each = [{ name = \"a\", tension = 100 }, { name = \"b\", tension = 100 }]", "scale = 640\n"+
			"each = [{ name = \"a\", tension = 100 }, { name = \"slip\", "+middle+" }, { name = \"c\", tension = 110 }]", 1)
	}
	wood := func(values string) string {
		return strings.Replace(sound, `"sitka-spruce"`, `"mine"`, 1) + "[wood.mine]\nlike = \"sitka-spruce\"\n" + values + "\n"
	}
	thick := func(mm string) string { return strings.Replace(sound, "thickness = 5", "thickness = "+mm, 1) }
	gauge := func(keys string) string { return sound + "[[gauge]]\n" + keys + "\n" }
	push := func(z string) string { return sound + "[[load]]\nat = [0, 100]\nforce = [0, 0, " + z + "]\n" }
	for _, c := range []struct{ text, want string }{
		{three("tension = 300"), ""},
		{three(`note = "E4", plain = 0.012`), `a.toml:11: strings.each[2]: slip pulls 0.158 N, far from the median of the set, 100 N; was "0.012 in" meant?`},
		{three(`note = "E2", unit_weight = 4.9e-4`), `a.toml:11: strings.each[2]: slip pulls 5.452 N, far from the median of the set, 100 N; was "0.00049 lb/in" meant?`},
		{three("tension = 23"), `a.toml:11: strings.each[2]: slip pulls 23 N, far from the median of the set, 100 N; was "23 lb" meant?`},
		{three("tension = 900"), "a.toml:11: strings.each[2]: slip pulls 900 N, far from the median of the set, 110 N"},
		{wood("EL = 11500\ndensity = 210"), ""},
		{wood("EL = 1150"), "a.toml:14: wood.mine.EL: EL of 1150 MPa is unlikely for wood"},
		{wood("EL = 900000"), `a.toml:14: wood.mine.EL: EL of 900000 MPa is unlikely for wood; was "900000 psi" meant?`},
		{wood("EL = 50000"), "a.toml:14: wood.mine.EL: EL of 50000 MPa is unlikely for wood"},
		{wood("density = 25.6"), `a.toml:14: wood.mine.density: a density of 25.6 kg/m3 is unlikely for wood; was "25.6 lb/ft3" meant?`},
		{wood("density = 4100"), "a.toml:14: wood.mine.density: a density of 4100 kg/m3 is unlikely for wood"},
		{thick("0.2"), `a.toml:5: plate.thickness: 0.2 mm is unlikely for a top; was "0.2 in" meant?`},
		{thick("13"), "a.toml:5: plate.thickness: 13 mm is unlikely for a top"},
		{thick("12"), ""},
		{push("-20"), ""},
		{push("20"), "a.toml:14: load[1].force: load 1 presses upward with 20 N; down is negative z"},
		{push("20") + "[[load]]\nat = [0, 50]\nforce = [0, 0, -20]\n", ""},
		{push("20") + "[[load]]\nat = [0, 50]\nforce = [0, 0, -25]\n", "a.toml:14: load[1].force: load 1 presses upward with 20 N; down is negative z"},
		{sound + "relief = { depth = 0.1, shape = \"flat\", ends = 10 }\n", ""},
		{sound + "relief = { depth = 0.1, ends = 10 }\n", `a.toml:12: bridge.relief.ends: changes nothing: only shape = "flat" has ends, found "parabola"`},
		{sound + "relief = { stations = [[-60, 0], [0, 0.1], [60, 0]], ends = 10 }\n", "a.toml:12: bridge.relief.ends: changes nothing: the stations give the whole relief"},
		{sound + "relief = { depth = 1.2 }\n", "a.toml:12: bridge.relief.depth: a relief of 1.2 mm is unlikely: usual ones are 0.1 to 0.2 mm, and the ends would bear alone; was 0.12 mm meant?"},
		{gauge("at = [-45, 3]"), "a.toml:13: gauge[1].at: gauge 1 stands under the foot at (-45, 3) mm, where no dial gauge reaches"},
		{gauge("at = [-45, 30]\nmeasured = 62"), `a.toml:14: gauge[1].measured: a reading of 62 mm is unlikely for a top; was "62 thou" meant?`},
		{gauge("at = [-45, 30]\nname = 'a'") + "[[gauge]]\nat = [45, 30]\nname = 'a'\n", `a.toml:15: gauge[2]: gauge 1 is called "a" too; tables and pictures cannot tell them apart`},
		{wood("GLR = 0.7"), `a.toml:14: wood.mine.GLR: GLR of 0.7 MPa is unlikely beside EL of 10890 MPa; was "0.7 GPa" meant?`},
	} {
		var lines []string
		for _, w := range casetest.Load(t, casetest.Files("a.toml", c.text), "a.toml").Warnings() {
			lines = append(lines, w.Error())
		}
		if got := strings.Join(lines, "\n"); got != c.want {
			t.Errorf("got\n%s\nwant\n%s\nfrom\n%s", got, c.want, c.text)
		}
	}
}

// TestWarningsOfBundled wants no bundled case to look like a slip.
func TestWarningsOfBundled(t *testing.T) {
	t.Parallel()
	list, err := cases.Bundled()
	if err != nil {
		t.Fatal(err)
	}
	for _, info := range list {
		c, err := cases.Open(casetest.Files(), info.Name)
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range c.Warnings() {
			t.Errorf("%s: %v", info.Name, w)
		}
	}
}

// TestWarningsOfGraduation measures half a plate whose thickness changes
// evenly across it: the other half is held at the last readings, with a word. A plate
// measured well into its edge has none.
func TestWarningsOfGraduation(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name  string
		reach int     // mm, how far toward the bass the data go
		edge  int     // mm, how far toward the treble
		slope float64 // 1, of the thickness toward the treble
		want  string
	}{
		{"thinner toward the bass", 0, 125, 1. / 200, "held there at that of the last reading, 3.5 mm"},
		{"thicker toward the bass", 0, 125, -1. / 160, "held there at that of the last reading, 3.5 mm"},
		{"all measured", -175, 175, 1. / 200, ""},
	} {
		var rows strings.Builder
		rows.WriteString("x_mm,y_mm,height_mm\n")
		for x := c.edge; x >= c.reach; x -= 25 {
			for y := -220; y <= 220; y += 40 {
				wide := 225.
				if y > 0 {
					wide = 175
				}
				if math.Hypot(float64(x)/wide, float64(y)/240) > 1 || max(x, -x) > 125 && y > -90 && y < 90 {
					continue // off the wood
				}
				fmt.Fprintf(&rows, "%d,%d,%g\n", x, y, 3.5+float64(x)*c.slope)
			}
		}
		text := strings.Replace(casetest.TopText, "thickness = 5", `thickness = { points = "t.csv" }`, 1) + casetest.RestText
		notes, err := shape.NewGeometry(casetest.Load(t, casetest.Files("a.toml", text, "t.csv", rows.String()), "a.toml"))
		if err != nil {
			t.Fatal(err)
		}
		var lines []string
		for _, w := range notes.Warnings {
			lines = append(lines, w.Error())
		}
		got := strings.Join(lines, "\n")
		if (len(lines) > 0) != (c.want != "") || !strings.HasSuffix(got, c.want) {
			t.Errorf("%s: warnings %q, want %q", c.name, got, c.want)
		}
	}
}
