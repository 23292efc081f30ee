package report

import (
	"ullage/sim"
	"ullage/sim/gates"
	"ullage/sim/quantity"
	"ullage/sim/report/page"
	"ullage/sim/report/words"
)

// WarningText is a warning as sentences: what happened, and what to do about it.
func WarningText(w sim.Warning, sys quantity.System) string { return words.In(sys).Warning(w) }

// warningFinding is a warning as a finding: as bad as the check that it fails; a note is one.
func warningFinding(p words.Printer, w sim.Warning) Finding {
	f := Finding{Key: "warning." + string(w.Code), Level: gates.Caution, Detail: p.Warning(w)}
	f.Label, f.Value, f.Word = p.ShortWarning(w)
	if gates.CheckOf(w) != "" {
		f.Level = gates.Bad
	}
	if name := page.Printable(w.Canopy); name != "" {
		f.Key += "." + name
	}
	return f
}
