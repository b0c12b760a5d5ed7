// Package drawing reads outlines and contour lines traced in a drawing program.
// To the rest of the program a drawing is a [Sheet] of named rings: closed lines
// at true size, in the plan of the plate, with the labels of what they lie in.
//
//	file ─Read→ Sheet ─Rings→ []Ring ─Levels→ []Level
//
// sheet.go says what a sheet and a ring are; levels.go and heightname.go read
// lines of equal height and the heights in their names: none of the three knows
// a format. The files svg*.go are the reader of SVG (W3C, Scalable Vector
// Graphics 1.1, second edition), from bytes (svgparse.go) over shapes and paths
// (svgshape.go, svgpath.go, svgdraw.go, svgcurve.go), the page and its marks
// (svgpage.go, svgmarks.go) to rings (svgread.go). Another format is one more
// reader that returns a Sheet, and a row in formats (read.go).
//
// Curves are read off as points that keep the drawn line within hundredths of a
// millimetre; corners stay corners.
package drawing
