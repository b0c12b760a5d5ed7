package cases

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"archload/cases/tree"
)

func TestParseChange(t *testing.T) {
	for _, c := range []struct {
		text string
		key  string
		want []string
	}{
		{"bridge.relief.depth = 0..0.4 by 0.1", "bridge.relief.depth", []string{"0", "0.1", "0.2", "0.3", "0.4"}},
		{"a=0..1 by 0.3", "a", []string{"0", "0.3", "0.6", "0.9"}},
		{"a = -1 .. 1 by 1", "a", []string{"-1", "0", "1"}},
		{"a = 0..12e-3 by 4e-3 in", "a", []string{"0 in", "0.004 in", "0.008 in", "0.012 in"}},
		{`brace[1].wood = ["sitka-spruce", "mine"]`, "brace[1].wood", []string{"sitka-spruce", "mine"}},
		{"plate.arch.formula.apex = [[0, 10], [22, 10]]", "plate.arch.formula.apex", []string{"[0 10]", "[22 10]"}},
		{"plate.thickness = 5", "plate.thickness", []string{"5"}},
		{`plate.made = "pressed"`, "plate.made", []string{"pressed"}},
		{"b = [true, false]", "b", []string{"true", "false"}},
	} {
		got, err := tree.ParseChange(c.text)
		if err != nil {
			t.Errorf("%s: %v", c.text, err)
			continue
		}
		var words []string
		for _, v := range got.Values {
			words = append(words, v.Text)
		}
		if got.Key != c.key || !slices.Equal(words, c.want) {
			t.Errorf("%s: %s takes %q, want %s to take %q", c.text, got.Key, words, c.key, c.want)
		}
	}
	for text, says := range map[string]string{
		"":                                   "want KEY = VALUES",
		"plate.thickness":                    "want KEY = VALUES",
		"plate.thickness =":                  "want KEY = VALUES",
		"a = 1..0 by 1":                      "want a rising range",
		"a = 0..1 by 0":                      "want a rising range",
		"a = 0..1":                           "want a rising range",
		"a = 0..nan by 1":                    "want a rising range",
		"a = 0..1 by 1e-9":                   "want at most 100000 values",
		"a = []":                             "want at least one value",
		"a = [1, 1.0]":                       "found 1 twice",
		"a = sitka-spruce":                   "names in quotes",
		"a = 1\nb = 2":                       "want a range",
		"a..b = 1":                           "want a key",
		".a = 1":                             "want a key",
		"a[0] = 1":                           "want a key",
		"[1] = 1":                            "want a key",
		"a b = 1":                            "want a key",
		"a[1]b = 1":                          "want a key",
		"bridge.relief.depth = 0..1..2 by 1": "want a rising range",
	} {
		if _, err := tree.ParseChange(text); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v, want an error that says %q", text, err, says)
		}
	}
}

// TestOpenChanged sets keys as a case on top would, and tells faults by the
// number of the change.
func TestOpenChanged(t *testing.T) {
	set := func(key, values string) tree.KeyValue {
		v, err := tree.ParseValues(values)
		if err != nil {
			t.Fatal(err)
		}
		return tree.KeyValue{Key: key, Value: v[0]}
	}
	c, err := OpenChanged(nil, "course-guitar", "--change", []tree.KeyValue{
		set("brace[2].width", `"0.25 in"`), set("plate.thickness", "4.5"), set("bridge.relief.depth", "0.1"),
		set("plate.arch.formula.height", "20")})
	if err != nil {
		t.Fatal(err)
	}
	if got := c.Braces[1].Width.Value(0.5); got != 6.35 {
		t.Errorf("second brace %g mm wide, want 6.35", got)
	}
	if c.Braces[0].Width.Value(0.5) == 6.35 || len(c.Braces) != 2 {
		t.Error("the first brace changed too")
	}
	if c.Plate.Thickness.Const != 4.5 || c.Bridge.Relief.Depth != 0.1 || c.Plate.Arch.Contours != nil || c.Plate.Arch.Formula.Height != 20 {
		t.Errorf("thickness %v, relief %v, arch %+v: want 4.5, 0.1 and a formula of 20 mm in place of the contours",
			c.Plate.Thickness.Const, c.Bridge.Relief.Depth, c.Plate.Arch)
	}
	for _, f := range []struct {
		key, value, want string
	}{
		{"plate.thickness", "-1", "--change:1: plate.thickness: want > 0 mm, found -1"},
		{"plate.thicknes", "1", `--change:1: plate.thicknes: unknown key; did you mean "thickness"? (archload keys explains all)`},
		{"brace[7].width", "6", "--change:1: brace[7].width: no such entry; the case has 2 of brace"},
		{"plate.wood", `"sitka-spruc"`, "--change:1: plate.wood: "},
		{"plate.arch.contours", `"none.csv"`, "--change:1: plate.arch.contours: "},
		{"format", "2", "--change:1: format: "},
	} {
		_, err := OpenChanged(fstest.MapFS{}, "course-guitar", "--change", []tree.KeyValue{set(f.key, f.value)})
		if err == nil || !strings.HasPrefix(err.Error(), f.want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s = %s: %v, want %s", f.key, f.value, err, f.want)
		}
	}
}

func TestLengths(t *testing.T) {
	v, err := tree.ParseValues("0..0.01 by 0.005 in")
	if err != nil {
		t.Fatal(err)
	}
	if got, err := tree.Lengths(v); err != nil || !slices.Equal(got, []float64{0, 0.127, 0.254}) {
		t.Errorf("lengths %v, %v; want 0, 0.127, 0.254 mm", got, err)
	}
	if _, err := tree.Lengths([]tree.ChangeValue{tree.Valued("thick")}); err == nil {
		t.Error("a word passed for a length")
	}
}
