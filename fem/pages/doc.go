// Package pages asks the system for large pages of memory under long arrays. The first
// writing to an array costs a fault for each page, and the cores can only take these in
// turn: with pages of 4 kB that, and not the arithmetic, is what large models of shells
// wait for on many cores. It is advice: no answer depends on it, nor does anything else if
// the system declines. Ahead pays for those faults before anybody waits.
package pages
