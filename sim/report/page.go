package report

// page is a report that is written as text for a terminal and as Markdown to print.
type page struct {
	title    string
	sections []section
}

// section is one heading with what stands below it; the first may have no name.
type section struct {
	name   string
	blocks []block
	print  bool // only where the page is printed: blanks to fill in
}

// block is a paragraph, a list or a table.
type block interface {
	text(s *sheet)
	markdown(m *markdown)
}

type (
	// prose is a paragraph.
	prose string
	// alarm is a paragraph to be seen.
	alarm string
	// facts are figures with labels.
	facts []fact
	fact  struct{ label, value string }
	// grid is a table whose cells are known; words stand to the left.
	grid struct {
		heads []gridHead
		rows  [][]string
	}
	gridHead struct {
		name  string
		words bool
	}
	// steps are to be done in their order and ticked off, a phase of the work at a time;
	// their numbers go on from one phase to the next.
	steps struct {
		phase string
		from  int
		does  []string
	}
	// points are a list in no order.
	points []string
)

// add appends blocks to a section.
func (s *section) add(blocks ...block) { s.blocks = append(s.blocks, blocks...) }
