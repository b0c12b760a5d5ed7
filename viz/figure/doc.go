// Package figure draws the kinds of picture there are, from plain numbers (mm, N,
// or the unit named beside a field): a field over the plate in plan (PlanView),
// the plate cut across with the foot on it (CrossArch), several cuts (CompareSections,
// OverlaySections), the foot's force and pressure, bars, charts and maps of
// choices. It knows no case and no solution; package viz makes its inputs.
//
// A field is drawn in bands whose edges are the marks of the legend, a 1-2-5 step
// apart, so the lines between bands can be counted. Values are linear in each
// triangle, and the bands' edges are exact.
//
// The plate is seen as the maker sees it from outside: neck up, tail down, bass
// left, treble right.
package figure
