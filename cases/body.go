package cases

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"reflect"
	"strings"

	"archload/cases/tree"
)

// Body is what closes the body under the top: the back and the blocks. The sides
// are those of [rim], whose side_height then is that from the top's gluing surface
// to the back's.
type Body struct {
	Back Back `toml:"back"`
	// mm, of the lining along the back's edge, width and height; [0, 0]: none; default: as the top's
	BackLining *[2]tree.Length `toml:"back_lining" want:">=0" eg:"[6, 14]"`
	// mm, how far the neck block reaches into the body, top and back glued on all over; 0: it holds side and rims alone; default: 0
	NeckBlockDepth tree.Length `toml:"neck_block_depth" default:"0" want:">=0" eg:"45"`
	// mm, how far the tail block reaches into the body, as the neck block does; default: 0
	TailBlockDepth tree.Length `toml:"tail_block_depth" default:"0" want:">=0" eg:"20"`
	// mm, middle of the neck's joint above the rim's gluing surface, below it negative; about it the strings'
	// moment in the joint is told; default: half way down the side
	NeckJoint *tree.Length `toml:"neck_joint" eg:"-35"`
	// of both blocks, which are rigid: it tells how they swell from season to season; as the top's: a wood card, one of
	// the case's own, or a card file; default: that of the top
	BlockWood string `toml:"block_wood" eg:"'mahogany'"`
	// how the blocks' grain runs; upright: from back to top; across: from side to side; along: toward the neck. Square
	// to it they swell by the mean of radial and tangential. Default: upright (common practice, no published source)
	BlockGrain string `toml:"block_grain" default:"upright" one:"upright across along" eg:"'across'"`
}

// Back is the second plate, in the same plan as the top and seen through it.
type Back struct {
	// as the top's: a wood card, one of the case's own, or a card file; default: sugar-maple
	Wood string `toml:"wood" default:"sugar-maple" eg:"'sugar-maple'"`
	// carved: wood axes fixed in space; pressed: they follow the surface. Default: carved
	Made string `toml:"made" default:"carved" one:"carved pressed" eg:"'pressed'"`
	// quarter: rings upright; flat: rings lying. Default: quarter
	Cut string `toml:"cut" default:"quarter" one:"quarter flat" eg:"'flat'"`
	// deg, rings turned from the cut about the grain; default: 0
	RingAngle tree.Angle `toml:"ring_angle" default:"0" want:"-90..90" eg:"8"`
	// deg, grain turned from the centre line in plan, anticlockwise seen through the top; default: 0
	GrainAngle tree.Angle `toml:"grain_angle" default:"0" want:"-45..45" eg:"2"`
	// mm, as the top's: one for the whole back, or the table [body.back.thickness]; default: nine tenths of the
	// top's, place by place
	Thickness *Heights `toml:"thickness" eg:"4.5"`
	// 1, multiplies the thickness everywhere; default: 1
	ThicknessScale float64 `toml:"thickness_scale" default:"1" want:"0.5..2" eg:"0.95"`
	// heights outward (down) from the back's own gluing surface, given as the top's are; default: 0.85 of what the
	// top rises above its rim, place by place
	Arch *Arch `toml:"arch"`
	// no arch: the outer surface lies as high as its rim all over; default: false
	Flat   bool    `toml:"flat" default:"false" eg:"true"`
	Holes  []Hole  `toml:"hole" most:"200"`  // default: none
	Braces []Brace `toml:"brace" most:"100"` // bars on the inside of the back; default: none
}

// A back that is not given is made after the top: so much of its thickness, and
// of what it rises above its rim (common practice, no published source: backs of
// maple are left a little thinner and flatter than tops of spruce).
const (
	BackThickness = 0.9
	BackRise      = 0.85
)

// Bodied says whether a back, sides and blocks hold the top.
func (c *Case) Bodied() bool { return c.Rim.Support == "body" }

// Sided says whether sides hold the top's edge.
func (r *Rim) Sided() bool { return r.Support == "elastic" || r.Support == "body" }

