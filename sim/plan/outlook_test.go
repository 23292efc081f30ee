package plan

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ullage/atmosphere"
	"ullage/sim/fault"
	"ullage/sim/gates"
	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
	"ullage/sim/study"
)

// A row is the verdict on the rocket in its wind, and a change that is told makes every check of it pass.
func TestOutlook(t *testing.T) {
	f := heron(t)
	r := f.Rocket()
	slots := []Slot{{Wind: 0, Gust: math.NaN()}, {Wind: 4, Gust: math.NaN()}, {Wind: math.NaN()}, {Wind: 8, Gust: 11}}
	got, err := Outlook(background, r, slots, OutlookOptions{Drives: bothDrives, Spreads: study.Respread(f), Today: today})
	require.NoError(t, err)
	require.Len(t, got, 8)
	changed := 0
	for i := range got {
		o := &got[i]
		assert.Equal(t, bothDrives[i%2], o.Drive)
		if math.IsNaN(o.Slot.Wind) {
			assert.False(t, o.Known)
			assert.False(t, o.Passes(), "what nobody told is no pass")
			continue
		}
		by := r.Clone()
		by.Power, by.Wind.Speed = o.Drive, o.Slot.Wind
		if !math.IsNaN(o.Slot.Gust) {
			by.Gust.Speed = 3
		}
		v, err := gates.Judge(background, by, gates.Options{Spreads: study.Respread(f)(by), Today: today})
		require.NoError(t, err)
		assert.Equal(t, v.Word(), o.Verdict.Word(), "%v %v", o.Drive, o.Slot.Wind)
		if o.Change == nil {
			continue
		}
		changed++
		assert.False(t, o.Passes())
		made := o.Change.Made(o.Verdict.Rocket)
		require.NotNil(t, made)
		v, err = gates.Judge(background, made, gates.Options{Spreads: study.Respread(f)(made), Today: today})
		require.NoError(t, err)
		assert.True(t, v.Pass())
		assert.Equal(t, o.Slot.Wind, made.Wind.Speed, "it does not wait for less wind")
		if made.Water != nil {
			assert.LessOrEqual(t, made.Water.Pressure, r.Water.Pressure)
		}
	}
	assert.Positive(t, changed)
}

// Layers blow as strongly near the ground as a forecast says.
func TestForecastOfLayers(t *testing.T) {
	r := heron(t).Rocket().Clone()
	r.Wind = atmosphere.Wind{Layers: []atmosphere.Layer{{Height: 10, Speed: 2, From: 1}, {Height: 500, Speed: 6, From: 1.2}}}
	slot := Slot{Wind: 3, Gust: math.NaN()}
	on, err := slot.on(r)
	require.NoError(t, err)
	require.NoError(t, on.Validate())
	speed, from := on.Wind.Surface()
	assert.InDelta(t, 3, speed, 1e-9)
	assert.InDelta(t, 1, from, 1e-9)
	assert.InDelta(t, 9, on.Wind.Top().Speed, 1e-9)

	slots, err := ReadForecast("f.csv", []byte("time,wind (m/s),from\n9,3,300 deg\n"), r)
	require.NoError(t, err)
	on, err = slots[0].on(r)
	require.NoError(t, err)
	require.NoError(t, on.Validate())
	_, from = on.Wind.Surface()
	assert.InDelta(t, 0, math.Remainder(from-300*math.Pi/180, 2*math.Pi), 1e-9)
	assert.InDelta(t, 0.2, math.Remainder(on.Wind.Top().From-from, 2*math.Pi), 1e-9, "what is above turns with it")
}

func TestWindsOfATable(t *testing.T) {
	var got []float64
	for _, s := range Winds(5) {
		got = append(got, s.Wind)
	}
	assert.Equal(t, []float64{0, 2, 4, 5}, got)
}

