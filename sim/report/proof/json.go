package proof

import (
	"io"
	"math"

	"ullage/sim/chamber"
	"ullage/sim/report/machine"
	"ullage/sim/rocket"
	"ullage/sim/study"
)

type number = machine.Number

// The document of `proof --json`: pressures gauge, SI units, null for what is not known.
// The keys up to parts are fixed.
type (
	document struct {
		Wall            number        `json:"wall_m"`
		Tube            number        `json:"tube_kg"`
		Hoop            number        `json:"hoop_pa"`
		Axial           number        `json:"axial_pa"`
		Burst           number        `json:"burst_pa"`
		BurstBasis      chamber.Basis `json:"burst_basis"`
		BurstStated     bool          `json:"burst_stated"`
		Weakest         *string       `json:"weakest"`
		Proof           number        `json:"proof_pa"`
		Working         number        `json:"working_pa"`
		StoredWorking   number        `json:"stored_working_j"`
		StoredPneumatic number        `json:"stored_pneumatic_proof_j"`
		TNT             number        `json:"tnt_kg"`
		Standoff        number        `json:"standoff_m"`
		Parts           []partJSON    `json:"parts"`

		Name         string             `json:"name"`
		Material     chamber.Material   `json:"material"`
		WorkingBasis study.WorkingBasis `json:"working_basis"`
		Typical      bool               `json:"burst_typical"`
		Fibre        *number            `json:"fibre_fraction"`
		Cloth        []clothJSON        `json:"cloth"`
		Resin        number             `json:"resin_kg"`
		Waste        number             `json:"waste"`
		Heat         number             `json:"heat_factor"`
		HeatLeft     number             `json:"heat_left"`
		Cycle        number             `json:"cycle_factor"`
		Bond         number             `json:"bond_factor"`
		Estimate     number             `json:"estimate_pa"`
		Wanted       number             `json:"proof_wanted_pa"`
		Limit        number             `json:"proof_limit_pa"`
		Enough       bool               `json:"proof_enough"`
		MostWorking  number             `json:"most_working_pa"`
		OnRecord     *number            `json:"proof_on_record_pa"`
		ProofDate    *string            `json:"proof_date"`
		OnRecordFor  *number            `json:"proof_on_record_for_pa"`
		Stages       []stageJSON        `json:"stages"`
		Dilation     dilationJSON       `json:"dilation"`
		Strain       number             `json:"strain"`
		ProofStrain  number             `json:"proof_strain"`
		Cracks       bool               `json:"cracks"`
		ProofCracks  bool               `json:"cracks_at_proof"`
		Stored       storesJSON         `json:"stored"`
		Heating      *heatingJSON       `json:"heating"`
		Forces       forcesJSON         `json:"forces"`
		Flights      []flightJSON       `json:"flights"`
		Mount        []holdJSON         `json:"mount"`
		Laps         []lapJSON          `json:"laps"`
	}
	partJSON struct {
		Name     string       `json:"name"`
		Stress   number       `json:"stress_pa"`
		Strength number       `json:"strength_pa"`
		Use      number       `json:"use"`
		Typical  bool         `json:"typical"`
		Note     chamber.Note `json:"note"`
	}
	lapJSON struct {
		End     string `json:"end"`
		Overlap number `json:"overlap_m"`
		Useful  number `json:"useful_overlap_m"`
		Load    number `json:"load_n_per_m"`
		Average number `json:"average_holds_n_per_m"`
		Ends    number `json:"ends_hold_n_per_m"`
		Peak    number `json:"elastic_peak_pa"`
	}
	clothJSON struct {
		Ply       string `json:"ply"`
		Thickness number `json:"thickness_m"`
		Area      number `json:"area_m2"`
		Mass      number `json:"mass_kg"`
	}
	stageJSON struct {
		Pressure number `json:"pressure_pa"`
		Hold     number `json:"hold_s"`
	}
	dilationJSON struct {
		Around   number `json:"around"`
		Along    number `json:"along"`
		Diameter number `json:"diameter_m"`
		Length   number `json:"length_m"`
		Volume   number `json:"volume_m3"`
		Water    number `json:"water_m3"`
		Pump     number `json:"pump_m3"`
		Set      number `json:"set_m3"`
	}
	storesJSON struct {
		Working   storedJSON `json:"working"`
		Pneumatic storedJSON `json:"pneumatic_proof"`
		Hydraulic storedJSON `json:"hydraulic_proof"`
	}
	storedJSON struct {
		Isentropic number `json:"isentropic_j"`
		Brode      number `json:"brode_j"`
		TNT        number `json:"tnt_kg"`
	}
	heatingJSON struct {
		Dry      number `json:"dry_pa"`
		Damp     number `json:"damp_pa"`
		DryUse   number `json:"dry_use"`
		DampUse  number `json:"damp_use"`
		Vent     number `json:"vent_m"`
		DampVent number `json:"damp_vent_m"`
	}
	forcesJSON struct {
		Closure       number `json:"closure_working_n"`
		ClosureProof  number `json:"closure_proof_n"`
		Retainer      number `json:"retainer_working_n"`
		RetainerProof number `json:"retainer_proof_n"`
	}
	flightJSON struct {
		Power        rocket.Power `json:"power"`
		Thrust       number       `json:"thrust_n"`
		Acceleration number       `json:"acceleration_mps2"`
		Startup      number       `json:"startup_thrust_n"`
		StartupTime  number       `json:"startup_duration_s"`
		Canopies     []pullJSON   `json:"canopies"`
	}
	pullJSON struct {
		Name     string `json:"name"`
		Airspeed number `json:"airspeed_mps"`
		Load     number `json:"load_n"`
		Bound    number `json:"load_bound_n"`
		Snatch   number `json:"snatch_n"`
	}
	holdJSON struct {
		Name     string `json:"name"`
		Strength number `json:"strength_n"`
		Use      number `json:"use"`
		MostUse  number `json:"use_at_most"`
		Typical  bool   `json:"typical"`
	}
)

