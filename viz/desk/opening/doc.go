// Package opening is how a design or a lesson is opened by hand: the page to choose from, the list of
// lessons, and a path that is typed while its folder is listed; and the sheet of the keys. Folders and files are read beside the
// window, which never waits for them, and with bounds: a folder may be huge, unreadable or silent, and
// what bears a case's name may be a pipe.
package opening
