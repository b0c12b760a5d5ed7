package tool

import (
	"fmt"
	"strings"

	"archload/cases/tree"
)

// keyWords are keys of a case, and the last parts of keys, in a maker's words.
func keyWords() map[string]string {
	return map[string]string{
		"title": "title", "load": "loads", "gauge": "gauges", "brace": "bars", "post": "posts",
		"plate.outline": "outline of the top", "plate.hole": "sound holes", "plate.thickness": "thickness of the top", "plate.wood": "wood of the top",
		"plate.arch.formula.height": "height of the arch", "bridge.relief.depth": "relief under the foot", "bridge.hold": "how the foot holds", "bridge.width": "width of the foot",
		"season.made.humidity": "humidity when made", "season.made.temperature": "temperature when made", "season.to": "taken to other air",
		"rise": "pull rises by", "like": "wood like", "density": "density",
		"EL": "stiffness along the grain", "ER": "stiffness across, along the rays", "ET": "stiffness across, along the rings",
		"GLR": "shear in the plate", "GLT": "shear through the thickness", "GRT": "rolling shear",
		"nuLR": "cross strain, grain and rays", "nuLT": "cross strain, grain and rings", "nuRT": "cross strain, rays and rings",
	}
}

// KeyWords names a key in a maker's words; itself if there are none.
func KeyWords(key string) string {
	known := keyWords()
	if w, ok := known[key]; ok {
		return w
	}
	parts := strings.Split(key, ".")
	if w, ok := known[parts[len(parts)-1]]; ok && len(parts) > 1 {
		return w
	}
	return key
}

// ChangedWords name a key that was set, and its value: of a list the names of its entries, or how many there are.
func ChangedWords(k tree.KeyValue) (name, value string) {
	name, value = KeyWords(k.Key), k.Value.Text
	list, ok := k.Value.Value.([]any)
	switch {
	case !ok:
		return name, value
	case len(list) == 0:
		return name, "none"
	}
	var names []string
	for _, e := range list {
		if table, ok := e.(map[string]any); ok {
			if n, ok := table["name"].(string); ok {
				names = append(names, n)
			}
		}
	}
	if len(names) == len(list) {
		return name, strings.Join(names, "; ")
	}
	if len(list) < 4 {
		return name, value
	}
	return name, fmt.Sprintf("%d places", len(list))
}
