package logfile

import (
	"encoding/binary"
	"fmt"
	"math"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/sim/fault"
)

// table writes rows of a time in tenths of a second and a height.
func table(head, form string, rows int) string {
	var b strings.Builder
	b.WriteString(head)
	for i := range rows {
		fmt.Fprintf(&b, form, float64(i)/10, 3.28*float64(i%7))
	}
	return b.String()
}

func read(t *testing.T, text string, o Options) *Log {
	t.Helper()
	l, err := Read("log.csv", []byte(text), o)
	require.NoError(t, err)
	return l
}

func told(t *testing.T, texts ...string) Options {
	t.Helper()
	var o Options
	for _, x := range texts {
		c, err := ParseColumn(x)
		require.NoError(t, err, x)
		o.Columns = append(o.Columns, c)
	}
	return o
}

func rate(hz float64) Options { return Options{Rate: hz} }

func encoded16(order binary.ByteOrder, mark bool, text string) string {
	units := utf16.Encode([]rune(text))
	if mark {
		units = append([]uint16{0xfeff}, units...)
	}
	b := make([]byte, 2*len(units))
	for i, u := range units {
		order.PutUint16(b[2*i:], u)
	}
	return string(b)
}

// Every form holds the same table: 0.1 s a row, feet or metres.
func TestForms(t *testing.T) {
	comma := func(s string) string { return strings.ReplaceAll(s, ".", ",") }
	const feet, metres = 0.3048 * 3.28, 3.28
	for name, x := range map[string]struct {
		text  string
		o     Options
		step  float64 // of the height, SI, in row 1
		check func(*testing.T, *Log)
	}{
		"comma":        {table("time_s,height_m\n", "%.2f,%.3f\n", 30), Options{}, metres, nil},
		"units behind": {table("time_s,height_ft\n", "%.2f,%.3f\n", 30), Options{}, feet, nil},
		"in brackets":  {table("Time (s),Altitude (ft)\n", "%.2f,%.3f\n", 30), Options{}, feet, nil},
		"square":       {table("t [s]; Pressure height [m]\r\n", "%.2f; %.3f\r\n", 30), Options{}, metres, nil},
		"tab":          {table("t\tz\n", "%.2f\t%.3f\n", 30), Options{}, metres, nil},
		"decimal comma": {comma(table("t;h\n", "%.2f;%.3f\n", 30)), Options{}, metres, func(t *testing.T, l *Log) {
			assert.True(t, l.DecimalComma)
			assert.Equal(t, "semicolon", l.Separator)
		}},
		"tab, comma":           {comma(table("t\th\n", "%.2f\t%.3f\n", 30)), Options{}, metres, nil},
		"blanks":               {table("  time   height\n", "%8.2f %9.3f\n", 30), Options{}, metres, nil},
		"blanks, units":        {table("time (s)  altitude (ft)\n", "%8.2f %9.3f\n", 30), Options{}, feet, nil},
		"blanks, words":        {table("elapsed time [s]   pressure height [ft]\n", "%8.2f %9.3f\n", 30), Options{}, feet, nil},
		"blanks, comma":        {comma(table("t h\n", "%.2f %.3f\n", 30)), Options{}, metres, nil},
		"quoted":               {table("\"Time (s)\",\"Height, above pad (ft)\"\n", "\"%.2f\",\"%.3f\"\n", 30), Options{}, feet, nil},
		"quoted decimal comma": {comma(table("t;h\n", "\"%.2f\";\"%.3f\"\n", 30)), Options{}, metres, nil},
		"row of units":         {table("time,altitude\ns,ft\n", "%.2f,%.3f\n", 30), Options{}, feet, func(t *testing.T, l *Log) { assert.Equal(t, 1, l.HeaderLine) }},
		"bracketed units":      {table("time;altitude\n[s];[ft]\n", "%.2f;%.3f\n", 30), Options{}, feet, nil},
		"preamble":             {table("Recorder 12, firmware 3.4\nDate: 2026-05-03, 14:00\nSerial;4711\n\nTime (s),Height (m)\n", "%.2f,%.3f\n", 30), Options{}, metres, func(t *testing.T, l *Log) { assert.Equal(t, 5, l.HeaderLine) }},
		"remarks":              {table("# flown in May\n# time_s,height_ft\n", "%.2f,%.3f\n# a remark\n", 30), Options{}, feet, nil},
		"remarks in C":         {table("// made by hand\ntime_s,height_m\n", "%.2f,%.3f\n", 30), Options{}, metres, nil},
		"marked UTF-8":         {"\xef\xbb\xbf" + table("time_s,height_m\n", "%.2f,%.3f\n", 30), Options{}, metres, func(t *testing.T, l *Log) { assert.Equal(t, "UTF-8", l.Encoding) }},
		"UTF-16 little":        {encoded16(binary.LittleEndian, true, table("time_s;Höhe height_m\n", "%.2f;%.3f\n", 30)), Options{}, metres, func(t *testing.T, l *Log) { assert.Equal(t, "UTF-16", l.Encoding) }},
		"UTF-16 big":           {encoded16(binary.BigEndian, true, table("time_s;height_m\n", "%.2f;%.3f\n", 30)), Options{}, metres, nil},
		"UTF-16 unmarked":      {encoded16(binary.LittleEndian, false, table("time_s;height_m\n", "%.2f;%.3f\n", 30)), Options{}, metres, nil},
		"Latin-1":              {table("# gr\xfc\xdfe\ntime_s,height_m,Temp (\xb0C)\n", "%.2f,%.3f,18\n", 30), Options{}, metres, func(t *testing.T, l *Log) { assert.Equal(t, "Latin-1", l.Encoding) }},
		"old Mac":              {strings.ReplaceAll(table("time_s,height_m\n", "%.2f,%.3f\n", 30), "\n", "\r"), Options{}, metres, nil},
		"told":                 {table("", "%.2f,%.3f\n", 30), told(t, "time=1 s", "height=2 ft"), feet, nil},
		"told by head":         {table("time_s,Signal A\n", "%.2f,%.3f\n", 30), told(t, "height=signal a"), metres, nil},
		"milliseconds":         {strings.ReplaceAll(table("time_ms,height_m\n", "%.2f,%.3f\n", 30), ".", ""), told(t, "time=1 ms", "height=2 mm"), 3.28, func(t *testing.T, l *Log) {}},
		"rate, one column":     {table("height_m\n", "%[2]*.[1]*[2]f\n", 0) + heights(30), rate(10), metres, nil},
		"rate, decimal comma":  {comma("height_m\n" + heights(30)), rate(10), metres, nil},
		"camel case":           {table("FlightTime,AltFt\n", "%.2f,%.3f\n", 30), Options{}, feet, nil},
		"with words": {table("time_s,state,height_m\n", "%.2f,PAD,%.3f\n", 30), Options{}, metres, func(t *testing.T, l *Log) {
			assert.Equal(t, []string{"state"}, l.Others)
		}},
		"trailing separator": {table("time_s;height_m\n", "%.2f;%.3f;\n", 30), Options{}, metres, nil},
		"time of day":        {clockTable(), Options{}, metres, nil},
		"ISO 8601":           {strings.ReplaceAll(clockTable(), "14:03", "2026-05-03T14:03"), Options{}, metres, nil},
		"gaps and words":     {table("time_s,height_m\n", "%.2f,%.3f\n", 30) + "3.0,nan\n3.1,\n3.2,-\nmain opens\n3.3,2\n", Options{}, metres, nil},
	} {
		t.Run(name, func(t *testing.T) {
			l := read(t, x.text, x.o)
			k := l.Find(Height)
			require.GreaterOrEqual(t, k, 0)
			require.GreaterOrEqual(t, len(l.Time), 30)
			scale := 0.1
			if name == "milliseconds" { // 0.10 without its point is 010 ms
				scale = 0.01
			}
			assert.InDelta(t, scale, l.Time[1]-l.Time[0], 1e-6)
			assert.InDelta(t, x.step, l.Values[k][1], 1e-9)
			assert.InDelta(t, 6*x.step, l.Values[k][6], 1e-9)
			if x.check != nil {
				x.check(t, l)
			}
		})
	}
}

