package lesson

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/casetest"
	"archload/cases/design"
	"archload/cases/study"
	"archload/cases/tree"
)

// bundledLessons opens the lessons that come with the program.
func bundledLessons(t *testing.T) []*Lesson {
	t.Helper()
	list, err := Bundled()
	if err != nil {
		t.Fatal(err)
	}
	var out []*Lesson
	for _, info := range list {
		l, err := Open(nil, info.Name)
		if err != nil {
			t.Fatal(err)
		}
		if l.Name != info.Name || l.Title != info.Title || l.About != info.About || len(l.Steps) != info.Steps {
			t.Errorf("%s is listed as %+v, want the lesson's own name, title, words and steps", l.Name, info)
		}
		out = append(out, l)
	}
	return out
}

// checkLesson holds the claims of a lesson to the solve and counts them.
func checkLesson(t *testing.T, k *Checker, l *Lesson) int {
	t.Helper()
	n := 0
	for i := range l.Steps {
		found, err := k.Check(t.Context(), &l.Steps[i])
		if err != nil {
			t.Fatalf("%s, step %d: %v", l.Name, i+1, err)
		}
		for _, f := range found {
			n++
			if f.Fault != nil {
				t.Error(f.Fault)
			}
		}
	}
	return n
}

// TestLessonClaims holds every number and every word in braces of the bundled
// lessons to the solve of the designs that the step shows.
func TestLessonClaims(t *testing.T) {
	t.Parallel()
	k := NewChecker(nil, design.Options{Workers: 2})
	claims := 0
	for _, l := range bundledLessons(t) {
		claims += checkLesson(t, k, l)
	}
	if claims < 280 {
		t.Errorf("%d claims checked, want 280 at least", claims)
	}
	if failed := k.Failed(); failed != nil {
		t.Errorf("built-in checks failed: %v", failed)
	}
	for id, a := range k.answers {
		for _, w := range a.numbers.rep.Warnings {
			if strings.Contains(w, "solve again") {
				t.Errorf("%s: a lesson of a foot that would slide: %s", id, w)
			}
		}
	}
	for _, l := range bundledLessons(t) {
		switch l.Name {
		case "1-arch":
			letsOut(t, own(k, &l.Steps[7]))
		case "2-relief":
			bearsAlong(t, own(k, &l.Steps[0]))
			closesInward(t, own(k, &l.Steps[2]))
		}
	}
}

// own is the solution of a step's own design.
func own(k *Checker, s *Step) *design.Solution {
	return k.answers[designID(s.Case, s.Set, s.asked(false))].solution
}

// bearsAlong checks the words "bears along its whole length".
func bearsAlong(t *testing.T, s *design.Solution) {
	t.Helper()
	for _, c := range answer.FootColumns(s) {
		if !(c.Force > 0) {
			t.Errorf("the tight foot carries %g N at x = %g mm, want it to bear along its whole length", c.Force, c.X)
		}
	}
}

// letsOut checks the words "sides let the edge out at the waist and the tail", where it
// goes out most: how far the plate's edge moves outward, mm, square to the outline.
func letsOut(t *testing.T, s *design.Solution) {
	t.Helper()
	most, mean, all := map[string]float64{}, 0.0, 0.0
	loop := s.Top.Built.Mesh.Rim
	for k, n := range loop {
		a, p, b := s.Top.Built.Mesh.Points[loop[(k+len(loop)-1)%len(loop)]], s.Top.Built.Mesh.Points[n], s.Top.Built.Mesh.Points[loop[(k+1)%len(loop)]]
		x, y := b[0]-a[0], b[1]-a[1]
		out := (s.Result.U[6*n]*y - s.Result.U[6*n+1]*x) / math.Hypot(x, y)
		mean += out * math.Hypot(x, y)
		all += math.Hypot(x, y)
		where := "elsewhere"
		switch {
		case p[1] < -150 && math.Abs(p[0]) < 120:
			where = "tail"
		case p[1] > 50 && p[1] < 160:
			where = "waist"
		}
		most[where] = math.Max(most[where], out)
	}
	if !(mean/all > 0.01 && most["tail"] > 1.2*most["elsewhere"] && most["waist"] > 1.2*most["elsewhere"]) {
		t.Errorf("the edge moves out by %.3f mm in the mean, at most %v mm; want it outward, most at tail and waist", mean/all, most)
	}
}

// closesInward checks that the gap closes from the ends inward, as it plays, and the words, at a
// tenth of the load, "only the ends bear": stations farther in close later, or so
// nearly together that the mesh decides, which shifts a closing by ten times that.
func closesInward(t *testing.T, s *design.Solution) {
	t.Helper()
	at := map[float64]float64{} // load at which a station first bears, by its distance from the middle
	for _, e := range s.Result.State.Events {
		x := math.Abs(s.Top.Built.Bridge.Cells[e.Pad].X)
		if _, seen := at[x]; e.Closes && !seen {
			at[x] = e.Load
		}
	}
	const together = 1e-4 // of the load
	stations := sortedDistances(at)
	for i := 1; i < len(stations); i++ {
		if in, out := at[stations[i-1]], at[stations[i]]; out > in+together {
			t.Errorf("the station %g mm out bears at %.4f of the load, after %.4f at %g mm, want it before", stations[i], out, in, stations[i-1])
		}
	}
	if len(stations) < 30 || at[stations[0]] < 0.16 || at[stations[len(stations)-1]] > 0.001 {
		t.Errorf("%d stations, the innermost at %.3f, the outermost at %.3f of the load; want all 33, the middle last and the ends first",
			len(stations), at[stations[0]], at[stations[len(stations)-1]])
	}
}

