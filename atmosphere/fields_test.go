package atmosphere_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/atmosphere"
	"ullage/sim/fault"
)

func TestSiteFaults(t *testing.T) {
	for _, row := range []struct {
		name string
		site atmosphere.Site
		want fault.List
	}{
		{"standard", atmosphere.Site{}, nil},
		{"all given", atmosphere.Site{Elevation: 320, Temperature: 291.15, Pressure: 97500, Humidity: 0.4, Latitude: 12, Longitude: -170, Located: true}, nil},
		{"an end, by way of degrees Fahrenheit", atmosphere.Site{Temperature: (140 + 459.67) * 5 / 9}, nil},
		{"not located", atmosphere.Site{Latitude: 1000, Longitude: math.NaN()}, nil},
		{"too high", atmosphere.Site{Elevation: 9001}, fault.List{
			{Key: "site.elevation", Problem: "too large", Remedy: "give -500 m to 9000 m"}}},
		{"cold and wet", atmosphere.Site{Temperature: 18, Humidity: 40}, fault.List{
			{Key: "site.temperature", Problem: "too small", Remedy: "give -90 degC to 60 degC"},
			{Key: "site.humidity", Problem: "too large", Remedy: "give 0 % to 100 %"}}},
		{"negative pressures", atmosphere.Site{Pressure: -1, SeaLevelPressure: -2}, fault.List{
			{Key: "site.pressure", Problem: "negative", Remedy: "give 250 hPa to 1100 hPa"},
			{Key: "site.sea_level_pressure", Problem: "negative", Remedy: "give 850 hPa to 1100 hPa"},
			{Key: "site.sea_level_pressure", Problem: "is given beside the pressure at the station", Remedy: "give one of the two"}}},
		{"off the map", atmosphere.Site{Latitude: 91, Longitude: -181, Located: true}, fault.List{
			{Key: "site.latitude", Problem: "too large", Remedy: "give -90 to 90"},
			{Key: "site.longitude", Problem: "too small", Remedy: "give -180 to 180"}}},
		{"both pressures", atmosphere.Site{Pressure: 101000, SeaLevelPressure: 101000}, fault.List{
			{Key: "site.sea_level_pressure", Problem: "is given beside the pressure at the station", Remedy: "give one of the two"}}},
		{"a sea-level pressure for the station's", atmosphere.Site{Elevation: 1500, Pressure: 101300}, fault.List{
			{Key: "site.pressure", Problem: "at 1500 m would be 1214 hPa at sea level",
				Remedy: "give the pressure at the station, about 846 hPa at that elevation, or sea_level_pressure instead"}}},
		{"no elevation", atmosphere.Site{Pressure: 70100}, fault.List{
			{Key: "site.pressure", Problem: "at 0 m would be 701 hPa at sea level",
				Remedy: "give the pressure at the station, about 1013 hPa at that elevation, or sea_level_pressure instead"}}},
	} {
		t.Run(row.name, func(t *testing.T) { require.Equal(t, row.want, row.site.Faults()) })
	}
}

func TestWindFaults(t *testing.T) {
	require.Empty(t, atmosphere.Wind{}.Faults())
	require.Empty(t, atmosphere.Wind{Speed: 4, Height: 10, Exponent: 1.0 / 7, From: 2 * math.Pi}.Faults())
	require.Equal(t, fault.List{
		{Key: "wind.speed", Problem: "negative", Remedy: "give 0 m/s to 60 m/s"},
		{Key: "wind.height", Problem: "negative", Remedy: "give 0.5 m to 1000 m"},
		{Key: "wind.exponent", Problem: "too large", Remedy: "give 0 to 1"},
		{Key: "wind.from", Problem: "too large", Remedy: "give -360 deg to 360 deg"},
	}, atmosphere.Wind{Speed: -1, Height: -10, Exponent: 7, From: 270}.Faults())
}

// Not a number and the infinities are faults of every value.
func TestNonFiniteFaults(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		s := atmosphere.Site{Elevation: x, Temperature: x, Pressure: x, SeaLevelPressure: x, Humidity: x,
			Latitude: x, Longitude: x, Located: true}
		require.Len(t, s.Faults(), len(atmosphere.SiteFields())+1)
		w := atmosphere.Wind{Speed: x, Height: x, Exponent: x, From: x, Factor: x, Veer: x, Turbulence: x}
		require.Len(t, w.Faults(), len(atmosphere.WindFields()))
	}
	require.Equal(t, "not a finite number", atmosphere.Wind{Speed: math.Inf(1)}.Faults()[0].Problem)
}

// What Faults lets pass is what Column uses: nothing is held at a range's end.
func TestSoundSitesAreTakenAsGiven(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := site(t)
		if len(s.Faults()) > 0 {
			return
		}
		c := s.Column()
		a := c.Air(0)
		if s.Temperature != 0 {
			require.InEpsilon(t, s.Temperature, a.Temperature, 1e-11)
		}
		if s.Pressure != 0 {
			require.InEpsilon(t, s.Pressure, a.Pressure, 1e-11)
		}
	})
}
