// Package grip lets the hand take ends of bars, posts and the apex in the picture and
// move them: grip.go finds where they are seen and follows the pointer, draw.go draws
// them and says what moves, and by how much.
package grip
