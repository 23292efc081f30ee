// Package fieldmap writes where a rocket flies and may come down as maps for other programs: GeoJSON
// (RFC 7946) and KML 2.3 (OGC 12-007r2). What is on a map is said once, as features in the plane
// around the pad; each form only writes them. It flies nothing.
package fieldmap
