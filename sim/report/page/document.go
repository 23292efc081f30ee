package page

// Document is a report that is written as text for a terminal, and as Markdown or HTML to
// print.
type Document struct {
	Title    string
	Sections []Section
}

// Section is one heading with what stands below it; the first may have no name.
type Section struct {
	Name   string
	Blocks []Block
	Print  bool     // only where the page is printed: blanks to fill in
	Begins bool     // on a sheet of its own, where the page is printed
	Inputs []string // that it is made of or lacks, by their names, for whoever can go there; written nowhere
}

// Block is a paragraph, a list or a table.
type Block interface {
	text(s *Sheet)
	markdown(m *markdown)
	html(h *htmlPage)
}

type (
	// Prose is a paragraph.
	Prose string
	// Alarm is a paragraph to be seen.
	Alarm string
	// Facts are labels, each with its figure.
	Facts [][2]string
	// Grid is a table whose cells are known. Its rows may be there to be ticked off, where it
	// is printed.
	Grid struct {
		Heads []GridHead
		Rows  [][]string
		Ticks bool
	}
	// GridHead heads a column: of words, which stand to the left, or of figures.
	GridHead struct {
		name  string
		words bool
	}
	// Steps are to be done in their order and ticked off, a phase of the work at a time;
	// their numbers go on from one phase to the next.
	Steps struct {
		Phase string
		From  int
		Does  []string
	}
	// Points are a list in no order.
	Points []string
)

// Add appends blocks to a section.
func (s *Section) Add(blocks ...Block) { s.Blocks = append(s.Blocks, blocks...) }

// Words heads a column of words.
func Words(name string) GridHead { return GridHead{name, true} }

// Figures heads a column of figures.
func Figures(name string) GridHead { return GridHead{name, false} }

// Name is what stands above the column.
func (h GridHead) Name() string { return h.name }

// OfWords tells of a column of words.
func (h GridHead) OfWords() bool { return h.words }

// AllWords heads columns of words.
func AllWords(names ...string) []GridHead {
	heads := make([]GridHead, len(names))
	for i, name := range names {
		heads[i] = Words(name)
	}
	return heads
}
