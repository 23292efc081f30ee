package sim

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/rocket"
)

// turned is a rocket whose day is turned about the vertical: rail, wind and gust.
func turned(r *rocket.Rocket, by float64) *rocket.Rocket {
	t := r.Clone()
	t.Rail.Heading = math.Mod(t.Rail.Heading+by, 2*math.Pi)
	t.Wind.From = math.Mod(t.Wind.From+by, 2*math.Pi)
	t.Gust.From = math.Mod(t.Gust.From+by, 2*math.Pi)
	return t
}

// same holds a flight to another that is turned clockwise by an angle, sample by sample.
func same(t *testing.T, want, got *Flight, by float64, name string) {
	t.Helper()
	sin, cos := math.Sincos(by)
	require.Equal(t, len(want.Events), len(got.Events), name)
	for i := range want.Events {
		assert.Equal(t, want.Events[i].Kind, got.Events[i].Kind, name)
		assert.InDelta(t, want.Events[i].Time, got.Events[i].Time, 1e-6, name)
	}
	// The last centimetres aside, where the wind's power law ends with an infinite slope.
	for at := 0.05; at < want.Landing.Time-0.05; at += 0.05 {
		a, b := want.At(at), got.At(at)
		near(t, name+" east", cos*a.East+sin*a.North, b.East, 1e-6, 1e-5)
		near(t, name+" north", cos*a.North-sin*a.East, b.North, 1e-6, 1e-5)
		near(t, name+" height", a.Height, b.Height, 1e-7, 1e-5)
		near(t, name+" speed", a.Speed, b.Speed, 1e-6, 1e-4)
		near(t, name+" acceleration", a.Acceleration, b.Acceleration, 1e-5, 1e-4)
		near(t, name+" drag", a.Drag, b.Drag, 1e-6, 1e-4)
		if !math.IsNaN(a.Attack) {
			near(t, name+" attack", a.Attack, b.Attack, 1e-5, 1e-6)
		}
	}
	near(t, name+" greatest acceleration", want.Max.Acceleration, got.Max.Acceleration, 1e-6, 0)
	near(t, name+" greatest angle", want.Stability.MaxAngle, got.Stability.MaxAngle, 1e-5, 1e-9)
}

// rigidWithWind are a rocket on each drive with all that makes a flight crooked: rail, wind
// across it, a gust, thrust out of line.
func rigidWithWind(t *testing.T) map[string]*rocket.Rocket {
	all := map[string]*rocket.Rocket{"motor": rigidRocket(t), "water": wetRigid(t)}
	for _, r := range all {
		r.Rail.Tilt, r.Rail.Heading = 4*math.Pi/180, math.Pi/2
		r.Wind.Speed, r.Wind.Height, r.Wind.Exponent, r.Wind.From = 4, 10, 1.0/7, 200*math.Pi/180
		r.Gust = rocket.Gust{Speed: 2, From: 120 * math.Pi / 180, Height: 30}
		r.Alignment = rocket.Alignment{Angle: 0.004, Offset: 5e-4}
	}
	return all
}

// Nature has no compass: a day turned about the vertical turns the flight, of a rigid body
// as of a point mass.
func TestTurnedDay(t *testing.T) {
	for name, r := range rigidWithWind(t) {
		for _, model := range []rocket.Model{rocket.RigidModel, rocket.PointModel} {
			r.Model = model
			plain := mustFly(r, 1e-9)
			for _, degrees := range []float64{37, 90, 141, 260} {
				by := degrees * math.Pi / 180
				same(t, plain, mustFly(turned(r, by), 1e-9), by, name+" "+string(model))
			}
		}
	}
}

// Nor has a rocket that is the same all round: with an upright rail the heading is which
// side of it faces where, and the wind may come to any of them. The motion in its first
// axis' plane is the one that SciPy holds.
func TestTurnedRocket(t *testing.T) {
	for name, r := range rigidWithWind(t) {
		r.Rail.Tilt, r.Alignment, r.Gust.From = 0, rocket.Alignment{}, r.Wind.From
		r.Rail.Heading = r.Wind.From
		plain := mustFly(r, 1e-9)
		for _, degrees := range []float64{35, 90, 200, 300} {
			r.Rail.Heading = math.Mod(r.Wind.From+degrees*math.Pi/180, 2*math.Pi)
			same(t, plain, mustFly(r, 1e-9), 0, name)
		}
	}
}

// The rail's mirror image mirrors the flight, thrust out of line and all.
func TestMirroredDay(t *testing.T) {
	for name, r := range rigidWithWind(t) {
		plain := mustFly(r, 1e-9)
		m := r.Clone()
		m.Rail.Heading, m.Wind.From, m.Gust.From = -r.Rail.Heading, -r.Wind.From, -r.Gust.From
		mirrored := mustFly(m, 1e-9)
		near(t, name+" east", -plain.Landing.East, mirrored.Landing.East, 1e-6, 1e-5)
		near(t, name+" north", plain.Landing.North, mirrored.Landing.North, 1e-6, 1e-5)
		near(t, name+" apogee", plain.Apogee.Height, mirrored.Apogee.Height, 1e-7, 0)
	}
}

// On the guide the body's third axis is the guide's and its first lies in the plane of the
// tilt, below it: heading and tilt by hand.
func TestAttitudeOnTheGuide(t *testing.T) {
	for _, tilt := range []float64{0, 5, 40, 80} {
		for _, heading := range []float64{0, 30, 90, 200, 330} {
			r := rigidRocket(t)
			r.Rail.Tilt, r.Rail.Heading = tilt*math.Pi/180, heading*math.Pi/180
			var b rigidBody
			b.prepare(r, r.Shape.Aero())
			var y state
			b.start(&y)
			first, second, third := bodyAxes(&y)
			st, ct := math.Sincos(r.Rail.Tilt)
			sh, ch := math.Sincos(r.Rail.Heading)
			for i, want := range []vector{{ct * sh, ct * ch, -st}, {-ch, sh, 0}, {st * sh, st * ch, ct}} {
				off := want.on(-1, []vector{first, second, third}[i])
				assert.InDelta(t, 0, math.Sqrt(dot(off, off)), 1e-14, "axis %d at %v, %v", i+1, tilt, heading)
			}
		}
	}
}

// Acceleration of a rigid body in still air is a point mass's, as all of its motion is.
func TestRigidAccelerates(t *testing.T) {
	for name, r := range map[string]*rocket.Rocket{"motor": rigidRocket(t), "water": wetRigid(t)} {
		r.Rail.Tilt = 0
		rigid := mustFly(r, 1e-9)
		r.Model = rocket.PointModel
		point := mustFly(r, 1e-9)
		near(t, name, point.Max.Acceleration, rigid.Max.Acceleration, 1e-7, 0)
		for at := rigid.RailExit.Time; at < rigid.Apogee.Time-0.2; at += 0.03 {
			near(t, name, point.At(at).Acceleration, rigid.At(at).Acceleration, 1e-5, 1e-4)
		}
	}
}
