package body_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/body"
	"archload/cases/design"
	"archload/mesh"
)

// even is an isotropic wood of Young's modulus E, MPa, without a change of width.
func even(name string, E float64) string {
	return fmt.Sprintf("[wood.%s]\nlike = \"sugar-maple\"\nEL = %g\nER = %g\nET = %g\nGLR = %g\nGLT = %g\nGRT = %g\nnuLR = 0\nnuLT = 0\nnuRT = 0\n",
		name, E, E, E, E/2, E/2, E/2)
}

// solved is a case written in the test, solved without flow and error estimate.
func solved(t *testing.T, text string) *design.Solution {
	t.Helper()
	c, err := cases.Load(fstest.MapFS{"a.toml": {Data: []byte(text)}}, "a.toml")
	if err != nil {
		t.Fatal(err)
	}
	s, err := design.Solve(t.Context(), c, design.Options{NoError: true, NoFlow: true})
	if err != nil {
		t.Fatal(err)
	}
	if bad := answer.Summarize(s).Error.Failed(); len(bad) > 0 {
		t.Errorf("checks failed: %v", bad)
	}
	return s
}

// girder is a closed box in plan so long and 80 mm wide, mm, whose walls' middle
// surfaces are 60 mm apart upright: 3 mm thick all round, isotropic, with blocks over
// nearly the whole of its ends.
func girder(t *testing.T, length float64, loads string) *answer.Report {
	t.Helper()
	const text = `
format = 1
[plate]
wood = "even"
outline = "box.csv"
thickness = 3
arch = { formula = { height = 1.5 }, rim_height = 1.5 }
[rim]
support = "body"
side_height = 60
side_thickness = 3
side_wood = "even"
lining = [0, 0]
neck_block = 74
tail_block = 74
[body.back]
wood = "even"
thickness = 3
arch = { formula = { height = 1.5 }, rim_height = 1.5 }
[mesh]
size = 10
`
	y := length / 2
	box := fmt.Sprintf("x_mm,y_mm,corner\n-40,%g,1\n40,%g,1\n40,%g,1\n-40,%g,1\n", -y, -y, y, y)
	c, err := cases.Load(fstest.MapFS{"a.toml": {Data: []byte(text + strings.ReplaceAll(loads, "END", fmt.Sprint(y)) + even("even", 10000))},
		"box.csv": {Data: []byte(box)}}, "a.toml")
	if err != nil {
		t.Fatal(err)
	}
	s, err := design.Solve(t.Context(), c, design.Options{NoError: true, NoFlow: true})
	if err != nil {
		t.Fatal(err)
	}
	return answer.Summarize(s)
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got/want-1) <= tol) {
		t.Errorf("%s: %.6g, want %.6g within %.2g", what, got, want, tol)
	}
}

// TestGirder: a box girder under a push between its ends 10 mm below its top
// shortens by F L/(E A) and bends by F e L/(E I) about the middle of its height. What
// the ends give besides falls out of the difference of two lengths.
func TestGirder(t *testing.T) {
	const force, b, h, thick, e, modulus, short, long = 500.0, 80.0, 60.0, 3.0, 20.0, 10000.0, 400.0, 600.0
	const push = "[[load]]\non = \"neck block\"\nat = [0, END]\nz = -10\nforce = [0, -500, 0]\n[[load]]\non = \"tail block\"\nat = [0, -END]\nz = -10\nforce = [0, 500, 0]\n"
	one, two := girder(t, short, push).Body, girder(t, long, push).Body
	area := 2 * (b + h) * thick
	inertia := 2*b*thick*h*h/4 + 2*thick*h*h*h/12
	turn := force * e * (long - short) / (modulus * inertia) / 2 // of each end
	near(t, "shortening half way down", two.Nearer.Middle-one.Nearer.Middle, force*(long-short)/(modulus*area), 0.005)
	near(t, "turn of the neck block", two.NeckTurn-one.NeckTurn, turn*180/math.Pi, 0.01)
	near(t, "turn of the tail block", two.TailTurn-one.TailTurn, turn*180/math.Pi, 0.01)
	// Half way between the ends each plate carries the stress at its height.
	bent := force * e * h / 2 / inertia
	near(t, "thrust in the top", two.Thrust.Top, b*thick*(force/area+bent), 0.02)
	near(t, "thrust in all", two.Thrust.Top+two.Thrust.Back+two.Thrust.BassSide+two.Thrust.TrebleSide, force, 1e-8)
}

