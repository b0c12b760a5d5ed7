package materials

import "math"

// SecondsPerYear is a mean year of the calendar, s.
const SecondsPerYear = 365.25 * 86400

// LastingShare returns the share of its strength in a test of some minutes that wood still has when a
// load has lain on it for years:
//
//	SL = 108.4 t^−0.04635 + 18.3 percent, t in s,
//
// the Madison curve (L. W. Wood, Forest Products Laboratory report R1916, 1951; Wood Handbook, chapter 5;
// from memory). A test of 450 s has all of it, and no shorter load counts as more.
func LastingShare(years float64) float64 {
	t := years * SecondsPerYear
	if t <= testSeconds {
		return 1
	}
	return min(1, (108.4*math.Pow(t, -0.04635)+18.3)/100)
}

// testSeconds is how long the test takes whose strength is the card's, s.
const testSeconds = 450
