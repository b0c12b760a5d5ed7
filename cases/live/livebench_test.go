package live

import (
	"context"
	"testing"

	"archload/cases/tree"

	"archload/cases/answer"
	"archload/cases/design"
)

func fineLive(b *testing.B, name string) *Live {
	b.Helper()
	return mustBegin(b, name, design.Options{Workers: 2})
}

// rested is a design in a window whose hand has rested: answered, and ready for the next edit.
func rested(b *testing.B, l *Live) *Live {
	b.Helper()
	mustAt(b, l, 1)
	l.Ready()
	return l
}

// edited runs an edit with alternating values, answers it at full load and
// takes the sink, as a window does at every step of a slider.
func edited(b *testing.B, l *Live, key string, values ...tree.ChangeValue) {
	b.Helper()
	i := 0
	for b.Loop() {
		q, err := l.Set(context.Background(), tree.KeyValue{Key: key, Value: values[i%len(values)]})
		if err != nil {
			b.Fatal(err)
		}
		answer.SinkField(mustAt(b, q, 1))
		l, i = q, i+1
	}
}

// tenSaddles are more heights than ways are kept, so that none is met again.
func tenSaddles() (out []tree.ChangeValue) {
	for i := range 10 {
		out = append(out, tree.Valued(25+0.1*float64(i)))
	}
	return out
}

func BenchmarkLiveRefit(b *testing.B) {
	for _, c := range []struct {
		name, key string
		values    []tree.ChangeValue
	}{
		{"depth", "bridge.relief.depth", []tree.ChangeValue{tree.Valued(0.1), tree.Valued(0.13)}},
		{"tension", "strings.tension_scale", []tree.ChangeValue{tree.Valued(0.9), tree.Valued(1.1)}},
		{"shape", "bridge.relief.shape", []tree.ChangeValue{tree.Valued("wedge"), tree.Valued("cosine")}},
		{"saddle", "bridge.saddle_height", tenSaddles()},
		{"bridge", "bridge.wood", []tree.ChangeValue{tree.Valued("ebony"), tree.Valued("sugar-maple")}},
		{"foot", "bridge.foot[1].from", []tree.ChangeValue{tree.Valued(-64.0), tree.Valued(-65.0)}},
	} {
		b.Run(c.name, func(b *testing.B) {
			l := mustSet(b, fineLive(b, "course-guitar"), tree.KeyValue{Key: "bridge.relief.depth", Value: tree.Valued(0.12)})
			edited(b, rested(b, l), c.key, c.values...)
		})
	}
}

func BenchmarkLiveRefactor(b *testing.B) {
	for _, c := range []struct {
		name, key string
		values    []tree.ChangeValue
	}{
		{"wood", "plate.wood", []tree.ChangeValue{tree.Valued("engelmann-spruce"), tree.Valued("sitka-spruce")}},
		{"thickness", "plate.thickness_scale", []tree.ChangeValue{tree.Valued(0.98), tree.Valued(1.02)}},
		{"brace", "brace[1].height_scale", []tree.ChangeValue{tree.Valued(0.9), tree.Valued(1.1)}},
		{"graduation", "plate.thickness_change", []tree.ChangeValue{thinner("-0.2", -0.2), thinner("-0.3", -0.3)}},
	} {
		b.Run(c.name, func(b *testing.B) { edited(b, rested(b, fineLive(b, "course-guitar")), c.key, c.values...) })
	}
}

// thinner takes some wood off above the bridge, none at the flanks.
func thinner(text string, by float64) tree.ChangeValue {
	return tree.ChangeValue{Text: text, Value: []any{[]any{0.0, 60.0, by}, []any{110.0, -80.0, 0.0}, []any{-110.0, -80.0, 0.0}}}
}

// BenchmarkLiveReshape is another arch: higher, or its apex moved.
func BenchmarkLiveReshape(b *testing.B) {
	for _, c := range []struct {
		name, key string
		values    []tree.ChangeValue
	}{
		{"height", "plate.arch.height_scale", []tree.ChangeValue{tree.Valued(0.95), tree.Valued(1.05)}},
		{"apex", "plate.arch.apex_shift", []tree.ChangeValue{{Text: "4", Value: []any{0.0, 4.0}}, {Text: "-4", Value: []any{0.0, -4.0}}}},
	} {
		b.Run(c.name, func(b *testing.B) { edited(b, rested(b, fineLive(b, "course-guitar")), c.key, c.values...) })
	}
}

func BenchmarkLiveRemesh(b *testing.B) {
	edited(b, rested(b, fineLive(b, "course-guitar")), "bridge.at", tree.ChangeValue{Text: "20", Value: []any{0.0, 20.0}}, tree.ChangeValue{Text: "-20", Value: []any{0.0, -20.0}})
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
		answer.SinkField(mustAt(b, l, load))
	}
}

func BenchmarkLiveFields(b *testing.B) {
	l := fineLive(b, "course-guitar-relief")
	s := mustAt(b, l, 1)
	b.Run("sink", func(b *testing.B) {
		for b.Loop() {
			answer.SinkField(s)
		}
	})
	b.Run("stress", func(b *testing.B) {
		for b.Loop() {
			answer.StressFields(s, 1)
		}
	})
	b.Run("strength", func(b *testing.B) {
		for b.Loop() {
			answer.StrengthFields(s)
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
