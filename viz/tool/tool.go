package tool

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"archload/cases"
	"archload/cases/study"
	"archload/cases/tree"
	"archload/materials"
	"archload/mesh"
)

// Tool is one thing about a design that the hand can change.
type Tool struct {
	ID    string // of the control: "relief.depth"
	Group string // the fold it stands in
	Label string
	Why   string // it cannot be used here; "" if it can
	Tip   string

	// A slider, if most > least.
	Unit              string
	Least, Most, Step float64
	Value             float64
	Show              func(v float64) string // as it is written; nil: number and unit
	Set               func(v float64) []tree.KeyValue

	// Else one of several words; two of them read as a switch.
	Words  []string
	Chosen int
	Pick   func(i int) []tree.KeyValue
}

// The groups of tools.
const (
	Arch    = "Arch"
	Relief  = "Relief under the foot"
	Bridge  = "Bridge"
	Strings = "Strings"
	Top     = "Top and bars"
	Posts   = "Posts"
)

// Groups lists the groups that tools stand in, in their order.
func Groups() []string {
	return []string{Arch, Relief, Bridge, Strings, Top, Posts}
}

// Of lists what can be changed of a design, its values as they are now.
func Of(c *cases.Case, woods []materials.Card) []Tool {
	var out []Tool
	if c.Bridge != nil {
		out = append(out, reliefTools(c.Bridge)...)
		out = append(out, bridgeTools(c.Bridge, woods)...)
	}
	if c.Strings != nil {
		out = append(out, stringTools(c)...)
	}
	out = append(out, archTools(&c.Plate.Arch)...)
	out = append(out, plateTools(c, woods)...)
	for i := range c.Posts {
		out = append(out, postTools(c.Posts[i].At, c.Posts[i].Name, i)...)
	}
	for i := range c.Braces {
		out = append(out, barTools(&c.Braces[i], i)...)
	}
	return out
}

// number is a key set to a number.
func number(key string, v float64) tree.KeyValue {
	return tree.KeyValue{Key: key, Value: tree.Valued(rounded(v))}
}

func word(key, w string) tree.KeyValue { return tree.KeyValue{Key: key, Value: tree.Valued(w)} }

// rounded takes off what a drag over pixels leaves behind the last digit.
func rounded(v float64) float64 { return math.Round(v*1e6) / 1e6 }

func reliefTools(b *cases.Bridge) []Tool {
	why := ""
	if len(b.Relief.Stations) > 0 {
		why = "this case lists its relief station by station; setting a depth replaces the list"
	}
	shapes := study.Shapes()
	at := 0
	for i, s := range shapes {
		if s == b.Relief.Shape {
			at = i
		}
	}
	return []Tool{
		{ID: "relief.depth", Group: Relief, Label: "Depth at the middle", Unit: "mm", Least: 0, Most: 0.5, Step: 0.005, Tip: why,
			Value: float64(b.Relief.Depth), Set: func(v float64) []tree.KeyValue { return []tree.KeyValue{number("bridge.relief.depth", v)} }},
		{ID: "relief.shape", Group: Relief, Label: "Shape", Words: shapes, Chosen: at, Tip: "how the depth runs from the ends to the middle",
			Pick: func(i int) []tree.KeyValue { return []tree.KeyValue{word("bridge.relief.shape", shapes[i])} }},
	}
}

