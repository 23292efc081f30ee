package gates

import (
	"sync"

	"ullage/sim"
	"ullage/sim/results"
	"ullage/sim/rocket"
)

// change is a mend made on a rocket, by which flights and verdicts are known again; the zero one is none.
type change struct {
	kind  RemedyKind
	input string
	to    float64
}

func (m *Remedy) change() change { return change{m.Kind, m.Input.Name, m.To} }

// flightKey tells the flights of one search for mends apart: on which drive, with which mends made, in which case, and
// how far.
type flightKey struct {
	power         rocket.Power
	first, second change
	is            results.Case
	corner        string
	until         until
}

// flight is that of a key, which flies unless it has flown already or is flying: checks share
// mends, and so their flights. Nil of a rocket that cannot be made or is not valid.
func (m *mender) flight(k flightKey, fly func() (*sim.Flight, error)) (*sim.Flight, error) {
	if k.is == results.Calm && waits(k.first.input) { // calm is calm, whatever wind is waited for
		k.first = change{}
	}
	return orFarther(&m.flights, k, fly)
}

// orFarther is what there is under a key, or under one that differs in going farther.
func orFarther[T any](all *sync.Map, k flightKey, made func() (T, error)) (T, error) {
	farther := k
	for farther.until = untilDown; farther.until < k.until; farther.until++ {
		if is, there := all.Load(farther); there {
			return is.(func() (T, error))()
		}
	}
	return once(all, k, made)
}

// once is what there is under a key, which is made by whoever asks for it first and waited for by all others.
func once[T any](all *sync.Map, key any, made func() (T, error)) (T, error) {
	is, there := all.Load(key)
	if !there {
		is, _ = all.LoadOrStore(key, sync.OnceValues(made))
	}
	return is.(func() (T, error))()
}
