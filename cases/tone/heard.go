package tone

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"archload/cases/answer"
	"archload/cases/motion"
)

// HeardTone is a tone of the case beside the computed one that it is taken for.
type HeardTone struct {
	Hz        float64    `json:"hz"`
	Pattern   string     `json:"pattern"`
	Tone      int        `json:"tone"`      // number of the computed one, from 1; 0: none near
	Deviation answer.Num `json:"deviation"` // 1, computed over heard less 1
	By        string     `json:"by"`        // by what it is taken for that: shape or frequency; "" for none
}

// What a heard tone is taken for it by.
const (
	byShape     = "shape"
	byFrequency = "frequency"
)

// How far a heard tone and a computed one may lie apart, of a logarithm: where the pattern that was seen is the computed one's, where
// there is nothing to go by but the frequency, and where another pattern was seen.
const (
	farAlike   = 0.5
	farUnknown = 0.2
	farUnlike  = 0.05
)

// pairing is a heard tone taken for a computed one.
type pairing struct {
	heard, tone int
	cost        float64
	by          string
}

// hear takes each heard tone for a computed one, each of those once: first by shape, where a pattern was seen that the model knows,
// the nearest in frequency first; then by frequency. A pattern in the maker's own words says nothing.
func (r *Report) hear(heard []motion.HeardTone) {
	var list []pairing
	for i, h := range heard {
		r.Heard = append(r.Heard, HeardTone{Hz: float64(h.Hz), Pattern: h.Pattern, Deviation: answer.None()})
		for k := range r.Tones {
			off := math.Abs(math.Log(r.Tones[k].Hz / float64(h.Hz)))
			alike, known := r.Tones[k].shows(h.Pattern)
			switch {
			case alike && off < farAlike:
				list = append(list, pairing{i, k, off, byShape})
			case known && !alike && off < farUnlike, !known && off < farUnknown:
				list = append(list, pairing{i, k, farAlike + off, byFrequency})
			}
		}
	}
	slices.SortStableFunc(list, func(a, b pairing) int { return cmp.Compare(a.cost, b.cost) })
	taken := make([]bool, len(r.Tones))
	for _, p := range list {
		h := &r.Heard[p.heard]
		if h.Tone == 0 && !taken[p.tone] {
			taken[p.tone] = true
			h.Tone, h.By, h.Deviation = p.tone+1, p.by, answer.Num(r.Tones[p.tone].Hz/h.Hz-1)
		}
	}
}

// shows says whether a tone has the pattern that was seen, by its name or by how many lines stand still across and along
// the grain, "2 1"; known is false for a pattern that is neither.
func (t *Tone) shows(seen string) (alike, known bool) {
	seen = strings.ToLower(strings.TrimSpace(seen))
	if seen == "" {
		return false, false
	}
	if seen == t.Pattern {
		return true, true
	}
	p, ok := motion.ReadPattern(seen)
	switch {
	case ok && p.Ring:
		return t.Pattern == motion.PatternRing, true
	case ok:
		return t.lines == [2]int{p.Along, p.Across} && t.Pattern != motion.PatternRing && t.Pattern != patternCross, true
	}
	return false, seen == patternCross || seen == allInOne || strings.Contains(seen, " fields")
}
