package tone

import (
	"context"
	"fmt"
	"math"
	"math/cmplx"
	"slices"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/fem/sparse"
	"archload/fem/vibration"
)

// ResponseReport is how readily a design answers a force that swings. Mobilities are velocity over
// force, m/(N·s), as in ISO 7626-1; volume velocities m³/(N·s).
type ResponseReport struct {
	Format   int      `json:"format"`
	Units    string   `json:"units"`
	Title    string   `json:"title"`
	State    string   `json:"state"`
	Loss     float64  `json:"loss"`    // 1, of every stiffness that has none of its own
	Losses   []Loss   `json:"losses"`  // of the tones within the frequencies, if each wood has its own; else none
	Tones    int      `json:"tones"`   // that the answer is made of, besides the movements at rest
	Reaches  float64  `json:"reaches"` // Hz, the highest of them
	GoodTo   float64  `json:"good_to"` // Hz, up to which the triangles carry bending waves
	Response Response `json:"response"`
	Bands    []Band   `json:"bands"`
	Strings  []Decay  `json:"strings"` // none but for strung
	Cautions []string `json:"cautions"`
	LeftOut  string   `json:"left_out"` // the same in a few words
}

// Response are the curves.
type Response struct {
	Hz    []float64      `json:"hz"`
	Paths []ResponsePath `json:"paths"`
}

// ResponsePath is one of them: the velocity at one place under a force at another.
type ResponsePath struct {
	Drive string    `json:"drive"`
	At    string    `json:"at"` // "air shifted": the volume velocity of the top
	Re    []float64 `json:"re"`
	Im    []float64 `json:"im"`
}

// Band is the level in one third of an octave, IEC 61260-1: of the mean square over it, evenly in
// the logarithm of the frequency.
type Band struct {
	Nominal float64      `json:"nominal"` // Hz
	Middle  float64      `json:"middle"`  // Hz, exact
	Levels  []answer.Num `json:"levels"`  // of each path, dB re 1 m/(N·s) or 1 m³/(N·s)
}

// Decay is how long a string's notes last by what the bridge takes from them.
type Decay struct {
	Name      string  `json:"name"`
	Impedance float64 `json:"impedance"` // N·s/m, √(tension · mass per length)
	Guessed   bool    `json:"guessed"`   // mass or core not given in the case
	Notes     []Note  `json:"notes"`     // from the open string up, by semitones
}

// Note is one semitone.
type Note struct {
	Hz     float64    `json:"hz"`
	Decay  answer.Num `json:"decay"`  // s, until 60 dB are lost, swinging up and down; null where the bridge takes nothing
	Strong bool       `json:"strong"` // the weak-coupling formula fails: string and top swing as one
}

// ResponseOptions say at which frequencies.
type ResponseOptions struct {
	From, To float64   // Hz
	Points   int       // evenly in the logarithm
	Hz       []float64 // instead
}

// list returns the frequencies.
func (o ResponseOptions) list() []float64 {
	if o.Hz != nil {
		return o.Hz
	}
	out := make([]float64, o.Points)
	for i := range out {
		out[i] = o.From * math.Pow(o.To/o.From, float64(i)/float64(max(o.Points-1, 1)))
	}
	return out
}

// top returns the highest frequency.
func (o ResponseOptions) top() float64 {
	top := o.To
	for _, hz := range o.Hz {
		top = max(top, hz)
	}
	return top
}

// port is a place that is driven or looked at.
type port struct {
	name   string
	column sparse.Column
	driven bool
	string bool // where one string stands: for its decay alone
}

// AirShifted names the volume velocity of the top among the places.
const AirShifted = "air shifted"

// The places of the saddle.
const (
	saddleUp     = "saddle, up and down"
	saddleAlong  = "saddle, along the strings"
	saddleAcross = "saddle, across"
)

