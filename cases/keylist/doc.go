// Package keylist lists every key of a case file with what it means, its unit,
// range, default and an example. All of it is made from the schema of package
// cases: from the tags of the fields, and from the comments above them, which
// the program carries as its own source. There is no second list to keep.
package keylist
