package materials

import (
	"fmt"
	"maps"
	"slices"
)

// Marks of a Source, and the words of Card.Uses.
const (
	MarkRead     = ""            // read in the source, or in a public copy of it
	MarkMemory   = "from memory" // remembered, the source was not at hand
	MarkBorrowed = "borrowed"    // taken from a related wood

	UseTop    = "top"
	UseBrace  = "brace"
	UseSide   = "side"
	UseBridge = "bridge"
)

// Source says where one value comes from.
type Source struct {
	Text string // book and table, or how it was worked out
	Mark string // one of the marks above
}

// Card is one wood with the source of each value.
type Card struct {
	Name     string   // "sitka-spruce"
	Title    string   // "Sitka spruce (Picea sitchensis)"
	Note     string   // what a user should know about it; may be empty
	Uses     []string // "top", "brace", "side", "bridge"
	Wood     Orthotropic
	Strength Strength
	Water    Water
	Creep    Creep
	Loss     Loss
	Sources  map[string]Source // by key as in a card file; values that are not known have none

	OwnScatter map[string]float64 // of this piece of wood: coefficients of variation by key, 1; none: as the species'
	Together   []Together         // which of them scatter together
}

// Loss is what a wood's stiffness loses when it swings; 0: not known.
type Loss struct {
	Along  float64 // 1, loss factor along the grain
	Across float64 // 1, across the grain and in shear
}

// Entry is one value of a card, for printing.
type Entry struct {
	Key    string // as in a card file
	Value  float64
	Unit   string // "MPa", "kg/m³" or "1"
	Source Source
}

// field describes one number of a card.
type field struct {
	key, unit string
	need      bool   // every card must have it
	what      string // for whoever fills in a card
}

const fieldCount = 32

// fields lists the numbers of a card in the order of a card file.
func fields() [fieldCount]field {
	return [fieldCount]field{
		{"density", "kg/m³", true, "mass over volume at about 12 % moisture: weigh and measure the billet"},
		{"EL", "MPa", true, "stiffness (Young's modulus) along the grain; alone it scales the other moduli of like"},
		{"ER", "MPa", true, "stiffness across the grain, square to the rings"},
		{"ET", "MPa", true, "stiffness across the grain, along the rings"},
		{"GLR", "MPa", true, "shear modulus between grain and radius: in the plane of a quarter-cut plate"},
		{"GLT", "MPa", true, "shear modulus between grain and rings: in the plane of a flat-cut plate"},
		{"GRT", "MPa", true, "rolling shear modulus, across the grain"},
		{"nuLR", "1", true, "Poisson's ratio: how much narrower square to the rings, when stretched along the grain"},
		{"nuLT", "1", true, "Poisson's ratio: how much narrower along the rings, when stretched along the grain"},
		{"nuRT", "1", true, "Poisson's ratio: how much narrower along the rings, when stretched square to them"},
		{"MOR", "MPa", false, "bending strength (modulus of rupture) along the grain"},
		{"compression_along", "MPa", false, "strength when pressed along the grain"},
		{"compression_across", "MPa", false, "strength when pressed across the grain: crushing"},
		{"shear_along", "MPa", false, "shear strength along the grain"},
		{"tension_across", "MPa", false, "strength when pulled across the grain: splitting"},
		{"rolling_shear", "MPa", false, "shear strength across the grain: fibres roll over each other"},
		{"swell_L", "1", false, "strain along the grain for each percentage point of moisture"},
		{"swell_R", "1", false, "strain across the grain, square to the rings, for each percentage point of moisture"},
		{"swell_T", "1", false, "strain across the grain, along the rings, for each percentage point of moisture"},
		{"green_stiffness", "1", false, "stiffness of green wood over that at 12 % moisture"},
		{"green_MOR", "1", false, "bending strength of green wood over that at 12 % moisture"},
		{"green_compression_along", "1", false, "strength of green wood when pressed along the grain over that at 12 % moisture"},
		{"green_compression_across", "1", false, "strength of green wood when pressed across the grain over that at 12 % moisture"},
		{"green_shear", "1", false, "shear strength of green wood over that at 12 % moisture"},
		{"green_moisture", "%", false, "moisture above which stiffness and strength no longer change"},
		{"creep_along", "1", false, "creep along the grain: how much of its elastic strain a year of load adds"},
		{"creep_across", "1", false, "creep across the grain: how much of its elastic strain a year of load adds"},
		{"creep_shear", "1", false, "creep in shear along the grain: how much of its elastic strain a year of load adds"},
		{"creep_rolling_shear", "1", false, "creep in rolling shear: how much of its elastic strain a year of load adds"},
		{"creep_power", "1", false, "power of time with which creep goes on"},
		{"loss_along", "1", false, "loss factor of the stiffness along the grain: what a swing loses in a radian, as a share of its energy"},
		{"loss_across", "1", false, "loss factor of the stiffness across the grain and in shear"},
	}
}

