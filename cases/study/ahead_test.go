package study

import (
	"context"
	"errors"
	"testing"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/quantity"
)

// numberOf is a number of an answer's outlook.
func numberOf(t *testing.T, key string) quantity.Quantity {
	t.Helper()
	for _, q := range quantity.Compared() {
		if q.Key == key {
			return q
		}
	}
	t.Fatalf("there is no number %s", key)
	return quantity.Quantity{}
}

// TestAhead asks for numbers that go with the plate's swelling and with the square of its creep: their ranges are that
// of swelling and twice that of creep, to first order in the logarithm's deviation, and they say what stands behind them.
func TestAhead(t *testing.T) {
	s := roughly(t, "bench-plate")[0]
	ahead := func(_ context.Context, r *answer.Report, top *design.Top, _ design.Options) error {
		card := top.Built.Case.Cards["plate.wood"]
		r.Outlook = map[string]float64{"dry_arch": 1000 * card.Water.Swell[1], "sink_fifty_years": card.Creep.Along * card.Creep.Along}
		return nil
	}
	sp, err := FindSpreadAhead(t.Context(), s, ahead, design.Options{Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	for key, behind := range map[string]string{"dry_arch": swelling, "sink_fifty_years": creep} {
		q := numberOf(t, key)
		all := sp.behind(q)
		if len(all) != 1 || all[0].Constant != behind {
			t.Errorf("behind %s stand %v, want %s alone", key, all, behind)
		}
	}
	dry, sink := numberOf(t, "dry_arch"), numberOf(t, "sink_fifty_years")
	if got, want := sp.wood(dry), 0.139*dry.Get(sp.base); !nearly(got, want, 0.01) { // 1 − exp(−0.1492)
		t.Errorf("range %g, want %g", got, want)
	}
	if got, want := sp.wood(sink), 0.444*sink.Get(sp.base); !nearly(got, want, 0.01) { // 1 − exp(−2 · 0.2936)
		t.Errorf("range %g, want %g", got, want)
	}
	none, err := FindSpreadAhead(t.Context(), s, func(context.Context, *answer.Report, *design.Top, design.Options) error {
		return errors.New("no swelling")
	}, design.Options{Workers: 1})
	if err != nil || len(none.faults) == 0 {
		t.Errorf("without numbers ahead: error %v, faults %v; want a fault alone", err, none.faults)
	}
}
