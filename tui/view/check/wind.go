package check

import (
	"context"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"ullage/sim/plan"
	"ullage/sim/report/words"
	"ullage/sim/rocket"
	"ullage/sim/study"
	"ullage/tui/draw"
	"ullage/tui/view"
)

// WindFinder finds up to which wind a rocket passes: [plan.MostWind], or what a test puts in its place.
type WindFinder func(context.Context, *rocket.Rocket, plan.Options) (plan.WindLimit, error)

// windLimit is up to which wind the rocket of a flight passes.
type windLimit struct {
	of *view.Outcome
	plan.WindLimit
}

// seekWind asks for the wind limit of the flight on show once its corners are there, which more is looked
// at for; what is of another flight is called off.
func (v *View) seekWind() tea.Cmd {
	now, corners := v.Scene.Now, v.Scene.Corners
	switch {
	case now == nil || now.Verdict == nil:
		v.wind.Stop()
		return nil
	case v.windOf == now && (v.wind.Busy || v.wind.Ready || v.wind.Err != nil):
		return nil
	case v.windOf != now:
		v.wind.Stop()
	}
	if !corners.Ready || corners.Result.Of != now {
		return nil
	}
	v.windOf = now
	find, today, judged := v.find, v.clock(), corners.Result.Verdict
	return v.wind.Ask(v.Scene.Ctx, func(ctx context.Context) (windLimit, error) {
		w, err := find(ctx, now.Flight.Rocket, plan.Options{Spreads: study.Spreads(now.File), Respread: study.Respread(now.File), Today: today, Judged: &judged})
		return windLimit{now, w}, err
	})
}

// windLines say up to which wind to fly. The words are those of the commands.
func (v *View) windLines() []string {
	theme, now := v.Scene.Theme, v.Scene.Now
	switch {
	case v.wind.Ready && v.wind.Result.of == now:
		return v.Paragraph(draw.Strong, words.In(v.Scene.Units).MostWind(&v.wind.Result.WindLimit))
	case v.wind.Err != nil && !v.wind.Busy && v.windOf == now:
		return v.Paragraph(draw.Dim, "No wind limit: "+view.FaultText(v.wind.Err, ""))
	case v.Scene.Corners.Err != nil && !v.Scene.Corners.Busy:
		return nil
	case v.wind.Ready:
		return v.Paragraph(draw.Dim, "before the last edit: "+words.In(v.Scene.Units).MostWind(&v.wind.Result.WindLimit)+theme.Ellipsis)
	}
	return v.Paragraph(draw.Dim, "The wind up to which every check passes follows"+theme.Ellipsis)
}

// Options are what the view begins with.
type Options struct {
	Clock func() time.Time // tells the day, for the age of a proof; nil: time.Now
	Winds WindFinder       // nil: plan.MostWind
}
