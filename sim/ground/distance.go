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
