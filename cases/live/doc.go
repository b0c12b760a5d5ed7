// Package live holds a design under the hand: keys are set one by one and the
// answer at any share of the string load comes fast enough to be drawn while
// the hand moves.
//
//	Begin → Live ─Set→ Live ─At→ a solution at a share of the load
//
// live.go is the design, set.go the way from one to the next (design.Adapt decides
// what is computed anew), open.go reads a case once and lays keys over it, kept.go
// writes it as a case file of its own. at.go and track.go follow the contact as far as
// the hand has gone and keep the path, events.go finds when the middle of the foot
// closes. A Live never changes; any number of goroutines may ask it.
package live
