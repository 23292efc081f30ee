package plot

import (
	"encoding/binary"
	"math"
	"testing"
)

// FuzzDraw draws charts of any numbers, texts and sizes: no panic, no hang,
// and a grid of the size asked for, of single-width runes of the charset.
func FuzzDraw(f *testing.F) {
	f.Add([]byte{}, "height", "m", uint8(60), uint8(12), uint16(0))
	f.Add([]byte{1, 2, 3, 4, 200, 100, 50, 25, 0, 255}, "火 °\x00", "µm", uint8(1), uint8(1), uint16(0xffff))
	f.Add(bytesOf(0, 1, 2, math.NaN(), 4, math.Inf(1), 1e300, -1e300, 5e-324, 1e9, 1e9), "a", "", uint8(90), uint8(24), uint16(0x5a5a))
	f.Fuzz(func(t *testing.T, data []byte, text, unit string, width, height uint8, flags uint16) {
		const most = 4096 // samples; more only take time
		values := numbers(data[:min(len(data), 8*most)])
		at := func(i int) float64 {
			if len(values) == 0 {
				return 0
			}
			return values[i%len(values)]
		}
		flag := func(i int) bool { return flags>>i&1 == 1 }
		half := len(values) / 2
		c := Charset(flags & 3)
		axis := Axis{Title: text, Unit: unit, Zero: flag(2)}
		if flag(3) {
			axis.Min, axis.Max = at(0), at(1)
		}
		chart := Chart{
			Y: axis, Right: axis, Note: unit, Equal: flag(4), Weight: int(int8(flags)),
			Series: []Series{
				{X: values[:half], Y: values[half:], Ink: TraceA, Style: Style(flags >> 5 & 3), End: text},
				{Y: values, Ink: Kept, Style: Dotted, Right: flag(7), End: unit},
			},
			Points: []PointMark{{X: at(1), Y: at(2), Label: text}, {X: at(2), Y: at(3), Sign: rune(int32(flags)), Right: flag(7)}},
			Limits: []Limit{{Y: at(4), Label: text}, {Y: at(5), Right: flag(7), Label: unit}},
			Bands:  []Band{{at(1), at(6)}},
		}
		s := Stack{Charset: c, X: axis, Cursor: at(3), ShowCursor: flag(8), Bands: []Band{{at(7), at(2)}}}
		if flag(9) {
			s.X = Axis{Title: unit, Unit: text}
		}
		for i := range int(flags>>10&3) + 1 {
			s.Marks = append(s.Marks, VerticalMark{X: at(i), Label: text, Short: unit, Priority: int(at(i))})
			chart.Marks = append(chart.Marks, VerticalMark{X: at(2 * i), Label: unit, Priority: i})
			s.Charts = append(s.Charts, chart)
		}
		g := s.Draw(int(width), int(height))
		checkGrid(t, g, c, int(width), int(height))
		for column := range int(width) {
			g.Frame().X(column)
		}
	})
}

// numbers reads bytes as numbers: eight at a time as their bits, the rest one by one.
func numbers(data []byte) []float64 {
	var out []float64
	for ; len(data) >= 8; data = data[8:] {
		out = append(out, math.Float64frombits(binary.LittleEndian.Uint64(data)))
	}
	for _, b := range data {
		out = append(out, float64(int8(b)))
	}
	return out
}

func bytesOf(values ...float64) []byte {
	var out []byte
	for _, v := range values {
		out = binary.LittleEndian.AppendUint64(out, math.Float64bits(v))
	}
	return out
}
