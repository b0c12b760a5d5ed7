package say

import (
	"bytes"
	"strings"
	"testing"

	"archload/cases/answer"
	"archload/cases/casetest"
	"archload/cases/design"
	"archload/cases/study"
)

// TestFeetWords: two feet are told by feet and heels, and set against one foot
// only in what both have.
func TestFeetWords(t *testing.T) {
	names := []string{"course-guitar-relief", "course-guitar-two-feet"}
	var sols []*design.Solution
	var reps []*answer.Report
	for _, name := range names {
		s, err := design.Solve(t.Context(), casetest.Open(t, name), design.Options{Workers: 2, Refine: 0.3, NoFlow: true, NoError: true})
		if err != nil {
			t.Fatal(err)
		}
		sols, reps = append(sols, s), append(reps, answer.Summarize(s))
	}
	var two, both bytes.Buffer
	if err := WriteSummary(&two, reps[1]); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"bass foot ", "treble foot ", "inner heels", "outer heels"} {
		if !strings.Contains(two.String(), want) {
			t.Errorf("the summary of two feet lacks %q", want)
		}
	}
	if strings.Contains(two.String(), "middle of the foot") || strings.Contains(two.String(), "bass end 5") {
		t.Errorf("the summary of two feet speaks of thirds:\n%s", two.String())
	}
	c := study.Compare(names, sols, reps)
	if err := WriteComparison(&both, c); err != nil {
		t.Fatal(err)
	}
	text := strings.Join(strings.Fields(both.String()), " ")
	if !strings.Contains(text, "A stands on one foot, which has thirds, B on two") {
		t.Error("the comparison does not say what can be compared")
	}
	for _, r := range c.Rows {
		if q := r.Quantity(); q.Feet > 0 && (q.Event || r.Differences[0].Value.Known()) {
			t.Errorf("%s is compared between one foot and two", q.Name)
		}
	}
	alike := study.Compare(names[1:], sols[1:], reps[1:])
	if len(Verdict(alike)) != 0 || feetSentence(study.Compare([]string{"a", "b"}, []*design.Solution{sols[1], sols[1]}, []*answer.Report{reps[1], reps[1]}), 1) != nil {
		t.Error("two designs on two feet are told to be of different kinds")
	}
}
