// Package tool lists what the hand can change of a design: sliders and choices, in
// groups, each with the keys of the case that it sets. It draws nothing.
package tool
