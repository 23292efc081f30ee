package chart

import (
	"strings"

	"gonum.org/v1/plot/vg"

	"ullage/cmd/ullage/chart/page"
	"ullage/sim/pattern"
	"ullage/sim/report"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
)

// Sheeted is a pattern laid out on paper.
type Sheeted struct {
	Pattern pattern.Pattern
	Sheets  *page.Sheets
}

// Patterns lays out patterns of a rocket, and tells which take more sheets than anybody prints.
func Patterns(r *rocket.Rocket, patterns []pattern.Pattern, look Look) (all []Sheeted, lacks []pattern.Lack) {
	for _, p := range patterns {
		s, err := look.drawing(r, &p).LayOut()
		if err != nil {
			lacks = append(lacks, pattern.Lack{What: p.Title, Why: err.Error()})
			continue
		}
		all = append(all, Sheeted{p, s})
	}
	return all, lacks
}

// paper turns a place on a drawing into one on paper.
func onPaper(p pattern.Point) vg.Point {
	return vg.Point{X: vg.Length(p.X*1000) * vg.Millimeter, Y: vg.Length(p.Y*1000) * vg.Millimeter}
}

// nibs are what pens of patterns look like.
var nibs = map[pattern.Pen]page.Nib{
	pattern.Cut: page.Heavy, pattern.Hole: page.Heavy, pattern.Mark: page.Light, pattern.Axis: page.Chain, pattern.Fold: page.Broken, pattern.Grain: page.Light,
}

// drawing is a pattern in words and in the system's units.
func (l Look) drawing(r *rocket.Rocket, p *pattern.Pattern) *page.Drawing {
	name := strings.TrimSpace(r.Name)
	if name == "" {
		name = "A rocket without a name"
	}
	d := &page.Drawing{Paper: l.Paper, Title: name + ": " + p.Title}
	say := words.In(l.System)
	d.Lines = append(d.Lines, "True size. "+report.PatternFigures(say, p))
	d.Notes = append(d.Notes, p.Notes...)
	d.Notes = append(d.Notes, "Thick lines are cut or turned, thin ones marked, dashed ones laps and seams. Saw and paper have no width here. "+
		"An estimate from the numbers of the file: measure the part that it is for before you cut. Local law and qualified people decide what may be built and flown.")
	for _, k := range p.Lines {
		points := make([]vg.Point, len(k.Points))
		for i := range k.Points {
			points[i] = onPaper(k.Points[i])
		}
		d.Strokes = append(d.Strokes, page.Stroke{Points: points, Pen: nibs[k.Pen], Word: k.Word})
	}
	for _, m := range p.Sizes {
		d.Measures = append(d.Measures, page.Measure{From: onPaper(m.From), To: onPaper(m.To), Off: vg.Length(m.Off*1000) * vg.Millimeter,
			Text: m.Name + " " + say.Measured(m.Length(), "mm")})
	}
	if t := p.Table; t != nil {
		g := &page.Grid{Title: t.Title + ", " + say.Unit("mm")}
		g.Heads = t.Heads
		for _, row := range t.Rows {
			var cells []string
			for _, v := range row {
				cells = append(cells, say.Turned(v))
			}
			g.Rows = append(g.Rows, cells)
		}
		d.Grid = g
	}
	return d
}
