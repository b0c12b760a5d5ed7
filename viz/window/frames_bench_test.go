//go:build cgo

package window

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/go-gl/gl/v3.3-core/gl"

	"archload/cases/design"
	"archload/viz/desk"
	"archload/viz/desk/looks"
	"archload/viz/panel"
	"archload/viz/scene"
)

// BenchmarkFrames paints the window of the course guitar in its sizes, off the screen, by whatever driver
// there is: turned under the hand, turned with care, in the colours of its sink and as wood with its yearly
// rings, and with another picture each time, of which all is uploaded.
func BenchmarkFrames(b *testing.B) {
	settled := func(field scene.Field) *desk.Desk {
		o := desk.Options{Names: []string{"course-guitar-relief"}, Solve: design.Options{Workers: 2}, Looks: looks.Usual()}
		o.Looks.Field = field
		d, err := desk.New(o)
		if err == nil {
			err = d.Settle(b.Context(), false)
		}
		if err != nil {
			b.Fatal(err)
		}
		return d
	}
	sink, wood := settled(scene.Sink), settled(scene.Wood)
	for _, size := range [][2]int{{1280, 800}, {1920, 1080}, {2560, 1440}} {
		for _, how := range []string{"turned", "careful", "careful wood", "new"} {
			b.Run(fmt.Sprintf("%dx%d/%s", size[0], size[1], how), func(b *testing.B) {
				p := painterFor(b) // a context belongs to its thread
				d := sink
				if how == "careful wood" {
					d = wood
				}
				f := d.Frame(size[0], size[1], 1, panel.Input{Away: true})
				v := &f.Views[0]
				v.Light = !strings.HasPrefix(how, "careful")
				used, most := 0.0, time.Duration(0)
				for b.Loop() {
					v.Camera = v.Camera.Orbited(0.5, 0)
					if how == "new" {
						v.Scene = copied(v.Scene)
					}
					began, cpu := time.Now(), processorTime()
					if err := p.Paint(f); err != nil {
						b.Fatal(err)
					}
					gl.Finish()
					used += processorTime() - cpu
					most = max(most, time.Since(began))
				}
				b.Logf("drawn by %s", gl.GoStr(gl.GetString(gl.RENDERER)))
				b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "frames/s")
				b.ReportMetric(1e3*used/float64(b.N), "cpu-ms/frame")
				b.ReportMetric(1e3*most.Seconds(), "longest-ms")
			})
		}
	}
}

// copied is a scene of other solids that look the same.
func copied(s *scene.Scene) *scene.Scene {
	out := *s
	out.Solids = nil
	for _, o := range s.Solids {
		c := *o
		out.Solids = append(out.Solids, &c)
	}
	return &out
}
