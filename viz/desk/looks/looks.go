// Package looks is how the window shows its drawing, apart from what the designs are: the words for it, and what is
// remembered of it for the next time.
package looks

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"archload/cases/lesson"
	"archload/viz/scene"
	"archload/viz/stage"
)

// Looks is how the drawing is shown, apart from what the designs are. It is
// what a window remembers for the next time.
type Looks struct {
	stage.Display
	View     string // a named view; "" is the first one
	Cut      stage.CutKind
	Contours bool
	NoSide   bool   // the panel of numbers and tools is folded away
	Letters  int    // steps by which everything written is larger
	Recent   string // designs shown last, newest first, tabs between
	set      bool
}

// Usual is what a window shows at first.
func Usual() Looks {
	return Looks{Display: stage.Display{Field: scene.Sink, Load: 1, Strings: true}, View: scene.Views()[0].Name, Contours: true, set: true}
}

// MostLetters is how many steps letters can grow.
const MostLetters = 6

// LetterStep is how many times as large everything is written at a step.
func LetterStep(n int) float64 { return 1 + 0.25*float64(n) }

// OrUsual is what is usual where nothing was said.
func (l Looks) OrUsual() Looks {
	if !l.set {
		return Usual()
	}
	return l
}

// CutWords are the words of the cuts, in their order: those of the lessons, and
// the one that only the hand can draw.
func CutWords() []string { return append(lesson.Sections(), "drawn") }

// Text writes the looks as lines of name and value, which Parse reads.
func (l Looks) Text() string {
	var b strings.Builder
	line := func(name string, v any) { fmt.Fprintf(&b, "%s = %v\n", name, v) }
	line("field", l.Field.Word())
	line("inside", l.Inside)
	line("view", l.View)
	line("section", CutWords()[l.Cut])
	line("contours", l.Contours)
	line("flow", l.Flow)
	line("strings", l.Strings)
	line("forces", l.Forces)
	line("folded", l.NoSide)
	line("letters", l.Letters)
	line("recent", l.Recent)
	return b.String()
}

// Parse reads what Text wrote. What it does not know it leaves as usual:
// remembered looks are no reason not to start.
func Parse(text string) Looks {
	l := Usual()
	for line := range strings.Lines(text) {
		name, v, _ := strings.Cut(strings.TrimSpace(line), " = ")
		switch name {
		case "field":
			if f, err := FieldNamed(v); err == nil {
				l.Field = f
			}
		case "view":
			if err := KnownView(v); err == nil {
				l.View = v
			}
		case "section":
			if i := slices.Index(CutWords(), v); i >= 0 && stage.CutKind(i) != stage.FreeCut {
				l.Cut = stage.CutKind(i)
			}
		case "folded":
			l.NoSide = v == "true"
		case "recent":
			l.Recent = v
		case "letters":
			if n, err := strconv.Atoi(v); err == nil {
				l.Letters = max(0, min(MostLetters, n))
			}
		case "inside":
			l.Inside = v == "true"
		case "contours":
			l.Contours = v == "true"
		case "flow":
			l.Flow = v == "true"
		case "forces":
			l.Forces = v == "true"
		case "strings":
			l.Strings = v == "true"
		}
	}
	return l
}

// FieldWords are the words by which a field is asked for.
func FieldWords() []string {
	var out []string
	for _, f := range scene.Fields() {
		out = append(out, f.Word())
	}
	return out
}

// FieldNamed returns the field of a word.
func FieldNamed(word string) (scene.Field, error) {
	i := slices.Index(FieldWords(), word)
	if i < 0 {
		return 0, fmt.Errorf("want one of %s, found %q", quoted(FieldWords()), word)
	}
	return scene.Fields()[i], nil
}

// KnownView says whether there is a view of this name.
func KnownView(word string) error {
	var names []string
	for _, v := range scene.Views() {
		names = append(names, v.Name)
	}
	if !slices.Contains(names, word) {
		return fmt.Errorf("want one of %s, found %q", quoted(names), word)
	}
	return nil
}

// CutNamed returns the cut of a word.
func CutNamed(word string) (stage.CutKind, error) {
	words := CutWords()[:stage.FreeCut]
	if i := slices.Index(words, word); i >= 0 {
		return stage.CutKind(i), nil
	}
	return 0, fmt.Errorf("want one of %s, found %q", quoted(words), word)
}

func quoted(words []string) string {
	var out []string
	for _, w := range words {
		out = append(out, fmt.Sprintf("%q", w))
	}
	return strings.Join(out, ", ")
}

// MostRecent is how many designs are remembered for the start page.
const MostRecent = 4

// Designs are those that were shown last, newest first.
func (l Looks) Designs() []string {
	return strings.FieldsFunc(l.Recent, func(r rune) bool { return r == '\t' })
}

// With puts the first design that is shown in front of those before.
func (l Looks) With(name string) Looks {
	list := []string{name}
	for _, o := range l.Designs() {
		if o != name && len(list) < MostRecent {
			list = append(list, o)
		}
	}
	l.Recent = strings.Join(list, "\t")
	return l
}

// ViewWords are the short words of the views of a scene, and their keys.
func ViewWords() (words, keys []string) {
	return []string{"Angle", "Outside", "Tail", "Side", "Inside", "Behind"}, []string{"A", "O", "T", "B", "U", "R"}
}

// ViewTips say from where each of them sees the top.
func ViewTips() []string {
	return []string{"From the tail and above, at an angle.", "Straight down on the outer face, the neck up.", "Level, from the tail: bass on the left.",
		"Level, from the treble side: tail on the left.", "From inside: bass and treble have changed sides.", "From behind: of a whole body the back, in the colours of the field."}
}
