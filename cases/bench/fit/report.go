package fit

import (
	"archload/cases/answer"
	"archload/materials"
)

// Report is what a piece of wood is by what was measured on it.
type Report struct {
	Format      int                            `json:"format"`
	Units       string                         `json:"units"`
	Title       string                         `json:"title"`
	Name        string                         `json:"name"` // of the wood
	Like        string                         `json:"like"` // the card that it was expected to be like
	Wood        map[string]map[string]Constant `json:"wood"` // by name, by key of a card
	Correlation []Pair                         `json:"correlation"`
	Thickness   []Thickness                    `json:"thickness"`
	Readings    []Reading                      `json:"readings"` // in the order of the file
	LeftOut     []string                       `json:"left_out"` // those that fit nothing, in words
	Unknown     []string                       `json:"unknown"`  // constants of which no more is known than before
	Next        []Next                         `json:"next"`     // what would help most, the best first
	Expected    []Expected                     `json:"expected"` // what gauges without a reading will show
	Doubt       []string                       `json:"doubt"`    // other ways to take the readings that are nearly as likely
	Steps       int                            `json:"steps"`
	Settled     bool                           `json:"settled"`
	Cautions    []string                       `json:"cautions"`

	card     materials.Card
	scatters []Pair   // correlations as a card's together has them: of moduli and density, and Poisson's ratios free of the moduli
	inFile   []number // strengths, where like is a card of the bench file and not one that a case finds
}

// Card is the wood that was found, with how much it may still scatter.
func (r *Report) Card() materials.Card { return r.card }

// Constant is one constant: its median, MPa, kg/m³ or 1, and one standard deviation of it.
type Constant struct {
	Value   float64 `json:"value"`
	SD      float64 `json:"sd"`
	Card    float64 `json:"card"`    // before anything was measured
	CardSD  float64 `json:"card_sd"` // likewise
	Known   float64 `json:"known"`   // 1, share of its scatter that the readings took away
	scatter float64 // coefficient of variation for a card, 1
}

// Pair is the correlation of the logarithms of two constants.
type Pair struct {
	Keys [2]string `json:"keys"`
	By   float64   `json:"by"` // 1
}

// Expected is what a gauge will show, mm, and how far that may be off, one standard deviation, by what is not known of the wood.
type Expected struct {
	Words     string   `json:"words"`
	Value     float64  `json:"value"`
	SD        float64  `json:"sd"`
	Thickness *Thinner `json:"thickness"` // with which it shows its target; null without one
}

// Thinner is the thickness with which a flat piece meets a target.
type Thinner struct {
	Target float64    `json:"target"` // mm
	Times  float64    `json:"times"`  // 1, the thickness over that of now
	Sink   answer.Num `json:"sink"`   // mm, by a fresh solve; null where the change is too great to be tried
	Far    bool       `json:"far"`    // it asks for more than a quarter of the thickness
}

// Thickness is how thick a piece is by all that was measured on it, over what the caliper said.
type Thickness struct {
	Piece string  `json:"piece"`
	Times float64 `json:"times"` // 1
	SD    float64 `json:"sd"`    // 1
}

// Reading is one reading beside what the fitted wood gives.
type Reading struct {
	Words   string     `json:"words"`
	Key     string     `json:"key"`
	Unit    string     `json:"unit"`
	Value   float64    `json:"value"`
	SD      float64    `json:"sd"`      // how far it may be off, in the unit
	Fitted  answer.Num `json:"fitted"`  // null for one that fits nothing
	Off     answer.Num `json:"off"`     // read less fitted, in standard deviations of the reading
	Pattern string     `json:"pattern"` // of the tone that it is taken for
	LeftOut bool       `json:"left_out"`
	Hint    string     `json:"hint"` // what would fit instead
}
