// Package sheet draws a design in true size for the bench: plan with the contours
// of the arch, graduation map, templates of the arches, outline and relief of the
// bridge's foot. A sheet is written as one SVG, or as a PDF tiled for its paper
// with laps, register marks and a square to check the printer by. No solve is
// needed.
//
// Lengths are millimetres of paper; Of lists the sheets, tile.go lays
// them out, and each kind of sheet has its file.
package sheet
