// Package viz draws the pictures of a design: a field over the plate in plan,
// the cross-arch at the bridge with the foot's gap and forces, the foot force
// against the string load, and designs side by side.
//
// It takes plain numbers (mm, N, the unit named beside a field) and knows no
// mechanics. Every picture is a Picture, a page of a fixed size in points
// that is written as PNG or SVG with the same bytes each time. Text is never
// smaller than 8 points when the page is printed at its own size, and a page
// fits both A4 and Letter paper.
//
// Colours come from two maps built in OKLab: one from light to dark for
// quantities that count upward, and one from blue through neutral to brown
// for quantities with a sign, always symmetric about zero. A field is drawn
// in bands whose edges are the marks of the legend, a 1-2-5 step apart, so
// the lines between bands can be counted.
//
// The plate is seen as the maker sees it from outside: neck up, tail down,
// bass left, treble right.
package viz
