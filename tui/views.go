package tui

import "ullage/tui/view"

// views are the ways of looking at a rocket, in the order of their keys in the title. The
// first is shown at the start.
func views(k view.Keys) []view.View {
	return []view.View{
		newFlightView(k),
		newFillView(k),
		newThroatsView(k),
		newOpeningView(k),
		newMotorsView(k),
		newAirframeView(k),
		newChamberView(k),
		newCheckView(k),
	}
}
