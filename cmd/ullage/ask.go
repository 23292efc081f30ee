package main

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"os"
	"slices"
	"strings"

	"ullage/sim/flown/logbook"
)

// ask asks for what matters and is missing, where someone can answer; what is wrong is asked for again.
func (c *recordCommand) ask(s *streams, e *logbook.Entry) error {
	input, ok := s.in.(*os.File)
	if !ok || !isTerminal(input) || !isTerminal(s.err) {
		return nil
	}
	wanted := []string{"pressure", "held", "wall_temperature", "damage", "note"}
	if e.Kind == logbook.Flight {
		wanted = []string{"pressure", "landing", "damage", "note"}
	}
	lines := bufio.NewReader(input)
	for _, f := range logbook.Told() {
		if !slices.Contains(wanted, f.Key) || f.Text != nil && *f.Text(e) != "" || f.Number != nil && !math.IsNaN(*f.Number(e)) || f.Key == "pressure" && !lacksPressure(e) {
			continue
		}
		for {
			none := "; empty for none"
			if f.Key == "pressure" {
				none = ""
			}
			fmt.Fprintf(s.err, "%s (%s%s): ", f.Key, f.Help, none)
			line, err := await(s.ctx, func() (string, error) { return lines.ReadString('\n') })
			if err == io.EOF { // no more answers
				fmt.Fprintln(s.err)
				return nil
			}
			if err != nil {
				return err
			}
			value := strings.TrimSpace(line)
			if value == "" {
				if f.Key != "pressure" {
					break
				}
				fmt.Fprintln(s.err, noPressure(e, "write it as in 9 bar"))
				continue
			}
			bad := f.Take(e, value)
			if bad == nil && f.Key == "pressure" && e.Kind == logbook.Proof && e.Pressure <= 0 {
				e.Pressure = math.NaN()
				fmt.Fprintln(s.err, noPressure(e, "write it as in 9 bar"))
				continue
			}
			if bad == nil {
				break
			}
			fmt.Fprintln(s.err, bad)
		}
	}
	return nil
}

// lacksPressure tells whether an entry of the chamber under pressure does not say to what.
func lacksPressure(e *logbook.Entry) bool { return e.Pressurises() && math.IsNaN(e.Pressure) }

// noPressure says what such an entry needs, as it is to be written.
func noPressure(e *logbook.Entry, write string) string {
	if e.Kind == logbook.Proof { // without pressure it is none
		return "its pressure is missing; " + write
	}
	return "its pressure is missing; " + write + ", or '0 bar' for none"
}
