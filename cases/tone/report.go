package tone

import (
	"archload/cases/answer"
	"archload/cases/design"
	"archload/fem/vibration"
)

// Report is how a design vibrates: masses g, frequencies Hz, places mm.
type Report struct {
	Format   int         `json:"format"`
	Units    string      `json:"units"`
	Title    string      `json:"title"`
	State    string      `json:"state"`
	Nodes    int         `json:"nodes"`
	Bearing  int         `json:"bearing_points"` // of the foot that stay in contact; 0 but for strung
	Tones    []Tone      `json:"tones"`          // ascending
	Heard    []HeardTone `json:"heard"`
	Changes  []Change    `json:"changes"` // null if not asked for
	Like     []Likeness  `json:"like"`    // null for the first of several designs, and for one alone
	Counted  Counted     `json:"counted"`
	GoodTo   float64     `json:"good_to"` // Hz, up to which the triangles carry bending waves
	Cautions []string    `json:"cautions"`
	LeftOut  string      `json:"left_out"` // the same in a few words
}

// Tone is one tone.
type Tone struct {
	Hz        float64     `json:"hz"`
	Pattern   string      `json:"pattern"`    // in plain words
	ModalMass float64     `json:"modal_mass"` // g, at the place that moves most
	X         float64     `json:"x"`          // mm, that place in plan
	Y         float64     `json:"y"`
	Share     Share       `json:"share"`
	Bridge    *BridgeTone `json:"bridge"` // null without a bridge
	Error     answer.Num  `json:"error"`  // 1, estimated relative error by the mesh; null if not estimated
	Bound     float64     `json:"search"` // 1, bound of the relative error that the search leaves

	lines [2]int // of no movement that a straight path meets, across the plate and along it
}

// Share is how the movement (kinetic energy) is shared out, 1.
type Share struct {
	Plate  float64 `json:"plate"`
	Braces float64 `json:"braces"`
	Sides  float64 `json:"sides"`          // with lining
	Back   float64 `json:"back,omitempty"` // of a whole body
	Bridge float64 `json:"bridge"`
	Masses float64 `json:"masses"` // what sits on the plate
}

// BridgeTone is how the bridge moves as a whole: shares of the squares of the movements of its foot's
// middle, and of its saddle or foot's end by turning; they sum to 1.
type BridgeTone struct {
	Pumps         float64 `json:"pumps"`          // up and down
	RocksToNut    float64 `json:"rocks_to_nut"`   // about the line of its foot
	RocksSideways float64 `json:"rocks_sideways"` // one end up, the other down
	SlidesAlong   float64 `json:"slides_along"`   // along the strings
	SlidesAcross  float64 `json:"slides_across"`
	Turns         float64 `json:"turns"` // about the upright
	Words         string  `json:"words"` // the greatest of them
}

// Counted is the proof that no tone is missing.
type Counted struct {
	Below  float64 `json:"below"`  // Hz
	Count  int     `json:"count"`  // tones below it; those listed, and the free motions
	Free   int     `json:"free"`   // motions without a tone, left out
	Growth float64 `json:"growth"` // of the factor that counts, 1
}

// Shapes are the movements behind a report, for pictures.
type Shapes struct {
	Moving *design.Moving
	Tones  *vibration.Tones
	Normal [][]float64 // of each tone: movement of the plate's nodes square to it, greatest 1
}

// Likeness sets a tone beside the one of the first design that swings most alike.
type Likeness struct {
	Tone  int        `json:"tone"`  // number, from 1
	First int        `json:"first"` // of the first design; 0: none swings alike
	Alike float64    `json:"alike"` // 1 the same movement square to the plate, 0 nothing in common
	Rise  answer.Num `json:"rise"`  // 1, frequency over that of the first design, less 1
}

// Change is which way one thing moves every tone.
type Change struct {
	Key        string       `json:"key"`         // of the case, and of a wood's card
	Words      string       `json:"words"`       // what is changed
	PerPercent []answer.Num `json:"per_percent"` // of each tone: how many percent it rises if that grows by one percent
}
