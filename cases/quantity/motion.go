package quantity

import "archload/cases/answer"

// HeadMotion is the summary's heading of how the top swings.
const HeadMotion = "How it swings under its strings: no air; levels compare designs"

// swinging reads a number that only an answer that was asked how it swings has.
func swinging(get func(*answer.Motion) answer.Num) func(*answer.Report) answer.Num {
	return func(r *answer.Report) answer.Num {
		if r.Motion == nil {
			return answer.None()
		}
		return get(r.Motion)
	}
}

// ofMotion is how the strung top swings.
func ofMotion() []Quantity {
	const more = "moves more"
	return []Quantity{
		{Key: "lowest_tone", Name: "lowest tone", Unit: "Hz", Digits: 1,
			Means:   "The lowest tone of the top under its strings, which are muted, without air.",
			Compare: UnderDecides, Series: 26, Column: "lowest_tone_Hz", Report: true, Summary: HeadMotion,
			Get: swinging(func(m *answer.Motion) answer.Num { return m.LowestTone })},
		{Key: "pumping_tone", Name: "bridge pumps at", Note: "its lowest tone", Unit: "Hz", Digits: 1,
			Means:   "The lowest tone in which the bridge goes up and down as a whole: the one that shifts most air.",
			Compare: UnderDecides, Series: 27, Column: "pumping_tone_Hz", Report: true, Summary: HeadMotion,
			Get: swinging(func(m *answer.Motion) answer.Num { return m.PumpingTone })},
		{Key: "rocking_tone", Name: "bridge rocks sideways at", Note: "its lowest tone", Unit: "Hz", Digits: 1,
			Means:   "The lowest tone in which one end of the bridge goes up as the other goes down.",
			Compare: UnderDecides, Series: 28, Column: "rocking_tone_Hz", Report: true, Summary: HeadMotion,
			Get: swinging(func(m *answer.Motion) answer.Num { return m.RockingTone })},
		{Key: "up_low_level", Name: "saddle answers up, low", Unit: "dB", Digits: 1, Plus: more, Note: "80 to 315 Hz, re 1 m/(N s)",
			Means:   "How readily the saddle goes up and down when it is driven so from 80 to 315 Hz, where most notes lie: velocity over force.",
			Compare: UnderDecides, Series: 29, Column: "up_low_dB", Report: true, Summary: HeadMotion,
			Get: swinging(func(m *answer.Motion) answer.Num { return m.UpLow })},
		{Key: "up_high_level", Name: "saddle answers up, high", Unit: "dB", Digits: 1, Plus: more, Note: "315 to 800 Hz, re 1 m/(N s)",
			Means:   "The same from 315 to 800 Hz: higher notes, and overtones.",
			Compare: UnderDecides, Series: 30, Column: "up_high_dB", Report: true, Summary: HeadMotion,
			Get: swinging(func(m *answer.Motion) answer.Num { return m.UpHigh })},
		{Key: "along_level", Name: "saddle answers along", Unit: "dB", Digits: 1, Plus: more, Note: "160 to 800 Hz, re 1 m/(N s)",
			Means:   "How readily the bridge rolls toward the nut and back when a plucked string's tension rises and falls, at twice its note: 160 to 800 Hz.",
			Compare: UnderDecides, Series: 31, Column: "along_dB", Report: true, Summary: HeadMotion,
			Get: swinging(func(m *answer.Motion) answer.Num { return m.AlongHigh })},
		{Key: "across_level", Name: "saddle answers across", Unit: "dB", Digits: 1, Plus: more, Note: "80 to 800 Hz, re 1 m/(N s)",
			Means:   "How readily the bridge rocks when it is driven across the strings, as a bow does: 80 to 800 Hz.",
			Compare: UnderDecides, Series: 33, Column: "across_dB", Report: true, Summary: HeadMotion,
			Get: swinging(func(m *answer.Motion) answer.Num { return m.Across })},
		{Key: "air_low_level", Name: "top shifts air, low", Unit: "dB", Digits: 1, Plus: more, Note: "80 to 315 Hz, re 1 m3/(N s)",
			Means:   "How much air the top shifts from 80 to 315 Hz for a force up and down at the saddle: the measure of sound there, as far as the top alone makes it.",
			Compare: UnderDecides, Series: 32, Column: "air_low_dB", Report: true, Summary: HeadMotion,
			Get: swinging(func(m *answer.Motion) answer.Num { return m.AirLow })},
		{Key: "air_across_level", Name: "top shifts air, bowed", Unit: "dB", Digits: 1, Plus: more, Note: "80 to 800 Hz, re 1 m3/(N s)",
			Means:   "How much air the top shifts from 80 to 800 Hz for a force across the strings, as a bow gives: little where both feet move alike.",
			Compare: UnderRest, Series: 34, Column: "air_across_dB", Report: true, Summary: HeadMotion,
			Get: swinging(func(m *answer.Motion) answer.Num { return m.AirAcross })},
	}
}
