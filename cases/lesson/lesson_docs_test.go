package lesson

import (
	"os"
	"strings"
	"testing"

	"archload/cases/casetest"
	"archload/cases/design"
)

// TestLessonDocs runs the whole lesson of docs/lessons.md and looks for every
// word and key that a lesson may use.
func TestLessonDocs(t *testing.T) {
	t.Parallel()
	data, err := os.ReadFile("../../docs/lessons.md")
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	_, rest, found := strings.Cut(text, "```toml\n")
	example, _, closed := strings.Cut(rest, "```")
	if !found || !closed {
		t.Fatal("no example in docs/lessons.md")
	}
	fsys := casetest.Files("mine.toml", example)
	l, err := Load(fsys, "mine.toml")
	if err != nil {
		t.Fatal(err)
	}
	claims := checkLesson(t, NewChecker(fsys, design.Options{Workers: 2}), l)
	if len(l.Steps) != 3 || claims != 8 {
		t.Errorf("%d steps, %d claims, want the example's 3 and 8", len(l.Steps), claims)
	}
	for _, list := range [][]string{Fields(), Faces(), Views(), Sections(), States()} {
		for _, word := range list {
			if !strings.Contains(text, "`\""+word+"\"`") {
				t.Errorf("docs/lessons.md does not name %q", word)
			}
		}
	}
	for _, key := range []string{"case", "set", "beside", "load", "play", "field", "face", "view", "section", "point", "caution", "ask", "bench", "chart", "forces", "strip", "tone", "state", "air", "beside_air", "sketch"} {
		if !strings.Contains(text, "\n| `"+key+"` |") {
			t.Errorf("docs/lessons.md has no row for %s", key)
		}
	}
	for of := range Sketches() {
		if !strings.Contains(text, "`\""+of+"\"`") {
			t.Errorf("docs/lessons.md does not name the sketch %q", of)
		}
	}
	infos, err := Bundled()
	if err != nil {
		t.Fatal(err)
	}
	for _, info := range infos {
		if !strings.Contains(text, "\n| `"+info.Name+"` |") {
			t.Errorf("docs/lessons.md has no row for the lesson %s", info.Name)
		}
	}
}
