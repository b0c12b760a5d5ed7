package materials

import (
	"errors"
	"slices"
	"strings"
	"testing"
)

func TestBundledCards(t *testing.T) {
	cards, err := Cards()
	if err != nil {
		t.Fatal(err)
	}
	if len(cards) < 16 {
		t.Errorf("%d cards, want at least 16", len(cards))
	}
	if !slices.IsSortedFunc(cards, func(a, b Card) int { return strings.Compare(a.Name, b.Name) }) {
		t.Error("cards are not sorted by name")
	}
	uses := map[string]int{}
	for _, c := range cards {
		if err := c.Check(); err != nil {
			t.Errorf("%s: %v", c.Name, err)
		}
		for _, e := range c.Entries() {
			if e.Source.Text == "" || e.Source.Text == ownValue {
				t.Errorf("%s: %s has no source", c.Name, e.Key)
			}
		}
		want := len(Keys())
		if c.Loss == (Loss{}) { // not known for every wood
			want -= 2
		}
		if got := len(c.Entries()); got != want {
			t.Errorf("%s: %d values, want %d", c.Name, got, want)
		}
		if !c.Strength.Limits().Known() || c.Strength.RollingShear <= 0 {
			t.Errorf("%s: a strength is missing: %+v", c.Name, c.Strength)
		}
		if !strings.Contains(c.Title, "(") || len(c.Uses) == 0 {
			t.Errorf("%s: title %q or uses %v lack something", c.Name, c.Title, c.Uses)
		}
		for _, u := range c.Uses {
			uses[u]++
		}
		plausible(t, c)
	}
	for _, u := range []string{UseTop, UseBrace, UseSide, UseBridge} {
		if uses[u] == 0 {
			t.Errorf("no card for %s", u)
		}
	}
}

// plausible catches a slipped digit. The ranges bracket tables 5-1 and 5-2 of
// the Wood Handbook (from memory); E/density of 16 to 32 MPa m³/kg is a
// common observation for straight-grained wood.
func plausible(t *testing.T, c Card) {
	t.Helper()
	w := c.Wood
	for _, r := range []struct {
		what         string
		v, low, high float64
	}{
		{"density, kg/m³", w.Density, 300, 1200},
		{"EL, MPa", w.EL, 8000, 20000},
		{"EL/density, MPa m³/kg", w.EL / w.Density, 15, 33},
		{"ER/EL", w.ER / w.EL, 0.06, 0.2},
		{"ET/ER", w.ET / w.ER, 0.35, 1.05},
		{"GLR/EL", w.GLR / w.EL, 0.06, 0.15},
		{"GLT/EL", w.GLT / w.EL, 0.05, 0.13},
		{"GRT/EL", w.GRT / w.EL, 0.002, 0.03},
		{"nuLR", w.NuLR, 0.25, 0.5}, {"nuLT", w.NuLT, 0.25, 0.7}, {"nuRT", w.NuRT, 0.35, 0.8},
		{"MOR/EL", c.Strength.MOR / w.EL, 0.0055, 0.0105},
		{"compression along / MOR", c.Strength.CompressionL / c.Strength.MOR, 0.4, 0.65},
		{"compression across / along", c.Strength.CompressionPerp / c.Strength.CompressionL, 0.06, 0.22},
		{"rolling shear / shear along", c.Strength.RollingShear / c.Strength.ShearL, 0.18, 0.28},
	} {
		if !(r.v >= r.low && r.v <= r.high) {
			t.Errorf("%s: %s = %g, want %g to %g", c.Name, r.what, r.v, r.low, r.high)
		}
	}
}

func TestSitkaCard(t *testing.T) {
	c, err := Find("sitka-spruce")
	if err != nil {
		t.Fatal(err)
	}
	// Wood Handbook: table 5-3a MOE 9900 MPa times 1.10, table 5-1 ratios,
	// specific gravity 0.36 at 12 % moisture: 1000 * 0.36 * 1.12 (from memory).
	for i, want := range []float64{403.2, 10890, 849.42, 468.27, 696.96, 664.29, 32.67,
		0.372, 0.467, 0.435, 65, 35.7, 3, 6.7, 2.6, 0.23 * 6.7} {
		near(t, c.Entries()[i].Key, c.Entries()[i].Value, want, 1e-12)
	}
	if got := c.Sources["ET"].Mark; got != MarkRead {
		t.Errorf("mark of ET = %q, want none", got)
	}
	if got := c.Sources["ER"].Mark; got != MarkMemory {
		t.Errorf("mark of ER = %q, want %q", got, MarkMemory)
	}
}

