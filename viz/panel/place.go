package panel

// Control is what every control has.
type Control struct {
	ID    string // unlike every other on the page, and the same in every frame
	At    Rect   // points
	Label string
	Key   string // the shortcut that does the same, shown behind the label: "Sink [1]"
	Tip   string // shown when the pointer rests
	Off   string // why it cannot be used now; empty: it can
}

// words returns the label with its shortcut.
func (c Control) words() string {
	if c.Key == "" {
		return c.Label
	}
	return c.Label + " [" + c.Key + "]"
}

// Kind says what a place on the page is.
type Kind uint8

// Place is where something stands on the page, for tests and for driving the
// window from a script.
type Place struct {
	ID    string
	Kind  Kind
	At    Rect // points, all of it
	Seen  Rect // what of it can be seen and clicked
	Label string
	Value string // as shown
	Off   bool   // cannot be used now
	Focus bool   // has the keyboard
}

// The kinds of place.
const (
	ButtonPlace Kind = iota
	TogglePlace
	ChoicePlace // the whole choice
	WordPlace   // one of a choice's words: its id is the choice's, a slash and the number from 0
	SliderPlace // the whole slider
	HandlePlace // its handle: the slider's id and "/handle"
	TrackPlace  // where the handle's middle can be: the slider's id and "/track"
	NumberPlace
	SectionPlace
	ScrollPlace // a scroll area
	BarPlace    // its drag bar: the area's id and "/bar"
	TextPlace   // words that only stand there
)
