// Package lesson reads walks through designs, a step at a time, for a teacher
// or an apprentice before the window, and checks what their captions claim.
//
//	file ─Read→ Lesson{Steps} ─Check→ every claim, computed anew
//
// lessonread.go reads a lesson and resolves what a step takes over from the one
// before; lessonpoint.go says what a picture points at. A number in a caption is
// bound to a claim (lessonclaim.go): a formula (lessonformula.go) over the
// answers of the step's designs and of its bench file (lessonanswer.go), which check.go works out. lessonchart.go
// reads numbers that stand as bars.
// docs/lessons.md is the guide for who writes one.
package lesson