func bridgeTools(b *cases.Bridge, woods []materials.Card) []Tool {
	out := []Tool{woodTool("bridge.wood", Bridge, "Wood", b.Wood, woods, "bridge")}
	deep := 0.0
	if b.Hollow != nil {
		deep = float64(b.Hollow.Depth)
	}
	wall := 3.0
	if b.Hollow != nil {
		wall = float64(b.Hollow.Wall)
	}
	builds := []string{"one-piece", "posts"}
	build := 0
	if b.Build == builds[1] {
		build = 1
	}
	return append(out, saddleTool(b),
		Tool{ID: "bridge.hollow", Group: Bridge, Label: "Hollowed from below", Unit: "mm", Least: 0, Most: 10, Step: 0.5, Value: deep,
			Tip: "depth of the hollow; 0: solid",
			Set: func(v float64) []tree.KeyValue {
				return []tree.KeyValue{number("bridge.hollow.wall", wall), number("bridge.hollow.depth", v)}
			}},
		Tool{ID: "bridge.build", Group: Bridge, Label: "Build", Words: []string{"one piece", "base, posts, saddle"}, Chosen: build,
			Pick: func(i int) []tree.KeyValue { return []tree.KeyValue{word("bridge.build", builds[i])} }},
		footTool(b),
		Tool{ID: "bridge.hold", Group: Bridge, Label: "The foot", Words: []string{"grips", "slips", "rubs"}, Chosen: index(holds(), b.Hold),
			Tip: "whether a place that bears sticks where it is, slides without friction, or slides once it drags with all its friction",
			Pick: func(i int) []tree.KeyValue {
				return []tree.KeyValue{word("bridge.hold", holds()[i])}
			}})
}

// saddleTool raises the strings above the top, no lower than the base, or posts of 1 mm and the
// saddle beam on it, allow.
func saddleTool(b *cases.Bridge) Tool {
	least := b.Height.Value(0)
	if b.Build == "posts" {
		for _, x := range b.Posts.Places() {
			least = math.Max(least, b.Height.Value(x)+float64(b.SaddleBeam.Height)+1)
		}
	}
	const room, step = 40, 0.1 // mm
	least = math.Ceil(least/step-1e-9) * step
	return Tool{ID: "bridge.saddle_height", Group: Bridge, Label: "Saddle height", Unit: "mm", Least: rounded(least), Most: rounded(least + room), Step: step,
		Value: float64(b.SaddleHeight), Tip: "how high the strings stand above the top at the bridge's middle",
		Set: func(v float64) []tree.KeyValue { return []tree.KeyValue{number("bridge.saddle_height", v)} }}
}

// holds are the ways in which a foot is held sideways, in the order of the tool's words.
func holds() []string { return []string{"grip", "slip", "friction"} }

// footTool changes how far the foot, or the two feet, reach on both sides.
func footTool(b *cases.Bridge) Tool {
	from, to := b.Reach()
	t := Tool{ID: "bridge.foot", Group: Bridge, Label: "Foot, end to end", Unit: "mm", Least: 40, Most: float64(b.Length), Step: 1, Value: to - from,
		Tip: "how much of the bridge's length stands on the top"}
	middle := (from + to) / 2
	feet := b.Feet
	t.Set = func(v float64) []tree.KeyValue {
		lo, hi := middle-v/2, middle+v/2
		if len(feet) < 2 {
			return []tree.KeyValue{footKey(fmt.Sprintf("[{ from = %g, to = %g }]", rounded(lo), rounded(hi)))}
		}
		in := [2]float64{math.Max(float64(feet[0].To), lo+5), math.Min(float64(feet[1].From), hi-5)}
		return []tree.KeyValue{footKey(fmt.Sprintf("[{ from = %g, to = %g }, { from = %g, to = %g }]",
			rounded(lo), rounded(in[0]), rounded(in[1]), rounded(hi)))}
	}
	if len(feet) > 0 && feet[0].Bearing != "full" {
		t.Why = "a foot that bears on its edge alone keeps its length"
	}
	return t
}

// footKey sets the list of feet.
func footKey(list string) tree.KeyValue { return listed("bridge.foot", list) }

// listed is a key set to a list; the text is TOML written here.
func listed(key, list string) tree.KeyValue {
	v, err := tree.ParseValues("[" + list + "]")
	if err != nil || len(v) != 1 {
		panic("desk: a list that is not TOML: " + list)
	}
	return tree.KeyValue{Key: key, Value: v[0]}
}

