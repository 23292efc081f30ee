package report

import (
	"ullage/sim/ground"
	"ullage/sim/report/machine"
)

// clearJSON is how far people are kept from the pad, m, by which of three, and what each asks for:
// null where it says nothing. The class of codes is empty beyond those they have.
type clearJSON struct {
	People  *number       `json:"people_m"`
	By      ground.Ruling `json:"by"`
	Code    *number       `json:"code_m"`
	Class   string        `json:"class"`
	Cleared *number       `json:"cleared_across_m"`
	Field   *number       `json:"field_m"`
	Blast   *number       `json:"blast_m"`
}

func newClear(k ground.Kept) clearJSON {
	said := func(v float64) *number {
		if v == 0 {
			return nil
		}
		return machine.Pointer(v)
	}
	return clearJSON{said(k.People), k.By, said(k.Code.People), k.Code.Class, said(k.Code.Cleared), said(k.Field), said(k.Blast)}
}
