package logfile

import (
	"strconv"
	"strings"
	"time"
)

// clock reads a time of day, 14:03:07.25, or with its date, 2026-05-03T14:03:07.25Z (ISO
// 8601), in seconds. A comma may stand for the point.
func clock(s string) (float64, bool) {
	if strings.Count(s, ":") < 1 || strings.Count(s, ":") > 3 {
		return 0, false
	}
	day, at := 0.0, s
	if len(s) > 11 && (s[10] == 'T' || s[10] == ' ') {
		d, err := time.Parse(time.DateOnly, s[:10])
		if err != nil {
			return 0, false
		}
		day, at = float64(d.Unix()), s[11:]
		at = strings.TrimSuffix(at, "Z")
		if i := strings.LastIndexAny(at, "+-"); i > 0 {
			at = at[:i] // the zone is the same all along
		}
	}
	parts := strings.Split(strings.Replace(at, ",", ".", 1), ":")
	if len(parts) > 3 {
		return 0, false
	}
	v := 0.0
	for i, p := range parts {
		n, err := strconv.ParseFloat(p, 64)
		last := i == len(parts)-1
		if err != nil || !(n >= 0) || i > 0 && n >= 60 || n > 1e5 || !last && strings.ContainsAny(p, ".eE") {
			return 0, false
		}
		v = v*60 + n
	}
	return day + v, true
}
