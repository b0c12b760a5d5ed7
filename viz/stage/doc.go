// Package stage answers what the window asks for: which designs, field, load and
// cut are wanted, and the pictures and numbers that belong together.
//
//	Want ─Answerer.Answer→ Shown ─Answerer.Settle→ Shown with the slower numbers
//
// want.go is what the hand asks for, shown.go the last whole answer, scales.go by
// what it is drawn and when that stays, answer.go the way from one to the other,
// air.go a design in other air, sound.go the tones of a design and swing.go how one is drawn, settle.go what takes longer, certain.go the case solved afresh, worker.go the goroutine that walks it, always for
// the newest want. A Shown never changes.
package stage
