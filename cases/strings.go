package cases

import (
	"math"
)

// steelDensity is the density of plain carbon steel strings, kg/m³ (handbook
// value, from memory).
const steelDensity = 7850

// StringForce is what one string does to the saddle.
type StringForce struct {
	Name       string
	X          float64 // mm, from the bridge's middle, treble positive
	Tension    float64 // N, as tuned, behind the saddle
	Rise       float64 // N, added in the speaking length alone
	FrontAngle float64 // deg, below the top's plane, toward the neck
	BackAngle  float64 // deg, below the top's plane, toward the tail
	Downforce  float64 // N, onto the top
	Along      float64 // N, push, positive toward the neck
	Grip       float64 // N, friction in the slot lets the push lie between Along - Grip and Along + Grip
}

// LineMass returns the mass per length of a plain round string, kg/m:
// mu = rho pi d² / 4, d in mm.
func (d Length) LineMass(rho Density) LineMass {
	m := float64(d) / 1000
	return LineMass(float64(rho) * math.Pi * m * m / 4)
}

// TensionOf returns the tension of an ideal string, N: T = mu (2 L f)², with
// mu in kg/m, L in mm and f in Hz (M. Mersenne's law; stiffness neglected).
func TensionOf(mu LineMass, scale Length, f Frequency) Force {
	v := 2 * float64(scale) / 1000 * float64(f) // m/s, speed of the wave
	return Force(float64(mu) * v * v)
}

// Push returns what a string does to the saddle it bends over, N:
// downforce = Tf sin af + Tb sin ab, along = Tf cos af - Tb cos ab (positive
// toward the neck), tensions in N before and behind the saddle.
func Push(front, back Force, frontAngle, backAngle Angle) (down, along float64) {
	sf, cf := math.Sincos(float64(frontAngle) * math.Pi / 180)
	sb, cb := math.Sincos(float64(backAngle) * math.Pi / 180)
	return float64(front)*sf + float64(back)*sb, float64(front)*cf - float64(back)*cb
}

// tension returns the tension of string i as tuned, N. A valid case has one.
func (s *Strings) tension(i int) Force {
	e := &s.Each[i]
	if e.Tension > 0 {
		return e.Tension
	}
	mu := e.UnitWeight
	if e.Plain > 0 {
		mu = e.Plain.LineMass(steelDensity)
	}
	return TensionOf(mu, s.scale(i), e.Note.Freq)
}

// scale returns the speaking length of string i, mm.
func (s *Strings) scale(i int) Length {
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
	if len(s.Each) == 1 {
		return 0
	}
	return float64(s.Spread) * (0.5 - float64(i)/float64(len(s.Each)-1))
}

// angle returns a string's own break angle or the set's, deg.
func angle(own, set *Angle) Angle {
	if own != nil {
		return *own
	}
	if set != nil {
		return *set
	}
	return 0
}

// force returns what string i does.
func (s *Strings) force(i int) StringForce {
	e := &s.Each[i]
	t := s.tension(i)
	front, back := angle(e.FrontAngle, s.FrontAngle), angle(e.BackAngle, s.BackAngle)
	down, along := Push(t+e.Rise, t, front, back)
	wrap := float64(front+back) * math.Pi / 180
	return StringForce{
		Name: e.Name, X: s.x(i), Tension: float64(t), Rise: float64(e.Rise),
		FrontAngle: float64(front), BackAngle: float64(back), Downforce: down, Along: along,
		Grip: float64(t) * math.Expm1(s.SaddleFriction*wrap),
	}
}

// StringForces returns what each string does to the saddle, in the order
// listed; nil without strings.
func (c *Case) StringForces() []StringForce {
	if c.Strings == nil {
		return nil
	}
	out := make([]StringForce, len(c.Strings.Each))
	for i := range out {
		out[i] = c.Strings.force(i)
	}
	return out
}

// StringSum is the string set's resultant.
type StringSum struct {
	Tension   float64 // N
	Downforce float64 // N
	Along     float64 // N, positive toward the neck
	X         float64 // mm from the bridge's middle, where the downforce acts
	Rocking   float64 // mm, how far the push shifts the downforce toward the neck at the contact plane: along times saddle height over downforce
}

// StringSum returns the string set's resultant; zero without strings or
// bridge.
func (c *Case) StringSum() StringSum {
	var s StringSum
	if c.Bridge == nil {
		return s
	}
	for _, f := range c.StringForces() {
		s.Tension += f.Tension
		s.Downforce += f.Downforce
		s.Along += f.Along
		s.X += f.X * f.Downforce
	}
	if s.Downforce > 0 {
		s.X /= s.Downforce
		s.Rocking = s.Along * float64(c.Bridge.SaddleHeight) / s.Downforce
	}
	return s
}
