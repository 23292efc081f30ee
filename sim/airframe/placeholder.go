package airframe

// Placeholder so that the engine compiles: replace and delete this file.

type Fault struct {
	Name    string
	Value   float64
	Problem string
	Mend    string
}

func (s *Shape) Check() []Fault { return nil }

type Component struct {
	Name        string
	CNAlpha, At float64
}

type Aero struct{}

func (s *Shape) Aero() *Aero                                     { return &Aero{} }
func (a *Aero) Components(mach float64) []Component              { return nil }
func (a *Aero) Moments(mach float64) (m0, m1, m2 float64)        { return 1, 1, 1 }
func (a *Aero) Crossflow() (area, centroid, coefficient float64) { return 0, 0, 0 }
func (a *Aero) Roll() (drive, damp float64)                      { return 0, 0 }

type Flow struct{ Speed, Density, SoundSpeed, Viscosity float64 }

type Share struct {
	Name string
	Drag float64
}

func (s *Shape) Drag(f Flow, jetArea float64) (total float64, shares []Share) { return 0.5, nil }

type Lump struct{ Mass, At, Pitch, Roll float64 }

func Combine(l ...Lump) Lump                        { return Lump{} }
func Cylinder(mass, fore, aft, radius float64) Lump { return Lump{} }
func Shell(mass, fore, aft, radius float64) Lump    { return Lump{} }
func Estimate(s *Shape, mass, balance float64) Lump { return Lump{mass, balance, 1, 1} }
func Sum(s *Shape, parts []Part) Lump               { return Lump{} }

func label(name string, i int) string {
	if name != "" {
		return name
	}
	return string(rune('1' + i))
}
