package airframe

// Frustum is a tube or a conical transition as it stands on a rocket, every diameter
// filled in.
type Frustum struct {
	Name      string  // its section's dotted name; "body" for the tube behind them
	Start     float64 // from the tip of the nose, m
	Length    float64 // m
	Fore, Aft float64 // outside diameters, m
}

// End is where it ends, from the tip of the nose, m.
func (f Frustum) End() float64 { return f.Start + f.Length }

// Straight tells a tube from a transition.
func (f Frustum) Straight() bool { return f.Fore == f.Aft }

// Frustums lists what stands between the nose and the aft end, from the nose on.
func (s *Shape) Frustums() []Frustum {
	var all []Frustum
	for f := range s.trunk {
		all = append(all, Frustum{Name: f.name, Start: f.start, Length: f.length, Fore: f.fore, Aft: f.aft})
	}
	return all
}
