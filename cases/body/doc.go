// Package body tells what a whole body does under its load: how its blocks turn and
// come nearer, how far places sink from the plane of the rim, where the strings'
// pull runs lengthwise, and what of a change of action comes from where. It reads a
// solved design.Solution and computes nothing that would need another solve.
package body
