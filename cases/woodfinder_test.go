package cases

import (
	"math"
	"testing"

	"archload/materials"
)

// TestPostWood: a post of a wood gives way over the years as that wood does along its grain, 1 + a tⁿ, also where its case has
// been changed before; one without a wood keeps its stiffness.
func TestPostWood(t *testing.T) {
	posts := "\n[[post]]\nat = [20, 0]\nstiffness = 3000\nwood = \"sitka-spruce\"\n[[post]]\nat = [-20, 0]\nstiffness = 3000\n"
	c := mustLoad(t, files("a.toml", topText+restText+posts), "a.toml")
	creep := c.Cards["post[1].wood"].Creep
	if !(creep.Along > 0) {
		t.Fatalf("the card tells no creep along: %+v", creep)
	}
	after := func(years float64) func(materials.Card) materials.Card {
		return func(card materials.Card) materials.Card { return card.Crept(years, 1) }
	}
	for _, years := range []float64{1, 50} {
		old := c.WithCards(after(years))
		grown := 1 + creep.Along*math.Pow(years, creep.Power)
		if got, want := float64(old.Posts[0].Stiffness), 3000/grown; math.Abs(got-want) > 1e-9*want {
			t.Errorf("after %g years the post has %.6f N/mm, want %.6f", years, got, want)
		}
		if got := float64(old.Posts[1].Stiffness); got != 3000 {
			t.Errorf("after %g years a post without a wood has %g N/mm, want 3000", years, got)
		}
	}
	twice := c.WithCards(after(1)).WithCards(after(50))
	want := 3000 * twice.Cards["post[1].wood"].Wood.EL / c.Cards["post[1].wood"].Wood.EL
	if got := float64(twice.Posts[0].Stiffness); math.Abs(got-want) > 1e-9*want {
		t.Errorf("changed twice the post has %.6f N/mm, want %.6f", got, want)
	}
	if c.Posts[0].Stiffness != 3000 {
		t.Errorf("the case itself has %g N/mm now", c.Posts[0].Stiffness)
	}
}
