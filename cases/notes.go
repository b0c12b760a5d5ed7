package cases

import (
	"fmt"
	"math"
	"reflect"
	"regexp"
	"strconv"
	"strings"

	"archload/cases/tree"
)

// Note is a pitch, Hz. In a case file it is a number or a name: "E4", "F#3",
// "Bb2".
type Note struct {
	Name string         // as written; "" if it was a number
	Freq tree.Frequency // Hz; 0: not given
}

// writtenNote is a letter, sharps or flats, and an octave.
var writtenNote = regexp.MustCompile(`^([A-Ga-g])(#{0,2}|b{0,2})(-?\d)$`)

// ParseNote returns the frequency of a note name, Hz: a letter, sharps (#) or
// flats (b), and the octave, which begins at C (scientific pitch notation).
// Equal temperament with A4 = 440 Hz (ISO 16:1975): f = 440 · 2^(n/12), n in
// semitones from A4.
func ParseNote(name string) (tree.Frequency, error) {
	m := writtenNote.FindStringSubmatch(name)
	if m == nil {
		return 0, fmt.Errorf(`want a note with its octave, as in "E4", "F#3" or "Bb2", found %q`, name)
	}
	semitone := strings.Index("C D EF G A B", strings.ToUpper(m[1])) // C 0, D 2, E 4, F 5 ... B 11
	semitone += strings.Count(m[2], "#") - strings.Count(m[2], "b")
	octave, err := strconv.Atoi(m[3])
	if err != nil {
		return 0, fmt.Errorf("octave of %q: %w", name, err)
	}
	return tree.Frequency(440 * math.Pow(2, float64(semitone-9)/12+float64(octave-4))), nil
}

// DecodeNode reads the name of a note, as "A4", or a frequency.
func (p *Note) DecodeNode(d *tree.Decoder, n *tree.Node, key string, _ reflect.StructTag) {
	dim, _ := tree.DimensionOf(tree.Frequency(0))
	text, isText := n.Val.(string)
	if !isText || strings.HasSuffix(text, "Hz") {
		p.Freq = tree.Frequency(d.Quantity(dim, n, key, `want:">0"`))
		return
	}
	f, err := ParseNote(text)
	if err != nil {
		d.Fault(n, key, "%w", err)
		return
	}
	p.Name, p.Freq = text, f
}
