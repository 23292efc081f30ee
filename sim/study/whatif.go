package study

import (
	"context"

	"ullage/sim"
)

// WhatIf is a canopy that opens otherwise than planned.
type WhatIf struct {
	Case    WhatIfCase
	Shift   float64     // of the rule's number, s
	Flight  *sim.Flight // nil when the case makes no sense: see Problem
	Problem string
}

// WhatIfCase names a way to open otherwise than planned.
type WhatIfCase string

// The cases.
const (
	AsPlanned WhatIfCase = "as planned"
	EarlyBy1s WhatIfCase = "1 s early"
	LateBy1s  WhatIfCase = "1 s late"
	LateBy20  WhatIfCase = "20 % late" // a delay's tolerance
	NotAtAll  WhatIfCase = "never"
)

// WhatIfs flies a rocket with one canopy opening otherwise than planned.
func WhatIfs(ctx context.Context, r *sim.Rocket, canopy int, o Options) ([]WhatIf, error) {
	return nil, errLater
}
