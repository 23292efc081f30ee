package words

import (
	"math"
	"strconv"
	"strings"

	"ullage/sim/gates"
	"ullage/sim/ground"
	"ullage/sim/report/page"
	"ullage/sim/rocket"
)

// Direction is the one thing about where a rocket flies that no figure here decides.
const Direction = "Which direction is clear, and where the rail tilts to, is the range officer's to say."

// Clear says how far people are kept from the pad of a drive, what rules that and what the others
// ask for. Codes are written for motors: on water they are no more than a comparison.
func (p Printer) Clear(k ground.Kept, power rocket.Power) string {
	ruling := map[ground.Ruling]string{
		ground.ByCode:  p.code(k, power),
		ground.ByField: "the field's own rule",
		ground.ByBlast: "the blast distance of the gas, and fragments go farther",
	}
	var parts []string
	if k.By != ground.ByNobody {
		parts = append(parts, "people "+p.Farther(k.People)+" away: "+ruling[k.By])
	}
	for _, x := range []struct {
		by   ground.Ruling
		v    float64
		text string
	}{{ground.ByField, k.Field, "by the field's own rule"}, {ground.ByBlast, k.Blast, "by the blast"}, {ground.ByCode, k.Code.People, "for " + p.code(k, power)}} {
		if x.v > 0 && x.by != k.By {
			parts = append(parts, p.Farther(x.v)+" "+x.text)
		}
	}
	if !k.Coded {
		parts = append(parts, "beyond the classes of US codes")
	} else if c := k.Code.Cleared; c > 0 {
		parts = append(parts, p.Farther(c)+" across cleared of what burns")
	}
	return strings.Join(append(parts, "the range officer's counts"), "; ")
}

// Stand is where everybody stands who is not told to be elsewhere.
func (p Printer) Stand(k ground.Kept) string {
	text := "at the clearance that the range officer names"
	if k.By == ground.ByNobody {
		return text
	}
	least := map[ground.Ruling]string{
		ground.ByCode:  "that of class " + k.Code.Class + " by US codes (from memory)",
		ground.ByField: "the field's own rule",
		ground.ByBlast: "the blast distance: fragments go farther",
	}
	return text + ", never less than " + p.Farther(k.People) + ", " + least[k.By]
}

// code names the class of codes.
func (p Printer) code(k ground.Kept, power rocket.Power) string {
	text := "class " + k.Code.Class + " by US codes (NFPA 1122, 1127; from memory)"
	if power == rocket.WaterPower {
		text += ", which are for motors"
	}
	return text
}

// FieldText says how far the field reaches, as far as it is said.
func (p Printer) FieldText(f *rocket.Field) string {
	var parts []string
	if f.Radius > 0 {
		parts = append(parts, p.Given(f.Radius, "m")+" around the pad")
	}
	if b := f.Boundary; len(b) > 0 {
		parts = append(parts, "the boundary of "+page.Printable(f.Outline)+", "+p.Given(b.Inside(ground.Point{}), "m")+" from the pad at the nearest")
	}
	if len(parts) == 0 {
		return gates.WordUnknown + ": neither field.radius nor field.boundary is given"
	}
	return strings.Join(parts, ", and ")
}

// Share is a part of a whole in percent, to two digits; all of it and none of it alone are 100 % and 0 %.
func Share(part, whole int) string {
	v := 100 * float64(part) / float64(whole)
	switch {
	case part < whole && v > 99:
		return strconv.FormatFloat(math.Floor(v*10)/10, 'f', 1, 64) + " %"
	case v >= 9.95:
		return strconv.FormatFloat(v, 'f', 0, 64) + " %"
	}
	return strconv.FormatFloat(v, 'g', 2, 64) + " %"
}
