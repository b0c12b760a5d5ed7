package vec3

import "math"

// thinMost is how many places of a line Thinned passes over at a time.
const thinMost = 12

// Thinned is a polyline through few of its places, which keep it within a distance off, in the units of the places, of
// its way. Its ends stay, and places that are not numbers.
func Thinned(line [][3]float64, off float64) [][3]float64 {
	if len(line) < 3 {
		return line
	}
	out := append(make([][3]float64, 0, len(line)), line[0])
	for from := 0; from+1 < len(line); {
		to := from + 1
		for to+1 < len(line) && to+1-from <= thinMost && straight(line[from:to+2], off) {
			to++
		}
		out, from = append(out, line[to]), to
	}
	return out
}

// straight says whether a line runs from its first place to its last within a distance of the straight way,
// without turning back on it, and without a gap.
func straight(line [][3]float64, most float64) bool {
	a := line[0]
	d := Sub(line[len(line)-1], a)
	long := Norm(d)
	last := 0.0 // along the way
	for _, p := range line[1 : len(line)-1] {
		r := Sub(p, a)
		at := Dot(r, d) / long
		off := Norm(Sub(r, Scale(d, at/long)))
		if !(at > last && at < long && off <= most) || math.IsInf(off, 0) {
			return false
		}
		last = at
	}
	return true
}
