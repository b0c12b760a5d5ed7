package materials

import (
	"errors"
	"strings"
	"testing"
)

const plainCard = `
format = 1
title = "Billet 7"
uses = ["top"]
density = 410
EL = 11500
ER = 900
ET = 500
GLR = 700
GLT = 650
GRT = 40
nuLR = 0.37
nuLT = 0.45
nuRT = 0.45
`

func TestParseCardPlain(t *testing.T) {
	c, err := ParseCard("billet-7", []byte(plainCard))
	if err != nil {
		t.Fatal(err)
	}
	want := Orthotropic{EL: 11500, ER: 900, ET: 500, GLR: 700, GLT: 650, GRT: 40, NuLR: 0.37, NuLT: 0.45, NuRT: 0.45, Density: 410}
	if c.Wood != want || c.Name != "billet-7" || c.Title != "Billet 7" {
		t.Errorf("card = %+v, want %+v", c, want)
	}
	if c.Strength != (Strength{}) || len(c.Entries()) != 10 {
		t.Errorf("strength %+v, %d values; want none known, 10 values", c.Strength, len(c.Entries()))
	}
}

func TestParseCardForms(t *testing.T) {
	c, err := ParseCard("x", []byte(`
density = { specific_gravity = 0.4, source = "scale" }
EL = { moe = 10000, source = "bending test", mark = "" }
ER = { ratio = 0.08, source = "table", mark = "from memory" }
ET = { value = 500, source = "table", mark = "borrowed" }
GLR = { ratio = 0.06 }
GLT = 650
GRT = 40
nuLR = 0.37
nuLT = { value = 0.45 }
nuRT = 0
MOR = 70
shear_along = 8
rolling_shear = { ratio = 0.25 }
`))
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range []struct {
		what      string
		got, want float64
	}{
		{"density, 1120 G", c.Wood.Density, 448}, {"EL, 1.10 MOE", c.Wood.EL, 11000}, {"ER, ratio", c.Wood.ER, 880},
		{"ET", c.Wood.ET, 500}, {"GLR, ratio", c.Wood.GLR, 660}, {"rolling shear, ratio", c.Strength.RollingShear, 2},
		{"MOR", c.Strength.MOR, 70}, {"nuRT", c.Wood.NuRT, 0},
	} {
		near(t, v.what, v.got, v.want, 1e-12)
	}
	if got, want := c.Sources["ER"], (Source{"table", MarkMemory}); got != want {
		t.Errorf("source of ER = %+v, want %+v", got, want)
	}
}

func TestParseCardLike(t *testing.T) {
	c, err := ParseCard("mine", []byte(`
like = "sitka-spruce"
density = 410
EL = { value = 11500, source = "bending test" }
GRT = { ratio = 0.004 }
`))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "ER, MPa", c.Wood.ER, 0.078*11500, 1e-12)
	near(t, "GRT, MPa", c.Wood.GRT, 0.004*11500, 1e-12)
	near(t, "MOR, MPa", c.Strength.MOR, 65, 0)
	if c.Name != "mine" || !strings.HasPrefix(c.Title, "mine, like Sitka spruce") {
		t.Errorf("name %q, title %q", c.Name, c.Title)
	}
	if got := c.Sources["EL"]; got != (Source{Text: "bending test"}) {
		t.Errorf("source of EL = %+v", got)
	}
}

// TestFromTable is the way a [wood.NAME] table of a case comes in.
func TestFromTable(t *testing.T) {
	c, err := FromTable("mine", map[string]any{"like": "ebony", "density": int64(1100), "EL": 17000.0})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "EL, MPa", c.Wood.EL, 17000, 0)
	near(t, "density, kg/m³", c.Wood.Density, 1100, 0)
}

