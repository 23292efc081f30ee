package atmosphere_test

import (
	"fmt"
	"math"

	"ullage/atmosphere"
)

func ExampleStandard() {
	for _, z := range []float64{0, 1000, 11000} {
		a := atmosphere.Standard(z)
		fmt.Printf("%5.0f m: %.2f K, %.0f Pa, %.4f kg/m³, sound %.2f m/s\n", z, a.Temperature, a.Pressure, a.Density, a.SoundSpeed)
	}
	// Output:
	//     0 m: 288.15 K, 101325 Pa, 1.2250 kg/m³, sound 340.29 m/s
	//  1000 m: 281.65 K, 89876 Pa, 1.1117 kg/m³, sound 336.43 m/s
	// 11000 m: 216.77 K, 22700 Pa, 0.3648 kg/m³, sound 295.15 m/s
}

// A site 320 m up on a warm, damp day, whose pressure is known at sea level.
func ExampleSite_Column() {
	day := atmosphere.Site{Elevation: 320, Temperature: 298.15, SeaLevelPressure: 101300, Humidity: 0.6}
	column := day.Column()
	for _, h := range []float64{0, 200} {
		p, rho := column.At(h)
		fmt.Printf("%3.0f m above the pad: %.0f Pa, %.4f kg/m³\n", h, p, rho)
	}
	// Output:
	//   0 m above the pad: 97693 Pa, 1.1331 kg/m³
	// 200 m above the pad: 95491 Pa, 1.1128 kg/m³
}

func ExampleSite_Faults() {
	site := atmosphere.Site{Elevation: 1500, Pressure: 101300}
	for _, f := range site.Faults() {
		fmt.Printf("%s %s; %s\n", f.Key, f.Problem, f.Remedy)
	}
	// Output:
	// site.pressure at 1500 m would be 1214 hPa at sea level; give the pressure at the station, about 846 hPa at that elevation, or sea_level_pressure instead
}

// A west wind of 4 m/s at 10 m over open grass.
func ExampleWind_Profile() {
	profile := atmosphere.Wind{Speed: 4, Height: 10, Exponent: 1.0 / 7, From: 270 * math.Pi / 180}.Profile()
	for _, h := range []float64{2, 10, 100} {
		east, _ := profile.At(h)
		fmt.Printf("at %3.0f m it carries east at %.2f m/s\n", h, east)
	}
	// Output:
	// at   2 m it carries east at 3.18 m/s
	// at  10 m it carries east at 4.00 m/s
	// at 100 m it carries east at 5.56 m/s
}