func stringTools(c *cases.Case) []Tool {
	s := c.Strings
	all := c.StringSum(0).Tension / s.TensionScale
	out := []Tool{{ID: "strings.tension", Group: Strings, Label: "Tension of the set", Least: 0.6, Most: 1.4, Step: 0.01, Value: s.TensionScale,
		Show: func(v float64) string { return fmt.Sprintf("%.0f N (× %.2f)", all*v, v) },
		Tip:  "a lighter or heavier Set: every string's tension times this. String tension can hurt: change real strings one by one and by ear",
		Set:  func(v float64) []tree.KeyValue { return []tree.KeyValue{number("strings.tension_scale", v)} }}}
	angle := func(id, label, key string, a *tree.Angle) Tool {
		t := Tool{ID: id, Group: Strings, Label: label, Unit: "degrees", Least: 0, Most: 25, Step: 0.25,
			Set: func(v float64) []tree.KeyValue { return []tree.KeyValue{number(key, v)} }}
		if a == nil {
			t.Why = "follows from the strings' way over the saddle (strings.path)"
			return t
		}
		t.Value = float64(*a)
		return t
	}
	return append(out, angle("strings.front", "Break angle, front", "strings.front_angle", s.FrontAngle),
		angle("strings.back", "Break angle, back", "strings.back_angle", s.BackAngle))
}

func plateTools(c *cases.Case, woods []materials.Card) []Tool {
	p := &c.Plate
	return []Tool{
		woodTool("plate.wood", Top, "Wood of the top", p.Wood, woods, "top"),
		{ID: "plate.thickness", Group: Top, Label: "Thickness of the top", Least: 0.6, Most: 1.5, Step: 0.01, Value: p.ThicknessScale,
			Tip: "the whole graduation times this", Show: times(float64(p.Thickness.Const), ""),
			Set: func(v float64) []tree.KeyValue { return []tree.KeyValue{number("plate.thickness_scale", v)} }},
	}
}

// ArchHeight is the tool that raises the arch.
const ArchHeight = "arch.height"

// Measured lets a tool of a factor say the millimetres that come of it, so many at a factor of 1.
func (t *Tool) Measured(mm float64) { t.Show = times(mm, "") }

// archTools raise the arch and move its apex.
func archTools(a *cases.Arch) []Tool {
	shift := func(k int) func(v float64) []tree.KeyValue {
		return func(v float64) []tree.KeyValue {
			at := a.ApexShift
			at[k] = rounded(v)
			return []tree.KeyValue{place("plate.arch.apex_shift", at)}
		}
	}
	return []Tool{
		{ID: ArchHeight, Group: Arch, Label: "Arch height", Least: 0.7, Most: 1.3, Step: 0.01, Value: a.HeightScale, Show: times(0, ""),
			Tip: "the heights of the arch above its rim times this: takes a moment, everything is made anew",
			Set: func(v float64) []tree.KeyValue { return []tree.KeyValue{number("plate.arch.height_scale", v)} }},
		{ID: "arch.across", Group: Arch, Label: "Apex to the treble", Unit: "mm", Least: -20, Most: 20, Step: 0.5, Value: a.ApexShift[0],
			Tip: "moves the apex across, what is lower by less, the edge not at all", Set: shift(0)},
		{ID: "arch.along", Group: Arch, Label: "Apex to the neck", Unit: "mm", Least: -40, Most: 40, Step: 0.5, Value: a.ApexShift[1],
			Tip: "moves the apex along, what is lower by less, the edge not at all", Set: shift(1)},
	}
}

// postTools move post i, named, in plan.
func postTools(at mesh.Point, name string, i int) []Tool {
	key := fmt.Sprintf("post[%d].at", i+1)
	var out []Tool
	for k, way := range []string{"to the treble", "to the neck"} {
		out = append(out, Tool{ID: fmt.Sprintf("%s %d", key, k), Group: Posts, Label: name + " " + way, Unit: "mm",
			Least: -placeReach, Most: placeReach, Step: 0.5, Value: at[k], Tip: "where it stands, from the origin of the plan",
			Set: func(v float64) []tree.KeyValue {
				to := at
				to[k] = rounded(v)
				return []tree.KeyValue{place(key, to)}
			}})
	}
	return out
}

