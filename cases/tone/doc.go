// Package tone turns the vibration of a design into numbers for a maker: its tones
// and how readily it answers where it is driven.
//
//	design.Moving ─FindTones→ Report, Shapes    frequency, pattern, shares, the bridge's motion
//	              ─FindResponse→ ResponseReport mobility by direction, levels, decay of strings
//
// changes.go says by Rayleigh's quotient which way wood, thickness and bars move each
// tone, likeness.go sets the tones of two designs side by side by their shapes.
// tones.go lists the tones with what moves in each, pattern.go says in plain words
// what sand would draw, response.go is the mobility (velocity over force, as in
// ISO 7626-1) at saddle and taps, by modes with residual correction, its third-octave
// levels (nominal bands of IEC 61260-1) and the decay of each string by what the
// bridge takes from it; judge.go puts some of it among the answers of a solve. No air,
// no radiation; back and neck are held still unless there is a body: levels compare
// designs, they do not tell the sound. Words for people are package say's.
package tone
