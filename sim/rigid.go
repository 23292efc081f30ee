package sim

import (
	"math"

	"gonum.org/v1/gonum/num/quat"

	"ullage/sim/airframe"

	"ullage/sim/rocket"
)

// rigidBody is what a rigid body has beyond a point mass: shape, mass properties, and the
// line its thrust acts along. The body's third axis points forward along the
// centreline; its first, as it leaves the guide, in the plane of the guide's tilt,
// and the thrust is misaligned in the plane of first and third.
type rigidBody struct {
	aero    *airframe.Aero
	masses  massModel
	refArea float64 // π/4 d²

	plan, planAt, planDrag float64 // body's planform for the cross-flow
	rollDrive, rollDamp    float64

	tiltSin, tiltCos float64 // thrust's line to the centreline
	offset           float64 // of the nozzle's centre, m

	initial quat.Number // attitude on the guide
}

// prepare makes it that of a rocket, whose shape has these aerodynamics.
func (b *rigidBody) prepare(r *rocket.Rocket, aero *airframe.Aero) {
	*b = rigidBody{
		aero: aero, masses: newMassModel(r),
		refArea: math.Pi / 4 * r.Body.Diameter * r.Body.Diameter,
		offset:  r.Alignment.Offset,
	}
	b.plan, b.planAt, b.planDrag = b.aero.Crossflow()
	b.rollDrive, b.rollDamp = b.aero.Roll()
	b.tiltSin, b.tiltCos = math.Sincos(r.Alignment.Angle)

	// Turn the first axis to the rail's heading, then tilt both about the level
	// line across it.
	half := (math.Pi/2 - r.Rail.Heading) / 2
	heading := quat.Number{Real: math.Cos(half), Kmag: math.Sin(half)}
	ht, hh := r.Rail.Tilt/2, r.Rail.Heading
	tilt := quat.Number{Real: math.Cos(ht), Imag: -math.Sin(ht) * math.Cos(hh), Jmag: math.Sin(ht) * math.Sin(hh)}
	b.initial = quat.Mul(tilt, heading)
}

// start sets the attitude of the guide, at rest.
func (b *rigidBody) start(y *state) {
	q := b.initial
	y[attitude], y[attitude+1], y[attitude+2], y[attitude+3] = q.Real, q.Imag, q.Jmag, q.Kmag
	y[spin], y[spin+1], y[spin+2] = 0, 0, 0
}

// normalise keeps the quaternion's length at one after an accepted step.
func normalise(y *state) {
	q := y[attitude : attitude+4]
	n := 1 / math.Sqrt(q[0]*q[0]+q[1]*q[1]+q[2]*q[2]+q[3]*q[3])
	for i := range q {
		q[i] *= n
	}
}

// bodyAxes are the first, second and third axis of the body in east, north, up. The
// length is divided out: the stages of a step are not normalised.
func bodyAxes(y *state) (x, side, a vector) {
	w, i, j, k := y[attitude], y[attitude+1], y[attitude+2], y[attitude+3]
	s := 2 / (w*w + i*i + j*j + k*k)
	x = vector{1 - s*(j*j+k*k), s * (i*j + k*w), s * (i*k - j*w)}
	side = vector{s * (i*j - k*w), 1 - s*(i*i+k*k), s * (j*k + i*w)}
	a = vector{s * (i*k + j*w), s * (j*k - i*w), 1 - s*(i*i+j*j)}
	return x, side, a
}

// thrustLine is the direction of the thrust.
func (m *model) thrustLine(y *state) vector {
	x, _, a := bodyAxes(y)
	c, s := m.body.tiltCos, m.body.tiltSin
	return vector{c*a.x + s*x.x, c*a.y + s*x.y, c*a.z + s*x.z}
}

