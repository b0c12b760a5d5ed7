package materials

// Moisture returns the moisture content that wood comes to in air of a relative humidity, percent, at a
// temperature, °C, in percent of its dry mass:
//
//	M = 1800/W [ K h/(1 − K h) + (K1 K h + 2 K1 K2 K² h²)/(1 + K1 K h + K1 K2 K² h²) ]
//
// with h the humidity as a fraction, W = 349 + 1.29 T + 0.0135 T², K = 0.805 + 0.000736 T − 0.00000273 T²,
// K1 = 6.27 − 0.00938 T − 0.000303 T², K2 = 1.91 + 0.0407 T − 0.000293 T²: Wood Handbook, FPL-GTR-282,
// equation 4-5, after Hailwood and Horrobin 1946. It is the same for all woods, and a mean of taking up and
// giving off.
func Moisture(humidity, temperature float64) float64 {
	t, h := temperature, humidity/100
	w := 349 + 1.29*t + 0.0135*t*t
	kh := (0.805 + 0.000736*t - 0.00000273*t*t) * h
	k1 := 6.27 - 0.00938*t - 0.000303*t*t
	k2 := 1.91 + 0.0407*t - 0.000293*t*t
	a, b := k1*kh, k1*k2*kh*kh
	return 1800 / w * (kh/(1-kh) + (a+2*b)/(1+a+b))
}