func sortedDistances(at map[float64]float64) []float64 {
	var out []float64
	for x := range at {
		out = append(out, x)
	}
	slices.Sort(out)
	return out
}

// TestLessonPairs holds the words "all else alike": the designs that a lesson
// sets side by side differ in nothing but what it says.
func TestLessonPairs(t *testing.T) {
	rough := []tree.KeyValue{{Key: "bridge.hold", Value: tree.Valued("friction")}}
	for _, c := range []struct {
		a, b string
		setB []tree.KeyValue
		only []string
	}{
		{"course-guitar-friction", "flat-plate", rough, []string{"plate.arch"}},
		{"course-guitar-body", "course-guitar-body-treble", nil, []string{"plate.arch.contours"}},
		{"course-guitar-friction", "course-guitar-elastic", rough, []string{"rim"}},
		{"course-guitar-body", "course-guitar-body-relief", nil, []string{"bridge.relief"}},
		{"bowed-layout", "bowed-layout-no-post", nil, []string{"post"}},
	} {
		b, err := cases.OpenChanged(nil, c.b, "set", c.setB)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range study.Differs([]*cases.Case{casetest.Open(t, c.a), b}) {
			allowed := append([]string{"title", "base"}, c.only...)
			if !slices.ContainsFunc(allowed, func(k string) bool { return tree.IsWithin(d.Key, k) }) {
				t.Errorf("%s and %s differ in %s, want only %v", c.a, c.b, d.Key, c.only)
			}
		}
	}
}

func sentences(text string) int {
	return len(regexp.MustCompile(`[.!?](\s|$)`).FindAllString(text, -1))
}

// TestLessonTexts holds the lessons to what a window has room for, and every
// figure of a caption to a claim.
func TestLessonTexts(t *testing.T) {
	lessons := bundledLessons(t)
	if len(lessons) != 8 {
		t.Fatalf("%d lessons, want 8", len(lessons))
	}
	for _, l := range lessons {
		if n := len(l.Steps); n < 4 || n > 8 || l.Title == "" || sentences(l.About) != 1 {
			t.Errorf("%s: %d steps, title %q, about %q; want 4 to 8 steps, a title and one sentence", l.Name, n, l.Title, l.About)
		}
		cautions := 0
		for i, s := range l.Steps {
			if n, k := utf8.RuneCountInString(s.Caption), sentences(s.Caption); n > 260 || k < 1 || k > 2 || !strings.HasSuffix(s.Caption, ".") {
				t.Errorf("%s, step %d: %d characters in %d sentences, want at most 260 in one or two: %s", l.Name, i+1, n, k, s.Caption)
			}
			rest := s.Caption
			for _, c := range s.Claims {
				rest = strings.Replace(rest, c.Words, "", 1)
			}
			if strings.ContainsFunc(rest, unicode.IsDigit) {
				t.Errorf("%s, step %d: a figure that no claim holds: %s", l.Name, i+1, s.Caption)
			}
			for _, set := range [][]tree.KeyValue{s.Set, s.Against} {
				if len(set) > 0 && !slices.ContainsFunc(set, func(kv tree.KeyValue) bool { return kv.Key == "title" }) {
					t.Errorf("%s, step %d: a changed design without a title of its own", l.Name, i+1)
				}
			}
			if s.Caution != "" {
				cautions++
			}
			if strings.HasSuffix(s.Case, ".toml") || strings.HasSuffix(s.Beside, ".toml") {
				t.Errorf("%s, step %d: %s beside %s, want bundled cases", l.Name, i+1, s.Case, s.Beside)
			}
		}
		if cautions != 1 {
			t.Errorf("%s: %d cautions, want one, where it is apt", l.Name, cautions)
		}
	}
}

// TestLessonWords wants every field, face, view and section to be used by a
// bundled lesson, so that the lessons show all there is.
func TestLessonWords(t *testing.T) {
	used := map[string]bool{}
	for _, l := range bundledLessons(t) {
		for _, s := range l.Steps {
			used["field "+s.Field], used["face "+s.Face], used["view "+s.View], used["section "+s.Section] = true, true, true, true
			if !slices.Contains(Fields(), s.Field) || !slices.Contains(Faces(), s.Face) ||
				!slices.Contains(Views(), s.View) || !slices.Contains(Sections(), s.Section) {
				t.Errorf("%s: %q, %q, %q, %q: want words of the lists", l.Name, s.Field, s.Face, s.View, s.Section)
			}
		}
	}
	for _, want := range []string{"field sink", "field stress along", "field strength used", "field load flow", "field foot pressure", "field gap",
		"face inside", "view from outside", "view from the tail", "view from inside", "view at an angle", "section none", "section cross"} {
		if !used[want] {
			t.Errorf("no bundled lesson shows %s", want)
		}
	}
}
