package cases

// headline is one number that a comparison shows.
type headline struct {
	name, unit string
	digits     int
	bare       bool      // it has no ranges: a range itself
	event      bool      // it may never come to it
	rest       bool      // it stands behind those that decide
	signs      [2]string // what plus and minus mean, for a number without a plain direction
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
	rest := func(name, unit string, digits int, get func(*Report) Num) headline {
		h := of(name, unit, digits, get)
		h.rest = true
		return h
	}
	lean := func(name string, rest bool, signs [2]string, get func(*TiltReport) float64) headline {
		h := bridge(name+" ("+signs[0]+" +)", "deg", 3, func(b *BridgeReport) Num { return Num(get(&b.Tilt)) })
		h.signs, h.rest = signs, rest
		return h
	}
	energy := func(name string, get func(*EnergyReport) float64) headline {
		return rest(name, "%", 1, func(r *Report) Num { return Num(100 * get(&r.Energy) / r.Energy.Total) })
	}
	return []headline{
		bridge("bridge sinks", "mm", 3, func(b *BridgeReport) Num { return Num(b.Sink) }),
		bridge("bass end of the bridge sinks", "mm", 3, func(b *BridgeReport) Num { return Num(b.EndSink[0]) }),
		bridge("treble end of the bridge sinks", "mm", 3, func(b *BridgeReport) Num { return Num(b.EndSink[1]) }),
		lean("bridge leans along", true, [2]string{"toward the neck", "toward the tail"}, func(t *TiltReport) float64 { return t.ForeAft }),
		lean("bridge leans sideways", false, [2]string{"treble side lower", "bass side lower"}, func(t *TiltReport) float64 { return t.Sideways }),
		bridge("strings lower at the octave", "mm", 3, func(b *BridgeReport) Num { return Num(b.ActionChange) }),
		of("top sinks most", "mm", 3, func(r *Report) Num { return Num(r.Top.MostSunk.Value) }),
		rest("apex sinks (each at its own apex)", "mm", 3, func(r *Report) Num { return r.Top.ApexSink }),
		bridge("foot: bass end carries", "%", 1, func(b *BridgeReport) Num { return Num(100 * b.Share.BassEnd) }),
		bridge("foot: middle carries", "%", 1, func(b *BridgeReport) Num { return Num(100 * b.Share.Middle) }),
		bridge("foot: treble end carries", "%", 1, func(b *BridgeReport) Num { return Num(100 * b.Share.TrebleEnd) }),
		event("foot: middle touches at", func(b *BridgeReport) Num { return 100 * b.MiddleTouchesAt }),
		event("foot: middle has closed at", func(b *BridgeReport) Num { return 100 * b.MiddleClosesAt }),
		bridge("friction needed", "N per N", 3, func(b *BridgeReport) Num { return b.FrictionNeeded }),
		rest("edge holds up: neck", "N", 1, func(r *Report) Num { return Num(r.Reactions.Sectors.Neck) }),
		rest("edge holds up: tail", "N", 1, func(r *Report) Num { return Num(r.Reactions.Sectors.Tail) }),
		rest("edge holds up: bass side", "N", 1, func(r *Report) Num { return Num(r.Reactions.Sectors.Bass) }),
		rest("edge holds up: treble side", "N", 1, func(r *Report) Num { return Num(r.Reactions.Sectors.Treble) }),
		rest("energy in all", "N mm", 2, func(r *Report) Num { return Num(r.Energy.Total) }),
		energy("energy in stretching", func(e *EnergyReport) float64 { return e.Membrane }),
		energy("energy in bending", func(e *EnergyReport) float64 { return e.Bending }),
		energy("energy in the braces", func(e *EnergyReport) float64 { return e.Braces }),
		peak("strength used", func(r *Report) Num { return 100 * r.Strength.Used }),
		peak("crushing under the foot", func(r *Report) Num { return 100 * r.Strength.FootUsed }),
		rest("mass of plate and braces", "g", 1, func(r *Report) Num { return Num(r.Mass.Plate + r.Mass.Braces) }),
		mesh,
	}
}
