package report

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"ullage/sim/pattern"
	"ullage/sim/quantity"
	"ullage/sim/report/machine"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
)

// Patterns are the true-scale drawings of a rocket as a list.
type Patterns struct {
	All    []Drawn
	Lacks  []pattern.Lack
	Folder string // where they were written; empty when they were not
	System quantity.System
}

// Drawn is a pattern with the sheets that it takes, and how its tiles lie: 0 by 0 when it
// is on one sheet.
type Drawn struct {
	*pattern.Pattern
	Sheets       int
	Across, Down int
}

// PatternFigures are how many are made of a pattern and its sizes, in a sentence.
func PatternFigures(p words.Printer, x *pattern.Pattern) string {
	text := "Make one"
	if x.Count != 1 {
		text = "Make " + strconv.Itoa(x.Count)
	}
	for _, f := range x.Figures {
		text += "; " + f.Name + " " + p.Measured(f.Value, f.Unit)
	}
	return text + "."
}

// PatternSize is the width and height of what is drawn of a pattern, without the unit.
func PatternSize(p words.Printer, x *pattern.Pattern) string {
	low, high := x.Bounds()
	return span(p, high.X-low.X) + " × " + span(p, high.Y-low.Y)
}

// PatternLack says what keeps a pattern from being drawn.
func PatternLack(x *pattern.Lack) string {
	if len(x.Keys) > 0 {
		return "give " + page.Listed(x.Keys)
	}
	return x.Why
}

// How patterns are printed, and who decides; below drawings and lists of them.
const (
	PrintPatterns    = "Print at 100 % and measure both rules of 100 mm on each sheet before you cut."
	PatternsCautions = "What a drawing assumes stands on it; measure the part that it is for. Local law and qualified people decide what may be built and flown."
)

// WritePatternsText lists patterns with sizes and sheets, and what cannot be drawn.
func WritePatternsText(w io.Writer, l *Patterns) error {
	var s page.Sheet
	p := words.In(l.System)
	if len(l.All) > 0 {
		wide := 0
		for i := range l.All {
			wide = max(wide, len(l.All[i].Name))
		}
		unit := p.Unit("mm")
		s.Line(fmt.Sprintf("%-*s  make  %13s  sheets", wide, "pattern", "size, "+unit))
		sheets := 0
		for i := range l.All {
			d := &l.All[i]
			tiles := ""
			switch d.Across * d.Down {
			case 0:
			case 1:
				tiles = ", the drawing on one of its own"
			default:
				tiles = fmt.Sprintf(", tiles %d by %d", d.Across, d.Down)
			}
			sheets += d.Sheets
			s.Line(fmt.Sprintf("%-*s  %4d  %13s  %d%s", wide, d.Name, d.Count, PatternSize(p, d.Pattern), d.Sheets, tiles))
		}
		s.Line("")
		text := words.Plural(len(l.All), "pattern") + " on " + words.Plural(sheets, "sheet")
		if l.Folder != "" {
			text += ", written to " + page.Printable(l.Folder)
		} else {
			text += "; -o DIR writes them"
		}
		s.Hung("", text+". "+PrintPatterns+" "+PatternsCautions)
	}
	if len(l.Lacks) > 0 {
		s.Line("")
		s.Line("Not drawn:")
		for _, x := range l.Lacks {
			s.Hung("  - ", x.What+": "+PatternLack(&x))
		}
	}
	_, err := io.WriteString(w, s.String())
	return err
}

// span is a size of a whole pattern without its unit.
func span(p words.Printer, v float64) string {
	if p.System == quantity.US {
		const inch = 0.0254
		return strconv.FormatFloat(v/inch, 'f', 1, 64)
	}
	return strconv.FormatFloat(math.Round(v*1000), 'f', 0, 64)
}

// WritePatternsJSON writes the list as one JSON object: sizes in m, figures in SI with
// angles in degrees under their names.
func WritePatternsJSON(w io.Writer, l *Patterns) error {
	all, lacks := machine.List{}, machine.List{}
	for i := range l.All {
		d := &l.All[i]
		low, high := d.Bounds()
		o := new(machine.Object).Add("name", d.Name).Add("title", d.Title).Add("make", d.Count)
		o.Put("width_m", high.X-low.X)
		o.Put("height_m", high.Y-low.Y)
		o.Add("sheets", d.Sheets)
		figures := machine.List{}
		for _, f := range d.Figures {
			x := new(machine.Object).Add("name", f.Name)
			switch f.Unit {
			case "deg":
				x.Put("deg", machine.Degrees(f.Value))
			case "mm":
				x.Put("m", f.Value)
			case "m2":
				x.Put("m2", f.Value)
			default: // a count or a share
				x.Put("number", f.Value)
			}
			figures = append(figures, x)
		}
		o.Add("figures", figures).Add("notes", d.Notes)
		all = append(all, o)
	}
	for i := range l.Lacks {
		x := &l.Lacks[i]
		keys := x.Keys
		if keys == nil {
			keys = []string{}
		}
		lacks = append(lacks, new(machine.Object).Add("what", x.What).Add("give", keys).Add("why", strings.TrimSpace(PatternLack(x))))
	}
	return machine.WriteDocument(w, new(machine.Object).Add("patterns", all).Add("not_drawn", lacks))
}
