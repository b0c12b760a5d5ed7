package desk

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

// tool is one thing about a design that the hand can change.
type tool struct {
	id    string // of the control: "relief.depth"
	group string // the fold it stands in
	label string
	why   string // it cannot be used here; "" if it can
	tip   string

	// A slider, if most > least.
	unit              string
	least, most, step float64
	value             float64
	show              func(v float64) string // as it is written; nil: number and unit
	set               func(v float64) []tree.KeyValue

	// Else one of several words; two of them read as a switch.
	words  []string
	chosen int
	pick   func(i int) []tree.KeyValue
}

// folds lists them.
func folds() []string {
	return []string{foldArch, foldRelief, foldBridge, foldStrings, foldTop, foldPosts}
}

// toolsOf lists what can be changed of a design, its values as they are now.
func toolsOf(c *cases.Case, woods []materials.Card) []tool {
	var out []tool
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

func reliefTools(b *cases.Bridge) []tool {
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
	return []tool{
		{id: "relief.depth", group: foldRelief, label: "Depth at the middle", unit: "mm", least: 0, most: 0.5, step: 0.005, tip: why,
			value: float64(b.Relief.Depth), set: func(v float64) []tree.KeyValue { return []tree.KeyValue{number("bridge.relief.depth", v)} }},
		{id: "relief.shape", group: foldRelief, label: "Shape", words: shapes, chosen: at, tip: "how the depth runs from the ends to the middle",
			pick: func(i int) []tree.KeyValue { return []tree.KeyValue{word("bridge.relief.shape", shapes[i])} }},
	}
}

func bridgeTools(b *cases.Bridge, woods []materials.Card) []tool {
	out := []tool{woodTool("bridge.wood", foldBridge, "Wood", b.Wood, woods, "bridge")}
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
	return append(out,
		tool{id: "bridge.hollow", group: foldBridge, label: "Hollowed from below", unit: "mm", least: 0, most: 10, step: 0.5, value: deep,
			tip: "depth of the hollow; 0: solid",
			set: func(v float64) []tree.KeyValue {
				return []tree.KeyValue{number("bridge.hollow.wall", wall), number("bridge.hollow.depth", v)}
			}},
		tool{id: "bridge.build", group: foldBridge, label: "Build", words: []string{"one piece", "base, posts, saddle"}, chosen: build,
			pick: func(i int) []tree.KeyValue { return []tree.KeyValue{word("bridge.build", builds[i])} }},
		footTool(b),
		tool{id: "bridge.hold", group: foldBridge, label: "The foot", words: []string{"grips", "slips", "rubs"}, chosen: index(holds, b.Hold),
			tip: "whether a place that bears sticks where it is, slides without friction, or slides once it drags with all its friction",
			pick: func(i int) []tree.KeyValue {
				return []tree.KeyValue{word("bridge.hold", holds[i])}
			}})
}

// holds are the ways in which a foot is held sideways, in the order of the tool's words.
var holds = []string{"grip", "slip", "friction"}

// footTool changes how far the foot, or the two feet, reach on both sides.
func footTool(b *cases.Bridge) tool {
	from, to := b.Reach()
	t := tool{id: "bridge.foot", group: foldBridge, label: "Foot, end to end", unit: "mm", least: 40, most: float64(b.Length), step: 1, value: to - from,
		tip: "how much of the bridge's length stands on the top"}
	middle := (from + to) / 2
	feet := b.Feet
	t.set = func(v float64) []tree.KeyValue {
		lo, hi := middle-v/2, middle+v/2
		if len(feet) < 2 {
			return []tree.KeyValue{footKey(fmt.Sprintf("[{ from = %g, to = %g }]", rounded(lo), rounded(hi)))}
		}
		in := [2]float64{math.Max(float64(feet[0].To), lo+5), math.Min(float64(feet[1].From), hi-5)}
		return []tree.KeyValue{footKey(fmt.Sprintf("[{ from = %g, to = %g }, { from = %g, to = %g }]",
			rounded(lo), rounded(in[0]), rounded(in[1]), rounded(hi)))}
	}
	if len(feet) > 0 && feet[0].Bearing != "full" {
		t.why = "a foot that bears on its edge alone keeps its length"
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

func stringTools(c *cases.Case) []tool {
	s := c.Strings
	all := c.StringSum(0).Tension / s.TensionScale
	out := []tool{{id: "strings.tension", group: foldStrings, label: "Tension of the set", least: 0.6, most: 1.4, step: 0.01, value: s.TensionScale,
		show: func(v float64) string { return fmt.Sprintf("%.0f N (× %.2f)", all*v, v) },
		tip:  "a lighter or heavier set: every string's tension times this. String tension can hurt: change real strings one by one and by ear",
		set:  func(v float64) []tree.KeyValue { return []tree.KeyValue{number("strings.tension_scale", v)} }}}
	angle := func(id, label, key string, a *tree.Angle) tool {
		t := tool{id: id, group: foldStrings, label: label, unit: "degrees", least: 0, most: 25, step: 0.25,
			set: func(v float64) []tree.KeyValue { return []tree.KeyValue{number(key, v)} }}
		if a == nil {
			t.why = "follows from the strings' way over the saddle (strings.path)"
			return t
		}
		t.value = float64(*a)
		return t
	}
	return append(out, angle("strings.front", "Break angle, front", "strings.front_angle", s.FrontAngle),
		angle("strings.back", "Break angle, back", "strings.back_angle", s.BackAngle))
}

func plateTools(c *cases.Case, woods []materials.Card) []tool {
	p := &c.Plate
	return []tool{
		woodTool("plate.wood", foldTop, "Wood of the top", p.Wood, woods, "top"),
		{id: "plate.thickness", group: foldTop, label: "Thickness of the top", least: 0.6, most: 1.5, step: 0.01, value: p.ThicknessScale,
			tip: "the whole graduation times this", show: times(float64(p.Thickness.Const), ""),
			set: func(v float64) []tree.KeyValue { return []tree.KeyValue{number("plate.thickness_scale", v)} }},
	}
}

// archTools raise the arch and move its apex.
func archTools(a *cases.Arch) []tool {
	shift := func(k int) func(v float64) []tree.KeyValue {
		return func(v float64) []tree.KeyValue {
			at := a.ApexShift
			at[k] = rounded(v)
			return []tree.KeyValue{place("plate.arch.apex_shift", at)}
		}
	}
	return []tool{
		{id: "arch.height", group: foldArch, label: "Arch height", least: 0.7, most: 1.3, step: 0.01, value: a.HeightScale, show: times(0, ""),
			tip: "the heights of the arch above its rim times this: takes a moment, everything is made anew",
			set: func(v float64) []tree.KeyValue { return []tree.KeyValue{number("plate.arch.height_scale", v)} }},
		{id: "arch.across", group: foldArch, label: "Apex to the treble", unit: "mm", least: -20, most: 20, step: 0.5, value: a.ApexShift[0],
			tip: "moves the apex across, what is lower by less, the edge not at all", set: shift(0)},
		{id: "arch.along", group: foldArch, label: "Apex to the neck", unit: "mm", least: -40, most: 40, step: 0.5, value: a.ApexShift[1],
			tip: "moves the apex along, what is lower by less, the edge not at all", set: shift(1)},
	}
}

// postTools move post i, named, in plan.
func postTools(at mesh.Point, name string, i int) []tool {
	key := fmt.Sprintf("post[%d].at", i+1)
	var out []tool
	for k, way := range []string{"to the treble", "to the neck"} {
		out = append(out, tool{id: fmt.Sprintf("%s %d", key, k), group: foldPosts, label: name + " " + way, unit: "mm",
			least: at[k] - 20, most: at[k] + 20, step: 0.5, value: at[k], tip: "where it stands, from the origin of the plan",
			set: func(v float64) []tree.KeyValue {
				to := at
				to[k] = rounded(v)
				return []tree.KeyValue{place(key, to)}
			}})
	}
	return out
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
func barTools(b *cases.Brace, i int) []tool {
	key := fmt.Sprintf("brace[%d]", i+1)
	fitted, out := 0, ""
	if !b.Fitted {
		fitted, out = 1, "the bar is left out"
	}
	return []tool{
		{id: key + ".fitted", group: foldTop, label: b.Name, words: []string{"glued in", "left out"}, chosen: fitted,
			pick: func(k int) []tree.KeyValue {
				return []tree.KeyValue{{Key: key + ".fitted", Value: tree.Valued(k == 0)}}
			}},
		{id: key + ".height", group: foldTop, label: "its height", least: 0.4, most: 1.8, step: 0.01, value: b.HeightScale, why: out,
			tip: "its height all along times this", show: times(b.Height.Max(), "up to "),
			set: func(v float64) []tree.KeyValue { return []tree.KeyValue{number(key+".height_scale", v)} }},
	}
}

// woodTool chooses among the wood cards of a use, and the wood that is there
// now.
func woodTool(key, group, label, now string, cards []materials.Card, use string) tool {
	var names, titles []string
	for _, c := range cards {
		if slices.Contains(c.Uses, use) || c.Name == now {
			title, _, _ := strings.Cut(c.Title, " (")
			names, titles = append(names, c.Name), append(titles, title)
		}
	}
	if !slices.Contains(names, now) { // the case's own
		names, titles = append([]string{now}, names...), append([]string{now}, titles...)
	}
	return tool{id: key, group: group, label: label, words: titles, chosen: index(names, now),
		pick: func(i int) []tree.KeyValue { return []tree.KeyValue{word(key, names[i])} }}
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
