package ground

// Clearing is how far codes want people to be from a pad.
type Clearing struct {
	Class   string  // of total impulse, the highest that the row is for
	Impulse float64 // up to which, N·s
	Cleared float64 // diameter around the pad that is cleared of what burns, m; 0 where the code asks for none
	People  float64 // least distance of everybody, m
	Cluster float64 // the same of several motors or stages, m
	Site    float64 // least dimension of the launch site, m
}

const foot = 0.3048 // m

// clearings are NFPA 1122 (up to G) and NFPA 1127 (from H), both from memory, to be checked against
// the edition in force. They are written for solid motors.
var clearings = [...]Clearing{
	{"A", 2.5, 0, 15 * foot, 15 * foot, 100 * foot},
	{"B", 5, 0, 15 * foot, 15 * foot, 200 * foot},
	{"C", 10, 0, 15 * foot, 15 * foot, 400 * foot},
	{"D", 20, 0, 15 * foot, 15 * foot, 500 * foot},
	{"E", 40, 0, 30 * foot, 30 * foot, 1000 * foot},
	{"F", 80, 0, 30 * foot, 30 * foot, 1000 * foot},
	{"G", 160, 0, 30 * foot, 30 * foot, 1000 * foot},
	{"H", 320, 50 * foot, 100 * foot, 200 * foot, 1500 * foot},
	{"I", 640, 50 * foot, 100 * foot, 200 * foot, 2500 * foot},
	{"J", 1280, 50 * foot, 100 * foot, 200 * foot, 5280 * foot},
	{"K", 2560, 75 * foot, 200 * foot, 300 * foot, 5280 * foot},
	{"L", 5120, 100 * foot, 300 * foot, 500 * foot, 10560 * foot},
	{"M", 10240, 125 * foot, 500 * foot, 1000 * foot, 15840 * foot},
	{"N", 20480, 125 * foot, 1000 * foot, 1500 * foot, 21120 * foot},
	{"O", 40960, 125 * foot, 1500 * foot, 2000 * foot, 26400 * foot},
}

// ClearingFor is the row of a total impulse, N·s; not there beyond the last.
func ClearingFor(impulse float64) (Clearing, bool) {
	for _, c := range clearings {
		if impulse <= c.Impulse {
			return c, true
		}
	}
	return Clearing{}, false
}

// Ruling is which distance keeps people farthest from a pad.
type Ruling string

// The rulings, by the words of programs. A blast distance is that of gas under pressure.
const (
	ByNobody Ruling = "none"
	ByCode   Ruling = "code"
	ByField  Ruling = "field"
	ByBlast  Ruling = "blast"
)

// Kept is how far people are kept from a pad: the greatest of what is known. It is a least distance;
// the range officer's counts.
type Kept struct {
	People float64  // m; 0 where nothing is known
	By     Ruling   // which of the three it is, the first of equals
	Code   Clearing // of codes, by total impulse; all 0 beyond their classes
	Coded  bool     // whether codes have a class for it
	Field  float64  // what the field asks for itself, m; 0 where it says nothing
	Blast  float64  // of the gas stored on the pad, m; 0 of none
}

// Keep is how far people are kept from a drive of a total impulse, N·s, on a field that asks for a
// distance of its own, m, beside gas of a blast distance, m; 0 of either is none.
func Keep(impulse, field, blast float64) Kept {
	k := Kept{By: ByNobody, Field: field, Blast: blast}
	k.Code, k.Coded = ClearingFor(impulse)
	for _, x := range []struct {
		by     Ruling
		people float64
	}{{ByCode, k.Code.People}, {ByField, field}, {ByBlast, blast}} {
		if x.people > k.People {
			k.People, k.By = x.people, x.by
		}
	}
	return k
}
