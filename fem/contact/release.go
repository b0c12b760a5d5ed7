package contact

import "fmt"

// fadeReleased fades out the tangential forces that opened pads still carry, at
// constant load, following what else opens or closes on the way. The energy
// that goes is counted in Lost.
func (w *tracer) fadeReleased() error {
	for len(w.pending) > 0 {
		if w.stages++; w.stages > w.p.mostStages() {
			return fmt.Errorf("contact: pads release without end at %.3f of the load", w.load)
		}
		d := w.fadeOut()
		if len(d.fade) == 0 {
			return nil
		}
		if err := w.advance(d); err != nil {
			return err
		}
		for _, j := range d.fade {
			if w.fadesIn(d, j) {
				w.fades[w.p.padOf(j)] = false
				w.lambda[j] = 0
			}
		}
	}
	return nil
}

// fadeOut makes a stage of the drags on the pads that are pending.
func (w *tracer) fadeOut() direction {
	d := direction{id: w.stages}
	for _, i := range w.pending {
		for a := 1; a < w.p.per; a++ {
			j := i*int32(w.p.per) + int32(a)
			if w.stuck(j) || w.lambda[j] == 0 {
				continue
			}
			w.fades[i] = true
			w.stage[j] = d.id
			d.fade = append(d.fade, j)
			d.rate = append(d.rate, -w.lambda[j])
		}
	}
	w.pending = nil
	return d
}

// mostStages is how often drag may fade. A stage follows an opening; in the random
// problems of the tests there were at most 0.4 a pad.
func (p *lcp) mostStages() int { return 20 * p.pads }
