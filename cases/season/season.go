// Package season is what a case file says of the air that the wood lives in: where it
// was made, where it goes, or how much water it takes up or gives off.
package season

import (
	"archload/cases/tree"
)

// Season says what moisture does to the design.
type Season struct {
	// the air in which the top was made and fitted; strength and stiffness change with moisture from there
	Made *Climate `toml:"made" eg:"{ humidity = 45, temperature = 21 }"`
	// the seasons that it goes to, each in air that stays until the wood has followed
	To []Climate `toml:"to" most:"24" eg:"[{ name = 'winter', humidity = 25 }, { name = 'summer', humidity = 75 }]"`
	// percentage points of moisture that all wood takes up, or gives off if negative, instead of to; stiffness
	// stays as on the wood cards
	Moisture *float64 `toml:"moisture" want:"-30..30" eg:"-3"`
	// percentage points at the outer face, with moisture_inner: linear through plate and sides. Braces and lining
	// follow the inner face, the bridge the outer one
	MoistureOuter *float64 `toml:"moisture_outer" want:"-30..30" eg:"-2"`
	// percentage points at the inner face, with moisture_outer
	MoistureInner *float64 `toml:"moisture_inner" want:"-30..30" eg:"0"`
	// the seasons follow each other and end in the made air again; false: each comes from the made state. Default: false
	Cycle bool `toml:"cycle" default:"false" eg:"true"`
	// what the strings keep: their tension, as a player tunes them, or their length, as they are left. Default: tension
	Strings string `toml:"strings" default:"tension" one:"tension length" eg:"'length'"`
}

// Climate is air that wood follows.
type Climate struct {
	// what tables call it; default: "season N"
	Name string `toml:"name" eg:"'winter'"`
	// relative humidity of the air, percent
	Humidity float64 `toml:"humidity" need:"the relative humidity in percent" want:"0..100" eg:"45"`
	// degrees Celsius; default: 21.1
	Temperature float64 `toml:"temperature" default:"21.1" want:"-30..60" eg:"21"`
}

// Usual is the seasons of a case that tells none: made at 45 %, a heated winter of 25 % and a damp summer of 75 %
// (common practice, no published source).
func Usual() *Season {
	const warm = 21.1 // °C
	return &Season{Made: &Climate{Humidity: 45, Temperature: warm}, Strings: "tension",
		To: []Climate{{Name: "winter", Humidity: 25, Temperature: warm}, {Name: "summer", Humidity: 75, Temperature: warm}}}
}

// Check wants a made state with the seasons, or a change of moisture without them.
func (s *Season) Check(r *tree.FaultLog) {
	if s == nil || !r.Clean("season") {
		return
	}
	s.checkNames(r)
	faces := s.MoistureOuter != nil || s.MoistureInner != nil
	switch {
	case len(s.To) > 0 && s.Made == nil:
		r.AddKey("season.to", "want also the state in which the top was made, as in made = { humidity = 45, temperature = 21 }")
	case len(s.To) > 0 && (s.Moisture != nil || faces):
		r.AddKey("season", "want either the seasons to, or a change of moisture, found both")
	case s.Moisture != nil && faces:
		r.AddKey("season", "want either moisture, or moisture_outer and moisture_inner, found both")
	case faces && (s.MoistureOuter == nil || s.MoistureInner == nil):
		r.AddKey("season", "want moisture_outer and moisture_inner together, found one of them")
	case s.Cycle && len(s.To) == 0:
		r.AddKey("season.cycle", "want the seasons that follow each other, as in to = [{ name = \"winter\", humidity = 25 }]")
	case len(s.To) == 0 && s.Moisture == nil && !faces:
		r.AddKey("season", "want made and to, as in to = [{ name = \"winter\", humidity = 25 }], or moisture = -3")
	}
}

// checkNames wants seasons that can be told apart.
func (s *Season) checkNames(r *tree.FaultLog) {
	first := map[string]int{}
	for i, to := range s.To {
		if was, twice := first[to.Name]; twice {
			r.AddKey(tree.EntryKey("season.to", i+1)+".name", "want another name than that of season.to[%d], found %q for both", was+1, to.Name)
		} else if to.Name != "" {
			first[to.Name] = i
		}
	}
}