// TestOnward: a box girder that a force presses in its middle carries it to its ends in its two
// upright walls, half to each end: a quarter in each wall, but for the little that top and back carry
// in bending by themselves. What every part takes it gives, to rounding.
func TestOnward(t *testing.T) {
	const force, length = 100.0, 600.0
	const press = "[[load]]\nat = [0, 0]\nsize = [60, 20]\nforce = [0, 0, -100]\n[[load]]\non = \"neck block\"\nat = [0, END]\nforce = [0, 0, 50]\n[[load]]\non = \"tail block\"\nat = [0, -END]\nforce = [0, 0, 50]\n"
	o := girder(t, length, press).Body.Onward
	for _, side := range []*body.SideFlow{&o.Bass, &o.Treble} {
		for _, s := range side.Stations {
			if away := math.Abs(s.To - length/2); away > 100 && away < 250 {
				near(t, fmt.Sprintf("carried %.0f mm along", s.To), math.Abs(s.Carried), force/4, 0.03)
			}
		}
		last := side.Stations[len(side.Stations)-1]
		near(t, "end of what is carried", last.Carried, side.ToTail, 1e-9)
		near(t, "what a side gives", side.ToNeck+side.ToTail+side.ToBack, side.FromTop, 1e-9)
	}
	near(t, "what the top gives", o.Bass.FromTop+o.Treble.FromTop+o.Neck.FromTop+o.Tail.FromTop, force, 1e-9)
	near(t, "neck", o.Neck.Total, force/2, 1e-9)
	near(t, "its share", *o.Tail.Share, 0.5, 1e-9)
	if miss := o.Bass.ToBack + o.Treble.ToBack + o.Posts - o.Neck.FromBack - o.Tail.FromBack; math.Abs(miss) > 1e-9*force {
		t.Errorf("the back keeps %.3g N", miss)
	}
}

// TestOnwardConverges: what a side of an arched body carries hardly moves with the triangles, and what the
// two meshes differ by falls as they get finer.
func TestOnwardConverges(t *testing.T) {
	carried := func(size string) []body.SideStation {
		text := strings.Replace(arched(1, "[rim]\nsupport = \"body\"\n[body]\nneck_block_depth = 30\n", ""), "size = 14", "size = "+size, 1)
		return answer.Summarize(solved(t, text)).Body.Onward.Bass.Stations
	}
	differ := func(a, b []body.SideStation) (mean, most float64) {
		for i := range a {
			d := math.Abs(a[i].Carried - b[i].Carried)
			mean, most = mean+d/float64(len(a)), max(most, d)
		}
		return mean, most
	}
	coarse, mid, fine := carried("20"), carried("14"), carried("10")
	const load = 60
	one, most := differ(coarse, fine)
	two, _ := differ(mid, fine)
	if !(two < 0.75*one && most < 0.003*load) {
		t.Errorf("carried along differs from that on edges of 10 mm by %.3f N in the mean on 20 mm, %.3f on 14, at most by %.3f; want less, and less than 0.18 N", one, two, most)
	}
}

// TestTwistedGirder: under a torque a closed thin-walled tube twists by T L ∮ds/t /
// (4 A² G) (R. Bredt 1896; from memory).
func TestTwistedGirder(t *testing.T) {
	const torque, b, h, thick, shear, short, long = 100 * 40.0, 80.0, 60.0, 3.0, 5000.0, 400.0, 600.0
	const pair = "[[load]]\non = \"tail block\"\nat = [20, -END]\nforce = [0, 0, -100]\n[[load]]\non = \"tail block\"\nat = [-20, -END]\nforce = [0, 0, 100]\n"
	want := torque * (long - short) * 2 * (b + h) / thick / (4 * b * b * h * h * shear)
	got := girder(t, long, pair).Body.Blocks.Tail.Turn[1] - girder(t, short, pair).Body.Blocks.Tail.Turn[1]
	near(t, "twist", got, want*180/math.Pi, 0.01)
}

