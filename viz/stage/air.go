package stage

import (
	"context"
	"fmt"

	"archload/cases/aging"
	"archload/cases/design"
	"archload/viz/scale"
	"archload/viz/scene"
)

// Air is a design taken to other air than it was made in.
type Air struct {
	Humidity float64 // percent
	Of       *aging.Air
	Report   *aging.SeasonReport
	Skeleton *scene.Skeleton

	moved *design.Solution
}

// dryAir is the air that a design is taken to at first, percent.
const dryAir = 25.0

// Humid is the humidity of a want, percent.
func (d Display) Humid() float64 {
	if d.Air == 0 {
		return dryAir
	}
	return d.Air
}

// air takes a design to the air of a want, unless it is there; why tells what is missing.
// An error is a cancelled context alone.
func (d *Answered) air(ctx context.Context, w Want, o design.Options) error {
	if d.Air != nil && d.Air.Humidity == w.Humid() {
		return nil
	}
	next := Air{Humidity: w.Humid()}
	var err error
	if d.Air != nil {
		next.Of, next.Skeleton = d.Air.Of, d.Air.Skeleton
	} else if next.Of, err = aging.NewAir(ctx, d.Live.Case(), o); err != nil {
		d.Airless = err.Error()
		return ctx.Err()
	}
	if next.Report, next.moved, err = next.Of.At(ctx, next.Humidity); err != nil {
		d.Air, d.Airless = nil, err.Error()
		return ctx.Err()
	}
	if next.Skeleton == nil {
		next.Skeleton = scene.NewSkeleton(next.moved)
	}
	d.Air = &next
	return nil
}

// drawn is the solution whose movements are drawn for a want, with its skeleton.
func (d *Answered) drawn(w Want) (*design.Solution, *scene.Skeleton) {
	if w.Field == scene.Humidity && d.Air != nil {
		return d.Air.moved, d.Air.Skeleton
	}
	return d.Now, d.Skeleton
}

// airWords say what is seen of a design in other air.
func (s *Shown) airWords(d *Answered) string {
	if s.Want.Field != scene.Humidity {
		return ""
	}
	if d.Air == nil {
		if d.Airless != "" {
			return d.Airless
		}
		return "the movement is worked out when the hand rests"
	}
	return fmt.Sprintf("movement from air of %s %% relative humidity, in which it was made, to %s %%, the wood having followed, strings at pitch; drawn %g times as large",
		scale.Fixed(d.Air.Of.Made.Humidity, 0), scale.Fixed(d.Air.Humidity, 0), s.Enlarge)
}