// rigidRates are the rates of a rigid body in free flight (derived; aerodynamics by
// component after Barrowman, cross-flow after NACA Report 1048):
//
//	M dv/dt = F t − q A C_A a − ½ρ|v_r| A ΣC_Nα v_⊥ − ½ρ A_plan c |v_⊥| v_⊥ + M g + buoyancy
//	dL/dt + ω × L = r × forces − ½ρ|v_r| A ΣC_Nα (x_i − x_cg)² ω_⊥ − ṁ (x_e − x_cg)² ω_⊥ + roll
//
// in the body's axes, L = I ω with the inertia of the moment, so that its change as
// the rocket burns out needs no term of its own. Left out: the sideways Coriolis force
// of the flow, the arm of the chamber's buoyancy.
func (m *model) rigidRates(t, g float64, y, dy *state, f *forces) {
	b := m.body
	wind := m.throughAir(y[up], velocity(y))
	x, side, a := bodyAxes(y)
	speed2 := dot(wind, wind)
	f.airspeed = math.Sqrt(speed2)
	// In the body's axes: across twice, and along.
	vx, vy, va := dot(wind, x), dot(wind, side), dot(wind, a)
	across := math.Sqrt(vx*vx + vy*vy)
	f.axial, f.across = va, across

	m.bodyAndCanopies(y, f)
	half := 0.5 * f.density
	f.drag = half * speed2 * f.area
	sign := m.sign(va)
	axial := sign * f.drag
	m.pushAndMass(t, g, axial, y, dy, f)
	f.inertia = b.masses.with(f.liquid, f.gas, f.grain)
	cg := f.inertia.balance

	m0, m1, m2 := b.aero.MomentsBySquare(speed2 * perSound2(f.pressure, f.density))
	lifting := half * b.refArea * f.airspeed
	normal := lifting * m0                       // over v_⊥
	cross := half * b.plan * b.planDrag * across // over v_⊥
	turn := lifting*(m1-m0*cg) + cross*(b.planAt-cg)
	damping := lifting*(m2-cg*(2*m1-cg*m0)) + f.leaving*(b.masses.exit-cg)*(b.masses.exit-cg)

	// Forces in the body's axes, then to east, north, up.
	fx := f.thrust*b.tiltSin - (normal+cross)*vx
	fy := -(normal + cross) * vy
	fa := f.thrust*b.tiltCos - axial
	if m.faces == broadside && math.Abs(va) <= hair*f.airspeed {
		// As much of the drag as keeps it there; wind that changes with height is left out.
		along := fa + axial - (f.mass-f.density*m.chamber)*g*a.z + (vx*y[spin+1]-vy*y[spin])*f.mass/f.inertia.pitch
		fa += axial - min(max(along, -f.drag), f.drag)
	}
	f.turn, f.damping, f.sideways, f.ahead = turn, damping, normal+cross, fa
	inverse := 1 / f.mass
	dy[east], dy[north], dy[up] = y[vEast], y[vNorth], y[vUp]
	v := vector{}.on(fx*inverse, x).on(fy*inverse, side).on(fa*inverse, a)
	v.z -= g * (1 - f.density*m.chamber*inverse)
	setVelocity(dy, v)
	f.acceleration2 = dot(v, v)
	dy[airPath] = f.airspeed

	lx, ly, la := y[spin], y[spin+1], y[spin+2]
	give := 1 / f.inertia.pitch
	wx, wy, wa := lx*give, ly*give, la/f.inertia.roll
	// a × v_⊥ is (−vy, vx); the thrust's moment is along ∓side.
	mx := -turn*vy - damping*wx
	my := turn*vx - damping*wy - f.thrust*((b.masses.exit-cg)*b.tiltSin+b.offset*b.tiltCos)
	ma := half * sign * va * (va*b.rollDrive - b.rollDamp*wa)
	dy[spin] = mx - (wy*la - wa*ly)
	dy[spin+1] = my - (wa*lx - wx*la)
	dy[spin+2] = ma - (wx*ly - wy*lx)

	// ½ q⊗(0, ω), written out: half of the product's terms are nothing.
	q0, q1, q2, q3 := y[attitude], y[attitude+1], y[attitude+2], y[attitude+3]
	dy[attitude] = -0.5 * (q1*wx + q2*wy + q3*wa)
	dy[attitude+1] = 0.5 * (q0*wx + q2*wa - q3*wy)
	dy[attitude+2] = 0.5 * (q0*wy - q1*wa + q3*wx)
	dy[attitude+3] = 0.5 * (q0*wa + q1*wy - q2*wx)
}