// FindResponse finds the mobilities of a case in a state: of the saddle, in three directions, if it is
// strung, of the taps, and how much air the top shifts. Faults: a state that the case cannot have,
// nothing to drive, frequencies beyond what the mesh carries.
func FindResponse(ctx context.Context, c *cases.Case, state design.State, ro ResponseOptions, o design.Options) (*ResponseReport, error) {
	m, err := design.Vibrating(ctx, c, state, o)
	if err != nil {
		return nil, err
	}
	good, err := m.Carries()
	if err != nil {
		return nil, err
	}
	if ro.top() > good {
		return nil, c.Fault("mesh.size", "%.0f Hz lies beyond %.0f Hz, up to which the triangles carry the waves; want lower frequencies, or smaller triangles", ro.top(), good)
	}
	ports := portsOf(m)
	if !ports[0].driven {
		return nil, c.Fault("tap", "want a [[tap]], or strings and a bridge: there is nothing to drive")
	}
	o.Say("tones")
	t, err := tonesUpTo(m, ro.top())
	if err != nil {
		return nil, err
	}
	o.Say("response")
	loss := c.Moving().Loss
	red, err := t.Reduce(columnsOf(ports), loss)
	if err != nil {
		return nil, err
	}
	if c.Moving().ByWood {
		if err := loseByWood(ctx, m, red, o); err != nil {
			return nil, err
		}
	}
	r := &ResponseReport{Format: cases.Format, Units: "Hz; mobility m/(N s), volume velocity m3/(N s); levels dB re 1 of these",
		Title: c.Title, State: string(state), Loss: loss, Tones: len(t.List), Reaches: t.List[len(t.List)-1].Hz, GoodTo: good,
		LeftOut: leftOut(m), Cautions: append(cautions(m), "levels compare designs; they do not tell how loud or how good it sounds")}
	r.Losses = []Loss{}
	for i, l := range red.Values {
		if hz := math.Sqrt(l) / (2 * math.Pi); c.Moving().ByWood && hz > 1 && hz <= ro.top() {
			r.Losses = append(r.Losses, Loss{hz, red.Loss[i]})
		}
	}
	r.curves(red, ports, ro.list())
	r.bands(red, ports, ro)
	r.decays(red, m, len(ports)-len(m.Strings))
	return r, nil
}

// portsOf lists what is driven and looked at, what is driven first.
func portsOf(m *design.Moving) []port {
	var list []port
	if m.State == design.Strung {
		node, at := m.Built.SaddleNode(0), m.Built.Saddle(0)
		for _, p := range []struct {
			name string
			dir  [3]float64
		}{{saddleUp, [3]float64{0, 0, 1}}, {saddleAlong, [3]float64{0, 1, 0}}, {saddleAcross, [3]float64{1, 0, 0}}} {
			list = append(list, port{name: p.name, column: m.Structure.BodyPort(node, at, p.dir), driven: true})
		}
	}
	for i := range m.Case.Taps {
		t := &m.Case.Taps[i]
		d := t.Direction
		n := math.Sqrt(d[0]*d[0] + d[1]*d[1] + d[2]*d[2])
		list = append(list, port{name: t.Name, driven: true,
			column: m.Structure.PlatePort(m.Spots(t.At, t.Size), [3]float64{d[0] / n, d[1] / n, d[2] / n})})
	}
	list = append(list, port{name: AirShifted, column: m.Structure.VolumePort(m.Built.PlateN)})
	for _, s := range m.Strings {
		x := s.Force.X
		list = append(list, port{name: s.Force.Name, string: true,
			column: m.Structure.BodyPort(m.Built.SaddleNode(x), m.Built.Saddle(x), [3]float64{0, 0, 1})})
	}
	return list
}

// columnsOf are the ports' rows.
func columnsOf(ports []port) []sparse.Column {
	var list []sparse.Column
	for _, p := range ports {
		list = append(list, p.column)
	}
	return list
}

// listed says whether the velocity at one port under a force at another is told: of what is driven,
// both ways, though they are the same.
func listed(ports []port, drive, at int) bool { return ports[drive].driven && !ports[at].string }

// headroom is how far beyond the highest frequency the tones shall reach; what lies beyond is
// taken up by the movements at rest.
const headroom = 1.5

// tonesUpTo finds all tones up to a frequency and some beyond.
func tonesUpTo(m *design.Moving, hz float64) (*vibration.Tones, error) {
	for count := 30; ; count *= 2 {
		t, err := m.Tones(count)
		if err != nil {
			return nil, err
		}
		if t.To > headroom*hz {
			return t, nil
		}
		if count > 1000 {
			return nil, fmt.Errorf("more than %d tones lie below %.0f Hz: want lower frequencies", count, headroom*hz)
		}
	}
}

