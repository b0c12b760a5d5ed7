package materials

// Change holds a maker's own values for a wood that is otherwise like a card;
// nil keeps the card's.
type Change struct {
	Density          *float64 // kg/m³
	EL, ER, ET       *float64 // MPa
	GLR, GLT, GRT    *float64 // MPa
	NuLR, NuLT, NuRT *float64 // 1
	MOR              *float64 // MPa
	CompressionL     *float64 // MPa
	CompressionPerp  *float64 // MPa
	ShearL           *float64 // MPa
	TensionPerp      *float64 // MPa
	RollingShear     *float64 // MPa

	SwellL, SwellR, SwellT                    *float64 // 1 for each percentage point
	GreenStiffness, GreenMOR, GreenShear      *float64 // 1
	GreenCompressionL, GreenCompressionPerp   *float64 // 1
	GreenMoisture                             *float64 // %
	CreepAlong, CreepAcross                   *float64 // 1
	CreepShear, CreepRollingShear, CreepPower *float64 // 1
	LossAlong                                 *float64 // 1
	LossAcross                                *float64 // 1
}

// slots returns where the own values of fields are kept.
func (ch *Change) slots() [fieldCount]**float64 {
	return [fieldCount]**float64{
		&ch.Density, &ch.EL, &ch.ER, &ch.ET, &ch.GLR, &ch.GLT, &ch.GRT, &ch.NuLR, &ch.NuLT, &ch.NuRT,
		&ch.MOR, &ch.CompressionL, &ch.CompressionPerp, &ch.ShearL, &ch.TensionPerp, &ch.RollingShear,
		&ch.SwellL, &ch.SwellR, &ch.SwellT, &ch.GreenStiffness, &ch.GreenMOR, &ch.GreenCompressionL, &ch.GreenCompressionPerp, &ch.GreenShear, &ch.GreenMoisture,
		&ch.CreepAlong, &ch.CreepAcross, &ch.CreepShear, &ch.CreepRollingShear, &ch.CreepPower,
		&ch.LossAlong, &ch.LossAcross,
	}
}

// Like returns a card of the given name with the changes made. An own EL
// scales the other moduli by the card's ratios unless they are given too;
// Poisson's ratios, density and strengths stay as on the card unless given.
// What stays is marked as borrowed from the card. A strength of 0 means that
// it is not known.
func (c Card) Like(name string, ch Change) (Card, error) {
	scale := 1.0
	if ch.EL != nil {
		if msg := positive(*ch.EL, minWoodEL, maxModulus, "MPa"); msg != "" {
			return Card{}, Faults{{Key: "EL", Msg: msg}}
		}
		scale = *ch.EL / c.Wood.EL
	}
	out := c.clone()
	out.Name = name
	slots, own := out.slots(), ch.slots()
	for i, f := range fields() {
		if given := *own[i]; given != nil {
			*slots[i] = *given
			out.Sources[f.key] = Source{Text: ownValue}
			continue
		}
		scaled := scale != 1 && i >= firstRatio && i <= lastRatio
		if scaled {
			*slots[i] *= scale
		}
		if src, ok := c.Sources[f.key]; ok {
			out.Sources[f.key] = borrowed(c.Name, src, scaled)
		}
	}
	if err := out.Check(); err != nil {
		return Card{}, err
	}
	return out, nil
}

// ownValue is the source of a number given without one.
const ownValue = "own value"

// borrowed is the source of a value taken over from a card; scaled says that
// only its ratio to EL was.
func borrowed(card string, src Source, scaled bool) Source {
	text := "as " + card + ": " + src.Text
	if scaled {
		text = "ratio to EL as " + card + ": " + src.Text
	}
	if src.Mark != "" {
		text += " (" + src.Mark + ")"
	}
	return Source{Text: text, Mark: MarkBorrowed}
}