// Places in fields that the code speaks of.
const (
	atDensity  = 0
	atEL       = 1
	firstRatio = 2 // ER
	lastRatio  = 6 // GRT
	firstNu    = 7
	firstLimit = 10 // MOR
	atShear    = 13
	atRolling  = 15
	lastLimit  = 15
	firstLoss  = 30 // loss_along

	atGreenMoisture = 24
)

// slots returns where the numbers of fields are kept.
func (c *Card) slots() [fieldCount]*float64 {
	w, s, m, k, l := &c.Wood, &c.Strength, &c.Water, &c.Creep, &c.Loss
	return [fieldCount]*float64{
		&w.Density, &w.EL, &w.ER, &w.ET, &w.GLR, &w.GLT, &w.GRT, &w.NuLR, &w.NuLT, &w.NuRT,
		&s.MOR, &s.CompressionL, &s.CompressionPerp, &s.ShearL, &s.TensionPerp, &s.RollingShear,
		&m.Swell[0], &m.Swell[1], &m.Swell[2], &m.GreenStiffness, &m.GreenMOR, &m.GreenCompressionL, &m.GreenCompressionPerp, &m.GreenShear, &m.GreenMoisture,
		&k.Along, &k.Across, &k.Shear, &k.RollingShear, &k.Power,
		&l.Along, &l.Across,
	}
}

// Keys lists the keys of a card's numbers as written in a card file: density,
// EL ... nuRT, then the strengths.
func Keys() []string {
	var keys []string
	for _, f := range fields() {
		keys = append(keys, f.key)
	}
	return keys
}

// Meaning says what a key of a card is, and the unit of its numbers ("1": none);
// ok is false for a key that holds no number.
func Meaning(key string) (what, unit string, ok bool) {
	for _, f := range fields() {
		if f.key == key {
			return f.what, f.unit, true
		}
	}
	return "", "", false
}

// Entries lists the known values of a card with their sources, in the order
// of Keys.
func (c Card) Entries() []Entry {
	var out []Entry
	slots := c.slots()
	for i, f := range fields() {
		src, ok := c.Sources[f.key]
		if ok || f.need || *slots[i] != 0 {
			out = append(out, Entry{Key: f.key, Value: *slots[i], Unit: f.unit, Source: src})
		}
	}
	return out
}

// Check reports every fault of the card's numbers: those of Orthotropic.Check,
// values that no wood has (mostly a wrong unit) and impossible strengths.
func (c Card) Check() error {
	fs := c.Wood.rangeFaults()
	if !fs.have("EL") && c.Wood.EL < minWoodEL {
		fs = append(fs, Fault{Key: "EL", Msg: fmt.Sprintf(
			"found %g MPa; want at least %d (a value in GPa needs a factor 1000)", c.Wood.EL, minWoodEL)})
	}
	if !fs.have("density") && c.Wood.Density < minWoodDensity {
		fs = append(fs, Fault{Key: "density", Msg: fmt.Sprintf(
			"found %g kg/m³; want at least %d (a value in g/cm³ needs a factor 1000)", c.Wood.Density, minWoodDensity)})
	}
	if len(fs) == 0 {
		if f, bad := c.Wood.indefinite(); bad {
			fs = append(fs, f)
		}
	}
	slots := c.slots()
	for i, f := range fields() {
		if i < firstLimit || *slots[i] == 0 {
			continue
		}
		least, most := 0.0, maxStrength
		switch {
		case i >= firstLoss:
			most = maxLoss
		case i == atGreenMoisture:
			least, most = minGreenMoisture, maxShare
		case i > lastLimit:
			most = maxShare
		}
		if msg := positive(*slots[i], least, most, f.unit); msg != "" {
			fs = append(fs, Fault{Key: f.key, Msg: msg})
		}
	}
	return fs.sorted().err()
}

// Limits of Card.Check.
const (
	minWoodEL      = 100 // MPa
	minWoodDensity = 20  // kg/m³
	maxStrength    = 1e4 // MPa
	maxShare       = 100 // 1 or %, of what is told relative to something
	maxLoss        = 0.5 // 1, as [motion] loss may be

	minGreenMoisture = 15 // %; equation 5-3 of the handbook needs more than CardMoisture, and its woods have 21 or more (from memory)
)

// clone returns a card that shares no memory with c.
func (c Card) clone() Card {
	out := c
	out.Uses = slices.Clone(c.Uses)
	out.Sources = make(map[string]Source, len(c.Sources))
	for k, v := range c.Sources {
		out.Sources[k] = v
	}
	out.OwnScatter, out.Together = maps.Clone(c.OwnScatter), slices.Clone(c.Together)
	return out
}

// sorted puts faults in the order of Keys, those of other keys behind.
func (fs Faults) sorted() Faults {
	keys := Keys()
	place := func(f Fault) int {
		if i := slices.Index(keys, f.Key); i >= 0 {
			return i
		}
		return len(keys)
	}
	slices.SortStableFunc(fs, func(a, b Fault) int { return place(a) - place(b) })
	return fs
}