func TestParseCardFaults(t *testing.T) {
	for _, c := range []struct {
		name, from, to string // replaced in plainCard
		keys           string
		says           string
	}{
		{"missing", "GRT = 40\n", "", "GRT", "missing; want a number of MPa, or like ="},
		{"two missing", "GRT = 40\nnuLR = 0.37\n", "", "GRT nuLR", ""},
		{"unknown key", "ET = 500", "ET = 500\nEE = 3", "EE", "unknown key; nearest: E"},
		{"wrong case", "GRT = 40", "grt = 40", "GRT grt", "unknown key; nearest: GRT"},
		{"text for a number", "EL = 11500", `EL = "stiff"`, "EL", `found "stiff"; want a finite number`},
		{"not a number", "EL = 11500", "EL = nan", "EL", "found NaN"},
		{"infinite", "EL = 11500", "EL = inf", "EL", "found +Inf"},
		{"in GPa", "EL = 11500", "EL = 11.5", "EL", "found 11.5 MPa; want at least 100"},
		{"in g/cm³", "density = 410", "density = 0.41", "density", "at least 20"},
		{"negative", "GLT = 650", "GLT = -650", "GLT", "found -650 MPa; want > 0"},
		{"indefinite", "nuRT = 0.45", "nuRT = 1.9", "nuRT", "indefinite; want between"},
		{"strength zero", "nuRT = 0.45", "nuRT = 0.45\nMOR = 0", "MOR", "found 0; want > 0 MPa"},
		{"no drier than the card", "nuRT = 0.45", "nuRT = 0.45\ngreen_moisture = 12", "green_moisture", "at least 15"},
		{"strength in kPa", "nuRT = 0.45", "nuRT = 0.45\nMOR = 65000", "MOR", "at most 10000"},
		{"bad mark", "EL = 11500", `EL = { value = 11500, mark = "guess" }`, "EL", `mark: found "guess"`},
		{"empty source", "EL = 11500", `EL = { value = 11500, source = " " }`, "EL", "source: found"},
		{"unknown form", "nuLR = 0.37", `nuLR = { ratio = 0.3 }`, "nuLR", `unknown key "ratio"`},
		{"two forms", "EL = 11500", `EL = { value = 11500, moe = 3 }`, "EL", "both moe and value"},
		{"no number", "EL = 11500", `EL = { source = "x" }`, "EL", "no number; want value or moe"},
		{"ratio of nothing", "EL = 11500\nER = 900", `ER = { ratio = 0.08 }`, "EL ER", "ratio of EL, which is missing"},
		{"bad use", `["top"]`, `["top", "door"]`, "uses", "want top, brace, side or bridge"},
		{"use no list", `["top"]`, `"top"`, "uses", "want a list"},
		{"title no text", `"Billet 7"`, `7`, "title", "found 7; want one line of text"},
		{"title of two lines", `"Billet 7"`, `"a\nb"`, "title", "one line"},
		{"format", "format = 1", "format = 2", "format", "found 2; want 1"},
		{"like what", "format = 1", `like = "oak"`, "like", `no wood card "oak"; there are african-mahogany`},
		{"like a number", "format = 1", `like = 3`, "like", "want the name of a wood card"},
		{"syntax", "EL = 11500", "EL = = 3", "", "line 6: "},
		{"twice", "EL = 11500", "EL = 11500\nEL = 3", "", "EL"},
	} {
		text := strings.Replace(plainCard, c.from, c.to, 1)
		if text == plainCard {
			t.Fatalf("%s: nothing replaced", c.name)
		}
		_, err := ParseCard("x", []byte(text))
		var fs Faults
		if !errors.As(err, &fs) {
			t.Errorf("%s: error %v, want Faults", c.name, err)
			continue
		}
		var keys []string
		for _, f := range fs {
			keys = append(keys, f.Key)
		}
		if got := strings.Join(keys, " "); c.keys != "" && got != c.keys {
			t.Errorf("%s: faults at %q, want %q (%v)", c.name, got, c.keys, err)
		}
		if !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: says %q, want it to hold %q", c.name, err, c.says)
		}
	}
}

// FuzzParseCard wants an error of one or more Faults or a valid card, and no
// panic.
func FuzzParseCard(f *testing.F) {
	f.Add([]byte(plainCard))
	f.Add([]byte("like = \"sitka-spruce\"\ndensity = 410\nEL = 11500\n"))
	f.Add([]byte("EL = { moe = 1, source = \"a\", mark = \"borrowed\" }\nER = { ratio = 1e308 }"))
	f.Add([]byte("density = 1979-05-27\nuses = [[1]]\n[EL]\nvalue = 3\n[[ER]]\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		c, err := ParseCard("fuzz", data)
		var fs Faults
		if err != nil {
			if !errors.As(err, &fs) || len(fs) == 0 || strings.TrimSpace(err.Error()) == "" {
				t.Errorf("error without a fault: %v", err)
			}
			return
		}
		if err := c.Check(); err != nil {
			t.Errorf("accepted, but %v", err)
		}
		c.Wood.Compliance().Turned(PlateAxes(Cut{RingAngle: 30, GrainAngle: 4})).Reduce()
		for _, e := range c.Entries() {
			if e.Source.Text == "" {
				t.Errorf("%s has no source", e.Key)
			}
		}
	})
}