// metres turns mm into m.
const metres = 1e-3

// scaleOf turns the movement seen at a port into m or m³.
func scaleOf(p port) float64 {
	if p.name == AirShifted {
		return metres * metres * metres
	}
	return metres
}

// curves fills the response.
func (r *ResponseReport) curves(red *vibration.Reduced, ports []port, hz []float64) {
	r.Response.Hz = hz
	for d, from := range ports {
		for a, to := range ports {
			if !listed(ports, d, a) {
				continue
			}
			p := ResponsePath{Drive: from.name, At: to.name}
			for _, f := range hz {
				y := complex(scaleOf(to), 0) * red.Mobility(d, a, f)
				p.Re, p.Im = append(p.Re, real(y)), append(p.Im, imag(y))
			}
			r.Response.Paths = append(r.Response.Paths, p)
		}
	}
}

// nominal are the nominal middle frequencies of thirds of octaves, IEC 61260-1, from 20 Hz on, Hz.
var nominal = []float64{20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800,
	1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000, 10000}

// bandPoints is how many frequencies a band's mean is taken over.
const bandPoints = 60

// bands fills the levels of the bands that lie within the frequencies.
func (r *ResponseReport) bands(red *vibration.Reduced, ports []port, ro ResponseOptions) {
	list := ro.list()
	lo, hi := list[0], ro.top()
	r.Bands = []Band{}
	for i, n := range nominal {
		mid := 1000 * math.Pow(10, float64(i-17)/10)
		edge := math.Pow(10, 0.05)
		if mid/edge < lo || mid*edge > hi {
			continue
		}
		b := Band{Nominal: n, Middle: mid}
		for d := range ports {
			for a, to := range ports {
				if !listed(ports, d, a) {
					continue
				}
				sum := 0.0
				for k := range bandPoints {
					f := mid * math.Pow(10, 0.1*((float64(k)+0.5)/bandPoints-0.5))
					y := scaleOf(to) * cmplx.Abs(red.Mobility(d, a, f))
					sum += y * y / bandPoints
				}
				b.Levels = append(b.Levels, answer.Num(10*math.Log10(sum)))
			}
		}
		r.Bands = append(r.Bands, b)
	}
}

// semitones is how far up each string its notes are looked at.
const semitones = 14

// decays fills how long each string's notes last: at its end a string of impedance Z loses, each time
// a wave runs up and down it, 2 Z Re Y of its amplitude, as long as the top answers weakly (N. H.
// Fletcher, T. D. Rossing, The Physics of Musical Instruments, 2nd ed. 1998, ch. 4). Near a tone of
// the top of quality 1/loss it does not where 8 Z |Y| > pi · loss: then string and top swing as one
// (C. E. Gough, The theory of string resonances on musical instruments, Acustica 49, 1981). Both from
// memory.
func (r *ResponseReport) decays(red *vibration.Reduced, m *design.Moving, first int) {
	r.Strings = []Decay{}
	for i, s := range m.Strings {
		z := math.Sqrt(s.Force.Tension * s.Mass)
		open := math.Sqrt(s.Force.Tension/s.Mass) / (2 * s.Front * metres)
		d := Decay{Name: s.Force.Name, Impedance: z, Guessed: s.CoreGuessed}
		for k := range semitones + 1 {
			f := open * math.Exp2(float64(k)/12)
			if f > r.Reaches {
				break
			}
			y := complex(metres, 0) * red.Mobility(first+i, first+i, f)
			n := Note{Hz: f, Decay: answer.None(), Strong: 8*z*cmplx.Abs(y) > math.Pi*lossAt(r.Losses, f, r.Loss)}
			if re := real(y); re > 0 {
				n.Decay = answer.Num(3 * math.Ln10 / (2 * f * z * re))
			}
			d.Notes = append(d.Notes, n)
		}
		r.Strings = append(r.Strings, d)
	}
}

// SamePlaces says whether two responses are of the same places and frequencies.
func SamePlaces(a, b *ResponseReport) bool {
	return slices.Equal(a.Response.Hz, b.Response.Hz) && len(a.Bands) == len(b.Bands) &&
		slices.EqualFunc(a.Response.Paths, b.Response.Paths, func(p, q ResponsePath) bool { return p.Drive == q.Drive && p.At == q.At })
}