// arched is a small body with an apex off its middle; x mirrors it.
func arched(x float64, rim, extra string) string {
	return fmt.Sprintf(`
format = 1
[plate]
wood = "sitka-spruce"
outline = [[0, -180], [%g, -90], [%g, 20], [%g, 120], [0, 170], [%g, 120], [%g, 20], [%g, -90]]
thickness = 4.5
arch = { formula = { height = 19, apex = [%g, 10], recurve_depth = 1 } }
[[brace]]
line = [[%g, 90], [%g, -100]]
width = 6
height = 10
%s
[[load]]
at = [%g, -30]
size = [20, 10]
force = [0, 0, -60]
[[gauge]]
at = [%g, 20]
[[gauge]]
at = [0, -80]
[mesh]
size = 14
%s
`, 120*x, 95*x, 100*x, -100*x, -95*x, -120*x, 14*x, -30*x, -36*x, rim, 35*x, 25*x, extra)
}

// TestMirroredBody: a mirrored body is mirrored in its answer.
func TestMirroredBody(t *testing.T) {
	rim := func(x float64) string {
		return fmt.Sprintf("[rim]\nsupport = \"body\"\nside_height = 70\n[body]\nneck_block_depth = 30\n[body.back]\ngrain_angle = %g\n[[body.back.brace]]\nline = [[%g, 30], [%g, 40]]\nwidth = 8\nheight = 12\n", 2*x, -60*x, 70*x)
	}
	a, b := solved(t, arched(1, rim(1), "")), solved(t, arched(-1, rim(-1), ""))
	for i := range 2 {
		u, v := answer.Summarize(a).Gauges[i].Displacement, answer.Summarize(b).Gauges[i].Displacement
		for k, sign := range []float64{-1, 1, 1} {
			if d := math.Abs(u[k] - sign*v[k]); d > 1e-9*math.Abs(u[2]) {
				t.Errorf("gauge %d moves by %.12g and mirrored by %.12g along axis %d", i, u[k], v[k], k)
			}
		}
	}
	ra, rb := answer.Summarize(a).Body, answer.Summarize(b).Body
	near(t, "turn of the neck block", ra.NeckTurn, rb.NeckTurn, 1e-8)
	near(t, "thrust in the sides", ra.Thrust.BassSide, rb.Thrust.TrebleSide, 1e-8)
}

// TestStiffBody: on sides and a back ten thousand times as stiff as the top along its grain, and a hundred thousand across,
// it is clamped. Half a percent is left to the triangles, which on the body end at the blocks; on edges of 8 mm
// it is 0.16 %. (Beside spruce such walls are only a hundred times as stiff, and give 1 %.)
func TestStiffBody(t *testing.T) {
	const soft = "[wood.soft]\nlike = \"sitka-spruce\"\nEL = 110\nER = 8.5\nET = 4.7\nGLR = 7\nGLT = 6.6\nGRT = 0.33\n"
	on := func(rim, wood string) *design.Solution {
		return solved(t, strings.Replace(arched(1, rim, wood+soft), `"sitka-spruce"`, `"soft"`, 1))
	}
	held := on("[rim]\nsupport = \"clamped\"\n", "")
	body := on("[rim]\nsupport = \"body\"\nside_wood = \"stone\"\nside_thickness = 20\nlining = [0, 0]\nneck_block = 60\n[body.back]\nwood = \"stone\"\nthickness = 40\nflat = true\n", even("stone", 1e6))
	for i := range 2 {
		got, want := answer.Summarize(body).Gauges[i], answer.Summarize(held).Gauges[i]
		near(t, "sink from the rim", *got.FromRim, want.Sink, 0.005)
	}
}

// TestJointStrip: the strip of wall inside the plates has the plate's wood along the outline. In a body of one even wood
// all round it is no other wood than the wall's; sides of a wood that is as stiff upright but a hundred times
// stiffer along do not stiffen the strip.
func TestJointStrip(t *testing.T) {
	rim := "[rim]\nsupport = \"body\"\nside_wood = \"%s\"\nlining = [0, 0]\n[body.back]\nwood = \"one\"\n"
	strip := func(side, wood string) (along, density float64) {
		s := solved(t, strings.Replace(arched(1, fmt.Sprintf(rim, side), even("one", 5000)+wood), `"sitka-spruce"`, `"one"`, 1))
		b := s.Top.Built
		for i := range b.Model.Shells { // the first triangle of the wall hangs on the top's edge
			if e := &b.Model.Shells[i]; b.Model.Sections[e.Section].Part == design.PartRim {
				w := b.Model.Sections[e.Section]
				return 1 / w.Wood[0][0], w.Density
			}
		}
		return 0, 0
	}
	along, light := strip("one", "")
	near(t, "EL of the strip", along, 5000, 1e-9)
	stiff, heavy := strip("hoop", strings.Replace(even("hoop", 5000), "EL = 5000", "EL = 500000\ndensity = 900", 1))
	near(t, "EL of the strip beside a stiff hoop", stiff, 5000, 1e-9)
	near(t, "its density", heavy, light, 1e-9)
}

