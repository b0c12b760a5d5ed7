package mesh

import (
	"errors"
	"math"
	"testing"

	"archload/mesh/plane"
)

// byteReader turns fuzz bytes into numbers; after the end it gives zeros.
type byteReader struct{ data []byte }

func (b *byteReader) next() byte {
	if len(b.data) == 0 {
		return 0
	}
	x := b.data[0]
	b.data = b.data[1:]
	return x
}

// coord is a coordinate between -scale and scale.
func (b *byteReader) coord(scale float64) float64 {
	return scale * float64(int16(uint16(b.next())<<8|uint16(b.next()))) / 32768
}

// ring reads a star-shaped or free ring about a centre.
func (b *byteReader) ring(at Point, r float64) (*plane.Curve, error) {
	head := b.next()
	n, free := 3+int(head%16), head&0x80 != 0
	var pts []Point
	var corner []bool
	for i := range n {
		if free {
			pts = append(pts, Point{at[0] + b.coord(r), at[1] + b.coord(r)})
		} else {
			a, l := 2*math.Pi*float64(i)/float64(n), r*(0.15+0.85*float64(b.next())/255)
			pts = append(pts, Point{at[0] + l*math.Cos(a), at[1] + l*math.Sin(a)})
		}
		corner = append(corner, b.next()&1 == 1)
	}
	return plane.NewCurve(pts, corner)
}

func (b *byteReader) domain() (d Domain, err error) {
	head := b.next()
	size := []float64{100, 250, 250, 5}[head%4]
	d.Size = []float64{0, 12, 25, 9, 1000, 6, 3, 0}[head>>2%8]
	d.Scale = []float64{0, 2, 0.7, 1}[head>>5%4]
	if d.Outline, err = b.ring(Point{}, size); err != nil {
		return d, err
	}
	count := b.next()
	spread := size * []float64{1, 0.6, 0.3, 0.15}[b.next()%4] // the smaller, the more lies inside
	for range count % 4 {
		h, err := b.ring(Point{b.coord(spread), b.coord(spread)}, size/4*float64(1+b.next()%8)/8)
		if err != nil {
			return d, err
		}
		d.Holes = append(d.Holes, h)
	}
	for range count >> 2 % 8 {
		var line []Point
		for range b.next() % 7 {
			line = append(line, Point{b.coord(spread), b.coord(spread)})
		}
		d.Lines = append(d.Lines, line)
	}
	if count>>5&1 == 1 {
		d.Fine = []Fine{{Along: []Point{{b.coord(size), b.coord(size)}, {b.coord(size), b.coord(size)}}, Radius: size / 10, Size: max(size/80, 0.5)}}
	}
	if count>>6&1 == 1 {
		k := math.Abs(b.coord(0.1))
		d.Curvature = func(p Point) float64 { return k * math.Sin(p[0]/20) }
	}
	return d, nil
}

// FuzzTriangulate: any domain ends with a valid plan or a PlaceError.
func FuzzTriangulate(f *testing.F) {
	f.Add([]byte{0x41, 7, 200, 0, 210, 0, 190, 0, 220, 0, 180, 0, 200, 0, 210, 0, 190, 0, 200, 0, 210, 0, 9, 5, 0, 0, 0, 0, 3, 10, 0, 10, 0, 5, 1})
	f.Add([]byte{1, 0x87, 0x81, 0, 0x81, 0, 1, 0x7f, 0, 0x81, 0, 1, 0x7f, 0, 0x7f, 0, 1, 0x81, 0, 0x7f, 0, 1, 0x24, 2, 0x90, 0, 0x90, 0, 0x50, 0, 0x50, 0})
	f.Add([]byte{2, 13, 255, 1, 255, 1, 128, 1, 255, 1, 255, 1, 30, 1, 255, 1, 255, 1, 255, 1, 255, 1, 255, 1, 255, 1, 255, 1, 255, 1, 255, 1, 255, 1, 0x1c, 3, 0, 1, 0, 2, 0x40, 1, 3, 9, 0xd0, 0})
	f.Fuzz(func(t *testing.T, data []byte) {
		b := &byteReader{data}
		d, err := b.domain()
		if err != nil {
			return // FuzzCurve looks at curves
		}
		p, err := Triangulate(d)
		var pe *PlaceError
		if err != nil {
			if !errors.As(err, &pe) || pe.Part == "" || pe.Msg == "" {
				t.Fatalf("error %v, want a PlaceError", err)
			}
			return
		}
		checkPlanValid(t, &d, p)
	})
}
