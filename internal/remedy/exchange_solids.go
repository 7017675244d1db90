package remedy

import (
	"maps"
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/system"
)

// The swaps for what is done with the sludge of a settler.
func init() {
	maps.Copy(exchanges, map[string]func(*review.Review, *review.Finding, string) []proposal{
		"draw_down":         drawDown,
		"self_priming_pump": selfPriming,
	})
}

// Of a draw-down that is offered: how far over the full sludge it takes the water,
// how far over the rim it goes, and where it ends over the floor of the sump, m.
const (
	overSludge = 0.060
	overEdge   = 0.040
	inSump     = 0.100
)

// drawDown gives a settler without one a line over its rim that draws the clear water down into the vessel with the pump.
func drawDown(r *review.Review, f *review.Finding, _ string) []proposal {
	v := r.System.Vessel(f.Subject)
	if v == nil || len(r.Ledger.Relations["draw_down_of"][v.ID]) > 0 {
		return nil
	}
	full, said := r.System.Number(v.Pointer+"/sludge/full_at", quantity.Length).SI()
	rim, tall := v.Form.Height.SI()
	to, pipe := drawInto(r)
	if !said || !tall || to == nil || pipe == "" || full+overSludge >= rim {
		return nil
	}
	at := math.Ceil((full+overSludge)/0.005) * 0.005
	step := func(key string, value any) any { return system.Map{{Key: key, Value: value}} }
	pieces := []any{
		step("intake", system.Map{{Key: "at", Value: mm(at)}}), step("rise", "fit"), step("bend", "90 deg"), step("across", "150 mm"),
		step("over", system.Map{{Key: "rim_of", Value: v.ID}, {Key: "at", Value: mm(rim + overEdge)}}), step("across", "300 mm"),
		step("bend", "90 deg"), step("fall", "fit"), step("valve", system.Map{{Key: "kind", Value: "ball"}, {Key: "open", Value: "0 %"}}),
		step("fall", "200 mm"), step("outlet", system.Map{{Key: "at", Value: mm(inSump)}, {Key: "facing", Value: "down"}}),
	}
	line := system.Map{{Key: "duty", Value: "draw-down"}, {Key: "from", Value: v.ID}, {Key: "to", Value: to.ID}, {Key: "pipe", Value: pipe},
		{Key: "joints", Value: "uncemented"}, {Key: "primed_by", Value: "filling"}, {Key: "pieces", Value: pieces}}
	return []proposal{{
		text:  "a line of " + pipe + " over the rim of " + v.ID + ", its inner end " + mm(at) + " above the floor, that draws the clear water down into " + to.ID + " before the drain is opened",
		edits: []system.Edit{{Op: system.Set, Pointer: "/lines/" + newLine(r.System, v.ID+"-draw-down"), Value: line}},
	}}
}

// drawInto is a vessel that a pump draws from, and the pipe of its pump.
func drawInto(r *review.Review) (*system.Vessel, string) {
	for _, line := range r.System.Lines {
		if line.Pumped && line.From.Vessel != nil && len(line.Pieces) > 0 && line.Pieces[0].Pipe != nil {
			return line.From.Vessel, line.Pieces[0].Pipe.ID
		}
	}
	return nil, ""
}

// selfPriming takes a pump that fills itself in place of one that does not.
func selfPriming(r *review.Review, f *review.Finding, _ string) []proposal {
	p := piece(r, f)
	if p == nil || p.Pump == nil {
		return nil
	}
	return one("take a self-priming pump, which draws the air out of its suction pipe, or stand this one lower than the sludge", p.Pump.Pointer+"/self_priming", true)
}
