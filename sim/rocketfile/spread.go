package rocketfile

// Spread is the uncertainty of one input: one standard deviation, SI (for a
// temperature a difference).
type Spread struct {
	Input Input
	SD    float64
}

// Spreads are the uncertainties that the file states in [spread], in its order.
func (f *File) Spreads() []Spread { return nil }
