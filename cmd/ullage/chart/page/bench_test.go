package page

import "testing"

func BenchmarkSVG(b *testing.B) {
	p := sample()
	for b.Loop() {
		p.SVG()
	}
}

func BenchmarkPNG(b *testing.B) {
	p := sample()
	for b.Loop() {
		if _, err := p.PNG(DefaultResolution); err != nil {
			b.Fatal(err)
		}
	}
}
