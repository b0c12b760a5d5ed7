package drawing

import (
	"fmt"
	"strings"
)

// parsePath reads path data. The chains are in user units.
func parsePath(text string) ([]svgChain, error) {
	s := svgPen{text: text}
	s.blanks()
	for s.at < len(s.text) {
		if err := s.command(); err != nil {
			return nil, err
		}
		s.blanks()
	}
	if len(s.chains) == 0 {
		return nil, fmt.Errorf("an empty path")
	}
	return s.chains, nil
}

// command reads a letter and all its sets of numbers.
func (s *svgPen) command() error {
	letter := s.text[s.at]
	name := letter &^ 0x20
	if strings.IndexByte("MLHVCSQTAZ", name) < 0 || letter < 'A' {
		return s.fault("a command (one of M L H V C S Q T A Z)")
	}
	if len(s.chains) == 0 && name != 'M' {
		return s.fault("M, which begins a path")
	}
	s.at++
	if name == 'Z' {
		s.close()
		return nil
	}
	for first := true; ; first = false {
		s.blanks()
		if !first {
			if comma := s.comma(); !s.atNumber() {
				if comma {
					return s.fault("a number")
				}
				return nil
			}
		}
		if err := s.draw(name, letter >= 'a'); err != nil {
			return err
		}
		if name == 'M' {
			name = 'L' // further pairs are lines
		}
	}
}
