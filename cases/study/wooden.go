package study

import (
	"archload/cases/answer"
)

// Wooden says what stands behind the wood's ranges of a comparison.
type Wooden struct {
	Step      float64      `json:"step"`      // by which each constant was divided, one at a time
	Constants []Constant   `json:"constants"` // all that scatter
	Changes   []WoodChange `json:"changes"`   // which constants decide where a plank is of another wood
	Faults    []string     `json:"faults"`    // ranges that could not be had, and why
	Sample    *SampleHead  `json:"sample"`    // the check by planks drawn at random; null unless asked for
}

// Constant is one scattering number of one plank.
type Constant struct {
	Plank    string   `json:"plank"`    // "top of sitka-spruce"
	Cases    []string `json:"cases"`    // that are cut from it
	Constant string   `json:"constant"` // key of a wood card
	Scatter  float64  `json:"scatter"`  // coefficient of variation, 1
	Source   string   `json:"source"`
}

// SampleHead says what a sample is.
type SampleHead struct {
	Planks int    `json:"planks"` // sets of planks drawn
	Seed   uint64 `json:"seed"`
	Failed int    `json:"failed"` // of them without an answer for one of the designs
}

// Behind is a constant of the wood and the share it has in a range.
type Behind struct {
	Plank    string  `json:"plank"`    // "top of sitka-spruce"
	Constant string  `json:"constant"` // "EL"
	Share    float64 `json:"share"`    // of the variance, 1
}

// Drawn is a wood's range from a sample.
type Drawn struct {
	Deviation answer.Num `json:"deviation"` // standard deviation, in the number's unit
	Known     int        `json:"known"`     // sets of planks in which the number can be had
}
