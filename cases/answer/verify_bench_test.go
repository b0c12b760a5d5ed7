package answer

import (
	"context"
	"fmt"
	"testing"

	"archload/cases"
	"archload/cases/casetest"
	"archload/cases/design"
)

// BenchmarkSolveCourseGuitar is the default solve as a user gets it, error
// estimate included.
func BenchmarkSolveCourseGuitar(b *testing.B) {
	c := casetest.Open(b, "course-guitar")
	b.ReportAllocs()
	for b.Loop() {
		s, err := design.Solve(context.Background(), c, design.Options{Workers: 2})
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(len(s.Top.Built.Model.Nodes)), "nodes")
	}
}

// BenchmarkRelief is a change of relief on a prepared top, as the window makes
// it: contact and recovery, without the summary.
func BenchmarkRelief(b *testing.B) {
	top, err := design.Prepare(context.Background(), casetest.Open(b, "course-guitar"), design.Options{Workers: 2})
	if err != nil {
		b.Fatal(err)
	}
	var reliefs []*cases.Case
	for k := range 4 {
		text := fmt.Sprintf("format = 1\nbase = \"course-guitar\"\n[bridge.relief]\ndepth = %g\n", 0.05*float64(k))
		c, err := cases.Load(casetest.Files("a.toml", text), "a.toml")
		if err != nil {
			b.Fatal(err)
		}
		reliefs = append(reliefs, c)
	}
	for k := 0; b.Loop(); k++ {
		if _, err := refit(top, reliefs[k%len(reliefs)]); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkSummarize turns an answer into the report.
func BenchmarkSummarize(b *testing.B) {
	s := answered(b, casetest.Open(b, "course-guitar"), 1)
	for b.Loop() {
		Summarize(s)
	}
}
