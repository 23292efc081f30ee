// Package ground is the ground around the pad: places on the map and metres from the pad, the
// boundary of a field, and how far away codes want people to be. It knows no rocket.
package ground
