package quantity

import (
	"slices"
	"strings"
)

// points are the compass points from north clockwise, 22.5 degrees apart.
var points = []string{"N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"}

// compassPoint reads a bearing by its name, such as SW, in any case.
func (p *parser) compassPoint(name string) (Quantity, error) {
	i := slices.Index(points, strings.ToUpper(name))
	if i < 0 {
		return p.fault("is not "+p.dimension.String(), p.byExample()+` or "`+points[10]+`"`)
	}
	deg := Usual(Bearing)
	return Quantity{Value: deg.ToSI(22.5 * float64(i)), Unit: deg}, nil
}
