package swelling

import (
	"context"
	"fmt"

	"archload/cases/verify/problem"
	"archload/materials"
)

// woodAndWater reads the laws of moisture.
func woodAndWater(context.Context) (problem.Readings, error) {
	sitka, err := materials.Find("sitka-spruce")
	if err != nil {
		return nil, err
	}
	out := problem.Readings{
		"ash MOR at 8": materials.AtMoisture(103, 66.0/103, 8, 24),
		"movement":     180 * -3 * sitka.Water.Swell[1],
	}
	for _, h := range []float64{30, 45, 50, 65, 80} {
		out[fmt.Sprintf("moisture at %g", h)] = materials.Moisture(h, 21.1)
	}
	for _, m := range []float64{6, 8, 15} {
		out[fmt.Sprintf("sitka MOE at %g", m)] = sitka.Wetted(m).Wood.EL / materials.MOEToEL / 1000
	}
	out["tension across at 6"] = sitka.Wetted(6).Strength.TensionPerp / sitka.Strength.TensionPerp
	return out, nil
}

// woodAndTime reads the laws of lasting load.
func woodAndTime(context.Context) (problem.Readings, error) {
	sitka, err := materials.Find("sitka-spruce")
	if err != nil {
		return nil, err
	}
	out := problem.Readings{"creep in 50 years": sitka.Wood.EL/sitka.Crept(50, 1).Wood.EL - 1}
	for name, seconds := range map[string]float64{"450 s": 450, "1 h": 3600, "30 d": 30 * 86400,
		"1 y": materials.SecondsPerYear, "10 y": 10 * materials.SecondsPerYear, "50 y": 50 * materials.SecondsPerYear} {
		out[name] = 100 * materials.LastingShare(seconds/materials.SecondsPerYear)
	}
	return out, nil
}
