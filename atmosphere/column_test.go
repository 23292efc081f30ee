package atmosphere_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ullage/atmosphere"
)

// oddSites are far from the standard's sea level, each in another way.
var oddSites = map[string]atmosphere.Site{
	"sea level":     {},
	"heath":         {Elevation: 320, Temperature: 291.15, Pressure: 97500},
	"salt shore":    {Elevation: -430, Temperature: 318.15, Pressure: 106300},
	"plateau":       {Elevation: 4200, Temperature: 263.15},
	"ice cap":       {Elevation: 3200, Temperature: 203.15, Pressure: 64000},
	"hot lowland":   {Elevation: 12, Temperature: 323.15, Pressure: 99800},
	"highest":       {Elevation: 9000, Temperature: 333.15},
	"wet coast":     {Elevation: 5, Temperature: 303.15, Humidity: 1},
	"damp hills":    {Elevation: 1600, Temperature: 295.15, SeaLevelPressure: 101300, Humidity: 0.7},
	"storm low":     {Elevation: 90, SeaLevelPressure: 95200},
	"steaming pit":  {Elevation: -500, Temperature: 333.15, Humidity: 1},
	"frozen valley": {Elevation: 700, Temperature: 223.15, Humidity: 0.8},
}

// forOddSites runs a test on every one of them.
func forOddSites(t *testing.T, test func(*testing.T, atmosphere.Site, *atmosphere.Column)) {
	for name, s := range oddSites {
		t.Run(name, func(t *testing.T) {
			require.Empty(t, s.Faults())
			c := s.Column()
			test(t, s, &c)
		})
	}
}

func TestColumnStartsAtTheSite(t *testing.T) {
	forOddSites(t, func(t *testing.T, s atmosphere.Site, c *atmosphere.Column) {
		standard := atmosphere.Standard(s.Elevation)
		air := c.Air(0)
		temperature, pressure := s.Temperature, s.Pressure
		if temperature == 0 {
			temperature = standard.Temperature
		}
		require.InDelta(t, temperature, air.Temperature, 1e-12)
		if pressure == 0 && s.SeaLevelPressure == 0 {
			pressure = standard.Pressure
		}
		if pressure != 0 {
			near(t, pressure, air.Pressure, 1e-14, "pressure")
		}
		if s.Humidity == 0 {
			near(t, air.Pressure/(atmosphere.GasConstant*temperature), air.Density, 1e-14, "density")
		}
	})
}

// A site that gives nothing but its elevation stands in the standard atmosphere.
func TestStandardSite(t *testing.T) {
	for _, elevation := range []float64{-400, 0, 320, 2500, 8000} {
		c := atmosphere.Site{Elevation: elevation}.Column()
		for _, h := range []float64{-300, 0, 10, 500, 2500, 3500, 9000, 15000, 25000, 40000, 60000, 90000} {
			want, got := atmosphere.Standard(elevation+h), c.Air(h)
			near(t, want.Temperature, got.Temperature, 1e-13, "temperature %g m above %g m", h, elevation)
			near(t, want.Pressure, got.Pressure, 1e-12, "pressure %g m above %g m", h, elevation)
			near(t, want.Density, got.Density, 1e-12, "density %g m above %g m", h, elevation)
			near(t, want.SoundSpeed, got.SoundSpeed, 1e-12, "speed of sound %g m above %g m", h, elevation)
		}
	}
}

// The column above a site that is ten degrees warmer than the standard and has
// its own pressure, by plain arithmetic: lapse rates and boundaries in
// geopotential height are the standard's.
func TestWarmColumn(t *testing.T) {
	const elevation, temperature, pressure = 1000.0, 291.6510223716947, 90000.0
	const g, r = atmosphere.StandardGravity, atmosphere.GasConstant
	c := atmosphere.Site{Elevation: elevation, Temperature: temperature, Pressure: pressure}.Column()
	foot := 999.8427120469674 // geopotential height of 1000 m

	above := func(h float64) atmosphere.Air { return c.Air(geometric(h) - elevation) }

	t5 := temperature - 6.5e-3*(5000-foot)
	near(t, t5, above(5000).Temperature, 1e-12, "temperature at 5 km")
	near(t, pressure*math.Pow(t5/temperature, g/(r*6.5e-3)), above(5000).Pressure, 1e-12, "pressure at 5 km")

	t11 := temperature - 6.5e-3*(11000-foot)
	p11 := pressure * math.Pow(t11/temperature, g/(r*6.5e-3))
	near(t, 226.65, t11, 1e-7, "ten degrees warmer at the tropopause too")
	near(t, t11, above(15000).Temperature, 1e-12, "temperature at 15 km")
	near(t, p11*math.Exp(-g*4000/(r*t11)), above(15000).Pressure, 1e-12, "pressure at 15 km")

	p20 := p11 * math.Exp(-g*9000/(r*t11))
	t25 := t11 + 1e-3*5000
	near(t, t25, above(25000).Temperature, 1e-12, "temperature at 25 km")
	near(t, p20*math.Pow(t25/t11, -g/(r*1e-3)), above(25000).Pressure, 1e-12, "pressure at 25 km")
}

