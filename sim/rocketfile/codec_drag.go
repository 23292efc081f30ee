package rocketfile

import (
	"strings"

	"ullage/sim/rocket"
)

const dragRemedy = "give a number such as 0.48, or [[Mach, number], …] such as [[0.0, 0.46], [0.8, 0.55]]"

// dragCodec is a drag coefficient: a number, or a table of them against Mach.
func dragCodec(step, coarse float64, table func(place) *[]rocket.MachDrag) *eitherCodec {
	points := &rowsCodec{
		columns: []string{"body.drag.mach", "body.drag"}, labels: []string{"Mach", "drag"}, least: 1, most: 200, rising: true, // a wind tunnel gives a few dozen
		notRows: "not 1 to 200 points of drag against Mach", notRow: "a point is not a pair",
		written:   dragRemedy,
		notRising: "the Mach numbers do not rise", inOrder: "put the points in order of Mach, each once",
		notNumber: "a table against Mach, not one number", instead: "turn body.drag_factor, which multiplies it",
		get: func(p place) (rows [][]float64) {
			for _, m := range *table(p) {
				rows = append(rows, []float64{m.Mach, m.Drag})
			}
			return rows
		},
		set: func(p place, rows [][]float64) bool {
			points := make([]rocket.MachDrag, len(rows))
			for i, row := range rows {
				points[i] = rocket.MachDrag{Mach: row[0], Drag: row[1]}
			}
			*table(p) = points
			return true
		},
	}
	return &eitherCodec{
		plain: &numberCodec{step: step, coarse: coarse, in: dragCell{table}}, other: points,
		meant: func(n *node) bool {
			return n.kind == arrayNode || n.kind == stringNode && !isNumber(n.text) && strings.ContainsAny(strings.TrimSpace(n.text), " ;\t\n")
		},
		holds: func(p place) bool { return len(*table(p)) > 1 },
	}
}

// dragCell holds a drag coefficient that is one number: in a table of one point.
type dragCell struct {
	table func(place) *[]rocket.MachDrag
}

func (c dragCell) get(p place) (v float64, given, there bool) {
	points := *c.table(p)
	if len(points) == 0 {
		return 0, false, true
	}
	return points[0].Drag, true, true
}

func (c dragCell) set(p place, v float64) bool {
	*c.table(p) = []rocket.MachDrag{{Drag: v}}
	return true
}
