// Package form writes the bench file that is to be filled in for a case: what to weigh, where to listen, where to press.
package form

import (
	"context"
	"fmt"
	"strings"

	"archload/cases"
	"archload/cases/design"
	"archload/cases/tone"
)

// tones is how many tones a form asks for.
const tones = 6

// Of is the form for a case's plate, in TOML: to print and write on, and to type in. name is how a bench file names the case.
// Lines that wait for a reading are comments, so that the form is a bench file as it stands; a gauge that was not read is told
// what it will show. Tones are those of the free plate by its card, to know what to listen for.
func Of(ctx context.Context, c *cases.Case, name string, o design.Options) (string, error) {
	o.NoError = true
	r, _, err := tone.FindTones(ctx, c, design.Free, tones, o)
	if err != nil {
		return "", err
	}
	var b strings.Builder
	fmt.Fprintf(&b, "# What was measured on the plate of: %s\n# Take off the # before what you read. docs/bench.md explains all keys.\n\n", strings.Join(strings.Fields(c.Title), " "))
	fmt.Fprintf(&b, "format = 1\nlike = %q\n# humidity = ____        # %%, of the air that it had come to rest in\n\n", likeOf(c))
	fmt.Fprintf(&b, "[blank]\nshape = \"plate\"\ncase = %q\n# weight = ________      # g, with the bars that are in\n", name)
	b.WriteString("\n# The plate in the hand, held where it stands still, tapped where it moves most. By its card it should sound near these:\n")
	for i := range r.Tones {
		if i >= tones {
			break
		}
		fmt.Fprintf(&b, "\n# [[tone]]\n# hz = ________          # near %.0f Hz: %s\n", r.Tones[i].Hz, r.Tones[i].Pattern)
	}
	at := [2]float64{}
	if c.Bridge != nil {
		at = c.Bridge.At
	}
	fmt.Fprintf(&b, "\n# On its rim, a weight on a block where the bridge will stand: how far does each gauge go when it is put on?\n[[press]]\nname = \"5 kg\"\nweight = \"5 kg\"\nat = [%g, %g]\nsize = [66, 13]\n", at[0], at[1])
	places := c.Gauges
	if len(places) == 0 {
		places = []cases.Gauge{{Name: "in front of the block", At: [2]float64{at[0], at[1] + 30}}, {Name: "behind the block", At: [2]float64{at[0], at[1] - 30}}}
	}
	for i := range places {
		fmt.Fprintf(&b, "\n[[press.gauge]]\nname = %q\nat = [%g, %g]\n# measured = ________    # mm\n", places[i].Name, places[i].At[0], places[i].At[1])
	}
	return b.String(), nil
}

// likeOf is the card that the plate is expected to be like: its own, if others know it.
func likeOf(c *cases.Case) string {
	if own := c.Woods[c.Plate.Wood]; own != nil {
		if like, ok := own.Values["like"].(string); ok {
			return like
		}
	}
	return c.Plate.Wood
}
