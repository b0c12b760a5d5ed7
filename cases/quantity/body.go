package quantity

import (
	"archload/cases/answer"
	"archload/cases/body"
)

// HeadBody is the summary's heading of what a whole body does.
const HeadBody = "The body"

// bodied reads a number that only an answer with a body has.
func bodied(get func(*body.Report) answer.Num) func(*answer.Report) answer.Num {
	return func(r *answer.Report) answer.Num {
		if r.Body == nil {
			return answer.None()
		}
		return get(r.Body)
	}
}

// strung reads a number that only a body under strings has.
func strung(get func(*body.Action, *body.Joint) float64) func(*answer.Report) answer.Num {
	return bodied(func(b *body.Report) answer.Num {
		if b.Action == nil || b.Joint == nil {
			return answer.None()
		}
		return answer.Num(get(b.Action, b.Joint))
	})
}

// arriving is what of the load a block bears.
func arriving(get func(*body.Onward) *body.BlockFlow) func(*answer.Report) answer.Num {
	return bodied(func(b *body.Report) answer.Num {
		if b.Onward == nil || get(b.Onward).Share == nil {
			return answer.None()
		}
		return answer.Num(100 * *get(b.Onward).Share)
	})
}

// ofBody is what the body does under the strings' pull.
func ofBody() []Quantity {
	mm := func(key, name, plus, minus, means string, compare Heading, get func(*answer.Report) answer.Num) Quantity {
		return Quantity{Key: key, Name: name, Unit: "mm", Digits: 3, Plus: plus, Minus: minus, Means: means, Compare: compare, Summary: HeadBody, Get: get}
	}
	newton := func(key, name, means string, get func(*body.Thrust) float64) Quantity {
		return Quantity{Key: key, Name: name, Unit: "N", Digits: 1, Plus: "pressed", Minus: "pulled", Means: means, Summary: HeadBody,
			Get: bodied(func(b *body.Report) answer.Num { return answer.Num(get(&b.Thrust)) })}
	}
	return []Quantity{
		mm("rim_sink", "bridge sinks from the rim", "down", "", "How far the bridge's base comes down from a straightedge over the rim, from slack strings to pitch.", UnderDecides,
			bodied(func(b *body.Report) answer.Num {
				if b.Sink.Bridge == nil {
					return answer.None()
				}
				return answer.Num(*b.Sink.Bridge)
			})),
		{Key: "neck_turn", Name: "neck block turns", Unit: "deg", Digits: 3, Plus: "upper part inward, the nut rises", Minus: "upper part outward",
			Means:   "How far the strings' pull tips the neck block, and the neck with it.",
			Compare: UnderDecides, Summary: HeadBody,
			Get: bodied(func(b *body.Report) answer.Num { return answer.Num(b.NeckTurn) })},
		mm("body_shorter", "body is shorter at the top", "shorter", "longer", "How much nearer the two blocks come at the top's gluing surface.", UnderRest,
			bodied(func(b *body.Report) answer.Num { return answer.Num(b.Nearer.Top) })),
		mm("back_shorter", "body is shorter at the back", "shorter", "longer", "How much nearer the two blocks come at the back's gluing surface; the less, the more the body bends.", NotCompared,
			bodied(func(b *body.Report) answer.Num { return answer.Num(b.Nearer.Back) })),
		mm("back_moves", "back moves at its middle", "outward", "inward", "How far the back's middle moves out of the body.", UnderRest,
			bodied(func(b *body.Report) answer.Num { return answer.Num(b.Back.Centre) })),
		mm("action_bridge", "of the action, the bridge's sink", "lower", "higher", "What the saddle's coming down from the rim's plane takes from the string action at the octave.", NotCompared,
			strung(func(a *body.Action, _ *body.Joint) float64 { return a.BridgeSink })),
		mm("action_neck", "of the action, the neck's turn", "lower", "higher", "What the turn of the neck block takes from the string action at the octave.", UnderRest,
			strung(func(a *body.Action, _ *body.Joint) float64 { return a.NeckTurn })),
		mm("action_body", "of the action, the body's bend", "lower", "higher", "What the neck block's leaving the rim's plane takes from the string action at the octave.", NotCompared,
			strung(func(a *body.Action, _ *body.Joint) float64 { return a.BodyBend })),
		{Key: "joint_moment", Name: "strings bend the neck joint", Unit: "N mm", Digits: 0, Plus: "the neck's head pulled up", Minus: "the neck's head pressed down",
			Means:   "The moment of the strings' pull about the middle of the neck's joint.",
			Summary: HeadBody, Get: strung(func(_ *body.Action, j *body.Joint) float64 { return j.Moment })},
		newton("thrust_top", "lengthwise thrust in the top", "The force that top and braces carry lengthwise half way between the blocks.", func(t *body.Thrust) float64 { return t.Top }),
		newton("thrust_sides", "lengthwise thrust in the sides", "The force that both sides with their linings carry lengthwise half way between the blocks.", func(t *body.Thrust) float64 { return t.BassSide + t.TrebleSide }),
		newton("thrust_back", "lengthwise thrust in the back", "The force that the back with its bars carries lengthwise half way between the blocks.", func(t *body.Thrust) float64 { return t.Back }),
	}
}
