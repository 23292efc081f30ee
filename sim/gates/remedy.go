package gates

import (
	"math"

	"ullage/sim"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// RemedyKind says what a remedy asks for.
type RemedyKind int

// The kinds of mend. The first five were found by flights and pass in every case that
// was looked at.
const (
	SetInput       RemedyKind = iota // Input to To
	OtherDelay                       // Input to To, which is not among the delays that can be had
	Rebuild                          // Input to To, which makes another chamber
	TiltIntoWind                     // the rail's tilt to To, its heading to where the wind comes from
	AddNoseWeight                    // To kg, half-way along the nose
	StrongerMount                    // a recovery mount that holds To N
	ProveTo                          // a hydrostatic proof to To Pa
	ProveFor                         // the chamber can be proved for To Pa at most
	ProveAgain                       // the proof is too old
	CutVent                          // a hole of To m across
	LeaveTheRail                     // before there is anything to judge
	GiveCanopy                       // a [[canopy]]
	Give                             // Keys, without which it cannot be judged
	GiveChamber                      // [chamber]
	GiveProof                        // a proof on record
	GiveBurst                        // a measured burst
	BuildAlike                       // another chamber like it, proved to To Pa and no further
	CheckBurst                       // whether the chamber that burst was made alike
	CheckStrengths                   // whether specimens were that strong; To: times what is typical
	GiveDate                         // the day of the proof
	NothingFound                     // no inputs tried do it, one or two: Input, To and From tell how near they come
)

// Remedy is something that would make a check pass.
type Remedy struct {
	Kind     RemedyKind
	Input    rocketfile.Input // of SetInput, OtherDelay, Rebuild and TiltIntoWind
	Rule     string           // of SetInput of an opening rule: all of it, as a file has it
	From, To float64          // today's value and the nearest found that passes, SI
	Keys     []string         // of Give: dotted names, as [Judge] misses them
	Why      string           // of Give: a word on it, without a full stop; may be empty
	And      *Remedy          // to be made with it, since neither holds alone; nil mostly
	Breaks   []string         // of NothingFound: checks that the nearest value tried would lose, or make worse
	Worse    []string         // of Breaks: those that fail without it already
	Booked   bool             // of a proof: the chamber has a logbook, which is where a proof is entered
}

// proof is a mend that ends with a proof on record.
func proof(r *rocket.Rocket, kind RemedyKind) Remedy {
	return Remedy{Kind: kind, Booked: r.Chamber != nil && r.Chamber.Logbook != ""}
}

// Waits tells of a remedy that is waited for: a calmer day.
func (m *Remedy) Waits() bool { return waits(m.Input.Name) }

func waits(input string) bool { return input == "wind.speed" || input == "wind.factor" }

// give is what a criterion lacks where keys of the file are missing: it is then not judged,
// which is no pass. A word on why may be added to it.
func give(keys ...string) *Remedy { return &Remedy{Kind: Give, Keys: keys} }

// because adds why the keys matter.
func (m *Remedy) because(why string) *Remedy { m.Why = why; return m }

// look is what a flight comes to.
func (g *criterion) look(fl *sim.Flight) Value {
	if fl == nil {
		return Value{Flown: true}
	}
	v, happened := g.value(fl)
	return Value{Flown: true, Known: happened && !math.IsNaN(v), V: v}
}
