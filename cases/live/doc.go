// Package live holds a design under the hand: keys are set one by one and the
// answer at any share of the string load comes fast enough to be drawn while
// the hand moves.
//
//	Begin → Live ─Set→ Live ─At→ a solution at a share of the load
//
// live.go is the design and the way from one to the next (design.Adapt decides
// what is computed anew), livekept.go and liveopen.go read a case once and lay
// keys over it, liveat.go and livetrack.go follow the contact as far as the
// hand has gone and keep the path, liveevents.go finds when the middle of the
// foot closes. A Live never changes; any number of goroutines may ask it.
package live
