package logfile

import (
	"fmt"
	"strconv"
	"strings"

	"ullage/sim/fault"
	"ullage/sim/quantity"
)

// settleColumns decides what each column is: what the user says goes before what the
// header says.
func (rd *reader) settleColumns(o Options) *fault.Fault {
	taken := map[int]bool{}
	told := map[Quantity]bool{}
	add := func(c Column) {
		taken[c.At] = true
		rd.log.Columns = append(rd.log.Columns, c)
	}
	for _, t := range o.Columns {
		told[t.Quantity] = true
		if t.Quantity == Time && o.Rate > 0 && !t.None {
			return &fault.Fault{Key: "--rate", Problem: "is given beside a column of time", Remedy: "give one of the two"}
		}
		if t.None {
			continue
		}
		c, bad := rd.toldColumn(t)
		if bad != nil {
			return bad
		}
		if taken[c.At] {
			return &fault.Fault{Key: "--column", Value: string(t.Quantity) + "=" + strconv.Itoa(c.At), Problem: "the column is told to be something else too", Remedy: "leave one of the two out"}
		}
		add(c)
	}
	across := 0
	for _, h := range rd.layout.heads {
		if h.sideways {
			across++
		}
	}
	for i, h := range rd.layout.heads {
		switch {
		case taken[i+1] || i >= rd.layout.cells:
		case h.quantity == "", told[h.quantity], h.quantity == Time && o.Rate > 0:
			rd.other(i, h)
		case h.quantity == Time && rd.log.Find(Time) >= 0:
			rd.other(i, h)
		case h.sideways && across > 1:
			rd.other(i, h)
			rd.note(i+1, h.text, "one of several accelerations, of which none is known to be along the axis", "say which, as in --column 'acceleration="+strconv.Itoa(i+1)+" "+unitOr(h, "g")+"'")
		default:
			add(rd.column(i, h))
		}
	}
	return rd.enough(o)
}

func unitOr(h head, other string) string {
	if h.hasUnit {
		return h.unit.Name
	}
	return other
}

func (rd *reader) other(i int, h head) {
	name := h.text
	if name == "" {
		name = "column " + strconv.Itoa(i+1)
	}
	rd.log.Others = append(rd.log.Others, name)
}

// toldColumn finds the column that a user speaks of.
func (rd *reader) toldColumn(t Told) (Column, *fault.Fault) {
	at := t.At
	if t.Head != "" {
		for i, h := range rd.layout.heads {
			if strings.EqualFold(h.text, t.Head) {
				at = i + 1
			}
		}
		if at == 0 {
			return Column{}, &fault.Fault{Line: rd.layout.header, Key: "--column", Value: string(t.Quantity) + "=" + t.Head,
				Problem: "no column has this head", Remedy: rd.offer("give the number of one")}
		}
	}
	if at > rd.layout.cells {
		return Column{}, &fault.Fault{Line: rd.layout.first, Key: "--column", Value: string(t.Quantity) + "=" + strconv.Itoa(at),
			Problem: fmt.Sprintf("a row has %d columns", rd.layout.cells), Remedy: rd.offer("give the number of one")}
	}
	h := head{quantity: t.Quantity}
	if at <= len(rd.layout.heads) {
		written := rd.layout.heads[at-1]
		h.text = written.text
		if written.quantity == t.Quantity {
			h = written
		} else if written.hasUnit && written.unit.Dimension == t.Quantity.Dimension() {
			h.unit, h.hasUnit = written.unit, true
		}
	}
	if t.HasUnit {
		h.unit, h.hasUnit = t.Unit, true
	}
	c := rd.column(at-1, h)
	c.Told = true
	return c, nil
}

// column is a column by its head; a unit that is not told is the usual one.
func (rd *reader) column(i int, h head) Column {
	c := Column{Quantity: h.quantity, At: i + 1, Head: h.text, Unit: h.unit,
		Measured: h.measured, Absolute: h.absolute, Gauge: h.gauge}
	if !h.hasUnit {
		t := traitsOf(h.quantity)
		c.Unit, _ = quantity.LookupIn(t.unit, t.dimension)
		c.Guessed = "no unit is given"
	}
	return c
}

// enough refuses a log without a time or without anything over it.
func (rd *reader) enough(o Options) *fault.Fault {
	if o.Rate == 0 && rd.log.Find(Time) < 0 {
		return &fault.Fault{Line: max(rd.layout.header, rd.layout.first), Problem: "no column is known to be the time",
			Remedy: rd.offer("say which it is, as in --column 'time=1 s', or how often the recorder wrote, as in --rate '20 Hz'")}
	}
	for _, c := range rd.log.Columns {
		if c.Quantity != Time && c.Quantity != Temperature {
			return nil
		}
	}
	return &fault.Fault{Line: max(rd.layout.header, rd.layout.first), Problem: "no column is known to be a height, a pressure, a speed or an acceleration",
		Remedy: rd.offer("say which it is, as in --column 'height=2 m'")}
}

// offer is a remedy with the columns there are.
func (rd *reader) offer(remedy string) string {
	const most = 12
	if len(rd.layout.heads) == 0 {
		return fmt.Sprintf("%s; a row has %d columns and no heads", remedy, rd.layout.cells)
	}
	var names []string
	for i, h := range rd.layout.heads {
		if i == most {
			names = append(names, "…")
			break
		}
		names = append(names, fmt.Sprintf("%d %s", i+1, strconv.Quote(h.text)))
	}
	return remedy + "; the columns are " + strings.Join(names, ", ")
}

// note adds a remark about a column.
func (rd *reader) note(column int, head, problem, remedy string) {
	rd.log.Notes = append(rd.log.Notes, fault.Fault{Key: columnName(column, head), Problem: problem, Remedy: remedy})
}

// columnName is how messages call a column.
func columnName(at int, head string) string {
	name := "column " + strconv.Itoa(at)
	if head != "" {
		name += " (" + head + ")"
	}
	return name
}

// Name is how messages call the column.
func (c *Column) Name() string { return columnName(c.At, c.Head) }
