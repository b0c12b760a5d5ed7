package figure

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strings"
	"testing"

	"archload/mesh"
	"archload/viz/canvas"
	"archload/viz/canvas/canvastest"
	"archload/viz/scale"
)

// made is a picture or the reason why there is none.
func made(p *canvas.Picture, err error) func(*testing.T) *canvas.Picture {
	return func(t *testing.T) *canvas.Picture {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
}

func longCaption() canvas.Caption {
	c := demoCaption()
	c.Title = strings.Repeat("A very long title of a course guitar with many words in it, ", 9)
	c.Subtitle = strings.Repeat("and a subtitle that goes on, ", 20) + strings.Repeat("x", 300)
	for range 5 {
		c.Facts = append(c.Facts, c.Facts...)
	}
	c.Footer = strings.Repeat("a footer of many words ", 30)
	return c
}

// manyGauges is a drawing with n marks, some at one place.
func manyGauges(n int) Drawing {
	d := demoDrawing()
	d.FlowNote = "each line carries a tenth of the string load of the bridge"
	d.Flow = [][]mesh.Point{{{-40, 0}, {-80, 60}, {-120, 150}}, {{40, 0}, {80, 60}, {120, 150}}}
	d.Strings = [][]mesh.Point{{{-26, 0}, {-22, 240}}, {{26, 0}, {22, 240}}}
	for i := range n {
		a := float64(i) * 2.4
		d.Gauges = append(d.Gauges, Mark{
			Name: "a gauge with rather a long name that tells where it stands", At: mesh.Point{80 * math.Cos(a), 90 * math.Sin(a)},
			Value: 0.2 + 0.01*float64(i), Unit: "mm",
		})
	}
	return d
}

// everyPicture returns pictures of all kinds, ordinary and awkward.
func everyPicture() map[string]func(*testing.T) *canvas.Picture {
	p := guitarPlan(24)
	plan := func(f *Field, d Drawing, c canvas.Caption) func(*testing.T) *canvas.Picture {
		return made(PlanView(PlanInput{Caption: c, Plan: p, Field: f, Drawing: d}))
	}
	sink := &Field{Name: "Sink of the outer surface", Unit: "mm", Nodal: nodal(p, demoSink)}
	stress := &Field{Name: "Stress along the grain, outer surface", Unit: "MPa", Nodal: nodal(p, demoStress), Kind: scale.Signed}
	same := func(v float64, kind scale.Kind) *Field {
		return &Field{Name: "Sink", Unit: "mm", Kind: kind, Nodal: nodal(p, func(mesh.Point) float64 { return v })}
	}
	each := &Field{Name: "Strain energy by area", Unit: "mJ/mm²", PerTriangle: make([]float64, len(p.Tris))}
	for i := range each.PerTriangle {
		each.PerTriangle[i] = float64(i%97) * 1e-4
	}
	long := *stress
	long.Name = strings.Repeat("A field with a long name ", 12)
	out := map[string]func(*testing.T) *canvas.Picture{
		"plan-sink":        plan(sink, demoDrawing(), demoCaption()),
		"plan-stress":      plan(stress, demoDrawing(), demoCaption()),
		"plan-zero":        plan(same(0, scale.Counting), demoDrawing(), demoCaption()),
		"plan-zero-signed": plan(same(0, scale.Signed), demoDrawing(), demoCaption()),
		"plan-constant":    plan(same(0.25, scale.Counting), demoDrawing(), demoCaption()),
		"plan-all-missing": plan(same(math.NaN(), scale.Counting), demoDrawing(), demoCaption()),
		"plan-bare":        made(PlanView(PlanInput{Drawing: demoDrawing()})),
		"plan-undrawn":     plan(sink, Drawing{}, canvas.Caption{}),
		"plan-long":        plan(&long, manyGauges(3), longCaption()),
		"plan-gauges":      plan(sink, manyGauges(24), demoCaption()),
		"plan-triangles":   plan(each, Drawing{Outline: guitarOutline(200), Grain: 12}, demoCaption()),
		"cross-arch":       made(CrossArch(demoCross())),
		"foot-force":       made(FootForce(demoFootForce())),
	}
	addSections(out)
	addFlow(out)
	return out
}

func addSections(out map[string]func(*testing.T) *canvas.Picture) {
	flat := demoSection("flat", 0, 1)
	flat.Bridge = nil
	long := demoCross()
	long.Caption = longCaption()
	two := demoCross()
	two.Feet = []FootSection{demoFoot("bass foot", -66, -24, 6), demoFoot("treble foot", 24, 66, 6)}
	two.Shares = []Share{{"bass foot", -66, -24, 72}, {"treble foot", 24, 66, 76}}
	tight := demoCross()
	for i := range tight.Feet[0].Gap {
		tight.Feet[0].Gap[i], tight.Feet[0].Relief[i] = 0, 0
	}
	fine := demoCross()
	fine.Feet = []FootSection{demoFoot("foot", -66, 66, 80)}
	var many []Section
	for i := range MostSections {
		many = append(many, demoSection(strings.Repeat("design with a long name ", 4+i), 14+2*float64(i), 1-0.12*float64(i)))
	}
	events := demoFootForce()
	for i := range 8 {
		events.Events = append(events.Events, Event{0.05 + 0.12*float64(i), "something happens under the treble end of the foot"})
	}
	equal := demoFootForce()
	for i := range equal.Lines {
		equal.Lines[i].Force = equal.Lines[0].Force
	}
	heels := demoFootForce()
	heels.Lines = append([]FootLine{{"bass outer", heels.Lines[1].Force}}, heels.Lines...)
	out["cross-arch-two-feet"] = made(CrossArch(two))
	out["cross-arch-flat"] = made(CrossArch(CrossArchInput{Caption: demoCaption(), Section: flat}))
	out["cross-arch-long"] = made(CrossArch(long))
	out["cross-arch-tight"] = made(CrossArch(tight))
	out["cross-arch-fine"] = made(CrossArch(fine))
	out["foot-force-events"] = made(FootForce(events))
	out["foot-force-heels"] = made(FootForce(heels))
	out["foot-force-equal"] = made(FootForce(equal))
	out["compare-sections"] = made(CompareSections(CompareInput{Caption: demoCaption(), Sections: []Section{
		demoSection("Course guitar, apex on the centre line", 17, 1), demoSection("Course guitar, apex 22 mm to the treble", 19, 0.8)}}))
	out["compare-sections-most"] = made(CompareSections(CompareInput{Caption: demoCaption(), Sections: many}))
	out["compare-sections-flat"] = made(CompareSections(CompareInput{Sections: []Section{flat, flat}}))
	out["compare-sections-overlaid"] = made(OverlaySections(CompareInput{Caption: demoCaption(), Sections: []Section{
		demoSection("Course guitar, apex on the centre line", 17, 1), demoSection(strings.Repeat("long ", 30), 19, 0.8)}}))
	out["compare-bars"] = made(CompareBars(BarsInput{Caption: demoCaption(), Designs: []string{"apex on the centre line", strings.Repeat("long ", 30)},
		Rows: []BarRow{
			{"Bridge sink", "mm", []float64{0.352, 0.298}, []float64{0.05, 0.04}}, {"Share of the middle", "%", []float64{8.5, 12.1}, nil},
			{"Bridge tilt, treble side lower", "mm", []float64{-0.02, 0.05}, []float64{0.01, 0.02}},
			{"Middle touches at", "% of load", []float64{math.NaN(), 23}, []float64{math.NaN(), math.NaN()}},
			{"Rise", "mm", []float64{-3, -0.001}, []float64{1, 0.01}}, {"Zero", "", []float64{0, 0}, []float64{0, 0}},
		}}))
}

// TestTextStandsClear checks every picture: text of at least 8 points, on
// the page, and no two pieces of text over each other.
func TestTextStandsClear(t *testing.T) {
	for name, picture := range everyPicture() {
		t.Run(name, func(t *testing.T) {
			p := picture(t)
			keep(t, p, name)
			canvastest.StandsClear(t, p)
		})
	}
}

// TestSameBytes draws pictures twice.
func TestSameBytes(t *testing.T) {
	a, b := everyPicture(), everyPicture()
	for _, name := range []string{"plan-sink", "plan-gauges", "cross-arch", "foot-force-events", "compare-sections"} {
		for _, format := range canvas.Formats() {
			var one, two bytes.Buffer
			if err := errors.Join(a[name](t).Write(&one, format, 72), b[name](t).Write(&two, format, 72)); err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(one.Bytes(), two.Bytes()) {
				t.Errorf("%s as %s: two drawings differ", name, format)
			}
		}
	}
}

// TestSVGIsXML reads every picture's SVG and looks for its words.
func TestSVGIsXML(t *testing.T) {
	all := everyPicture()
	odd := demoCaption()
	odd.Title = "<b> & \"quotes\" \x00\xff"
	all["odd"] = made(PlanView(PlanInput{Caption: odd, Drawing: demoDrawing()}))
	for name, picture := range all {
		var b bytes.Buffer
		if err := picture(t).Write(&b, "svg", 0); err != nil {
			t.Fatal(err)
		}
		text := b.String()
		for d := xml.NewDecoder(strings.NewReader(text)); ; {
			if _, err := d.Token(); errors.Is(err, io.EOF) {
				break
			} else if err != nil {
				t.Errorf("%s: %v", name, err)
				break
			}
		}
		if !strings.Contains(text, `="bass`) || !strings.Contains(text, `="treble`) {
			if !strings.HasPrefix(name, "compare-bars") {
				t.Errorf("%s: does not say which side is bass and which treble", name)
			}
		}
		if strings.Contains(text, "NaN") || strings.Contains(text, "Inf") {
			t.Errorf("%s: a coordinate is not a number", name)
		}
	}
}

func TestWriteErrors(t *testing.T) {
	p := made(PlanView(PlanInput{Drawing: demoDrawing()}))(t)
	if err := p.Write(io.Discard, "gif", 0); err == nil || !strings.Contains(err.Error(), `"gif"`) {
		t.Errorf("Write as gif: error %v, want one that names it", err)
	}
	for _, format := range canvas.Formats() {
		if err := p.Write(full{}, format, 72); err == nil {
			t.Errorf("Write as %s to a full disc: no error", format)
		}
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left") }
