// Package piece fits the bench files of the published checks (testdata/verification/bench) and reads the constants
// that come out: tapped bars and blanks whose constants are known.
package piece
