package panel

// Key is a key of the keyboard, by what is printed on it.
type Key uint8

// The keys that are not letters or digits. Letters are LetterKey('a') to
// LetterKey('z'), digits DigitKey(0) to DigitKey(9).
const (
	NoKey Key = iota
	KeyLeft
	KeyRight
	KeyUp
	KeyDown
	KeyTab
	KeyEnter
	KeyEscape
	KeySpace
	KeyBackspace
	KeyDelete
	KeyHome
	KeyEnd
	KeyPageUp
	KeyPageDown
	KeyF1
	KeyPlus
	KeyMinus
	KeyBracketLeft
	KeyBracketRight
	KeyComma
	KeyPeriod
)

// LetterKey returns the key of a letter, 'a' to 'z' or 'A' to 'Z'; NoKey for
// anything else.
func LetterKey(r rune) Key {
	switch {
	case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z':
		return Key(r &^ 0x20)
	}
	return NoKey
}

// DigitKey returns the key of a digit, 0 to 9; NoKey for anything else.
func DigitKey(n int) Key {
	if n < 0 || n > 9 {
		return NoKey
	}
	return Key('0' + n)
}

// KeyPress is one press of a key, or a repeat of one that is held.
type KeyPress struct {
	Key   Key
	Shift bool
	Ctrl  bool
}

// The buttons of the mouse, as Input counts them.
const (
	LeftButton = iota
	RightButton
	MiddleButton
)

// Input is what the hand did since the last frame.
type Input struct {
	X, Y     float64    // of the pointer, points from the left and the top
	Away     bool       // the pointer is not over the page
	Down     [3]bool    // buttons held now
	Pressed  [3]bool    // buttons that went down since the last frame
	Released [3]bool    // buttons that went up since the last frame
	Wheel    [2]float64 // notches, across (positive: to the right) and up (positive: away from the hand)
	Keys     []KeyPress // in order
	Text     []rune     // typed letters, in order
	Shift    bool       // held now
	Ctrl     bool       // held now
	Now      float64    // s, from any beginning; never goes back
	More     bool       // what the hand did next follows at once: nobody sees the page of this pass
}
