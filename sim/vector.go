package sim

// vector is along east, north and up, or along the axes of a body. It is no array, for an array's components
// do not stay in registers: each would go through memory on its way from one line to the next.
type vector struct{ x, y, z float64 }

func dot(a, b vector) float64 { return a.x*b.x + a.y*b.y + a.z*b.z }

// on is a + h·b.
func (a vector) on(h float64, b vector) vector { return vector{a.x + h*b.x, a.y + h*b.y, a.z + h*b.z} }

// velocity of a state or, of its rates, how that changes.
func velocity(y *state) vector { return vector{y[vEast], y[vNorth], y[vUp]} }

// setVelocity puts it back.
func setVelocity(y *state, v vector) { y[vEast], y[vNorth], y[vUp] = v.x, v.y, v.z }