// TestBorrowedIsMarked holds the ones that must not pass for read values.
func TestBorrowedIsMarked(t *testing.T) {
	for _, name := range []string{"ebony", "brazilian-rosewood", "indian-rosewood", "european-spruce", "red-spruce", "bigleaf-maple"} {
		c, err := Find(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, key := range []string{"ER", "ET", "GLR", "GLT", "GRT", "nuLR", "nuLT", "nuRT"} {
			if got := c.Sources[key].Mark; got != MarkBorrowed {
				t.Errorf("%s: mark of %s = %q, want %q", name, key, got, MarkBorrowed)
			}
		}
	}
	for _, name := range []string{"sugar-maple", "red-maple", "black-cherry"} {
		c, err := Find(name)
		if err != nil {
			t.Fatal(err)
		}
		if got := c.Sources["GRT"].Mark; got != MarkBorrowed {
			t.Errorf("%s: mark of GRT = %q, want %q: the handbook has none", name, got, MarkBorrowed)
		}
	}
}

func TestFindNamesNear(t *testing.T) {
	for _, c := range []struct{ name, want string }{
		{"sitka", "sitka-spruce"}, {"Engleman-spruce", "engelmann-spruce"}, {"ebny", "ebony"},
		{"redwod", "redwood"}, {"maple", "red-maple"}, {"", ""},
	} {
		_, err := Find(c.name)
		var unknown *UnknownWoodError
		if !errors.As(err, &unknown) {
			t.Errorf("Find(%q): %v, want an UnknownWoodError", c.name, err)
			continue
		}
		if (len(unknown.Near) > 0) != (c.want != "") || c.want != "" && !slices.Contains(unknown.Near, c.want) {
			t.Errorf("Find(%q): near %v, want some with %q", c.name, unknown.Near, c.want)
		}
	}
}

func ptr(v float64) *float64 { return &v }

func TestLike(t *testing.T) {
	base, err := Find("sitka-spruce")
	if err != nil {
		t.Fatal(err)
	}
	got, err := base.Like("mine", Change{Density: ptr(410), EL: ptr(11500), GRT: ptr(50), ShearL: ptr(7)})
	if err != nil {
		t.Fatal(err)
	}
	want := base.Wood
	f := 11500 / base.Wood.EL
	want.Density, want.EL, want.GRT = 410, 11500, 50
	want.ER, want.ET, want.GLR, want.GLT = f*want.ER, f*want.ET, f*want.GLR, f*want.GLT
	if got.Wood != want {
		t.Errorf("wood = %+v, want %+v", got.Wood, want)
	}
	strength := base.Strength
	strength.ShearL = 7
	if got.Strength != strength {
		t.Errorf("strength = %+v, want %+v", got.Strength, strength)
	}
	for _, c := range []struct{ key, mark, text string }{
		{"EL", MarkRead, ownValue}, {"GRT", MarkRead, ownValue}, {"shear_along", MarkRead, ownValue},
		{"ER", MarkBorrowed, "ratio to EL as sitka-spruce: "}, {"nuLR", MarkBorrowed, "as sitka-spruce: "},
	} {
		if s := got.Sources[c.key]; s.Mark != c.mark || !strings.HasPrefix(s.Text, c.text) {
			t.Errorf("source of %s = %+v, want %q with mark %q", c.key, s, c.text, c.mark)
		}
	}
	if base.Sources["EL"].Text == ownValue || base.Name != "sitka-spruce" {
		t.Error("Like changed the card it started from")
	}
}

func TestLikeRefuses(t *testing.T) {
	base, err := Find("sitka-spruce")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name string
		ch   Change
		want string
	}{
		{"EL in GPa", Change{EL: ptr(11.5)}, "EL: found 11.5 MPa; want at least 100"},
		{"EL zero", Change{EL: ptr(0)}, "EL: missing or zero"},
		{"density in g/cm³", Change{Density: ptr(0.41)}, "density: found 0.41 kg/m³; want at least 20"},
		{"indefinite", Change{NuRT: ptr(1.9)}, "nuRT: 1.9 makes the compliance indefinite"},
		{"negative strength", Change{MOR: ptr(-5)}, "MOR: found -5 MPa"},
		{"huge strength", Change{MOR: ptr(65000)}, "MOR: found 65000 MPa; want at most 10000"},
	} {
		if _, err := base.Like("mine", c.ch); err == nil || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
	if got, err := base.Like("mine", Change{TensionPerp: ptr(0)}); err != nil || got.Strength.Limits().Known() {
		t.Errorf("strength 0: %v, limits known %v; want an unknown strength", err, got.Strength.Limits().Known())
	}
}
