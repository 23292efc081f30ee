package thrust_test

import (
	"fmt"
	"strings"

	"ullage/thrust"
)

func ExampleReadCurve() {
	curve, err := thrust.ReadCurve(strings.NewReader(`# an invented motor
time_s,thrust_n
0.05,120
0.80,110
1.20,0
`))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f N·s, class %s\n", curve.Impulse(), thrust.Class(curve.Impulse()))
	fmt.Printf("%.1f N over %.2f s\n", curve.Average(), curve.BurnTime())
	// Output:
	// 111.2 N·s, class G
	// 94.6 N over 1.18 s
}

func ExampleReadCurve_faults() {
	_, err := thrust.ReadCurve(strings.NewReader("time_s,thrust_n\n0.1,50 N\n0.1,-3\n"))
	fmt.Println(err)
	// Output:
	// line 2: 50 N: the thrust is not a number; give a plain number of N, without the unit
	// line 3: -3: the thrust is negative; give a number of N from 0 to 10000000
	// line 3: 0.1: the time does not rise above the 0.1 s of an earlier row; put the rows in order of time, each time once
}
