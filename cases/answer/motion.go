package answer

// Motion is how the strung top swings, in a few numbers: Hz, and levels in dB re 1 m/(N·s), of the
// volume velocity re 1 m³/(N·s). No air; what is behind it is package tone.
type Motion struct {
	LowestTone  Num `json:"lowest_tone"`  // Hz
	PumpingTone Num `json:"pumping_tone"` // Hz, the lowest in which the bridge pumps; null: none up to the highest frequency
	RockingTone Num `json:"rocking_tone"` // Hz, the lowest in which it rocks sideways
	UpLow       Num `json:"up_low"`       // dB, saddle up and down, 80 to 315 Hz
	UpHigh      Num `json:"up_high"`      // dB, 315 to 800 Hz
	AlongHigh   Num `json:"along_high"`   // dB, saddle along the strings, 160 to 800 Hz: twice their notes
	Across      Num `json:"across"`       // dB, saddle across the strings, 80 to 800 Hz
	AirLow      Num `json:"air_low"`      // dB, volume velocity under a force up and down, 80 to 315 Hz
	AirAcross   Num `json:"air_across"`   // dB, volume velocity under a force across, 80 to 800 Hz
}
