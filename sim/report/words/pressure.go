package words

import (
	"ullage/sim/gates"
	"ullage/sim/report/machine"
	"ullage/sim/rocket"
)

// AddPressure adds to an object of JSON what the chamber is filled to beside what it is proved for;
// null on a motor.
func AddPressure(doc *machine.Object, r *rocket.Rocket) {
	if at := PressureObject(r); at != nil {
		doc.Add("pressure", at)
	} else {
		doc.Add("pressure", nil)
	}
}

// PressureObject is the value of that key; nil on a motor.
func PressureObject(r *rocket.Rocket) *machine.Object {
	at, there := gates.PressureOf(r)
	if !there {
		return nil
	}
	return new(machine.Object).Add("working_pa", machine.Number(at.Working)).Add("proved_for_pa", machine.Number(at.ProvedFor)).
		Add("burst_pa", machine.Number(at.Burst)).Add("burst_stated", at.Stated).Add("no_go", at.Beyond())
}

// TubeLeftAway says that a rocket held still is held without its launch tube; empty where the
// file has none.
func TubeLeftAway(file *rocket.Rocket) string {
	if file.Power != rocket.WaterPower || file.Water == nil || file.Water.Tube == nil {
		return ""
	}
	return "Held still it stands without the launch tube of the file, which would let nothing out: the thrust is that of the nozzle alone."
}
