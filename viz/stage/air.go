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

	moved *design.Solution // from the air that it was made in
	is    *design.Solution
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

// humid is the humidity of design i of a want, percent.
func (w Want) humid(i int) float64 {
	if i == 0 && len(w.Designs) > 1 && w.AirA > 0 {
		return w.AirA
	}
	return w.Humid()
}

// Aired tells whether designs are taken to other air.
func (w Want) Aired() bool { return w.InAir || w.Field == scene.Humidity }

// air takes a design to air of a humidity, percent, unless it is there; why tells what is missing.
// An error is a cancelled context alone.
func (d *Answered) air(ctx context.Context, humid float64, o design.Options) error {
	if d.Air != nil && d.Air.Humidity == humid {
		return nil
	}
	next := Air{Humidity: humid}
	var err error
	if d.Air != nil {
		next.Of, next.Skeleton = d.Air.Of, d.Air.Skeleton
	} else if next.Of, err = aging.NewAir(ctx, d.Live.Case(), o); err != nil {
		d.Airless = err.Error()
		return ctx.Err()
	}
	if next.Report, next.is, next.moved, err = next.Of.At(ctx, next.Humidity); err != nil {
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
	switch {
	case d.Air == nil || !w.Aired():
		return d.Now, d.Skeleton
	case w.Field == scene.Humidity:
		return d.Air.moved, d.Air.Skeleton
	}
	return d.Air.is, d.Air.Skeleton
}

// worst is the place where most of the strength is used in this air; nil without one.
func (a *Air) worst() *scene.Mark {
	if a == nil {
		return nil
	}
	return worstOf(&a.Report.Strength)
}

// airWords say what is seen of a design in other air.
func (s *Shown) airWords(d *Answered) string {
	if !s.Want.Aired() {
		return ""
	}
	if d.Air == nil {
		if d.Airless != "" {
			return d.Airless
		}
		return "the movement is worked out when the hand rests"
	}
	large := fmt.Sprintf("drawn %g times as large", s.Enlarge)
	if s.Enlarge == 1 {
		large = "drawn true to size"
	}
	if len(s.Designs) > 1 { // each title names its air
		what := "movement by the air"
		if s.Want.Field != scene.Humidity {
			what = s.Want.Field.Name()
		}
		return what + ", strings at pitch; " + large
	}
	from, to := scale.Fixed(d.Air.Of.Made.Humidity, 0), scale.Fixed(d.Air.Humidity, 0)
	if s.Want.Field != scene.Humidity {
		words := s.Want.Field.Name()
		if s.Want.Field.HasFaces() {
			words += [2]string{", outer face", ", inner face"}[s.Want.face()]
		}
		return fmt.Sprintf("%s, strings at pitch, in air of %s %% relative humidity, made in air of %s %%, the wood having followed; movement %s", words, to, from, large)
	}
	return fmt.Sprintf("movement from air of %s %% relative humidity, in which it was made, to %s %%, the wood having followed, strings at pitch; %s", from, to, large)
}

// airTitle is the title of a design's drawing in other air than it was made in.
func (d *Answered) airTitle(title string) string {
	c := d.Live.Case()
	name := "air"
	if c.Season != nil {
		for _, to := range c.Season.To {
			if to.Name != "" && to.Humidity == d.Air.Humidity {
				name = to.Name + " air"
			}
		}
	}
	return fmt.Sprintf("%s, in %s of %s %%", title, name, scale.Fixed(d.Air.Humidity, 0))
}
