package shell

import "runtime/debug"

// Version is the module's version, commit and Go version.
func Version(info *debug.BuildInfo, ok bool) string {
	if !ok {
		return "of an unknown version"
	}
	v := info.Main.Version
	changed := ""
	for _, s := range info.Settings {
		switch {
		case s.Key == "vcs.revision":
			v += ", commit " + s.Value
		case s.Key == "vcs.modified" && s.Value == "true":
			changed = " with changes"
		}
	}
	return v + changed + ", " + info.GoVersion
}
