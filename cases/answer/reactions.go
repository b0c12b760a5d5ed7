package answer

import (
	"archload/cases"
	"archload/cases/design"
	"archload/mesh"
)

// ReactionsReport is what holds the plate, N.
type ReactionsReport struct {
	Total   [3]float64 `json:"total"`
	Applied [3]float64 `json:"applied"`
	// Sectors is what the plate's edge is held up with: by the ground, or on an
	// elastic rim by the sides.
	Sectors SectorsReport `json:"sectors"`
	// Back is what the back gives to the lower edge of the sides of an elastic
	// rim. It differs from Sectors part by part, as the arch's outward push tips
	// the curved sides: they bear down harder at bouts and blocks and lift at the
	// waist. The sums agree.
	Back  *SectorsReport `json:"back,omitempty"`
	Posts []PostReport   `json:"posts,omitempty"` // sectors and posts sum to the total
}

// PostReport is what one post between top and back holds up, N.
type PostReport struct {
	Name  string  `json:"name"`
	Force float64 `json:"force"`
}

// PostForces are what the posts between top and back hold up, in the order of the
// case, N, straight up; nil without a post.
func PostForces(s *design.Solution) []PostReport {
	if len(s.Top.Built.Case.Posts) == 0 {
		return nil
	}
	whole := *s
	whole.Result = s.Result.Complete()
	return posts(&whole)
}

// posts are what the posts hold up.
func posts(s *design.Solution) []PostReport {
	var out []PostReport
	b := s.Top.Built
	for k, p := range b.Case.Posts {
		sum := 0.0
		for i := range design.PostSprings {
			sum += s.Result.SpringForce(b.FirstPost + k*design.PostSprings + i)[2]
		}
		out = append(out, PostReport{Name: p.Name, Force: sum})
	}
	return out
}

// reactions sums what holds the plate, and by sector. The supports of an elastic
// rim are under its sides; what holds the plate's own edge is read off the load
// flow, if there is one.
func reactions(s *design.Solution, flow *FlowReport) ReactionsReport {
	r := ReactionsReport{Applied: s.Result.Applied, Posts: posts(s)}
	var ground SectorsReport
	parts := rimParts(s.Top.Built)
	lo, hi := s.Top.Built.Span()
	for _, re := range s.Result.Reactions {
		p := re.At
		for k := range 3 {
			r.Total[k] += re.F[k]
		}
		if re.Spring >= s.Top.Built.FirstPost {
			continue
		}
		if at, ok := parts[mesh.Point{p[0], p[1]}]; ok {
			ground.add(at, re.F[2])
			continue
		}
		*ground.at(s.Top.Built.SectorOf(p[0], p[1], lo, hi)) += re.F[2]
	}
	r.Sectors = ground
	switch {
	case s.Top.Built.Back != nil: // the stand holds nothing that the edge does
		r.Sectors = SectorsReport{}
		if flow != nil {
			r.Sectors = flow.Sectors
		}
	case EdgeByFlow(s.Top.Built.Case) && flow != nil:
		r.Back, r.Sectors = &ground, flow.Sectors
	}
	return r
}

// EdgeByFlow says whether what holds the top's edge up is read off the flow of
// the load: sides that give way hold it, and the ground holds the sides, which
// is not the same part by part. See ReactionsReport.
func EdgeByFlow(c *cases.Case) bool { return c.Rim.Sided() }