// WriteJSON writes all about a rocket's pressure chamber as one JSON object.
func WriteJSON(w io.Writer, s *study.Structure) error {
	return machine.WriteDocument(w, newDocument(s))
}

func newDocument(s *study.Structure) document {
	r, v, t := &s.Result, &s.Vessel, &s.Result.Tube
	working := s.Service.Working
	j := document{
		Wall: number(t.Wall), Tube: number(t.Mass), Hoop: number(s.Hoop(working)), Axial: number(s.Axial(working)),
		Burst: number(r.Burst), BurstBasis: r.Basis, BurstStated: r.Stated, Proof: number(r.Proof), Working: number(working),
		StoredWorking: number(r.Gas.Isentropic), StoredPneumatic: number(r.Pneumatic.Isentropic),
		TNT: number(r.Gas.TNT), Standoff: number(r.Gas.StandoffFloor), Parts: []partJSON{},
		Name: s.Rocket.Name, Material: v.Material, WorkingBasis: s.Basis, Typical: s.Typical(),
		Cloth: []clothJSON{}, Resin: number(t.Resin), Waste: number(v.Waste),
		Heat: number(r.HeatFactor), HeatLeft: number(r.HeatLeft), Cycle: number(r.CycleFactor), Bond: number(r.BondFactor), Estimate: number(r.Estimate),
		Wanted: number(r.ProofWanted), Limit: number(r.ProofLimit), Enough: r.ProofEnough, MostWorking: number(r.MostWorking),
		Stages: []stageJSON{}, Dilation: newDilation(&r.Dilation),
		Strain: number(r.Strain), ProofStrain: number(r.ProofStrain), Cracks: r.Cracks, ProofCracks: r.CracksAtProof,
		Stored: storesJSON{newStored(r.Gas), newStored(r.Pneumatic), newStored(r.Hydraulic)},
		Forces: forcesJSON{number(s.ClosureForce(working)), number(s.ClosureForce(r.Proof)),
			number(s.RetainerForce(working)), number(s.RetainerForce(r.Proof))},
		Flights: []flightJSON{}, Mount: []holdJSON{},
	}
	if r.Weakest >= 0 {
		j.Weakest = &r.Parts[r.Weakest].Name
	}
	j.Laps = []lapJSON{}
	for _, l := range r.Laps {
		j.Laps = append(j.Laps, lapJSON{l.End, number(l.Overlap), number(l.Useful), number(l.Load), number(l.Average), number(l.Ends), number(l.Peak)})
	}
	for i := range r.Parts {
		x := &r.Parts[i]
		j.Parts = append(j.Parts, partJSON{x.Name, number(x.Stress), number(x.Strength), number(x.Use), x.Typical, x.Note})
	}
	if t.FibreFraction > 0 {
		j.Fibre = machine.Pointer(t.FibreFraction)
	}
	for _, c := range t.Cloth {
		j.Cloth = append(j.Cloth, clothJSON{c.Ply, number(c.Thickness), number(c.Area), number(c.Mass)})
	}
	if v.Proof > 0 {
		j.OnRecord, j.OnRecordFor = machine.Pointer(v.Proof), machine.Pointer(r.MostOnRecord)
	}
	if v.ProofDate != "" {
		j.ProofDate = &v.ProofDate
	}
	if h := r.Heated; h != nil {
		j.Heating = &heatingJSON{number(h.Dry), number(h.Damp), number(h.DryUse), number(h.DampUse), number(h.Vent.Hole), number(h.DampVent.Hole)}
	}
	j.loads(s)
	return j
}

// loads adds the stages of the proof, the flights and what they ask of the mount.
func (j *document) loads(s *study.Structure) {
	p := proof{Structure: s}
	if p.provable() {
		for i := range chamber.ProofStages {
			x := stageJSON{number(s.Result.Proof * float64(i+1) / chamber.ProofStages), chamber.StageHold}
			if i == chamber.ProofStages-1 {
				x.Hold = chamber.ProofHold
			}
			j.Stages = append(j.Stages, x)
		}
	}
	pulls := p.pulls()
	for _, fl := range s.Flights {
		f := flightJSON{Power: fl.Rocket.Power, Thrust: number(fl.Max.Thrust), Acceleration: number(fl.Max.Acceleration),
			Startup: number(fl.Startup.Thrust), StartupTime: number(fl.Startup.Duration), Canopies: []pullJSON{}}
		for _, x := range pulls {
			if x.flight == fl {
				f.Canopies = append(f.Canopies, pullJSON{x.canopy, number(x.c.Airspeed), number(x.c.Load), number(x.c.LoadBound), number(x.snatch)})
			}
		}
		j.Flights = append(j.Flights, f)
	}
	m := s.Rocket.Recovery
	if m == nil {
		return
	}
	g := greatestPull(pulls)
	for _, h := range m.Uses(g.load) {
		x := holdJSON{h.Name, number(h.Strength), number(h.Use), number(g.most / h.Strength), h.Typical}
		if len(pulls) == 0 {
			x.Use, x.MostUse = number(math.NaN()), number(math.NaN())
		}
		j.Mount = append(j.Mount, x)
	}
}

func newDilation(d *chamber.Dilation) dilationJSON {
	return dilationJSON{number(d.Around), number(d.Along), number(d.Diameter), number(d.Length), number(d.Volume),
		number(d.Water), number(d.Pump), number(d.Set)}
}

func newStored(e chamber.Stored) storedJSON {
	return storedJSON{number(e.Isentropic), number(e.Brode), number(e.TNT)}
}
