// Package bench is the arithmetic of a rocket's small parts: the groove of an O-ring, the static ports of
// an altimeter's bay, holes to drill for a vent, the gap that an angle makes at the end of a rod, and what it takes to
// pump a chamber up. It knows no flights and no files: SI units in and out, angles in radians,
// pressures gauge unless called absolute. What is 0 is not given.
package bench