// placeReach is how far from the plan's origin a post or a bar can be set by hand, mm: the
// same whatever is set, so that the handle does not run away under the hand.
const placeReach = 120.0

// shifted moves the line of brace i across until its mean lies at x, mm.
func shifted(key string, line []mesh.Point, mean float64) func(x float64) []tree.KeyValue {
	return func(x float64) []tree.KeyValue {
		to := make([]mesh.Point, len(line))
		for i, p := range line {
			to[i] = mesh.Point{rounded(p[0] + x - mean), p[1]}
		}
		return []tree.KeyValue{lined(key, to)}
	}
}

// lined is a key set to a line in plan, mm.
func lined(key string, line []mesh.Point) tree.KeyValue {
	words := make([]string, len(line))
	for i, p := range line {
		words[i] = fmt.Sprintf("[%g, %g]", p[0], p[1])
	}
	return listed(key, "["+strings.Join(words, ", ")+"]")
}

// place is a key set to a place in plan, mm.
func place(key string, at mesh.Point) tree.KeyValue {
	return listed(key, fmt.Sprintf("[%g, %g]", at[0], at[1]))
}

// times writes a factor with the millimetres that come of it, if one number
// says them.
func times(mm float64, before string) func(v float64) string {
	return func(v float64) string {
		if mm == 0 {
			return fmt.Sprintf("× %.2f", v)
		}
		return fmt.Sprintf("%s%.1f mm (× %.2f)", before, mm*v, v)
	}
}

// barTools change brace i.
func barTools(b *cases.Brace, i int) []Tool {
	key := fmt.Sprintf("brace[%d]", i+1)
	fitted, out := 0, ""
	if !b.Fitted {
		fitted, out = 1, "the bar is left out"
	}
	mean := 0.0
	for _, p := range b.Line {
		mean += p[0] / float64(len(b.Line))
	}
	return []Tool{
		{ID: key + ".fitted", Group: Top, Label: b.Name, Words: []string{"glued in", "left out"}, Chosen: fitted,
			Pick: func(k int) []tree.KeyValue {
				return []tree.KeyValue{{Key: key + ".fitted", Value: tree.Valued(k == 0)}}
			}},
		{ID: key + ".height", Group: Top, Label: "its height", Least: 0.4, Most: 1.8, Step: 0.01, Value: b.HeightScale, Why: out,
			Tip: "its height all along times this", Show: times(b.Height.Max(), "up to "),
			Set: func(v float64) []tree.KeyValue { return []tree.KeyValue{number(key+".height_scale", v)} }},
		{ID: key + ".across", Group: Top, Label: "its place, to the treble", Unit: "mm", Least: -placeReach, Most: placeReach, Step: 0.5, Value: rounded(mean), Why: out,
			Tip: "the middle of its line, from the origin of the plan; the whole line moves along", Set: shifted(key+".line", b.Line, mean)},
	}
}

// woodTool chooses among the wood cards of a use, in the order of the alphabet, and the wood
// that is there now.
func woodTool(key, group, label, now string, cards []materials.Card, use string) Tool {
	var names, titles []string
	plain := func(c materials.Card) string {
		title, _, _ := strings.Cut(c.Title, " (")
		return title
	}
	for _, c := range slices.SortedFunc(slices.Values(cards), func(a, b materials.Card) int { return strings.Compare(plain(a), plain(b)) }) {
		if slices.Contains(c.Uses, use) || c.Name == now {
			names, titles = append(names, c.Name), append(titles, plain(c))
		}
	}
	if !slices.Contains(names, now) { // the case's own
		names, titles = append([]string{now}, names...), append([]string{now}, titles...)
	}
	return Tool{ID: key, Group: group, Label: label, Words: titles, Chosen: index(names, now),
		Pick: func(i int) []tree.KeyValue { return []tree.KeyValue{word(key, names[i])} }}
}

// index is where a word stands in a list, 0 if it does not.
func index(words []string, w string) int {
	for i, o := range words {
		if o == w {
			return i
		}
	}
	return 0
}
