package cases

// headline is one number that a comparison shows.
type headline struct {
	name, unit string
	digits     int
	bare       bool // it has no ranges: a range itself
	event      bool // it may never come to it
	measure
}

func ofBridge(get func(*BridgeReport) Num) func(*Report) Num {
	return func(r *Report) Num {
		if r.Bridge == nil {
			return None()
		}
		return get(r.Bridge)
	}
}

// headlines lists the numbers of a comparison.
func headlines() []headline {
	of := func(name, unit string, digits int, get func(*Report) Num) headline {
		return headline{name: name, unit: unit, digits: digits, measure: measure{get: get}}
	}
	bridge := func(name, unit string, digits int, get func(*BridgeReport) Num) headline {
		return of(name, unit, digits, ofBridge(get))
	}
	event := func(name string, get func(*BridgeReport) Num) headline {
		h := of(name, "% of load", 0, ofBridge(get))
		h.event = true
		return h
	}
	peak := func(name string, get func(*Report) Num) headline {
		h := of(name, "%", 0, get)
		h.peak = true
		return h
	}
	mesh := of("error from the mesh", "%", 2, func(r *Report) Num { return 100 * r.Error.Discretisation })
	mesh.bare = true
	energy := func(name string, get func(*EnergyReport) float64) headline {
		return of(name, "%", 1, func(r *Report) Num { return Num(100 * get(&r.Energy) / r.Energy.Total) })
	}
	return []headline{
		bridge("bridge sinks", "mm", 3, func(b *BridgeReport) Num { return Num(b.Sink) }),
		bridge("bass end of the bridge sinks", "mm", 3, func(b *BridgeReport) Num { return Num(b.EndSink[0]) }),
		bridge("treble end of the bridge sinks", "mm", 3, func(b *BridgeReport) Num { return Num(b.EndSink[1]) }),
		bridge("bridge leans toward the neck", "deg", 3, func(b *BridgeReport) Num { return Num(b.Tilt.ForeAft) }),
		bridge("bridge leans to the treble", "deg", 3, func(b *BridgeReport) Num { return Num(b.Tilt.Sideways) }),
		bridge("strings lower at the octave", "mm", 3, func(b *BridgeReport) Num { return Num(b.ActionChange) }),
		of("top sinks most", "mm", 3, func(r *Report) Num { return Num(r.Top.MostSunk.Value) }),
		of("apex sinks", "mm", 3, func(r *Report) Num { return r.Top.ApexSink }),
		bridge("foot: bass end carries", "%", 1, func(b *BridgeReport) Num { return Num(100 * b.Share.BassEnd) }),
		bridge("foot: middle carries", "%", 1, func(b *BridgeReport) Num { return Num(100 * b.Share.Middle) }),
		bridge("foot: treble end carries", "%", 1, func(b *BridgeReport) Num { return Num(100 * b.Share.TrebleEnd) }),
		event("foot: middle touches at", func(b *BridgeReport) Num { return 100 * b.MiddleTouchesAt }),
		event("foot: middle has closed at", func(b *BridgeReport) Num { return 100 * b.MiddleClosesAt }),
		bridge("friction needed", "1", 3, func(b *BridgeReport) Num { return b.FrictionNeeded }),
		of("edge holds up: neck", "N", 1, func(r *Report) Num { return Num(r.Reactions.Sectors.Neck) }),
		of("edge holds up: tail", "N", 1, func(r *Report) Num { return Num(r.Reactions.Sectors.Tail) }),
		of("edge holds up: bass side", "N", 1, func(r *Report) Num { return Num(r.Reactions.Sectors.Bass) }),
		of("edge holds up: treble side", "N", 1, func(r *Report) Num { return Num(r.Reactions.Sectors.Treble) }),
		of("energy in all", "N mm", 2, func(r *Report) Num { return Num(r.Energy.Total) }),
		energy("energy in stretching", func(e *EnergyReport) float64 { return e.Membrane }),
		energy("energy in bending", func(e *EnergyReport) float64 { return e.Bending }),
		energy("energy in the braces", func(e *EnergyReport) float64 { return e.Braces }),
		peak("strength used", func(r *Report) Num { return 100 * r.Strength.Used }),
		peak("crushing under the foot", func(r *Report) Num { return 100 * r.Strength.FootUsed }),
		of("mass of plate and braces", "g", 1, func(r *Report) Num { return Num(r.Mass.Plate + r.Mass.Braces) }),
		mesh,
	}
}
