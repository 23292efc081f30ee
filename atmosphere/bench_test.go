package atmosphere_test

import (
	"testing"

	"ullage/atmosphere"
)

// sink keeps the compiler from dropping what is measured.
var sink float64

// heights rise evenly from the ground to a top.
func heights(top float64) *[1024]float64 {
	var list [1024]float64
	for i := range list {
		list[i] = top * float64(i) / 1023
	}
	return &list
}

func BenchmarkColumnAt(b *testing.B) {
	dry := atmosphere.Site{Elevation: 320, Temperature: 291.15}
	moist := dry
	moist.Humidity = 0.6
	for _, bb := range []struct {
		name string
		site atmosphere.Site
		top  float64
	}{
		{"dry below 2 km", dry, 2000},
		{"moist below 2 km", moist, 2000},
		{"dry to 40 km", dry, 40000},
	} {
		b.Run(bb.name, func(b *testing.B) {
			c := bb.site.Column()
			h := heights(bb.top)
			for i := 0; b.Loop(); i++ {
				p, rho := c.At(h[i&1023])
				sink += p + rho
			}
		})
	}
}

func BenchmarkSiteColumn(b *testing.B) {
	for _, bb := range []struct {
		name string
		site atmosphere.Site
	}{
		{"dry", atmosphere.Site{Elevation: 320}},
		{"moist", atmosphere.Site{Elevation: 320, Humidity: 0.6}},
	} {
		b.Run(bb.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				c := bb.site.Column()
				sink += c.Gravity(0)
			}
		})
	}
}

func BenchmarkGravity(b *testing.B) {
	c := atmosphere.Site{Elevation: 320}.Column()
	h := heights(2000)
	for i := 0; b.Loop(); i++ {
		sink += c.Gravity(h[i&1023])
	}
}

func BenchmarkProfileAt(b *testing.B) {
	for _, bb := range []struct {
		name string
		wind atmosphere.Wind
	}{
		{"calm", atmosphere.Wind{}},
		{"seventh power", atmosphere.Wind{Speed: 4, Exponent: 1.0 / 7, From: 4}},
	} {
		b.Run(bb.name, func(b *testing.B) {
			p := bb.wind.Profile()
			h := heights(2000)
			for i := 0; b.Loop(); i++ {
				east, north := p.At(h[i&1023])
				sink += east + north
			}
		})
	}
}

func BenchmarkWindProfile(b *testing.B) {
	w := atmosphere.Wind{Speed: 4, Exponent: 1.0 / 7, From: 4}
	b.ReportAllocs()
	for b.Loop() {
		p := w.Profile()
		if p.Calm() {
			b.Fatal("no wind")
		}
	}
}
