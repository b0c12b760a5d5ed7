package cases

import (
	"context"
	"testing"
)

func fineLive(b *testing.B, name string) *Live {
	b.Helper()
	return mustBegin(b, name, Options{Workers: 2})
}

// edited runs an edit with alternating values, answers it at full load and
// takes the sink, as a window does at every step of a slider.
func edited(b *testing.B, l *Live, key string, values ...ChangeValue) {
	b.Helper()
	i := 0
	for b.Loop() {
		q, err := l.Set(context.Background(), KeyValue{key, values[i%len(values)]})
		if err != nil {
			b.Fatal(err)
		}
		mustAt(b, q, 1).SinkField()
		l, i = q, i+1
	}
}

func BenchmarkLiveRefit(b *testing.B) {
	for _, c := range []struct {
		name, key string
		values    []ChangeValue
	}{
		{"depth", "bridge.relief.depth", []ChangeValue{Valued(0.1), Valued(0.13)}},
		{"tension", "strings.tension_scale", []ChangeValue{Valued(0.9), Valued(1.1)}},
		{"shape", "bridge.relief.shape", []ChangeValue{Valued("wedge"), Valued("cosine")}},
		{"saddle", "bridge.saddle_height", []ChangeValue{Valued(25.0), Valued(26.0)}},
		{"bridge", "bridge.wood", []ChangeValue{Valued("ebony"), Valued("sugar-maple")}},
		{"foot", "bridge.foot[1].from", []ChangeValue{Valued(-64.0), Valued(-65.0)}},
	} {
		b.Run(c.name, func(b *testing.B) {
			l := mustSet(b, fineLive(b, "course-guitar"), KeyValue{"bridge.relief.depth", Valued(0.12)})
			mustAt(b, l, 1)
			edited(b, l, c.key, c.values...)
		})
	}
}

func BenchmarkLiveRefactor(b *testing.B) {
	for _, c := range []struct {
		name, key string
		values    []ChangeValue
	}{
		{"wood", "plate.wood", []ChangeValue{Valued("engelmann-spruce"), Valued("sitka-spruce")}},
		{"thickness", "plate.thickness_scale", []ChangeValue{Valued(0.98), Valued(1.02)}},
		{"brace", "brace[1].height_scale", []ChangeValue{Valued(0.9), Valued(1.1)}},
	} {
		b.Run(c.name, func(b *testing.B) { edited(b, fineLive(b, "course-guitar"), c.key, c.values...) })
	}
}

func BenchmarkLiveRemesh(b *testing.B) {
	edited(b, fineLive(b, "course-guitar"), "bridge.at", ChangeValue{"20", []any{0.0, 20.0}}, ChangeValue{"-20", []any{0.0, -20.0}})
}

// BenchmarkLiveAt is another load of the same design.
func BenchmarkLiveAt(b *testing.B) {
	l := fineLive(b, "course-guitar-relief")
	mustAt(b, l, 1)
	load := 0.0
	for b.Loop() {
		if load += 0.01; load > 1 {
			load = 0
		}
		mustAt(b, l, load).SinkField()
	}
}

func BenchmarkLiveFields(b *testing.B) {
	l := fineLive(b, "course-guitar-relief")
	s := mustAt(b, l, 1)
	b.Run("sink", func(b *testing.B) {
		for b.Loop() {
			s.SinkField()
		}
	})
	b.Run("stress", func(b *testing.B) {
		for b.Loop() {
			s.StressFields(1)
		}
	})
	b.Run("strength", func(b *testing.B) {
		for b.Loop() {
			s.StrengthFields()
		}
	})
	b.Run("report", func(b *testing.B) {
		for b.Loop() {
			if _, err := l.Report(context.Background()); err != nil {
				b.Fatal(err)
			}
		}
	})
}
