package glossary

import (
	"strings"
	"testing"

	"archload/cases/quantity"
)

func TestAll(t *testing.T) {
	seen := map[string]string{}
	for _, term := range All() {
		if term.Means == "" || !strings.HasSuffix(term.Means, ".") {
			t.Errorf("%s: means %q, want a sentence", term.Name, term.Means)
		}
		for _, w := range append([]string{term.Name}, term.Also...) {
			if other, twice := seen[strings.ToLower(w)]; twice {
				t.Errorf("%q stands for both %s and %s", w, other, term.Name)
			}
			seen[strings.ToLower(w)] = term.Name
		}
	}
	for _, q := range quantity.All() {
		if len(Named(q.Name)) == 0 {
			t.Errorf("the quantity %q is not explained", q.Name)
		}
	}
}

func TestNamed(t *testing.T) {
	for word, want := range map[string]string{"Rolling shear": "rolling shear", "grip": "grip", "downforce": "presses N", "N per N": "friction needed",
		"standard deviation": "one standard deviation", "memory": "from memory"} {
		if got := Named(word); len(got) == 0 || got[0].Name != want {
			t.Errorf("%q: %v, want %q", word, got, want)
		}
	}
	if got := Named("zeppelin"); got != nil {
		t.Errorf("zeppelin: %v, want nothing", got)
	}
}

// TestMarked wants the first place of each term marked, longer terms before shorter, and
// the text unchanged.
func TestMarked(t *testing.T) {
	const text = "Rolling shear used; the shear in the glue line, and the shear again."
	var all, marked []string
	for _, p := range Marked(text) {
		all = append(all, p.Text)
		if p.Means != "" {
			marked = append(marked, p.Text)
		}
	}
	if strings.Join(all, "") != text {
		t.Errorf("joined %q, want %q", strings.Join(all, ""), text)
	}
	if got := strings.Join(marked, "|"); got != "Rolling shear used|shear|glue line" {
		t.Errorf("marked %q, want rolling shear used, shear, glue line", got)
	}
}
