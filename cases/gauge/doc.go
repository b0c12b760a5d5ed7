// Package gauge reads strings as they are bought, by a list of gauges such as
// "13 17 26w 35w 45w 56w", and knows what a string of a gauge weighs. It knows no
// maker's tables.
//
// A plain string is a round steel wire. A wound one is a core of diameter r d, close
// wound with one layer of round wire, d outside:
//
//	mu = pi d²/4 (rho_core r² + rho_wrap pi/4 (1 - r²)),
//
// the wrap being a wire of diameter d (1 - r)/2, laid turn against turn along a helix of
// mean diameter d (1 + r)/2 (its slope neglected: 1 % at most). r hardly matters: from
// 0.3 to 0.6 mu moves by 4 %. Core and flattening of a bought string are not known; what
// stands here is common practice, no published source, and its spread says so.
package gauge
