// Package materials holds the elastic constants and strengths of wood, turns
// them from the wood's axes into any frame, and reduces them for a shell.
//
// # Axes and order
//
// Wood is orthotropic: L runs along the grain, R across the growth rings and
// T along them. Stress and strain are 6-vectors in the order LL RR TT RT LT LR
// (11 22 33 23 13 12) with engineering shear strain, so that strain = S stress
// with
//
//	S11 = 1/EL   S12 = -nuLR/EL   S44 = 1/GRT
//	S22 = 1/ER   S13 = -nuLT/EL   S55 = 1/GLT
//	S33 = 1/ET   S23 = -nuRT/ER   S66 = 1/GLR
//
// nuIJ is the strain along J, reversed, over the strain along I when the load
// runs along I. S is symmetric, hence nuRL = nuLR ER/EL and so on: the three
// reciprocal ratios are derived, never read, because measured ones do not fit
// exactly (Wood Handbook, table 5-2: Sitka nuRL 0.040 against 0.372 * 0.078 =
// 0.029). S must be positive definite: all moduli positive and, with
// a = nuLR sqrt(ER/EL), b = nuLT sqrt(ET/EL), c = nuRT sqrt(ET/ER),
// |a|, |b|, |c| < 1 and 1 - a² - b² - c² - 2abc > 0.
//
// # Turning
//
// If the rows of q are the new axes expressed in the old ones, strain' = T
// strain with the Bond matrix T of engineering strain, and because work does
// not depend on the frame, S' = T S T'. Source: W. L. Bond, "The mathematics
// of the physical properties of crystals", Bell System Technical Journal 22
// (1943) 1-72; S. W. Tsai and H. T. Hahn, "Introduction to Composite
// Materials" (1980), both from memory. The tests compare with the plain
// rotation of the tensor of fourth order, which needs no source.
//
// # Shell
//
// A carved plate is cut out of a billet, so its wood axes stay fixed in space
// while the shell's frame (x y in the plane, z its normal) slopes through
// them. With zero stress through the thickness the row and column 33 of the
// turned S drop out ([Compliance.Reduce]); what stays couples membrane (m: xx
// yy xy) and transverse shear (s: xz yz). What a shell makes of it stands with
// the shell, in package fem/element; [ShearFactor] is common to both.
//
// # Use
//
//	card, err := materials.Find("sitka-spruce")
//	s := card.Wood.Compliance()                              // 1/MPa, in L R T
//	r := s.Between(materials.PlateAxes(materials.Cut{}), frame).Reduce()
//	value, factor := materials.Hoffman(stress, card.Strength.Limits())
//
// # Strength
//
// Hoffman's criterion in the plate's wood axes: O. Hoffman, "The brittle
// strength of orthotropic materials", Journal of Composite Materials 1 (1967)
// 200-206, from memory. The bending strength MOR stands in for the tension
// strength along the grain, which the tables of wood rarely give.
//
// # Cards
//
// A card is one wood: nine elastic constants, density and strengths, each
// value with its source beside it (species.toml). The main source is Forest
// Products Laboratory, "Wood Handbook: Wood as an Engineering Material",
// FPL-GTR-190 (2010) and FPL-GTR-282 (2021), chapter 5. Values are means of
// small clear straight-grained pieces at 12 % moisture, not design values;
// how much planks of one species differ stands in [Scatter], and
// [Card.Varied] makes another plank of the same wood.
//
// Cards are read anew at each call; nothing is kept between calls.
package materials