// TestReciprocity: a force on a block moves a place of the top as a force there moves
// the block (E. Betti).
func TestReciprocity(t *testing.T) {
	rim := "[rim]\nsupport = \"body\"\n"
	pull := "[[load]]\non = \"tail block\"\nat = [10, -180]\nz = 12\nforce = [0, 60, 0]\n"
	press := solved(t, arched(1, rim, ""))
	drawn := solved(t, strings.Replace(arched(1, rim, ""), "-60]", "-1e-9]", 1)+pull) // on the same triangles
	tail := answer.Summarize(press).Body.Blocks.Tail
	at := [3]float64{10, -180, 12}
	turn := tail.Turn[2] * math.Pi / 180
	move := tail.Move[1] + turn*(at[0]-tail.At[0]) - tail.Turn[0]*math.Pi/180*(at[2]-tail.At[2])
	sum, n := 0.0, 0.0 // mean movement of the loaded rectangle, as the load is spread
	for k := range 20 {
		for l := range 10 {
			q, _ := drawn.Top.Built.OnOuter(mesh.Point{35 - 10 + float64(k) + 0.5, -30 - 5 + float64(l) + 0.5})
			sum, n = sum-drawn.Result.MoveAt(q)[2], n+1
		}
	}
	near(t, "movement of the top against that of the block", sum/n, move, 1e-8)
}

// TestCourseGuitar: strings, bridge and body are in balance by themselves, however the
// foot is held, and the parts of the change of action sum to it.
func TestCourseGuitar(t *testing.T) {
	for _, hold := range []string{"grip", "slip", "friction"} {
		c, err := cases.Load(fstest.MapFS{"a.toml": {Data: []byte("format = 1\nbase = \"course-guitar-body\"\n[bridge]\nhold = \"" + hold + "\"\n")}}, "a.toml")
		if err != nil {
			t.Fatal(err)
		}
		s, err := design.Solve(t.Context(), c, design.Options{Refine: 0.5, NoError: true})
		if err != nil {
			t.Fatal(err)
		}
		r := answer.Summarize(s)
		if bad := r.Error.Failed(); len(bad) > 0 || r.Body.Outside > 1e-10 {
			t.Errorf("%s: checks failed: %v; the stand gives %.2g of the strings' pull", hold, bad, r.Body.Outside)
		}
		a := r.Body.Action
		near(t, "change of action", r.Bridge.ActionChange, a.Lower, 1e-12)
		near(t, "its parts", a.BridgeSink+a.NeckTurn+a.BodyBend, a.Lower, 1e-12)
		if f := r.Reactions.Sectors; math.Abs(f.Neck+f.Tail+f.Bass+f.Treble-r.Flow.Load) > 1e-6*r.Flow.Load {
			t.Errorf("%s: the edge holds up %.6f N of %.6f", hold, f.Neck+f.Tail+f.Bass+f.Treble, r.Flow.Load)
		}
	}
}