// Hydrostatic balance, dp/dh = -ρ g with the gravity of the place, by central
// differences; in moist air the tabulated factors leave a little.
func TestHydrostaticBalance(t *testing.T) {
	forOddSites(t, func(t *testing.T, s atmosphere.Site, c *atmosphere.Column) {
		tolerance := 1e-8
		if s.Humidity > 0 {
			tolerance = 1e-6
		}
		for _, h := range []float64{-200, 0, 1.5, 100, 777, 2200, 3100, 5000, 12000, 25000, 40000, 49000, 60000, 80000, 100000} {
			const d = 0.5
			_, rho := c.At(h)
			below, _ := c.At(h - d)
			above, _ := c.At(h + d)
			near(t, -rho*c.Gravity(h), (above-below)/(2*d), tolerance, "%g m above the site", h)
		}
	})
}

// Pressure, density and temperature have no jump anywhere: not where layers meet,
// nor where the series near the site gives way to logarithms.
func TestColumnIsContinuous(t *testing.T) {
	forOddSites(t, func(t *testing.T, s atmosphere.Site, c *atmosphere.Column) {
		ends := []float64{}
		for _, h := range []float64{11000, 20000, 32000, 47000, 51000, 71000, 84852} {
			ends = append(ends, geometric(h)-s.Elevation)
		}
		a := c.Air(0)
		for _, u := range []float64{-1.0 / 16, 1.0 / 16} {
			from := atmosphere.Geopotential(s.Elevation) - u*a.Temperature/6.5e-3
			ends = append(ends, geometric(from)-s.Elevation)
		}
		for _, h := range ends {
			// Over 2e-8 m the air itself changes by less than 4e-12.
			const d = 1e-8
			below, above := c.Air(h-d), c.Air(h+d)
			near(t, below.Temperature, above.Temperature, 1e-11, "temperature at %g m", h)
			near(t, below.Pressure, above.Pressure, 1e-11, "pressure at %g m", h)
			near(t, below.Density, above.Density, 1e-11, "density at %g m", h)
		}
	})
}

// A pressure at sea level is found again by going down there from the site.
func TestSeaLevelPressure(t *testing.T) {
	for _, s := range []atmosphere.Site{
		{Elevation: 320, SeaLevelPressure: 101300},
		{Elevation: 2500, Temperature: 303.15, SeaLevelPressure: 100200},
		{Elevation: -400, Temperature: 313.15, SeaLevelPressure: 102000},
		{Elevation: 900, Temperature: 298.15, SeaLevelPressure: 101000, Humidity: 0.9},
		{Elevation: 3600, Temperature: 293.15, SeaLevelPressure: 101000, Humidity: 0.5},
	} {
		c := s.Column()
		p, _ := c.At(-s.Elevation)
		near(t, s.SeaLevelPressure, p, 1e-9, "%+v", s)
	}
	// At the standard temperature it is the altimeter setting: 1013.25 hPa at
	// any elevation is the standard atmosphere.
	c := atmosphere.Site{Elevation: 1500, SeaLevelPressure: 101325}.Column()
	near(t, atmosphere.Standard(1500).Pressure, c.Air(0).Pressure, 1e-13, "standard")
	// A warm day has a thinner layer of air below the site: more is left above.
	warm := atmosphere.Site{Elevation: 1500, Temperature: 303.15, SeaLevelPressure: 101325}.Column()
	require.Greater(t, warm.Air(0).Pressure, c.Air(0).Pressure)
}

// anyFloat is a number of any size, infinities and NaN among them.
func anyFloat() *rapid.Generator[float64] {
	return rapid.OneOf(
		rapid.Float64(),
		rapid.Float64Range(-1e6, 1e6),
		rapid.Float64Range(0, 2),
		rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -atmosphere.EarthRadius}),
	)
}

// site is any site, sound or not.
func site(t *rapid.T) atmosphere.Site {
	return atmosphere.Site{
		Elevation:        anyFloat().Draw(t, "elevation"),
		Temperature:      rapid.OneOf(anyFloat(), rapid.Float64Range(180, 340)).Draw(t, "temperature"),
		Pressure:         rapid.OneOf(anyFloat(), rapid.Float64Range(25e3, 110e3)).Draw(t, "pressure"),
		SeaLevelPressure: rapid.OneOf(anyFloat(), rapid.Float64Range(85e3, 110e3)).Draw(t, "sea-level pressure"),
		Humidity:         anyFloat().Draw(t, "humidity"),
	}
}

