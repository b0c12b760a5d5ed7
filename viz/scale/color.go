package scale

import (
	"image/color"
	"math"
)

// oklab is a colour in the OKLab space: L is lightness, 0 black to 1 white; A
// (green to red) and B (blue to yellow) are 0 for a neutral colour. Equal
// distances are about equally visible.
// Source: B. Ottosson, "A perceptual color space for image processing", 2020.
type oklab struct{ L, A, B float64 } // 1

// oklch builds a colour from lightness and chroma (1) and hue (degrees).
func oklch(l, c, hue float64) oklab {
	s, k := math.Sincos(hue * math.Pi / 180)
	return oklab{l, c * k, c * s}
}

// mix returns the colour a share t (0 to 1) of the way from p to q.
func mix(p, q oklab, t float64) oklab {
	return oklab{p.L + t*(q.L-p.L), p.A + t*(q.A-p.A), p.B + t*(q.B-p.B)}
}

// dist is the distance between two colours in OKLab, 1.
func (p oklab) dist(q oklab) float64 {
	return math.Sqrt((p.L-q.L)*(p.L-q.L) + (p.A-q.A)*(p.A-q.A) + (p.B-q.B)*(p.B-q.B))
}

// linear returns the linear-light sRGB components, inside 0..1 if the colour
// can be shown. Matrices: Ottosson 2020, second edition of the numbers (2021).
func (p oklab) linear() [3]float64 {
	l := p.L + 0.3963377774*p.A + 0.2158037573*p.B
	m := p.L - 0.1055613458*p.A - 0.0638541728*p.B
	s := p.L - 0.0894841775*p.A - 1.2914855480*p.B
	l, m, s = l*l*l, m*m*m, s*s*s
	return [3]float64{
		4.0767416621*l - 3.3077115913*m + 0.2309699292*s,
		-1.2684380046*l + 2.6097574011*m - 0.3413193965*s,
		-0.0041960863*l - 0.7034186147*m + 1.7076147010*s,
	}
}

// fromLinear is the inverse of oklab.linear.
func fromLinear(c [3]float64) oklab {
	l := math.Cbrt(0.4122214708*c[0] + 0.5363325363*c[1] + 0.0514459929*c[2])
	m := math.Cbrt(0.2119034982*c[0] + 0.6806995451*c[1] + 0.1073969566*c[2])
	s := math.Cbrt(0.0883024619*c[0] + 0.2817188376*c[1] + 0.6299787005*c[2])
	return oklab{
		0.2104542553*l + 0.7936177850*m - 0.0040720468*s,
		1.9779984951*l - 2.4285922050*m + 0.4505937099*s,
		0.0259040371*l + 0.7827717662*m - 0.8086757660*s,
	}
}

// encode is the sRGB transfer curve of a linear component (IEC 61966-2-1).
func encode(v float64) uint8 {
	v = math.Max(0, math.Min(1, v))
	if v <= 0.0031308 {
		v *= 12.92
	} else {
		v = 1.055*math.Pow(v, 1/2.4) - 0.055
	}
	return uint8(math.Round(255 * v))
}

