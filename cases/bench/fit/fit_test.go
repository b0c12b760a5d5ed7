package fit

import (
	"context"
	"testing"
	"testing/fstest"
	"time"

	"archload/cases/bench"
)

func TestBlank(t *testing.T) {
	text := `format = 1
like = "sitka-spruce"
[blank]
length = 400
width = 300
thickness = 4
weight = 192
[[tone]]
hz = 44.408
[[tone]]
hz = 63.801
[[tone]]
hz = 110.374
[[tone]]
hz = 129.077
[[tone]]
hz = 155.826
[[tone]]
hz = 177.277
`
	f, err := bench.Load(fstest.MapFS{"x.toml": {Data: []byte(text)}}, "x.toml")
	if err != nil {
		t.Fatal(err)
	}
	start := time.Now()
	r, err := Fit(context.Background(), f, Options{Workers: 2, Progress: func(s string) { t.Log(time.Since(start), s) }})
	if err != nil {
		t.Fatal(err)
	}
	for k, c := range r.Wood["x"] {
		t.Logf("%s %.4g ± %.2g (card %.4g ± %.2g)", k, c.Value, c.SD, c.Card, c.CardSD)
	}
	for _, x := range r.Readings {
		t.Logf("%+v", x)
	}
	t.Log(r.Next, r.Doubt, r.Cautions, r.LeftOut, r.Unknown)
}
