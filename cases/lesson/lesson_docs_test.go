package lesson

import (
	"archload/cases/casetest"
	"os"
	"strings"
	"testing"
)

// TestLessonDocs runs the whole lesson of docs/lessons.md and looks for every
// word and key that a lesson may use.
func TestLessonDocs(t *testing.T) {
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
	l, err := LoadLesson(fsys, "mine.toml")
	if err != nil {
		t.Fatal(err)
	}
	s := newLessonSolver(fsys)
	claims := 0
	for i := range l.Steps {
		step := &l.Steps[i]
		claims += len(step.Claims)
		if err := step.Check(s.answer(t, step.Case, step.Set, false), s.answer(t, step.Beside, nil, false)); err != nil {
			t.Errorf("step %d of the example:\n%v", i+1, err)
		}
	}
	if len(l.Steps) != 3 || claims != 8 {
		t.Errorf("%d steps, %d claims, want the example's 3 and 8", len(l.Steps), claims)
	}
	for _, list := range [][]string{LessonFields(), LessonFaces(), LessonViews(), LessonSections()} {
		for _, word := range list {
			if !strings.Contains(text, "`\""+word+"\"`") {
				t.Errorf("docs/lessons.md does not name %q", word)
			}
		}
	}
	for _, key := range []string{"case", "set", "beside", "load", "play", "field", "face", "view", "section", "point", "caution"} {
		if !strings.Contains(text, "\n| `"+key+"` |") {
			t.Errorf("docs/lessons.md has no row for %s", key)
		}
	}
	infos, err := BundledLessons()
	if err != nil {
		t.Fatal(err)
	}
	for _, info := range infos {
		if !strings.Contains(text, "\n| `"+info.Name+"` |") {
			t.Errorf("docs/lessons.md has no row for the lesson %s", info.Name)
		}
	}
}