// decode is the inverse of encode.
func decode(b uint8) float64 {
	v := float64(b) / 255
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

func (p oklab) rgb() color.NRGBA {
	c := p.linear()
	return color.NRGBA{encode(c[0]), encode(c[1]), encode(c[2]), 255}
}

// Lightness returns the OKLab lightness of a colour on the screen, 0 to 1.
func Lightness(c color.NRGBA) float64 {
	return fromLinear([3]float64{decode(c.R), decode(c.G), decode(c.B)}).L
}

// mapSize is the number of steps in a ColorMap.
const mapSize = 256

// ColorMap turns a share 0..1 of a range into a colour. Its steps are equally
// far apart in OKLab.
type ColorMap struct {
	at [mapSize + 1]oklab
}

// Sequential is the map for quantities that count upward, from straw (low)
// through green to deep blue (high), as depth is drawn on a chart. Lightness
// falls all the way, so it survives a black-and-white printer.
func Sequential() *ColorMap {
	stops := []oklab{
		oklch(0.965, 0.035, 98), oklch(0.86, 0.085, 125), oklch(0.73, 0.095, 165),
		oklch(0.59, 0.090, 215), oklch(0.46, 0.100, 252), oklch(0.33, 0.085, 278),
	}
	return evenly(func(t float64) oklab { return spline(stops, t) })
}

// Diverging is the map for quantities with a sign: blue below zero, a light
// neutral at zero (share 0.5), brown above. Both arms have the same lightness
// at the same distance from zero.
func Diverging() *ColorMap {
	blue := evenly(func(t float64) oklab { return arm(t, 252) })
	brown := evenly(func(t float64) oklab { return arm(t, 48) })
	m := &ColorMap{}
	for i := 0; i <= mapSize/2; i++ {
		m.at[mapSize/2-i] = blue.at[2*i]
		m.at[mapSize/2+i] = brown.at[2*i]
	}
	return m
}

// DownAndUp is the map for a surface that sinks: the straw of Sequential at zero
// (share 0.5), its green and deep blue above, where it has gone down, and brown
// below, where it has risen. Both arms fall in lightness.
func DownAndUp() *ColorMap {
	down := Sequential()
	up := evenly(func(t float64) oklab {
		return spline([]oklab{oklch(0.965, 0.035, 98), oklch(0.82, 0.095, 76), oklch(0.66, 0.135, 55), oklch(0.48, 0.135, 38), oklch(0.315, 0.085, 28)}, t)
	})
	m := &ColorMap{}
	for i := 0; i <= mapSize/2; i++ {
		m.at[mapSize/2-i] = up.at[2*i]
		m.at[mapSize/2+i] = down.at[2*i]
	}
	return m
}

// arm is one half of the diverging map: t = 0 neutral, t = 1 full colour.
func arm(t, hue float64) oklab {
	return oklch(0.955-0.545*t, 0.115*math.Sin(t*0.62*math.Pi)/math.Sin(0.5*math.Pi), hue)
}

// spline runs through the stops at equal parameter steps (uniform
// Catmull-Rom with end tangents from the end spans).
func spline(s []oklab, t float64) oklab {
	n := len(s) - 1
	i := int(math.Min(math.Floor(t*float64(n)), float64(n-1)))
	u := t*float64(n) - float64(i)
	p0, p1, p2, p3 := s[max(i-1, 0)], s[i], s[i+1], s[min(i+2, n)]
	h := func(a, b, c, d float64) float64 {
		return b + 0.5*u*(c-a+u*(2*a-5*b+4*c-d+u*(3*(b-c)+d-a)))
	}
	return oklab{h(p0.L, p1.L, p2.L, p3.L), h(p0.A, p1.A, p2.A, p3.A), h(p0.B, p1.B, p2.B, p3.B)}
}

// evenly samples a path of colours at equal steps of its length in OKLab.
func evenly(path func(float64) oklab) *ColorMap {
	const fine = 8192
	length := make([]float64, fine+1)
	for i := 1; i <= fine; i++ {
		length[i] = length[i-1] + path(float64(i)/fine).dist(path(float64(i-1)/fine))
	}
	m := &ColorMap{}
	j := 1
	for i := range m.at {
		want := length[fine] * float64(i) / mapSize
		for j < fine && length[j] < want {
			j++
		}
		u := (want - length[j-1]) / (length[j] - length[j-1])
		m.at[i] = path((float64(j-1) + u) / fine)
	}
	return m
}

// lab returns the colour at share t of the range; t is held within 0..1.
func (m *ColorMap) lab(t float64) oklab {
	t = math.Max(0, math.Min(1, t)) * mapSize
	i := int(math.Min(math.Floor(t), mapSize-1))
	return mix(m.at[i], m.at[i+1], t-float64(i))
}

// At returns the colour at share t of the range, 0..1; values outside take
// the end colours, NaN the grey of "no value".
func (m *ColorMap) At(t float64) color.NRGBA {
	if math.IsNaN(t) {
		return NoValue()
	}
	return m.lab(t).rgb()
}

// NoValue is the grey of what has no value.
func NoValue() color.NRGBA { return color.NRGBA{214, 210, 204, 255} }