// TestAdaptedBody: a body adapted key by key answers as one prepared afresh.
func TestAdaptedBody(t *testing.T) {
	open := func(extra string) *cases.Case {
		c, err := cases.Load(fstest.MapFS{"a.toml": {Data: []byte("format = 1\nbase = \"course-guitar-body\"\n[mesh]\nsize = 12\n" + extra)}}, "a.toml")
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	o := design.Options{NoError: true, NoFlow: true}
	top, err := design.Prepare(t.Context(), open(""), o)
	if err != nil {
		t.Fatal(err)
	}
	for _, extra := range []string{
		"[bridge.relief]\ndepth = 0.1\n", "[strings]\ntension_scale = 0.8\n", "[bridge]\nsaddle_height = 28\nhold = \"slip\"\n",
		"[body.back]\nthickness = 3.5\n", "[body.back]\nwood = \"sitka-spruce\"\n",
		"[rim]\nside_height = 60\n", "[rim]\nneck_block = 60\n", "[rim]\nsupport = \"clamped\"\n",
		"[[load]]\non = \"tail block\"\nat = [0, -200]\nforce = [0, 0, -50]\n",
	} {
		c := open(extra)
		adapted, err := design.Adapt(t.Context(), top, c, o)
		if err != nil {
			t.Fatalf("%s: %v", extra, err)
		}
		got, err := adapted.Answer()
		if err != nil {
			t.Fatalf("%s: %v", extra, err)
		}
		want, err := design.Solve(t.Context(), c, o)
		if err != nil {
			t.Fatalf("%s: %v", extra, err)
		}
		near(t, extra, answer.Sink(got), answer.Sink(want), 1e-7)
	}
}

// TestAdaptedGuides: where no friction holds the saddle, a longer afterlength takes more of its push to the neck
// block, and less to the tail's, in an adapted body as in one prepared afresh.
func TestAdaptedGuides(t *testing.T) {
	open := func(extra string) *cases.Case {
		c, err := cases.Load(fstest.MapFS{"a.toml": {Data: []byte("format = 1\nbase = \"course-guitar-body\"\n[mesh]\nsize = 14\n[bridge]\nhold = \"slip\"\n[strings.path]\nnut_height = -10\n" + extra)}}, "a.toml")
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	o := design.Options{NoError: true, NoFlow: true}
	top, err := design.Prepare(t.Context(), open("anchor_distance = 120\nanchor_height = 20\n"), o)
	if err != nil {
		t.Fatal(err)
	}
	longer := open("anchor_distance = 300\nanchor_height = -10\n")
	adapted, err := design.Adapt(t.Context(), top, longer, o)
	if err != nil {
		t.Fatal(err)
	}
	got, err := adapted.Answer()
	if err != nil {
		t.Fatal(err)
	}
	want, err := design.Solve(t.Context(), longer, o)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "turn of the neck block", answer.Summarize(got).Body.NeckTurn, answer.Summarize(want).Body.NeckTurn, 1e-7)
	near(t, "nearer at the back", answer.Summarize(got).Body.Nearer.Back, answer.Summarize(want).Body.Nearer.Back, 1e-7)
}

// TestTonesOfABody: a body hung in the air has six free motions and no more, and its
// strings pull from block to block: under them it swings as well.
func TestTonesOfABody(t *testing.T) {
	c, err := cases.Load(fstest.MapFS{"a.toml": {Data: []byte("format = 1\nbase = \"course-guitar-body\"\n[mesh]\nsize = 14\n")}}, "a.toml")
	if err != nil {
		t.Fatal(err)
	}
	for state, free := range map[design.State]int{design.Bare: 6, design.Strung: 0} {
		m, err := design.Vibrating(t.Context(), c, state, design.Options{})
		if err != nil {
			t.Fatal(err)
		}
		tones, err := m.Tones(3)
		if err != nil {
			t.Fatal(err)
		}
		if m.Free != free || tones.Proof.Count < free+3 || tones.List[0].Hz < 50 {
			t.Errorf("%s: %d free motions, %d counted, first tone %.1f Hz", state, m.Free, tones.Proof.Count, tones.List[0].Hz)
		}
	}
}

// TestGaugesOnTheBack: a gauge under the highest place of the back reads its movement.
func TestGaugesOnTheBack(t *testing.T) {
	s := solved(t, arched(1, "[rim]\nsupport = \"body\"\n[body.back]\nflat = true\n", "")+"[[gauge]]\non = \"back\"\nat = [0, 0]\n")
	r := answer.Summarize(s)
	n := s.Top.Built.Back
	least, at := math.Inf(1), 0
	for i, p := range n.Mesh.Points {
		if d := math.Hypot(p[0], p[1]); d < least {
			least, at = d, i
		}
	}
	near(t, "movement of the back", r.Gauges[2].Displacement[2], s.Result.U[6*(at+int(n.First))+2], 0.05)
}
