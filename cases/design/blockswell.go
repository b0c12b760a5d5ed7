package design

import (
	"archload/cases/shape"
	"archload/materials"
)

// layer is wood that is glued together with others: how stiff its section square to x, y and z
// is, N, and its strain along them for each percentage point of moisture.
type layer struct{ stiff, swell [3]float64 }

// blockSwell is how a block swells along x, y and z for each percentage point of moisture, with the
// plates over its faces and the side before it, to which it is glued. What is rigid takes one strain along each
// axis; that in which layers glued side by side bear no force in all is the mean of their own strains, each
// weighted with its E A:
//
//	e = Σ Eᵢ Aᵢ eᵢ / Σ Eᵢ Aᵢ
//
// (rule of mixtures). A block without a depth is taken as blockThickness deep.
func (b *Built) blockSwell(k *shape.Block) ([3]float64, error) {
	depth, high := max(k.Depth, blockThickness), float64(b.Case.Rim.SideHeight)
	top, back := b.Plate.Thickness.At(k.Edge).Z, b.Back.Plate.Thickness.At(k.Edge).Z
	var all []layer
	for _, of := range []struct {
		key  string
		size [3]float64 // mm, along x, y and z
		axes func(materials.Card) (e, swell [3]float64)
		off  int // axis along which it lies behind the others, not beside them; 3: none
	}{
		{"body.block_wood", [3]float64{2 * k.Half, depth, high}, b.blockAxes, 3},
		{"plate.wood", [3]float64{2 * k.Half, depth, top}, plateAxes(b.Case.Plate.Cut), 2},
		{"body.back.wood", [3]float64{2 * k.Half, depth, back}, plateAxes(b.Case.Body.Back.Cut), 2},
		{"rim.side_wood", [3]float64{2 * k.Half, float64(b.Case.Rim.SideThickness), high}, sideAxes, 1},
	} {
		card, err := b.Case.Wood(of.key)
		if err != nil {
			return [3]float64{}, err
		}
		e, swell := of.axes(card)
		l := layer{swell: swell}
		for a := range e {
			if a != of.off {
				l.stiff[a] = e[a] * of.size[(a+1)%3] * of.size[(a+2)%3]
			}
		}
		all = append(all, l)
	}
	return together(all), nil
}

// together is the strain of layers that are glued side by side along each axis.
func together(all []layer) (e [3]float64) {
	for a := range e {
		sum := 0.0
		for _, l := range all {
			e[a] += l.stiff[a] * l.swell[a]
			sum += l.stiff[a]
		}
		e[a] /= sum
	}
	return e
}

// blockAxes are a block's moduli, MPa, and swelling along x, y and z. Its rings lie anyhow: square to the grain
// both are the mean of radial and tangential.
func (b *Built) blockAxes(card materials.Card) (e, swell [3]float64) {
	w, s := card.Wood, card.Water.Swell
	for a := range e {
		e[a], swell[a] = (w.ER+w.ET)/2, (s[1]+s[2])/2
	}
	grain := map[string]int{"across": 0, "along": 1, "upright": 2}[b.Case.Body.BlockGrain]
	e[grain], swell[grain] = w.EL, s[0]
	return e, swell
}

// plateAxes are those of a plate: grain along y, rings upright or, flat-cut, lying.
func plateAxes(cut string) func(materials.Card) (e, swell [3]float64) {
	return func(card materials.Card) (e, swell [3]float64) {
		w, s := card.Wood, card.Water.Swell
		if cut == "flat" {
			return [3]float64{w.ET, w.EL, w.ER}, [3]float64{s[2], s[0], s[1]}
		}
		return [3]float64{w.ER, w.EL, w.ET}, [3]float64{s[1], s[0], s[2]}
	}
}

// sideAxes are those of the side before a block: grain along x, rings upright.
func sideAxes(card materials.Card) (e, swell [3]float64) {
	w, s := card.Wood, card.Water.Swell
	return [3]float64{w.EL, w.ET, w.ER}, [3]float64{s[0], s[2], s[1]}
}