// Assumed says what a body is taken to be where the case does not say, a sentence each;
// none without a body.
func (c *Case) Assumed() []string {
	if !c.Bodied() {
		return nil
	}
	const custom = " (common practice, no published source)"
	b := &c.Body.Back
	var out []string
	say := func(key, text string) {
		if !c.IsSet(key) {
			out = append(out, text)
		}
	}
	say(backKey+".wood", "the back is of "+b.Wood)
	if b.Thickness == nil {
		out = append(out, fmt.Sprintf("the back is %g times as thick as the top, place by place%s", BackThickness*b.ThicknessScale, custom))
	}
	if b.Arch == nil && !b.Flat {
		out = append(out, fmt.Sprintf("the back is arched %g times as high over its rim as the top, place by place%s", BackRise, custom))
	}
	say("body.neck_block_depth", "the neck block holds side and rims alone, no part of the plates")
	say("body.tail_block_depth", "the tail block holds side and rims alone, no part of the plates")
	return append(out, "the blocks and the neck are rigid and without weight; sides meet the middle of top and back, all six freedoms tied, and the joint stretches along the outline as the plate's wood does")
}

// usualSupport is what the rim stands on where the case does not say: a body where there
// are strings, unless bench supports or a squeeze speak of a plate alone.
func (c *Case) usualSupport() string {
	if c.Strings != nil && c.Bridge != nil && len(c.Supports) == 0 && c.Rim.Squeeze == 0 {
		return "body"
	}
	return "elastic"
}

// fillBody fills in the support of the rim, and a body that the case asks for
// without a word about it.
func (c *Case) fillBody(d *tree.Decoder) {
	if !c.IsSet("rim.support") && d.Rep.Clean("rim") {
		c.Rim.Support = c.usualSupport()
	}
	if c.Bodied() && c.Body == nil && d.Rep.Clean("body") {
		c.Body = &Body{}
		d.Table(reflect.ValueOf(c.Body).Elem(), &tree.Node{Val: map[string]*tree.Node{}}, "body")
	}
}

// BackLining is the lining along the back's edge, width and height, mm.
func (c *Case) BackLining() [2]tree.Length {
	if l := c.Body.BackLining; l != nil {
		return *l
	}
	return c.Rim.Lining
}

// NeckJoint is the height of the middle of the neck's joint above the rim's gluing
// surface, mm.
func (c *Case) NeckJoint() float64 {
	if z := c.Body.NeckJoint; z != nil {
		return float64(*z)
	}
	return -float64(c.Rim.SideHeight) / 2
}

// BackAlone is the back as a case of its own, in the top's place and with nothing on
// it: what is true of a top's shape is then true of a back's. Its keys are found
// where the back's are written; BackKey gives their names back. A back without an
// arch of its own has none here.
func (c *Case) BackAlone() *Case {
	b := &c.Body.Back
	a := &Case{Format: c.Format, Title: c.Title, Braces: b.Braces, Rim: c.Rim, Body: c.Body, Mesh: c.Mesh, Woods: c.Woods,
		Rep: tree.NewFaultLog(), Cards: c.Cards}
	a.Plate = Plate{Wood: b.Wood, Made: b.Made, Cut: b.Cut, RingAngle: b.RingAngle, GrainAngle: b.GrainAngle,
		Outline: c.Plate.Outline, ThicknessScale: b.ThicknessScale, Holes: b.Holes}
	if b.Thickness != nil {
		a.Plate.Thickness = *b.Thickness
	} else {
		a.Plate.Thickness = c.Plate.Thickness
		a.Plate.ThicknessScale *= BackThickness * c.Plate.ThicknessScale
	}
	if b.Arch != nil {
		a.Plate.Arch = *b.Arch
	}
	a.Rep.Order, a.Rep.Places = c.Rep.Order, maps.Clone(c.Rep.Places)
	for _, own := range []string{"plate", "brace"} {
		for key := range a.Rep.Places {
			if tree.IsWithin(key, own) && !tree.IsWithin(key, "plate.outline") {
				delete(a.Rep.Places, key)
			}
		}
	}
	for key, at := range c.Rep.Places {
		if rest, ok := strings.CutPrefix(key, backKey); ok {
			if tree.IsWithin(rest, ".brace") {
				a.Rep.Places[rest[1:]] = at
			} else {
				a.Rep.Places["plate"+rest] = at
			}
		}
	}
	return a
}

// backKey is the table of the back.
const backKey = "body.back"

// BackKey is the key of the whole case that a key of BackAlone stands for.
func BackKey(key string) string {
	switch {
	case tree.IsWithin(key, "plate.outline"):
		return key
	case tree.IsWithin(key, "plate"):
		return backKey + strings.TrimPrefix(key, "plate")
	case tree.IsWithin(key, "brace"):
		return backKey + "." + key
	}
	return key
}

