// Package setup is the action sheet: which neck angle, saddle height and anchor
// height give the strings a wished height over the board and a wished pressure.
//
//	Case, Wish ─Of→ Sheet: as it is, by the neck, by the bridge
//
// What is asked for is asked at pitch, so every way that is found is solved: the
// strings' place follows from the neck, the saddle and what gives way under them,
// and what gives way from the strings' place (search.go). board.go has the geometry
// of strings over the board; sheet.go puts it together and tries a degree and a millimetre.
//
// There are two ways to the same action, and they are set side by side: the neck is
// set for a given saddle, or the saddle is cut for a given neck. Some makers set the
// action at the neck so that the bridge can stay low and light (common practice, no
// published source).
package setup

import "archload/cases/answer"

// Wish is what is asked for, at pitch.
type Wish struct {
	Bass   float64 `json:"bass"`   // mm, height of the bass outer string over the fret plane at the octave
	Treble float64 `json:"treble"` // mm, of the treble outer one
	// One of the two, the other is zero: the strings' pressure on the bridge, N, or their mean bend over
	// the saddle, front and back angle together, deg.
	Downforce  float64 `json:"downforce"`
	BreakAngle float64 `json:"break_angle"`
}

// Sheet is the action sheet of a design.
type Sheet struct {
	Format   int      `json:"format"`
	Units    string   `json:"units"`
	Title    string   `json:"title"`
	Wish     *Wish    `json:"wish"`  // null if nothing was asked for
	Joint    float64  `json:"joint"` // mm from the saddle to where the neck turns, along the centre line
	Ways     []Way    `json:"ways"`  // as it is; by the neck; by the bridge
	Changes  []Change `json:"changes"`
	Cautions []string `json:"cautions"`
}

// Way is one setting of neck, saddle and anchor with what comes of it. Pairs are of the
// bass and of the treble outer string.
type Way struct {
	Name         string  `json:"name"`
	NeckAngle    float64 `json:"neck_angle"`    // deg
	FretPlane    float64 `json:"fret_plane"`    // mm above the top at the bridge's middle
	SaddleHeight float64 `json:"saddle_height"` // mm
	AnchorHeight float64 `json:"anchor_height"` // mm
	Slant        float64 `json:"slant"`         // mm, the saddle cut higher under the bass outer string than under the treble one, beyond its crown

	Downforce  float64    `json:"downforce"`   // N
	BreakAngle float64    `json:"break_angle"` // deg, mean of front and back angle together
	Shift      float64    `json:"shift"`       // mm, how far the push shifts the downforce toward the neck at the foot
	Sink       float64    `json:"sink"`        // mm, of the bridge
	BridgeMass answer.Num `json:"bridge_mass"` // g

	Slack   [2]float64       `json:"slack"`    // mm over the fret plane at the octave, strings slack
	AtPitch [2]float64       `json:"at_pitch"` // mm, at pitch
	Settled [2][2]answer.Num `json:"settled"`  // mm, after decades: the least and the most of what is to be expected; null where the creep of a wood is not known
}

// Change is what a step of one key does to a design as it is, as differences.
type Change struct {
	Key       string     `json:"key"`
	Step      float64    `json:"step"`
	Unit      string     `json:"unit"`
	AtPitch   [2]float64 `json:"at_pitch"`  // mm, bass and treble outer string
	Downforce float64    `json:"downforce"` // N
	Shift     float64    `json:"shift"`     // mm
}