func heights(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "%.3f\n", 3.28*float64(i%7))
	}
	return b.String()
}

func clockTable() string {
	var b strings.Builder
	b.WriteString("timestamp,height_m\n")
	for i := range 30 {
		fmt.Fprintf(&b, "14:03:%04.1f,%.3f\n", float64(i)/10, 3.28*float64(i%7))
	}
	return b.String()
}

func TestHeads(t *testing.T) {
	s := newSpelled()
	for text, want := range map[string]struct {
		q    Quantity
		unit string
	}{
		"height_m": {Height, "m"}, "Altitude (ft)": {Height, "ft"}, "Pressure [hPa]": {Pressure, "hPa"}, "Time (ms)": {Time, "ms"},
		"t": {Time, ""}, "z": {Height, ""}, "t_s": {Time, "s"}, "t/s": {Time, "s"}, "p/mbar": {Pressure, "hPa"}, "Speed, km/h": {Speed, "km/h"},
		"velocity_m_s": {Speed, "m/s"}, "accel_m_s2": {Acceleration, "m/s2"}, "acceleration (m/s²)": {Acceleration, "m/s2"},
		"Axial acceleration [g]": {Acceleration, "g"}, "chamber_pressure_bar": {Chamber, "bar"}, "Tank (psig)": {Chamber, "psi"},
		"thrust_n": {Thrust, "N"}, "Load cell (kg)": {Thrust, "kgf"}, "Temp °C": {Temperature, "degC"}, "temperature_degC": {Temperature, "degC"},
		"millis": {Time, "ms"}, "seconds": {Time, "s"}, "vertical speed ft/s": {Speed, "ft/s"}, "max altitude (m)": {"", ""}, "wind speed": {"", ""},
		"gyro x": {"", ""}, "battery (V)": {"", ""}, "Altitude (AGL) [ft]": {Height, "ft"}, "time (min)": {Time, "min"}, "": {"", ""},
		"pressure": {Pressure, ""}, "static pressure kPa": {Pressure, "kPa"}, "GPS altitude m": {Height, "m"},
	} {
		h := readHead(text, "", s)
		assert.Equal(t, want.q, h.quantity, text)
		assert.Equal(t, want.unit, h.unit.Name, text)
	}
	assert.True(t, readHead("GPS altitude m", "", s).measured)
	assert.True(t, readHead("chamber (bara)", "", s).absolute)
	assert.True(t, readHead("chamber pressure abs, bar", "", s).absolute)
}

