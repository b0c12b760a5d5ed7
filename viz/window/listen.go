//go:build cgo

package window

import (
	"unicode/utf8"

	"github.com/go-gl/glfw/v3.3/glfw"

	"archload/viz/panel"
)

// listen has GLFW report everything to the hands.
func (h *hands) listen(w *glfw.Window) {
	x, y := w.GetCursorPos()
	h.add(happening{kind: pointerMoved, x: x, y: y})
	h.add(happening{kind: pointerLeft, held: w.GetAttrib(glfw.Hovered) == glfw.False})
	w.SetCursorPosCallback(func(_ *glfw.Window, x, y float64) {
		h.add(happening{kind: pointerMoved, x: x, y: y})
	})
	w.SetCursorEnterCallback(func(_ *glfw.Window, entered bool) {
		h.add(happening{kind: pointerLeft, held: !entered})
	})
	w.SetMouseButtonCallback(func(_ *glfw.Window, b glfw.MouseButton, a glfw.Action, _ glfw.ModifierKey) {
		if n, ok := buttonOf(b); ok {
			h.add(happening{kind: buttonTurned, button: n, held: a == glfw.Press})
		}
	})
	w.SetScrollCallback(func(_ *glfw.Window, x, y float64) {
		h.add(happening{kind: wheelTurned, x: -x, y: y}) // GLFW counts the left as positive
	})
	w.SetKeyCallback(func(w *glfw.Window, k glfw.Key, code int, a glfw.Action, mods glfw.ModifierKey) {
		h.key(w, k, code, a, mods)
	})
	w.SetCharCallback(func(_ *glfw.Window, r rune) { h.add(happening{kind: letterTyped, letter: r}) })
}

// scale follows the size of the window: how many points a unit of it has.
func (h *hands) scale(w *glfw.Window, width, height int, density float64) {
	uw, uh := w.GetSize()
	h.point = [2]float64{1 / density, 1 / density}
	if uw > 0 && uh > 0 {
		h.point = [2]float64{float64(width) / float64(uw) / density, float64(height) / float64(uh) / density}
	}
}

// key notes a key; those with Alt belong to the window manager or to letters
// that the keyboard cannot type otherwise.
func (h *hands) key(w *glfw.Window, k glfw.Key, code int, a glfw.Action, mods glfw.ModifierKey) {
	switch k {
	case glfw.KeyLeftShift, glfw.KeyRightShift:
		h.add(happening{kind: shiftTurned, held: a != glfw.Release})
		return
	case glfw.KeyLeftControl, glfw.KeyRightControl, glfw.KeyLeftSuper, glfw.KeyRightSuper:
		h.add(happening{kind: ctrlTurned, held: a != glfw.Release})
		return
	}
	if a == glfw.Release || mods&glfw.ModAlt != 0 {
		return
	}
	p := panel.KeyPress{Key: keyOf(k, code), Shift: mods&glfw.ModShift != 0, Ctrl: mods&(glfw.ModControl|glfw.ModSuper) != 0}
	if p.Key == panel.NoKey {
		return
	}
	h.add(happening{kind: keyPressed, key: p})
	if p.Ctrl && p.Key == panel.LetterKey('v') {
		for _, r := range w.GetClipboardString() {
			h.add(happening{kind: letterTyped, letter: r})
		}
	}
}

func buttonOf(b glfw.MouseButton) (int, bool) {
	switch b {
	case glfw.MouseButtonLeft:
		return panel.LeftButton, true
	case glfw.MouseButtonRight:
		return panel.RightButton, true
	case glfw.MouseButtonMiddle:
		return panel.MiddleButton, true
	}
	return 0, false
}

// keyOf returns the key by what is printed on it in the user's own layout.
func keyOf(k glfw.Key, code int) panel.Key {
	if p := namedKey(k); p != panel.NoKey {
		return p
	}
	if k >= glfw.KeyKP0 && k <= glfw.KeyKP9 {
		return panel.DigitKey(int(k - glfw.KeyKP0))
	}
	r, _ := utf8.DecodeRuneInString(glfw.GetKeyName(k, code))
	if p := printedKey(r); p != panel.NoKey {
		return p
	}
	if k >= glfw.Key0 && k <= glfw.Key9 || k >= glfw.KeyA && k <= glfw.KeyZ {
		return printedKey(rune(k)) // GLFW counts these as ASCII does
	}
	return panel.NoKey
}

// printedKey returns the key with a sign on it.
func printedKey(r rune) panel.Key {
	switch r {
	case '+', '=':
		return panel.KeyPlus
	case '-':
		return panel.KeyMinus
	case '[':
		return panel.KeyBracketLeft
	case ']':
		return panel.KeyBracketRight
	case ',':
		return panel.KeyComma
	case '.':
		return panel.KeyPeriod
	}
	if r >= '0' && r <= '9' {
		return panel.DigitKey(int(r - '0'))
	}
	return panel.LetterKey(r)
}

// namedKey returns the key of those that have a name instead of a sign.
func namedKey(k glfw.Key) panel.Key {
	switch k {
	case glfw.KeyLeft:
		return panel.KeyLeft
	case glfw.KeyRight:
		return panel.KeyRight
	case glfw.KeyUp:
		return panel.KeyUp
	case glfw.KeyDown:
		return panel.KeyDown
	case glfw.KeyTab:
		return panel.KeyTab
	case glfw.KeyEnter, glfw.KeyKPEnter:
		return panel.KeyEnter
	case glfw.KeyEscape:
		return panel.KeyEscape
	case glfw.KeySpace:
		return panel.KeySpace
	case glfw.KeyBackspace:
		return panel.KeyBackspace
	case glfw.KeyDelete:
		return panel.KeyDelete
	case glfw.KeyHome:
		return panel.KeyHome
	case glfw.KeyEnd:
		return panel.KeyEnd
	case glfw.KeyPageUp:
		return panel.KeyPageUp
	case glfw.KeyPageDown:
		return panel.KeyPageDown
	case glfw.KeyF1:
		return panel.KeyF1
	case glfw.KeyKPAdd:
		return panel.KeyPlus
	case glfw.KeyKPSubtract:
		return panel.KeyMinus
	}
	return panel.NoKey
}
