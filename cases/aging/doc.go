// Package aging says how a design lives: what moisture does to it from season to season, and what the
// strings do to it over the years.
//
//	cases.Case ─Seasons→ SeasonsReport      made state, then each season's air
//	           └Years──→ YearsReport        the day it is strung, then each age
//
// Both begin from a top that is prepared and answered as by a solve, give its wood what the season or
// the years do to it, and follow the contact of the foot from there with the strings on
// (change.go; contact.Problem.Onward). What wood does by itself when it takes up water is in package fem (Swollen): a
// free strain in the wood's own axes. Moisture and its effect on strength and stiffness are in package
// materials.
//
// Numbers of seasons are movements from the made state, those of years count from slack strings; stress, gaps and shares are
// whole. Moisture is even in all of the wood, or linear from face to face; wood that dries slowly relaxes
// part of the stress, so that what stands here is an upper bound, the more so the slower it goes.
package aging
