package contact

import (
	"math"
	"testing"
)

// TestSlackRestShallow lays a body of two narrow feet, hollowed at their edges by
// a fraction of a micron, down on five pads. Triples of pads carry it so nearly
// alike that under a wrong one a pad overlaps by 5.8e-11 mm; under the right one
// none does.
func TestSlackRestShallow(t *testing.T) {
	p := &lcp{pads: 5, per: 1, down: [3]float64{-32.529209438340374, 12.067925130604612, 1919.9542840688614},
		gap: []float64{0.00016856457183637465, 0.0001685520974246254, 0.00019340108635570983, 0.0001933885854763625, 0.00019336511427440583},
		nz:  []float64{0.9935700703652368, 0.9934965424463837, 0.9931105590918753, 0.9930463673362254, 0.9929258432019665},
		plane: [][3]float64{{1, -4.169373457036546, -0.9772019799502658}, {1, 4.170917665215569, -0.9777533658946709},
			{1, -4.170703073420928, -121.33914325549581}, {1, -1.3904101929421615, -121.33960699730126}, {1, 4.170013156091199, -121.3379424933791}}}
	q, err := p.slackRest()
	if err != nil {
		t.Fatal(err)
	}
	least := math.Inf(1)
	for i, pl := range p.plane {
		least = math.Min(least, p.gap[i]+p.nz[i]*(q[2]+pl[1]*q[3]+pl[2]*q[4]))
	}
	if !(math.Abs(least) < 1e-15) {
		t.Errorf("least gap at rest %g mm, want 0 but for rounding", least)
	}
}
