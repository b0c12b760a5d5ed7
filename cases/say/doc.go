// Package say puts reports into sentences for a terminal: summary, check,
// comparison, relief trial, series, string path. It reads the nouns of the
// stages below and computes nothing but percentages and differences for the eye.
//
// Numbers get their names, units and digits from answer's table of quantities.
// Every text is at most 100 columns wide but for file names and long titles, in
// a maker's words: sinks, bears, leans, carries. Cautions stand where a number
// may be taken for more than it is. A word is changed here and nowhere else.
package say
