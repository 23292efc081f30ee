package atmosphere

import (
	"math"
	"slices"

	"ullage/sim/quantity"
)

// What the numbers of a site and a wind may be. The elevations are those of dry land,
// from below the Dead Sea's shore to above the highest summit; temperatures and pressures
// are a little more than ever measured. The rest is common sense; none
// has another source.
var (
	elevationRange   = quantity.Between(quantity.Length, "m", -500, 9000)
	temperatureRange = quantity.Between(quantity.Temperature, "degC", -90, 60)
	pressureRange    = quantity.Between(quantity.Pressure, "hPa", 250, 1100)
	seaLevelRange    = quantity.Between(quantity.Pressure, "hPa", 850, 1100)
	humidityRange    = quantity.Between(quantity.Fraction, "%", 0, 100)

	speedRange    = quantity.Between(quantity.Wind, "m/s", 0, 60)
	heightRange   = quantity.Between(quantity.Length, "m", 0.5, 1000)
	exponentRange = quantity.Between(quantity.Number, "", 0, 1)
	fromRange     = quantity.Between(quantity.Bearing, "deg", -360, 360)

	layerHeightRange = quantity.Between(quantity.Length, "m", 0.5, 30e3)
	factorRange      = quantity.Between(quantity.Number, "", 0.001, 100)
	turbulenceRange  = quantity.Between(quantity.Fraction, "%", 0, 50)

	gustSpeedRange  = quantity.Between(quantity.Wind, "m/s", 0, 50)
	gustHeightRange = quantity.Between(quantity.Length, "m", 0, 5000)
)

func located(s *Site) bool { return s.Located }

// siteFields are the numbers of a site under their names in a rocket file.
var siteFields = []quantity.Field[Site]{
	{Key: "site.elevation", Range: elevationRange, At: func(s *Site) *float64 { return &s.Elevation }},
	{Key: "site.temperature", Range: temperatureRange, At: func(s *Site) *float64 { return &s.Temperature }, Optional: true},
	{Key: "site.pressure", Range: pressureRange, At: func(s *Site) *float64 { return &s.Pressure }, Optional: true},
	{Key: "site.sea_level_pressure", Range: seaLevelRange, At: func(s *Site) *float64 { return &s.SeaLevelPressure }, Optional: true},
	{Key: "site.humidity", Range: humidityRange, At: func(s *Site) *float64 { return &s.Humidity }},
	{Key: "site.latitude", Range: quantity.Between(quantity.Number, "", -90, 90), At: func(s *Site) *float64 { return &s.Latitude }, Only: located},
	{Key: "site.longitude", Range: quantity.Between(quantity.Number, "", -180, 180), At: func(s *Site) *float64 { return &s.Longitude }, Only: located},
}

var windFields = []quantity.Field[Wind]{
	{Key: "wind.speed", Range: speedRange, At: func(w *Wind) *float64 { return &w.Speed }},
	{Key: "wind.height", Range: heightRange, At: func(w *Wind) *float64 { return &w.Height }, Optional: true},
	{Key: "wind.exponent", Range: exponentRange, At: func(w *Wind) *float64 { return &w.Exponent }},
	{Key: "wind.from", Range: fromRange, At: func(w *Wind) *float64 { return &w.From }},
	{Key: "wind.factor", Range: factorRange, At: func(w *Wind) *float64 { return &w.Factor }, Optional: true},
	{Key: "wind.veer", Range: fromRange, At: func(w *Wind) *float64 { return &w.Veer }},
	{Key: "wind.turbulence", Range: turbulenceRange, At: func(w *Wind) *float64 { return &w.Turbulence }},
}

var layerFields = []quantity.Field[Layer]{
	{Key: "height", Range: layerHeightRange, At: func(l *Layer) *float64 { return &l.Height }},
	{Key: "speed", Range: speedRange, At: func(l *Layer) *float64 { return &l.Speed }},
	{Key: "from", Range: fromRange, At: func(l *Layer) *float64 { return &l.From }},
}

var gustFields = []quantity.Field[Gust]{
	{Key: "gust.speed", Range: gustSpeedRange, At: func(g *Gust) *float64 { return &g.Speed }},
	{Key: "gust.from", Range: fromRange, At: func(g *Gust) *float64 { return &g.From }},
	{Key: "gust.height", Range: gustHeightRange, At: func(g *Gust) *float64 { return &g.Height }},
	{Key: "gust.length", Range: gustHeightRange, At: func(g *Gust) *float64 { return &g.Length }},
}

// SiteFields lists the numbers of a site, with what they may be. Latitude and longitude
// are in degrees.
func SiteFields() []quantity.Field[Site] { return slices.Clone(siteFields) }

// WindFields lists the numbers of a wind, with what they may be.
func WindFields() []quantity.Field[Wind] { return slices.Clone(windFields) }

// LayerFields lists the numbers of a layer of wind.
func LayerFields() []quantity.Field[Layer] { return slices.Clone(layerFields) }

// GustFields lists the numbers of a gust.
func GustFields() []quantity.Field[Gust] { return slices.Clone(gustFields) }

// heldIfGiven is a number held in its range; what is not given or no number is 0.
func heldIfGiven(r *quantity.Range, v float64) float64 {
	if v == 0 || math.IsNaN(v) {
		return 0
	}
	return r.Hold(v)
}
