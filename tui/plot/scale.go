package plot

import (
	"math"
	"strconv"
)

// Ranges are held within ±utmost, so that no difference of two values
// overflows, and values that differ by less than a part in sameness of their
// size, or by less than least, count as equal: below that are rounding errors.
const (
	utmost   = 1e300
	sameness = 1e-9
	least    = 1e-300
)

// span is a range of values; empty until something is added.
type span struct {
	lo, hi float64
	some   bool
}

func (s *span) add(v float64) {
	switch {
	case !s.some:
		s.lo, s.hi, s.some = v, v, true
	case v < s.lo:
		s.lo = v
	case v > s.hi:
		s.hi = v
	}
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

func (a *Axis) fixed() bool { return finite(a.Min) && finite(a.Max) && a.Max > a.Min }

// settle is the range an axis shows for data: fixed by the axis or taken from
// the data, and never narrower than can be told apart.
func (a *Axis) settle(data span) span {
	if a.fixed() {
		data = span{a.Min, a.Max, true}
	} else {
		if !data.some {
			return span{lo: 0, hi: 1}
		}
		if a.Zero {
			data.add(0)
		}
	}
	lo, hi := max(data.lo, -utmost), min(data.hi, utmost)
	lo, hi = min(lo, utmost), max(hi, -utmost)
	if size := max(math.Abs(lo), math.Abs(hi)); hi-lo <= max(sameness*size, least) {
		half := 0.05 * size
		if half < least {
			half = 1
		}
		middle := lo + (hi-lo)/2
		lo, hi = max(middle-half, -utmost), min(middle+half, utmost)
		if a.Zero && middle >= 0 && lo < 0 { // all values are 0
			lo = 0
		}
	}
	return span{lo, hi, true}
}

// fit rounds a range from data outwards for a plotting area of so many rows of
// cells, each so many dots high, and chooses its ticks: where that wastes
// little, such that each step is a whole number of rows and ticks stand evenly.
func (s span) fit(rows, dots int) (span, ticks) {
	const tolerable, bearable = 1.3, 1.8 // times the range of the data
	fitted, chosen := s.loose(rows)
	least := tolerable
	if chosen.count < 2 {
		least = bearable // for one tick gives no scale
	}
	size := s.hi - s.lo
	for t := chooseTicks(s, 2*mostYTicks); t.step() <= bearable*size; t.coarser() {
		aligned, k := s.alignTo(t, rows, dots)
		waste := (aligned.hi - aligned.lo) / size
		if k.count == 2 && rows >= 6 {
			waste *= 1.25 // three say more
		}
		if k.count >= 2 && k.count <= mostYTicks && waste < least {
			least, fitted, chosen = waste, aligned, k
		}
	}
	return fitted, chosen
}

const mostYTicks = 5

// alignTo is the least range around s that holds two ticks or more and in
// which their step is a whole number of rows, at least two where there are
// three; no ticks where there is no such range.
func (s span) alignTo(t ticks, rows, dots int) (span, ticks) {
	const slack = 1e-9
	step, apart := t.step(), 1
	if rows >= 3 {
		apart = 2
	}
	last := float64(rows*dots - 1)
	most := int(min(last*step/(float64(dots)*(s.hi-s.lo)), float64(rows)))
	for per := most; per >= apart; per-- {
		dot := step / float64(per*dots)
		lo, hi := math.Floor(s.lo/dot+slack), math.Ceil(s.hi/dot-slack)
		spare := last - (hi - lo)
		if spare < 0 {
			continue
		}
		// Half of what is to spare goes below, without passing 0.
		below := math.Floor(spare / 2)
		if s.lo >= 0 {
			below = min(below, lo)
		} else if s.hi <= 0 {
			below = max(below, spare+hi)
		}
		lo -= below
		aligned := span{lo * dot, (lo + last) * dot, s.some}
		if t.place(aligned); t.count >= 2 {
			return aligned, t
		}
	}
	return s, ticks{}
}

// loose rounds a range outwards to fifths of a tick step, leaving a fiftieth
// free, but never past 0: a quantity that is not negative gets no negative axis.
func (s span) loose(rows int) (span, ticks) {
	step := chooseTicks(s, yTicksFor(rows)).step() / 5
	room := (s.hi - s.lo) / 50
	lo := math.Floor((s.lo-room)/step) * step
	hi := math.Ceil((s.hi+room)/step) * step
	if s.lo >= 0 {
		lo = max(lo, 0)
	}
	if s.hi <= 0 {
		hi = min(hi, 0)
	}
	loose := span{max(lo, -utmost), min(hi, utmost), s.some}
	return loose, chooseYTicks(loose, rows)
}

// yTicksFor is how many ticks so many rows have room for, two rows apart.
func yTicksFor(rows int) int { return min(max((rows+1)/2, 2), mostYTicks) }

// chooseYTicks wants at least two ticks, if need be so close that two share a
// row, of which the axis then shows one.
func chooseYTicks(s span, rows int) ticks {
	t := chooseTicks(s, yTicksFor(rows))
	if t.count < 2 {
		finer := t
		finer.finer()
		if finer.place(s); finer.count <= rows+1 {
			t = finer
		}
	}
	return t
}

// ticks are the multiples of a step inside a range; the step is 1, 2 or 5
// times a power of ten.
type ticks struct {
	first  float64 // the first tick is this many steps from 0
	count  int
	factor float64 // 1, 2 or 5
	power  int     // of ten
	digits int     // after the point
	powers bool    // written with a power of ten
}

func (t ticks) step() float64 { return scaleTen(t.factor, t.power) }

func (t ticks) value(i int) float64 {
	return scaleTen((t.first+float64(i))*t.factor, t.power) + 0 // no −0
}

// scaleTen is v times a power of ten; dividing keeps decimal fractions exact.
func scaleTen(v float64, power int) float64 {
	if power < 0 {
		return v / math.Pow10(-power)
	}
	return v * math.Pow10(power)
}

// chooseTicks takes the finest step that puts at most so many ticks in a range.
func chooseTicks(s span, most int) ticks {
	most = max(most, 1)
	raw := (s.hi - s.lo) / float64(most)
	power := math.Floor(math.Log10(raw))
	t := ticks{factor: 1, power: int(power)}
	for t.place(s); t.count > most; t.place(s) {
		t.coarser()
	}
	return t
}

func (t *ticks) coarser() {
	switch t.factor {
	case 1:
		t.factor = 2
	case 2:
		t.factor = 5
	default:
		t.factor, t.power = 1, t.power+1
	}
}

func (t *ticks) finer() {
	switch t.factor {
	case 1:
		t.factor, t.power = 5, t.power-1
	case 2:
		t.factor = 1
	default:
		t.factor = 2
	}
}

// place counts the ticks in a range and settles how they are written. A tick
// a millionth of a step outside still counts: it is there but for rounding.
func (t *ticks) place(s span) {
	const slack = 1e-6
	step := t.step()
	t.first = math.Ceil(s.lo/step - slack)
	last := math.Floor(s.hi/step + slack)
	t.count = int(max(last-t.first+1, 0))

	size := max(math.Abs(s.lo), math.Abs(s.hi))
	t.digits = max(-t.power, 0)
	t.powers = size >= 1e6 || t.power < -4
	if t.powers {
		t.digits = max(int(math.Floor(math.Log10(size)))-t.power, 0)
	}
}

// appendText appends a tick's label, in ASCII: 0.25, 1500, 2e6, 1.5e-7.
func (t ticks) appendText(to []byte, i int) []byte {
	v := t.value(i)
	switch {
	case v == 0:
		return append(to, '0')
	case !t.powers:
		return strconv.AppendFloat(to, v, 'f', t.digits, 64)
	}
	start := len(to)
	to = strconv.AppendFloat(to, v, 'e', t.digits, 64)
	return shortenPower(to, start)
}

// shortenPower rewrites 1.50e+06 that starts there as 1.5e6.
func shortenPower(text []byte, start int) []byte {
	e := len(text) - 1
	for e > start && text[e] != 'e' {
		e--
	}
	power := text[e+1:]
	end := e
	for point := start; point < e; point++ {
		if text[point] != '.' {
			continue
		}
		for text[end-1] == '0' {
			end--
		}
		if text[end-1] == '.' {
			end--
		}
		break
	}
	text = append(text[:end], 'e')
	if power[0] == '-' {
		text = append(text, '-')
	}
	power = power[1:]
	for len(power) > 1 && power[0] == '0' {
		power = power[1:]
	}
	return append(text, power...)
}

// width is the cells of the longest label.
func (t ticks) width() int {
	var room [32]byte
	widest := 0
	for i := range t.count {
		widest = max(widest, len(t.appendText(room[:0], i)))
	}
	return widest
}

// mapping turns values into dots: the range's ends lie on the middles of the
// first and last dot, and dot n covers n to n+1.
type mapping struct {
	origin, rate, offset float64
}

// mapRange maps a range over so many dots, from the first to the last or,
// downwards, from the last to the first.
func mapRange(s span, dots int, downwards bool) mapping {
	last := float64(dots - 1)
	m := mapping{origin: s.lo, rate: last / (s.hi - s.lo), offset: 0.5}
	if downwards {
		m.rate, m.offset = -m.rate, last+0.5
	}
	return m
}

// Positions are held within ±beyond dots, where they are exact enough for any slope seen.
const beyond = 1e15

func (m *mapping) at(v float64) float64 {
	return max(-beyond, min(beyond, (v-m.origin)*m.rate+m.offset))
}

// dot is the number of the dot a value falls on, −1 before the first and n after the last of n.
func (m *mapping) dot(v float64, n int) int { return dotAt(m.at(v), n) }

func dotAt(position float64, n int) int {
	switch {
	case position < 0:
		return -1
	case position >= float64(n):
		return n
	}
	return int(position)
}