func TestGuesses(t *testing.T) {
	var b strings.Builder
	b.WriteString("time,pressure,accel\n")
	for i := range 40 {
		fmt.Fprintf(&b, "%d,%.2f,%.3f\n", 1000+50*i, 977.1+0.01*float64(i%3), 1+0.001*float64(i%2))
	}
	l := read(t, b.String(), Options{})
	assert.InDelta(t, 0.05, l.Time[1]-l.Time[0], 1e-12)
	assert.InDelta(t, 97711, l.Values[l.Find(Pressure)][1], 1e-6)
	assert.InDelta(t, 9.80665, l.Values[l.Find(Acceleration)][0], 1e-9)
	notes := l.Notes.Error()
	for _, want := range []string{"taken as ms", "--column 'time=1 s'", "taken as hPa", "taken as g"} {
		assert.Contains(t, notes, want)
	}
}

func TestTimesRise(t *testing.T) {
	text := table("time_s,height_m\n", "%.2f,%.3f\n", 30) + "2.9,9\n2.5,8\n,7\n3.0,6\n"
	l := read(t, text, Options{})
	for i := 1; i < len(l.Time); i++ {
		assert.Greater(t, l.Time[i], l.Time[i-1])
	}
	assert.Equal(t, []int{0}, l.Starts)
	assert.Equal(t, 31, len(l.Time))
	assert.InDelta(t, 6, l.Values[l.Find(Height)][30], 1e-12)
	notes := l.Notes.Error()
	for _, want := range []string{"one row without a time", "one row with the time of the row before", "one row whose time falls back"} {
		assert.Contains(t, notes, want)
	}

	l = read(t, table("time_s,height_m\n", "%.2f,%.3f\n", 30)+table("", "%.2f,%.3f\n", 25), Options{})
	assert.Equal(t, []int{0, 30}, l.Starts)
	assert.Contains(t, l.Notes.Error(), "the clock begins anew one time")
}

