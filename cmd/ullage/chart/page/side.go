package page

import (
	"cmp"
	"slices"

	"gonum.org/v1/plot/vg"
)

// farFromEdge is where the end of a curve is too far from its label for a thread.
const farFromEdge = vg.Length(40)

// sideLabel is a label right of the frame with a sample of what it names: of a
// curve, level with its end, or in the key at the top.
type sideLabel struct {
	text string
	pen  Pen
	line bool
	sign Sign
	key  bool
	end  vg.Point // of the curve, on paper
	y    vg.Length
}

// labelSide lists the labels, the key first. Where they stand follows when
// the frame is known.
func (a *area) labelSide() {
	a.side = nil
	add := func(l sideLabel) {
		if l.text != "" {
			l.text = fit(plain(labelSize), mostSide-sampleWidth-2*gap, l.text)
			a.side = append(a.side, l)
		}
	}
	for _, d := range a.Dots {
		add(sideLabel{text: d.Label, sign: d.Sign, key: true})
	}
	for _, l := range a.Lines {
		sign := NoSign
		if l.Dotty {
			sign = l.Pen.Sign()
		}
		add(sideLabel{text: l.Label, pen: l.Pen, line: true, sign: sign, key: l.Key})
	}
	slices.SortStableFunc(a.side, func(p, q sideLabel) int { return cmp.Compare(order(p), order(q)) })
}

func order(l sideLabel) int {
	if l.key {
		return 0
	}
	return 1
}

// spread gives the labels of curves a place as near to the end of their curve as
// there is room.
func (a *area) spread() {
	const apart = labelSize * leading
	for i := range a.side {
		l := &a.side[i]
		if l.key {
			l.y = a.frame.Max.Y - labelSize*0.7 - apart*vg.Length(i)
			continue
		}
		l.end = a.endOf(l)
		l.y = l.end.Y
	}
	keys := slices.IndexFunc(a.side, func(l sideLabel) bool { return !l.key })
	if keys < 0 {
		return
	}
	ends := a.side[keys:]
	slices.SortStableFunc(ends, func(p, q sideLabel) int { return cmp.Compare(q.y, p.y) })
	for i := keys; i < len(a.side); i++ {
		if i > 0 {
			a.side[i].y = min(a.side[i].y, a.side[i-1].y-apart)
		}
	}
	for i, floor := len(a.side)-1, a.frame.Min.Y; i >= keys; i, floor = i-1, floor+apart {
		a.side[i].y = max(a.side[i].y, floor)
	}
}

// endOf is the last point of a curve that is shown; the frame's right edge at
// half its height where it has none.
func (a *area) endOf(l *sideLabel) vg.Point {
	for _, c := range a.Lines {
		if c.Pen != l.pen || c.Key || c.Label == "" {
			continue
		}
		for i := min(len(c.X), len(c.Y)) - 1; i >= 0; i-- {
			if a.inside(c.X[i], c.Y[i]) {
				return a.point(c.X[i], c.Y[i])
			}
		}
	}
	return vg.Point{X: a.frame.Max.X, Y: (a.frame.Min.Y + a.frame.Max.Y) / 2}
}

// drawSide draws samples and labels, and a thread from a label to the end of
// its curve.
func (s sheet) drawSide(a *area) {
	a.spread()
	f := plain(labelSize)
	x := a.frame.Max.X + gap*2
	for _, l := range a.side {
		at := vg.Point{X: x + sampleWidth/2 - gap/2, Y: l.y}
		if l.line {
			s.StrokeLine2(l.pen.style(), x, l.y, x+sampleWidth-gap, l.y)
		}
		ink := pens[l.pen.index()].color
		if !l.line {
			ink = black
		}
		if l.sign != NoSign {
			signs(s.Canvas, l.sign, ink, []vg.Point{at})
		}
		switch w, h := sized(l.text); {
		case !l.line || l.key:
		case l.end.X > a.frame.Max.X-farFromEdge:
			s.StrokeLine2(thread, l.end.X, l.end.Y, x, l.y)
		default: // the curve ends far from its label: it has another one there
			s.label(a.place(around(l.end, 1.5, w, h)), l.text)
		}
		s.write(f, black, vg.Point{X: x + sampleWidth, Y: l.y - labelSize*middle}, atLeft, l.text)
	}
	y := a.frame.Max.Y - labelSize*0.7 - labelSize*leading*vg.Length(len(a.side)) - gap
	if len(a.side) == 0 {
		y += gap
	}
	for _, text := range a.beside {
		s.write(f, black, vg.Point{X: x, Y: y - labelSize*middle}, atLeft, text)
		y -= labelSize * leading
		if text == "" {
			y += labelSize * leading / 2
		}
	}
}
