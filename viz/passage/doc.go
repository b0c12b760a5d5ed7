// Package passage is what lies between two pictures of the window: the camera that
// flies from one view to the next (flight.go), the weight of a picture that goes over
// into another (fade.go), and the load's way from slack to pitch, which slows down
// before what happens at the foot and halts there (course.go). All of it is a
// function of time, in seconds; nothing here keeps a clock.
package passage