// checkFalling fails unless the air at rising heights is finite, positive and no
// denser or under more pressure than below.
func checkFalling(t require.TestingT, c *atmosphere.Column, heights []float64) {
	lastP, lastRho := math.Inf(1), math.Inf(1)
	for _, h := range heights {
		p, rho := c.At(h)
		a := c.Air(h)
		for _, x := range []float64{p, rho, a.Temperature, a.SoundSpeed, a.Viscosity()} {
			require.Truef(t, x > 0 && !math.IsInf(x, 0), "%v at %g m", a, h)
		}
		require.Equal(t, p, a.Pressure)
		require.Equal(t, rho, a.Density)
		// Rounding may lift a value by some units in the last place.
		require.LessOrEqualf(t, p, lastP*(1+1e-14), "pressure at %g m", h)
		require.LessOrEqualf(t, rho, lastRho*(1+1e-14), "density at %g m", h)
		lastP, lastRho = p, rho
		g := c.Gravity(h)
		require.Truef(t, g >= 0 && g < 9.9, "gravity %v at %g m", g, h)
	}
}

func TestAnyColumnIsFiniteAndFalls(t *testing.T) {
	ladder := []float64{math.Inf(-1), -1e308, -2 * atmosphere.EarthRadius, -atmosphere.EarthRadius, -1e5,
		-5500, -4000, -1000, -100, 0, 1, 10, 100, 1000, 2000, 3000, 5000, 8000, 11000, 12000, 20000, 33000,
		48000, 52000, 72000, 86000, 1e5, 1e6, 1e7, 1e10, 1e15, 1e308, math.Inf(1)}
	rapid.Check(t, func(t *rapid.T) {
		c := site(t).Column()
		checkFalling(t, &c, ladder)
		h := rapid.Float64Range(-6000, 120000).Draw(t, "height")
		step := rapid.Float64Range(1e-3, 1000).Draw(t, "step")
		checkFalling(t, &c, []float64{h, h + step, h + 2*step})
	})
}

func FuzzColumn(f *testing.F) {
	f.Add(320.0, 291.15, 97500.0, 0.0, 0.5, 1000.0)
	f.Add(-500.0, 333.15, 0.0, 101325.0, 1.0, -1e9)
	f.Add(math.NaN(), math.Inf(1), -1.0, 1e300, 7.0, math.Inf(1))
	f.Fuzz(func(t *testing.T, elevation, temperature, pressure, sea, humidity, h float64) {
		if math.IsNaN(h) {
			return
		}
		s := atmosphere.Site{Elevation: elevation, Temperature: temperature, Pressure: pressure,
			SeaLevelPressure: sea, Humidity: humidity}
		c := s.Column()
		checkFalling(t, &c, []float64{h - 1, h, h + 1})
		s.Faults() // whatever it says, it must not panic
	})
}

func TestNaNHeight(t *testing.T) {
	for _, humidity := range []float64{0, 0.5} {
		c := atmosphere.Site{Humidity: humidity}.Column()
		p, rho := c.At(math.NaN())
		require.True(t, math.IsNaN(p) && math.IsNaN(rho))
	}
}

func TestColumnAllocatesNothing(t *testing.T) {
	dry := atmosphere.Site{Elevation: 320, Temperature: 291.15, SeaLevelPressure: 101300}
	c := dry.Column()
	require.Zero(t, testing.AllocsPerRun(100, func() { c = dry.Column() }))
	moist := dry
	moist.Humidity = 0.5
	m := moist.Column()
	for _, h := range []float64{0, 500, 5000, 50000} {
		require.Zero(t, testing.AllocsPerRun(100, func() {
			c.At(h)
			c.Air(h)
			c.Gravity(h)
			m.At(h)
			m.Air(h)
		}))
	}
}

// Around is At and Gravity at once, at any height, in dry and in moist air.
func TestAround(t *testing.T) {
	for _, s := range []atmosphere.Site{{}, {Elevation: 3500, Temperature: 305, Humidity: 0.8}} {
		c := s.Column()
		for _, h := range []float64{-6000, -20, 0, 1, 300, 2799, 5000, 12000, 40000, 1e6} {
			pressure, density := c.At(h)
			p, d, g := c.Around(h)
			require.InEpsilon(t, pressure, p, 1e-13)
			require.InEpsilon(t, density, d, 1e-13)
			require.InEpsilon(t, c.Gravity(h), g, 1e-13)
		}
	}
}
