package pattern

import (
	"math"

	"ullage/sim/gore"
	"ullage/sim/rocket"
)

// CanopyProfile is half a section through a canopy, from its skirt to its vent or top, whose
// surface with its vent has the nominal area (that is what the area is of: Knacke, Parachute
// Recovery Systems Design Manual, from memory).
func CanopyProfile(k *rocket.Canopy) gore.Profile {
	area := k.NominalArea()
	var whole gore.Profile
	switch k.Shape {
	case rocket.HemisphereCanopy:
		radius := math.Sqrt(area / (2 * math.Pi))
		whole = gore.Ellipsoid(radius, radius)
	case rocket.EllipsoidCanopy: // half an oblate spheroid of axes 2 to 1 (common practice, no source), whose area is closed
		e := math.Sqrt(0.75)
		radius := math.Sqrt(area / (math.Pi * (1 + 0.25/e*math.Atanh(e))))
		whole = gore.Ellipsoid(radius, radius/2)
	default:
		whole = gore.Cone(math.Sqrt(area/math.Pi), 0, 0)
	}
	if k.Vent == 0 {
		return whole
	}
	var points []Point
	vent := k.Vent / 2
	for _, q := range whole.Points() {
		if q.Y <= vent {
			last := points[len(points)-1]
			share := (last.Y - vent) / (last.Y - q.Y)
			points = append(points, Point{X: last.X + share*(q.X-last.X), Y: vent})
			break
		}
		points = append(points, q)
	}
	return gore.Of(points...)
}

// canopyGore is one gore of a canopy with its seams.
func canopyGore(k *rocket.Canopy) Pattern {
	n, seam := k.Gores, k.Seam
	if n == 0 {
		n = rocket.UsualGores
	}
	if seam == 0 {
		seam = rocket.UsualSeam
	}
	shape := k.Shape
	if shape == "" {
		shape = rocket.FlatCanopy
	}
	profile := CanopyProfile(k)
	a := gore.Allowance{Side: seam, Rim: seam}
	if k.Vent > 0 {
		a.Far = seam
	}
	g := profile.Gores(n)
	p := GorePattern("canopy-"+k.Name+"-gore", "canopy "+k.Name+": one gore", g, a, 0, places(g.Length()))
	p.Input = "canopy." + k.Name + ".diameter"
	p.length("skirt, across the canopy as constructed", 2*profile.Points()[0].Y)
	p.length("nominal diameter", k.NominalDiameter())
	p.Figures = append(p.Figures, Figure{Name: "nominal area", Value: k.NominalArea(), Unit: "m2"})
	if k.Vent > 0 {
		p.length("vent", k.Vent)
	}
	p.note("Shape as constructed: " + string(shape) + ". Seams at both sides, a hem at the skirt and, where there is a vent, one there: each as wide as the allowance. As many lines as gores, from the seams; their length is not described and not drawn.")
	if k.Shape == "" || k.Gores == 0 || k.Seam == 0 {
		p.note("What is not given of shape, gores and seam (canopy." + k.Name + ".shape, gores, seam) is common practice, no source.")
	}
	p.note("Warp along the middle of the gore: common practice, no source. The drag coefficient of the file goes with its nominal area, whatever is sewn: a vent, another cloth and line length change it.")
	return p
}
