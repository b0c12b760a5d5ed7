package panel

// entry is a number being typed.
type entry struct {
	id    string
	text  []rune
	caret int
	all   bool // everything is selected: the next letter replaces it
	fault string
}

// edit moves the caret or takes letters away.
func (e *entry) edit(k KeyPress) {
	all := e.all
	switch k.Key {
	case KeyLeft:
		e.caret = max(0, e.caret-1)
	case KeyRight:
		e.caret = min(len(e.text), e.caret+1)
	case KeyHome:
		e.caret = 0
	case KeyEnd:
		e.caret = len(e.text)
	case KeyBackspace:
		if !all && e.caret > 0 {
			e.text = append(e.text[:e.caret-1], e.text[e.caret:]...)
			e.caret--
		}
		e.wipe(all)
	case KeyDelete:
		if !all && e.caret < len(e.text) {
			e.text = append(e.text[:e.caret], e.text[e.caret+1:]...)
		}
		e.wipe(all)
	case LetterKey('a'):
		e.all = k.Ctrl || e.all
		return
	default:
		return
	}
	e.all = false
}

// wipe takes everything away if all is set.
func (e *entry) wipe(all bool) {
	if all {
		e.text, e.caret = nil, 0
	}
	e.fault = ""
}

// insert types a letter.
func (e *entry) insert(r rune) {
	if r < ' ' || r == 0x7f || len(e.text) >= longestEntry && !e.all {
		return
	}
	e.wipe(e.all)
	e.all = false
	e.text = append(e.text[:e.caret:e.caret], append([]rune{r}, e.text[e.caret:]...)...)
	e.caret++
}

// longestEntry is the most letters that an entry takes.
const longestEntry = 40
