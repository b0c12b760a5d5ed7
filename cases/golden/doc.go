// Package golden has no code of its own: its test holds the whole JSON of every
// bundled case, timings left out, so that nothing changes unseen. It says nothing
// of what is true; archload verify does.
//
//	go test ./cases/golden -golden.exact   # to the last bit, on one machine
//	go test ./cases/golden -golden.update  # written anew; the commit says why
package golden
