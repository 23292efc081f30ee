package rocket

import (
	"math"

	"ullage/atmosphere"
)

// Launcher is what a pressurised rocket does to the launcher that holds it.
type Launcher struct {
	HoldDown float64 // it pulls up with, N, held and sealed: pressure on the sealed area less its weight
	Recoil   float64 // it pushes down with as it is let go, N: pressure on the area that the launcher seals
	Tube     bool    // sealed on a launch tube, else at the throat
}

// OnTheLauncher is what holds a rocket on water down before its release, and what the launcher takes then. Nothing on a motor.
//
// The chamber's gauge pressure P acts on the area A that the launcher closes, of the throat or of the launch tube, whose outside
// seals: up on the rocket, down on the launcher, so that the hold-down takes P A − m g and the launcher P A from
// above until the rocket has left the seal.
func (r *Rocket) OnTheLauncher() Launcher {
	if r.Power != WaterPower || r.Water == nil {
		return Launcher{}
	}
	w := r.Water
	across, tube := w.Throat, false
	if w.Tube != nil && w.Tube.Length > 0 {
		across, tube = w.Tube.Outer, true
	}
	push := w.Pressure * math.Pi / 4 * across * across
	weight := (r.BodyMass() + w.Fittings + w.Fill*w.Volume*w.Density) * atmosphere.StandardGravity
	return Launcher{HoldDown: math.Max(0, push-weight), Recoil: push, Tube: tube}
}

// Settled is the gauge pressure of a closed chamber, Pa, when its gas has cooled or warmed from one temperature to another, K, at
// constant volume (Gay-Lussac's law): (P + p_a) T/T_0 − p_a, with the air's pressure p_a.
func Settled(gauge, air, from, to float64) float64 { return (gauge+air)*to/from - air }

// GasTemperature is that of the gas in the chamber at its pressure, K: as given, else the air's.
func (r *Rocket) GasTemperature() float64 {
	if r.Water != nil && r.Water.Temperature > 0 {
		return r.Water.Temperature
	}
	column := r.Site.Column()
	return column.Air(0).Temperature
}

// SealedGauge is what a gauge that was sealed at sea level shows at the pressure of the file, Pa, where one that is open to the air shows that.
func (r *Rocket) SealedGauge() float64 {
	column := r.Site.Column()
	return r.Water.Pressure + column.Air(0).Pressure - atmosphere.SeaLevelPressure
}

// Closed is the filled and closed chamber when gas and wall have come to another temperature.
type Closed struct {
	Temperature float64 // K
	Gauge       float64 // what a gauge open to the air shows, Pa (Settled)
	ProvedFor   float64 // the working pressure its proof is for so warm, Pa; NaN without a proof on record
}

// Vent tells that it is beyond what it is proved for, or not proved.
func (c Closed) Vent() bool {
	const noise = 1e-9
	return !(c.Gauge <= c.ProvedFor*(1+noise))
}

// ClosedAt is a chamber on water that was closed at the pressure of the file, at a temperature, K, that its gas and its wall come to.
// It is no pressure to fill to. The water's vapour is left out: up to 50 °C it is less than 0.13 bar.
func (r *Rocket) ClosedAt(temperature float64) Closed {
	column := r.Site.Column()
	return Closed{Temperature: temperature, ProvedFor: r.ProvedForAt(temperature),
		Gauge: Settled(r.Water.Pressure, column.Air(0).Pressure, r.GasTemperature(), temperature)}
}