func TestSeveralOfAKind(t *testing.T) {
	text := "time_s,height_baro_m,height_gps_m,accel_x_g,accel_y_g\n"
	for i := range 20 {
		text += fmt.Sprintf("%.1f,%d,%d,0.1,%d\n", float64(i)/10, i, 2*i, i)
	}
	l := read(t, text, Options{})
	assert.Equal(t, 2, l.Find(Height)+1)
	assert.Len(t, l.Columns, 3)
	assert.True(t, l.Columns[2].Measured)
	assert.Contains(t, l.Notes.Error(), "--column 'acceleration=4 g'")
	l = read(t, text, told(t, "acceleration=5"))
	k := l.Find(Acceleration)
	require.GreaterOrEqual(t, k, 0)
	assert.InDelta(t, 9.80665, l.Values[k][1], 1e-9, "the unit is the header's")
}

// What cannot be used is one message with a mend.
func TestBadLogs(t *testing.T) {
	for name, x := range map[string]struct {
		text string
		o    Options
		want []string
	}{
		"empty":          {"", Options{}, []string{"log.csv: is empty"}},
		"blank":          {" \n\t\n", Options{}, []string{"is empty"}},
		"binary":         {"\x7fELF\x02\x01\x01\x00\x00\x00\x00\x03\x00\x01\x02\xff", Options{}, []string{"no text"}},
		"words":          {"dear diary\nit flew\n", Options{}, []string{"holds no table of numbers"}},
		"one row":        {"time_s,height_m\n0,1\n", Options{}, []string{"log.csv:2: holds 1 rows", "at least 10"}},
		"no heads":       {table("", "%.2f,%.3f\n", 30), Options{}, []string{"log.csv:1: no column is known to be the time", "--column 'time=1 s'", "2 columns and no heads"}},
		"no time":        {table("a,height_m\n", "%.2f,%.3f\n", 30), Options{}, []string{"no column is known to be the time", "--rate '20 Hz'", `1 "a", 2 "height_m"`}},
		"nothing over":   {table("time_s,battery_v\n", "%.2f,%.3f\n", 30), Options{}, []string{"no column is known to be a height", "--column 'height=2 m'"}},
		"zeros":          {strings.ReplaceAll(table("time_s,pressure_pa\n", "%.2f,%.3f\n", 0), "x", "") + zerosOf(30), Options{}, []string{"column 2 (pressure_pa): holds nothing but 0 Pa", "--column 'pressure=2'"}},
		"text in cells":  {table("time_s,height_m\n", "%.2f,high%.0f\n", 30), Options{}, []string{`log.csv:2: column 2 (height_m) = "high0": is no number, and so are 30 of 30 cells`, "--column height=none"}},
		"column too far": {table("time_s,height_m\n", "%.2f,%.3f\n", 30), told(t, "height=7 m"), []string{"no row has 7 columns"}},
		"no such head":   {table("time_s,height_m\n", "%.2f,%.3f\n", 30), told(t, "height=Hight"), []string{"--column = height=Hight", `1 "time_s", 2 "height_m"`}},
		"twice":          {table("time_s,height_m\n", "%.2f,%.3f\n", 30), told(t, "height=2 m", "speed=2 m/s"), []string{"something else too"}},
		"time that stays": {strings.Repeat("0,1\n", 5) + strings.Repeat("1,2\n", 30), told(t, "time=1 s", "height=2 m"),
			[]string{"repeat the time of the row before", "--rate '20 Hz'"}},
		"rate and time": {table("", "%.2f,%.3f\n", 30), Options{Rate: 20, Columns: told(t, "time=1 s").Columns}, []string{"--rate", "one of the two"}},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := Read("log.csv", []byte(x.text), x.o)
			require.Error(t, err)
			var list fault.List
			require.ErrorAs(t, err, &list)
			assert.Len(t, list, 1)
			assert.NotEmpty(t, list[0].Remedy)
			for _, want := range x.want {
				assert.Contains(t, err.Error(), want)
			}
		})
	}
	_, err := Open("/no/such/log.csv", Options{})
	assert.ErrorContains(t, err, "there is no such file")
	_, err = Open(t.TempDir(), Options{})
	assert.ErrorContains(t, err, "folder")
}

