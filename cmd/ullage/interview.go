package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"ullage/sim/rocket"
	"ullage/sim/rocketfile"
)

// What may be typed in place of an answer.
const (
	backWord = "<"
	stopWord = "."
)

// interview asks for a rocket value by value and writes every answer into its file at once, so that nothing typed is
// lost however it ends. What is known of its shape is drawn as it grows.
func (s *streams) interview(f *rocketfile.File, drawn *growing) error {
	fmt.Fprintf(s.err, "Each value may be typed in any unit of its kind. Nothing typed takes what is offered, or leaves the question open; %s goes back, %s ends.\n", backWord, stopWord)
	in := bufio.NewReader(io.LimitReader(s.in, mostInput))
	kept, step := 0, ""
	at := rocketfile.NextQuestion(f.Questions(), 0)
	for at >= 0 {
		all := f.Questions()
		if at >= len(all) {
			break
		}
		q := all[at]
		if q.Step != step {
			step = q.Step
			fmt.Fprintf(s.err, "\n%s\n", strings.ToUpper(step))
		}
		fmt.Fprintf(s.err, "%s (%d of %d): %s\n  %s > ", q.Name, at+1, len(all), q.Input.Help, takes(&q))
		line, err := await(s.ctx, func() (string, error) { return in.ReadString('\n') })
		text := strings.TrimSpace(line)
		switch {
		case err != nil && (!errors.Is(err, io.EOF) || text == ""):
			s.keptAnswers(f, kept)
			if errors.Is(err, io.EOF) {
				return nil
			}
			return err
		case text == stopWord:
			s.keptAnswers(f, kept)
			return nil
		case text == backWord:
			at = max(at-1, 0)
			continue
		}
		made, err := f.Answer(q, text, time.Now())
		if err != nil {
			fmt.Fprintf(s.err, "  not understood: %s\n", strings.ReplaceAll(err.Error(), "\n", "\n  "))
			continue
		}
		if made != f {
			if err := made.Save(); err != nil {
				s.keptAnswers(f, kept)
				return err
			}
			f, kept = made, kept+1
			drawn.show(f)
		}
		now := f.Questions()
		for i := range now {
			if now[i].Name == q.Name {
				at = i
			}
		}
		at = rocketfile.NextQuestion(now, at+1)
	}
	s.keptAnswers(f, kept)
	return nil
}

// takes says what a question takes, and what nothing typed does.
func takes(q *rocketfile.Question) string {
	is := q.Input.Takes()
	if len(q.Input.Choices) > 0 && q.Input.Kind == rocketfile.ChoiceKind {
		is = strings.Join(q.Input.Choices, ", ")
	} else if q.Unit.Name != "" {
		is += "; a number alone is in " + q.Unit.Name
	}
	switch offer := q.Offer(); {
	case q.Given:
		return is + " [" + q.Text + "]"
	case offer != "":
		return is + " [" + offer + "]"
	}
	return is
}

// keptAnswers tells what is in the file and what each answer still takes.
func (s *streams) keptAnswers(f *rocketfile.File, kept int) {
	fmt.Fprintf(s.err, "\nkept %d answers in %s; ullage %s goes on with it on the screen\n", kept, f.Name(), f.Name())
	for _, a := range rocket.Answers() {
		var keys []string
		all := f.Rocket().Check(a)
		if a == rocket.ForFlight {
			all = f.Unfinished()
		}
		for _, o := range all {
			keys = append(keys, o.Key)
		}
		if len(keys) > 0 {
			fmt.Fprintf(s.err, "%s still takes %s\n", a, strings.Join(keys, ", "))
		}
	}
}
