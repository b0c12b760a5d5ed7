package passage

import (
	"math"

	"archload/viz/scene"
)

// FlightTime is how long the camera takes from one view to the next, s.
const FlightTime = 1.2

// Flight is the camera on its way from where it was. The zero value stands still.
type Flight struct {
	From  scene.Camera
	Since float64 // s
	On    bool
}

// At is the camera at a time, s, on the way to where it is wanted, and whether it is
// still on its way. It turns the shorter way round, and its distance changes by equal factors in equal
// times.
func (f Flight) At(goal scene.Camera, now float64) (c scene.Camera, on bool) {
	u := eased((now - f.Since) / FlightTime)
	if !f.On || u >= 1 || f.From.Distance <= 0 {
		return goal, false
	}
	c = goal
	c.Yaw = math.Remainder(f.From.Yaw+u*math.Remainder(goal.Yaw-f.From.Yaw, 360), 360)
	c.Pitch = f.From.Pitch + u*(goal.Pitch-f.From.Pitch)
	c.Distance = f.From.Distance * math.Pow(goal.Distance/f.From.Distance, u)
	for k := range c.Target {
		c.Target[k] = f.From.Target[k] + u*(goal.Target[k]-f.From.Target[k])
	}
	return c, true
}
