package tone

import (
	"context"
	"math"
	"testing"

	"archload/cases"
	"archload/cases/design"
)

// The strung guitar's response does not hang on how many tones it is made of: with twice as many it
// is the same within 0.1 dB. Driving points take power at every frequency.
func TestResponseConverges(t *testing.T) {
	c, err := cases.Open(nil, "course-guitar")
	if err != nil {
		t.Fatal(err)
	}
	m, err := design.Vibrating(context.Background(), c, design.Strung, design.Options{Workers: 2})
	if err != nil {
		t.Fatal(err)
	}
	ports := portsOf(m)
	reports := [2]*ResponseReport{}
	ro := ResponseOptions{From: 60, To: 1000, Points: 60}
	for i, count := range []int{45, 90} {
		tones, err := m.Tones(count)
		if err != nil {
			t.Fatal(err)
		}
		red, err := tones.Reduce(columnsOf(ports), 0.02)
		if err != nil {
			t.Fatal(err)
		}
		reports[i] = &ResponseReport{}
		reports[i].curves(red, ports, ro.list())
		t.Logf("%d tones reach to %.0f Hz", len(tones.List), tones.List[len(tones.List)-1].Hz)
	}
	for k, p := range reports[0].Response.Paths {
		q := reports[1].Response.Paths[k]
		for i, hz := range reports[0].Response.Hz {
			a, b := math.Hypot(p.Re[i], p.Im[i]), math.Hypot(q.Re[i], q.Im[i])
			if p.Drive == p.At {
				if db := 20 * math.Log10(a/b); math.Abs(db) > 0.1 {
					t.Errorf("%s, %.0f Hz: %.3f dB between 45 and 90 tones", p.Drive, hz, db)
				}
				if !(p.Re[i] > 0) {
					t.Errorf("%s, %.0f Hz: takes the power %g of a unit force", p.Drive, hz, p.Re[i]/2)
				}
			}
		}
	}
}