func TestReadForecast(t *testing.T) {
	r := rocketfile.Starter().Rocket().Clone()
	slots, err := ReadForecast("f.csv", []byte("\xef\xbb\xbf# by hand\nTime; Wind (km/h); gust [km/h]; from; temperature; canopy.main.diameter\n\n09:00; 18; 36; SW; 12 degC; 900 mm\n10:00;; ; ; ; \n"), r)
	require.NoError(t, err)
	require.Len(t, slots, 2)
	assert.InDelta(t, 5, slots[0].Wind, 1e-12)
	assert.InDelta(t, 10, slots[0].Gust, 1e-12)
	on, err := slots[0].on(r)
	require.NoError(t, err)
	assert.InDelta(t, 5, on.Wind.Speed, 1e-12)
	assert.InDelta(t, 5, on.Gust.Speed, 1e-12, "what comes on top of the wind")
	assert.InDelta(t, 1.25*math.Pi, on.Wind.From, 1e-12)
	assert.InDelta(t, 1.25*math.Pi, on.Gust.From, 1e-12, "from where the wind comes from")
	r.Gust = atmosphere.Gust{Speed: 3, From: 1, Height: 120, Length: 10}
	high, err := slots[0].on(r)
	require.NoError(t, err)
	assert.Equal(t, on.Gust, high.Gust, "near the ground, whatever gust the file has higher up")
	assert.InDelta(t, 10, high.GroundWind(), 1e-9)
	assert.InDelta(t, 285.15, on.Site.Temperature, 1e-9)
	assert.Equal(t, r.Site.Pressure, on.Site.Pressure)
	assert.True(t, math.IsNaN(slots[1].Wind))
	assert.Equal(t, "10:00", slots[1].Label)
}

func TestForecastOfOldLineEnds(t *testing.T) {
	slots, err := ReadForecast("f.csv", []byte("time,wind\r9:00,3 m/s\r10:00,4 m/s\r"), heron(t).Rocket())
	require.NoError(t, err)
	assert.Len(t, slots, 2)
}

func TestForecastFaults(t *testing.T) {
	r := rocketfile.Starter().Rocket()
	for text, want := range map[string]string{
		"":                                                    "f.csv: is empty",
		"time,wind (m/s)\n":                                   "no row below its heads",
		"time,wind\n10:00,5\n":                                "f.csv:2: wind = 5: has no unit",
		"tim,wind (m/s)\n10:00,5\n":                           "f.csv:1: tim: is no head of a forecast",
		"time,wind (m/s),wind (m/s)\n1,2,3\n":                 "stands above two columns",
		"time,wind (kg)\n10:00,5\n":                           "f.csv:1: wind = kg: is no unit of it",
		"time,wind (m/s)\n10:00,5\n10:00,4\n":                 "f.csv:3: time = 10:00: is not after the row before",
		"time,wind (m/s)\nnoon,5\n":                           "is no time",
		"time,wind (m/s)\n10:00,5,6\n":                        "has 3 cells below 2 heads",
		"time,wind (m/s)\n10:00,-5\n":                         "f.csv:2: wind = -5",
		"time,wind (m/s)\n10:00,1e308\n":                      "f.csv:2: wind = 1e308",
		"time,wind (m/s),gust (m/s)\n9,5,3\n":                 "is less than the wind",
		"time,wind (m/s),from\n9,5,nowhere\n":                 "from = nowhere",
		"time,wind (m/s)\n\"10:00,5\n":                        "this row cannot be read",
		"time,wind (m/s),name\n9,5,x\n":                       "name: is no head of a forecast",
		"time,wind (m/s)\n10:00,\x00\n":                       "is no text",
		"time,wind (m/s),pressure\n9,5,3 kg\n":                "pressure = 3 kg",
		"time,wind (m/s),limits.wind (m/s)\n9,30,60\n":        "limits.wind: is no matter of the day",
		"time,wind (m/s),chamber.proof (bar)\n9,5,60\n":       "chamber.proof: is no matter of the day",
		"time,wind (m/s)\n" + strings.Repeat("x", 200) + ",5": "f.csv:2: time = " + strings.Repeat("x", 80) + "…: is no time",
	} {
		_, err := ReadForecast("f.csv", []byte(text), r)
		require.ErrorContains(t, err, want, "%q", text)
		require.IsType(t, fault.List{}, err)
	}
	_, err := ReadForecast("f.csv", []byte("time,wind\n9,5\n10,6\n"), r)
	assert.EqualError(t, err, `f.csv:2: wind = 5: has no unit; write "wind (m/s)" at the head of the column, or "5 m/s" in every cell`, "once")
}

func FuzzReadForecast(f *testing.F) {
	f.Add([]byte("time,wind (m/s),gust (m/s),from,temperature\n09:00,2,4,240 deg,12 degC\n11:00,,,,\n"))
	f.Add([]byte("time;wind\n2026-05-01 10:00;9 kn\n"))
	r := rocketfile.Starter().Rocket()
	r.Power = rocket.WaterPower
	f.Fuzz(func(t *testing.T, text []byte) {
		slots, err := ReadForecast("f.csv", text, r)
		if err != nil {
			require.NotEmpty(t, err.Error())
			return
		}
		for i := range slots {
			if !math.IsNaN(slots[i].Wind) {
				_, err := slots[i].on(r)
				require.NoError(t, err)
			}
		}
	})
}
