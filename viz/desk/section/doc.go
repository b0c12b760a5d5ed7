// Package section draws the strip below the drawing: the plate cut upright, as carved and
// as loaded, with the bridge and the strings over it (bridge.go) and a few measures, and
// for a cut through the bridge the foot (foot.go). strip.go fits the cut into its strip, as
// frame.go holds it.
package section
