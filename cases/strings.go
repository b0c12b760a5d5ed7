package cases

import (
	"math"

	"archload/cases/tree"
)

// StringForce is what one string does to the saddle.
type StringForce struct {
	Name       string
	X          float64 // mm, from the bridge's middle, treble positive
	Height     float64 // mm, its contact above the top at the bridge's middle
	Tension    float64 // N, as tuned, behind the saddle
	Rise       float64 // N, added in the speaking length alone
	FrontAngle float64 // deg, below the top's plane, toward the neck
	BackAngle  float64 // deg, below the top's plane, toward the tail
	Downforce  float64 // N, onto the top
	Along      float64 // N, push, positive toward the neck
	Grip       float64 // N, friction in the slot lets the push lie between Along - Grip and Along + Grip
}

// TensionOf returns the tension of an ideal string, N: T = mu (2 L f)², with
// mu in kg/m, L in mm and f in Hz (M. Mersenne's law; stiffness neglected).
func TensionOf(mu tree.LineMass, scale tree.Length, f tree.Frequency) tree.Force {
	v := 2 * float64(scale) / 1000 * float64(f) // m/s, speed of the wave
	return tree.Force(float64(mu) * v * v)
}

// Push returns what a string does to the saddle it bends over, N:
// downforce = Tf sin af + Tb sin ab, along = Tf cos af - Tb cos ab (positive
// toward the neck), tensions in N before and behind the saddle.
func Push(front, back tree.Force, frontAngle, backAngle tree.Angle) (down, along float64) {
	sf, cf := math.Sincos(float64(frontAngle) * math.Pi / 180)
	sb, cb := math.Sincos(float64(backAngle) * math.Pi / 180)
	return float64(front)*sf + float64(back)*sb, float64(front)*cf - float64(back)*cb
}

// tension returns the tension of string i as tuned, N. A valid case has one.
func (s *Strings) tension(i int) tree.Force {
	e := &s.Each[i]
	t := e.Tension
	if t == 0 {
		mu, _ := s.UnitWeightOf(i)
		t = TensionOf(mu, s.ScaleOf(i), e.Note.Freq)
	}
	return t * tree.Force(s.TensionScale)
}

// ScaleOf returns the speaking length of string i, mm.
func (s *Strings) ScaleOf(i int) tree.Length {
	if own := s.Each[i].Scale; own > 0 {
		return own
	}
	return s.Scale
}

// x returns the place of string i from the bridge's middle, mm: its own, or
// spread evenly in the order listed, the first at the treble end.
func (s *Strings) x(i int) float64 {
	if own := s.Each[i].X; own != nil {
		return float64(*own)
	}
	return s.spreadX(i)
}

// angle returns a string's own break angle or the set's, deg.
func angle(own, set *tree.Angle) tree.Angle {
	if own != nil {
		return *own
	}
	if set != nil {
		return *set
	}
	return 0
}

// force returns what string i does over a top at the given height, mm.
func (c *Case) force(i int, top float64) StringForce {
	s := c.Strings
	e := &s.Each[i]
	front, back := c.BreakAngles(i, top)
	f := StringForce{Name: e.Name, X: s.x(i), Height: c.Contact(i), Tension: float64(s.tension(i)), Rise: float64(e.Rise)}
	return f.Bent(front, back, s.SaddleFriction)
}

// Bent returns the string's forces for other break angles and a friction of
// the slot, 1.
func (f StringForce) Bent(front, back tree.Angle, friction float64) StringForce {
	f.FrontAngle, f.BackAngle = float64(front), float64(back)
	f.Downforce, f.Along = Push(tree.Force(f.Tension+f.Rise), tree.Force(f.Tension), front, back)
	f.Grip = f.Tension * math.Expm1(friction*float64(front+back)*math.Pi/180)
	return f
}

// StringForces returns what each string does to the saddle, in the order
// listed; nil without strings. top is the outer surface under the bridge's
// middle above z = 0, mm (Geometry.TopAtBridge): angles from a path follow
// from it.
func (c *Case) StringForces(top float64) []StringForce {
	if c.Strings == nil {
		return nil
	}
	out := make([]StringForce, len(c.Strings.Each))
	for i := range out {
		out[i] = c.force(i, top)
	}
	return out
}

// StringSum is the string set's resultant.
type StringSum struct {
	Tension   float64 // N
	Downforce float64 // N
	Along     float64 // N, positive toward the neck
	Grip      float64 // N, friction in the slots lets the push lie between Along - Grip and Along + Grip
	X         float64 // mm from the bridge's middle, where the downforce acts
	Moment    float64 // N·mm, rocking: push times height of the contact above the top, positive toward the neck
	Lever     float64 // N·mm, what the friction in the slots can add to or take from Moment
	Rocking   float64 // mm, how far the push shifts the downforce toward the neck at the contact plane: Moment over Downforce
}

// StringSum returns the string set's resultant; zero without strings or
// bridge. top is as in StringForces.
func (c *Case) StringSum(top float64) StringSum {
	if c.Bridge == nil {
		return StringSum{}
	}
	return SumStrings(c.StringForces(top))
}

// SumStrings adds up what the strings do.
func SumStrings(forces []StringForce) StringSum {
	var s StringSum
	for _, f := range forces {
		s.Tension += f.Tension
		s.Downforce += f.Downforce
		s.Along += f.Along
		s.Grip += f.Grip
		s.X += f.X * f.Downforce
		s.Moment += f.Along * f.Height
		s.Lever += f.Grip * f.Height
	}
	if s.Downforce > 0 {
		s.X /= s.Downforce
		s.Rocking = s.Moment / s.Downforce
	}
	return s
}

// BreakAngles returns the front and back break angle of string i, deg, as given
// or from the path over a top whose outer surface lies at top above z = 0 under
// the bridge's middle, mm.
func (c *Case) BreakAngles(i int, top float64) (front, back tree.Angle) {
	s := c.Strings
	if s.Path != nil {
		f, b := s.Path.angles(top, c.Contact(i), float64(s.ScaleOf(i)))
		return tree.Angle(f), tree.Angle(b)
	}
	e := &s.Each[i]
	return angle(e.FrontAngle, s.FrontAngle), angle(e.BackAngle, s.BackAngle)
}

// Contact returns the height of string i's contact above the top at the
// bridge's middle, mm; zero without a bridge.
func (c *Case) Contact(i int) float64 {
	if c.Bridge == nil {
		return 0
	}
	return float64(c.Bridge.SaddleHeight) - c.Strings.CrownFall(c.Strings.x(i))
}

// CrownFall returns how far the string at x from the bridge's middle lies
// below the saddle's middle, mm.
func (s *Strings) CrownFall(x float64) float64 {
	if s == nil || s.Path == nil || s.Path.SaddleRadius == 0 {
		return 0
	}
	R := float64(s.Path.SaddleRadius)
	return R - math.Sqrt(R*R-x*x)
}