func zerosOf(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "%.1f,0\n", float64(i)/10)
	}
	return b.String()
}

func TestOddCells(t *testing.T) {
	text := table("time_s,height_m\n", "%.2f,%.3f\n", 300) + "30.0,1e308\n30.1,-1e308\n30.2,inf\n30.3,nan\n30.4,twelve\n30.5,3\n"
	l := read(t, text, Options{})
	v := l.Values[l.Find(Height)]
	assert.Equal(t, 306, len(v))
	for i := 300; i < 305; i++ {
		assert.True(t, math.IsNaN(v[i]), i)
	}
	assert.InDelta(t, 3, v[305], 0)
	assert.Contains(t, l.Notes.Error(), "2 values beyond anything meant")
	assert.Contains(t, l.Notes.Error(), `log.csv:306: column 2 (height_m) = "twelve": is no number, as one cell of the column; left out`)
}

func TestParseColumnAndRate(t *testing.T) {
	for text, want := range map[string]string{
		"height": "a quantity, =, and a column", "heihgt=2": "perhaps height is meant", "height=2 furlong": "m, ft, cm",
		"colour=1": "there are time, height", "height=0": "count from 1", "height=": "a quantity, =",
	} {
		_, err := ParseColumn(text)
		assert.ErrorContains(t, err, want, text)
	}
	for text, want := range map[string]float64{"20 Hz": 20, "0.5kHz": 500, "50 ms": 20, "100/s": 100, " 2 s": 0.5} {
		got, err := ParseRate(text)
		require.NoError(t, err, text)
		assert.InDelta(t, want, got, 1e-12)
	}
	for _, text := range []string{"", "20", "fast", "0 Hz", "-3 Hz", "1e400 Hz", "NaN Hz", "0 ms"} {
		_, err := ParseRate(text)
		assert.Error(t, err, text)
	}
}

// The quick way to read a number gives what strconv gives, to the last bit.
func TestNumbers(t *testing.T) {
	for _, s := range []string{"0", "-0.1", "+3.", ".5", "123456789.012345", "0.000000000000001", "999999999999999", "1.005"} {
		v, ok := plain([]byte(s))
		require.True(t, ok, s)
		var want float64
		_, err := fmt.Sscan(s, &want)
		require.NoError(t, err)
		assert.Equal(t, want, v, s)
	}
	for s, want := range map[string]float64{"1e3": 1000, "−2.5": -2.5, "1,5": 1.5, "12345678901234567890": 12345678901234567890, "01:02:03.5": 3723.5, "2:30": 150, `"3,5"`: 3.5} {
		v, is := number([]byte(s), true)
		assert.Equal(t, isNumber, is, s)
		assert.InDelta(t, want, v, 1e-9*want*want+1e-12, s)
	}
	for _, s := range []string{"0x10", "1_000", "1.234,5", "12:99", "a:b", "1.2.3", "2026-13-40T00:00:00"} {
		_, is := number([]byte(s), true)
		assert.Equal(t, isText, is, s)
	}
}
