package scale

import (
	"math"
	"testing"
)

// cielab converts linear sRGB to CIELAB (D65). Source: IEC 61966-2-1 for the
// matrix, CIE 15 for the formula.
func cielab(c [3]float64) [3]float64 {
	xyz := [3]float64{
		(0.4124*c[0] + 0.3576*c[1] + 0.1805*c[2]) / 0.9505,
		0.2126*c[0] + 0.7152*c[1] + 0.0722*c[2],
		(0.0193*c[0] + 0.1192*c[1] + 0.9505*c[2]) / 1.0890,
	}
	for i, t := range xyz {
		if t > 216.0/24389 {
			xyz[i] = math.Cbrt(t)
		} else {
			xyz[i] = (24389.0/27*t + 16) / 116
		}
	}
	return [3]float64{116*xyz[1] - 16, 500 * (xyz[0] - xyz[1]), 200 * (xyz[1] - xyz[2])}
}

func deltaE(p, q [3]float64) float64 {
	return math.Sqrt((p[0]-q[0])*(p[0]-q[0]) + (p[1]-q[1])*(p[1]-q[1]) + (p[2]-q[2])*(p[2]-q[2]))
}

// sights are full colour blindness of three kinds as matrices on linear RGB.
// Source: Machado, Oliveira, Fernandes 2009, severity 1, from memory.
func sights() map[string][3][3]float64 {
	return map[string][3][3]float64{
		"usual":  {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
		"protan": {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}},
		"deutan": {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}},
		"tritan": {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}},
	}
}

func seen(m [3][3]float64, c [3]float64) [3]float64 {
	var out [3]float64
	for i := range out {
		out[i] = math.Max(0, math.Min(1, m[i][0]*c[0]+m[i][1]*c[1]+m[i][2]*c[2]))
	}
	return out
}

func TestOKLab(t *testing.T) {
	for _, c := range []struct {
		rgb    [3]float64 // linear
		want   oklab
		source string
	}{
		{[3]float64{1, 1, 1}, oklab{1, 0, 0}, "definition: white"},
		{[3]float64{0, 0, 0}, oklab{0, 0, 0}, "definition: black"},
		{[3]float64{1, 0, 0}, oklab{0.62796, 0.22486, 0.12585}, "sRGB red, CSS Color 4 sample, from memory"},
		{[3]float64{0, 0, 1}, oklab{0.45201, -0.03246, -0.31153}, "sRGB blue, CSS Color 4 sample, from memory"},
	} {
		got := fromLinear(c.rgb)
		if got.dist(c.want) > 2e-4 {
			t.Errorf("fromLinear(%v) = %v, want %v (%s)", c.rgb, got, c.want, c.source)
		}
		back := got.linear()
		for k := range back {
			if math.Abs(back[k]-c.rgb[k]) > 1e-5 {
				t.Errorf("linear(fromLinear(%v)) = %v", c.rgb, back)
			}
		}
	}
}

// TestMapsInGamut guards against clipping, which would show a false edge.
func TestMapsInGamut(t *testing.T) {
	for name, m := range map[string]*ColorMap{"sequential": Sequential(), "diverging": Diverging(), "down and up": DownAndUp()} {
		for i, c := range m.at {
			for _, v := range c.linear() {
				if v < 0 || v > 1 {
					t.Errorf("%s map at %d/%d: component %g outside 0..1", name, i, mapSize, v)
				}
			}
		}
	}
}

func TestMapsAreEven(t *testing.T) {
	for name, m := range map[string]*ColorMap{"sequential": Sequential(), "diverging": Diverging(), "down and up": DownAndUp()} {
		least, most := math.Inf(1), 0.0
		for i := 1; i < len(m.at); i++ {
			d := m.at[i].dist(m.at[i-1])
			least, most = math.Min(least, d), math.Max(most, d)
		}
		if most/least > 1.05 {
			t.Errorf("%s map: OKLab steps from %g to %g, want within 5 %%", name, least, most)
		}
	}
}

// TestMapsForEveryEye checks steps of 1/32 of the range in CIELAB for usual
// sight and three kinds of colour blindness: none may vanish, none may jump.
func TestMapsForEveryEye(t *testing.T) {
	for name, m := range map[string]*ColorMap{"sequential": Sequential(), "diverging": Diverging(), "down and up": DownAndUp()} {
		for sight, matrix := range sights() {
			least, most := math.Inf(1), 0.0
			for i := 8; i <= mapSize; i += 8 {
				a := cielab(seen(matrix, m.at[i-8].linear()))
				b := cielab(seen(matrix, m.at[i].linear()))
				d := deltaE(a, b)
				least, most = math.Min(least, d), math.Max(most, d)
			}
			if least < 2 || most/least > 2.6 {
				t.Errorf("%s map, %s sight: CIELAB steps from %.2f to %.2f, want at least 2 and at most 2.6 times apart", name, sight, least, most)
			}
		}
	}
}

func TestSequentialFalls(t *testing.T) {
	m := Sequential()
	before := 101.0
	for i, c := range m.at {
		l := cielab(c.linear())[0]
		if l >= before {
			t.Errorf("lightness L* at %d/%d is %g, not below %g", i, mapSize, l, before)
		}
		before = l
	}
	if first, last := m.at[0].L, m.at[mapSize].L; first-last < 0.6 {
		t.Errorf("lightness from %g to %g, want a fall of at least 0.6", first, last)
	}
}

func TestDivergingSymmetric(t *testing.T) {
	m := Diverging()
	mid := m.lab(0.5)
	if c := math.Hypot(mid.A, mid.B); c > 1e-3 {
		t.Errorf("chroma in the middle = %g, want neutral", c)
	}
	for i := 1; i <= mapSize/2; i++ {
		lo, hi := m.at[mapSize/2-i], m.at[mapSize/2+i]
		if math.Abs(lo.L-hi.L) > 0.004 {
			t.Errorf("lightness %d steps from zero: %g below, %g above", i, lo.L, hi.L)
		}
		if hi.L >= m.at[mapSize/2+i-1].L {
			t.Errorf("lightness does not fall %d steps above zero", i)
		}
	}
	for sight, matrix := range sights() {
		a, b := cielab(seen(matrix, m.at[0].linear())), cielab(seen(matrix, m.at[mapSize].linear()))
		if d := deltaE(a, b); d < 40 {
			t.Errorf("ends of the diverging map differ by %.0f for %s sight, want at least 40", d, sight)
		}
	}
}

func TestColorMapOutside(t *testing.T) {
	m := Sequential()
	for _, c := range []struct{ t, same float64 }{{-3, 0}, {7, 1}, {math.Inf(1), 1}} {
		if got, want := m.At(c.t), m.At(c.same); got != want {
			t.Errorf("At(%g) = %v, want the end colour %v", c.t, got, want)
		}
	}
	if got := m.At(math.NaN()); got != NoValue() {
		t.Errorf("At(NaN) = %v, want the grey of no value %v", got, NoValue())
	}
}

// What goes down and what comes up both get darker with every step away from zero, so that a
// grey print keeps how far; which of the two it is, is hatched.
func TestDownAndUpFall(t *testing.T) {
	m := DownAndUp()
	for _, way := range []int{-1, 1} {
		before := 101.0
		for i := 0; i <= mapSize/2; i++ {
			l := cielab(m.at[mapSize/2+way*i].linear())[0]
			if l >= before {
				t.Errorf("lightness L* %d steps from zero, way %d, is %g, not below %g", i, way, l, before)
			}
			before = l
		}
	}
}
