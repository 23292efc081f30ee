package form

// Form is pages, each for a sheet of its own.
type Form []Page

// Page is one sheet.
type Page struct {
	Title   string // what it is about
	Kind    string // what it is, small beside the title
	Alarm   string // large and plain at the top, as "NO-GO"; empty for none
	Verdict string // in a line below
	Facts   []Blank
	Beside  []Block // stand side by side where there is room, in this order
	Below   []Block // across the page
}

// Block is a titled part of a page. It shows what it has, in this order.
type Block struct {
	Title  string
	Table  *Table
	Ticks  []string // to be done and ticked off, in this order
	Notes  []string // sentences
	Blanks []Blank
}

// Blank is a label with its text, or with room to write by hand.
type Blank struct {
	Label   string
	Text    string
	Choices []string // to tick one of by hand, instead of a text
}

// Table is a table whose rows are short.
type Table struct {
	Columns []Column
	Rows    []Row
}

// Column heads one column.
type Column struct {
	Head string
	Unit string // below or beside the head; may be empty
	Kind Kind
}

// Kind is what a column holds.
type Kind int

// The kinds.
const (
	Words   Kind = iota
	Figures      // to the right
	ByHand       // room to write in; its cells are empty
)

// Row is one row; cells that are missing at its end are empty.
type Row struct {
	Cells []string
	Mark  Mark
	Below []string // sentences about the row
}

// Mark sets a row apart in print, where there may be no colour.
type Mark int

// The marks.
const (
	None   Mark = iota
	Doubt       // ?
	Failed      // !
)

func (m Mark) String() string { return [...]string{"", "?", "!"}[m] }

// marked tells whether any row is.
func (t *Table) marked() bool {
	for i := range t.Rows {
		if t.Rows[i].Mark != None {
			return true
		}
	}
	return false
}

// Headed tells whether any column has a head.
func (t *Table) Headed() bool {
	for _, c := range t.Columns {
		if c.Head != "" {
			return true
		}
	}
	return false
}

// Cell is a cell of the row, empty past its end.
func (r Row) Cell(i int) string {
	if i < len(r.Cells) {
		return r.Cells[i]
	}
	return ""
}
