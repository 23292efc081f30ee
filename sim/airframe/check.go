package airframe

func (s *Shape) Check() []Fault { return nil }

type Fault struct {
	Name    string // dotted
	Value   float64
	Problem string
	Mend    string
}