// OnBlock names the block that a load acts on, "neck" or "tail"; "" is the top, "bridge" the saddle.
func (l *TopLoad) OnBlock() string {
	block, _ := strings.CutSuffix(l.On, " block")
	if block == "top" {
		return ""
	}
	return block
}

// OnBridge is where a load acts that is put on the bridge.
const OnBridge = "bridge"

// checkOn wants a load on the top, or on a block of a body.
func (c *Case) checkOn(r *tree.FaultLog, key string, l *TopLoad) {
	switch {
	case !r.Clean(key, "rim"):
	case l.On != "top" && l.On != OnBridge && l.On != "neck block" && l.On != "tail block":
		r.AddKey(key+".on", "want one of top, bridge, neck block, tail block, found %q", l.On)
	case l.On == OnBridge && c.Bridge == nil:
		r.AddKey(key+".on", "want a load on the top: there is no [bridge] to carry one")
	case l.On == OnBridge && r.Clean("bridge") && math.Abs(l.At[0]-c.Bridge.At[0]) > float64(c.Bridge.Length)/2:
		r.AddKey(key+".at", "want a place on the bridge, x from %g to %g, found %g", c.Bridge.At[0]-float64(c.Bridge.Length)/2, c.Bridge.At[0]+float64(c.Bridge.Length)/2, l.At[0])
	case l.On == OnBridge && l.Size != nil:
		r.AddKey(key+".size", "want none on the bridge, which a weight loads at its saddle")
	case l.On == OnBridge && l.Z != 0:
		r.AddKey(key+".z", "want none on the bridge: the weight acts where the strings do")
	case l.On == OnBridge:
	case l.OnBlock() == "" && l.Z != 0:
		r.AddKey(key+".z", "want it with on = \"neck block\" or \"tail block\" alone: a load on the top lies on its outer surface")
	case l.OnBlock() == "":
	case !c.Bodied():
		r.AddKey(key+".on", "want a load on the top: only a body has blocks to load, rim.support = \"body\"; found %q", l.On)
	case l.Size != nil:
		r.AddKey(key+".size", "want none on a block, which moves as one")
	}
}

// checkGauges wants a back under the gauges that stand on one.
func (c *Case) checkGauges(r *tree.FaultLog) {
	for i, g := range c.Gauges {
		if key := tree.EntryKey("gauge", i+1); g.On == "back" && !c.Bodied() && r.Clean(key, "rim") {
			r.AddKey(key+".on", "want a gauge on the top: only a body has a back, rim.support = \"body\"; found %q", g.On)
		}
	}
}

// checkBody checks the back as a top is checked, and that there are blocks on which
// the strings can pull.
func (c *Case) checkBody(r *tree.FaultLog) {
	if !c.Bodied() || c.Body == nil || !r.Clean("rim", "body") {
		return
	}
	b := &c.Body.Back
	if b.Arch != nil && b.Flat {
		r.AddKey(backKey+".flat", "want either an arch or flat = true, found both")
	}
	a := c.BackAlone()
	if b.Arch != nil {
		a.checkArch(a.Rep)
	}
	a.checkHoles(a.Rep)
	a.checkBraces(a.Rep)
	var faults tree.Faults
	if errors.As(a.Rep.Err(), &faults) {
		for _, f := range faults {
			r.Add(a.Rep.Find(f.Key), BackKey(f.Key), f.Err)
		}
	}
	if c.Rim.Squeeze > 0 {
		r.AddKey("rim.squeeze", "want 0 with support = \"body\", where the strings pull at the blocks themselves ([[load]] with on = \"neck block\" for a squeeze without strings), found %g", float64(c.Rim.Squeeze))
	}
	for key, width := range map[string]tree.Length{"rim.neck_block": c.Rim.NeckBlock, "rim.tail_block": c.Rim.TailBlock} {
		if width <= 0 {
			r.AddKey(key, "want more than 0 mm with support = \"body\": the strings pull at the blocks, found %g", float64(width))
		}
	}
	if len(c.Supports) > 0 && r.Clean("support") {
		r.AddKey("support[1]", "bench supports are for a plate alone; want none with support = \"body\", which stands on its blocks")
	}
}
