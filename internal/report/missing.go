package report

import (
	"slices"
	"strconv"
	"strings"

	"dryfit/internal/review"
)

// gaps is what stands between a finding and its verdict: the values that the file
// does not give, each with the thing that it belongs to, and the reasons why
// dryfit has no answer. Each stands once, in the order in which it was found.
type gaps struct {
	keys    []gap
	reasons []string
}

type gap struct{ key, of, pointer string }

func (p *page) gapsOf(f *review.Finding) gaps { return gapsOf(f, p.wholeRange) }

// gapsOf names the missing values as whole says: a range for its ends, where none is given.
func gapsOf(f *review.Finding, whole func(string) string) gaps {
	var out gaps
	for _, m := range f.Missing {
		if !strings.HasPrefix(m, "/") {
			if !slices.Contains(out.reasons, m) {
				out.reasons = append(out.reasons, m)
			}
			continue
		}
		m = whole(m)
		g := gap{pointer: m}
		if g.key, g.of = keyWords(m); !slices.Contains(out.keys, g) {
			out.keys = append(out.keys, g)
		}
	}
	return out
}

// wholeRange is the pointer to a range where the file has nothing of it; else the pointer itself.
func (p *page) wholeRange(pointer string) string {
	cut := strings.LastIndex(pointer, "/")
	switch pointer[cut+1:] {
	case "low", "usual", "high":
		if above := pointer[:cut]; cut > 0 && (p.System == nil || !p.System.Document.Has(above)) {
			return above
		}
	}
	return pointer
}

// asks is what to find, by the thing that it belongs to: "find and give `lip_at` of settler".
func (g gaps) asks() []string {
	var things []string
	keys := map[string][]string{}
	for _, k := range g.keys {
		if keys[k.of] == nil {
			things = append(things, k.of)
		}
		keys[k.of] = append(keys[k.of], quoted(k.key))
	}
	for i, of := range things {
		words := "find and give " + series(keys[of], "and")
		if of != "" {
			words += " of " + of
		}
		things[i] = words
	}
	return things
}

// missingLines says in a note what is missing; the second time, where it is said.
func (p *page) missingLines(f *review.Finding, add func(label, text string, i ink)) {
	g := p.gapsOf(f)
	if len(g.keys)+len(g.reasons) == 0 {
		return
	}
	label := "Missing"
	if len(g.keys) == 0 {
		label = "Why"
	}
	all := strings.Join(append(g.asks(), g.reasons...), "; ")
	if first, again := p.opened[all]; again {
		add(label, "as at "+flagText(first), noInk)
		return
	}
	p.opened[all] = f.Number
	for _, k := range g.keys {
		add("Missing", p.gapWords(k), noInk)
	}
	for _, why := range g.reasons {
		add("Why", why, noInk)
	}
}

// gapWords names a value that the file does not give, how to find it and where it
// goes. It never says which value would be met.
func (p *page) gapWords(g gap) string {
	text := quoted(g.key)
	if g.of != "" {
		text += " of " + g.of
	}
	text += ". " + capital(howToFind(g.pointer))
	if p.System == nil || p.System.Document == nil {
		return text
	}
	if top, _, _ := strings.Cut(strings.TrimPrefix(g.pointer, "/"), "/"); !p.System.Document.Has("/" + top) {
		return text + "; the file has no `" + top + "` yet"
	}
	return text + "; it goes in at " + p.placeWords(p.System.Document.Place(g.pointer))
}

func quoted(key string) string { return "`" + key + "`" }

// keyWords says a file pointer as a builder reads it: the key, and the thing that
// it belongs to. The key of a whole thing is its name.
//
//	/vessels/settler/well/lip_at                   well.lip_at, settler
//	/lines/solids-run/pieces/2/bend/joint          joint, the bend that is piece 3 of solids-run
//	/mains/residual_current                        residual_current, mains
func keyWords(pointer string) (key, of string) {
	parts := strings.Split(strings.TrimPrefix(pointer, "/"), "/")
	of, rest := parts[0], parts[1:]
	switch of {
	case "vessels", "lines", "pumps", "pipes":
		if len(rest) > 1 {
			of, rest = rest[0], rest[1:]
		}
	}
	if len(rest) > 1 {
		if n, err := strconv.Atoi(rest[1]); err == nil && rest[0] == "pieces" {
			piece := "piece " + strconv.Itoa(n+1)
			switch len(rest) {
			case 2:
				return piece, of
			case 3:
				of, rest = piece+" of "+of, rest[2:]
			default:
				of, rest = "the "+strings.ReplaceAll(rest[2], "_", " ")+" that is "+piece+" of "+of, rest[3:]
			}
		}
	}
	if len(rest) > 1 {
		if n, err := strconv.Atoi(rest[0]); err == nil {
			of, rest = of+", number "+strconv.Itoa(n+1), rest[1:]
		}
	}
	if len(rest) == 0 {
		return of, ""
	}
	return strings.Join(rest, "."), of
}

// finding holds how to find what a key wants.
var finding = map[string]string{
	"pH":               "measure it over some weeks and give the lowest too",
	"low":              "measure it over some weeks, at the time of day when it is lowest",
	"high":             "measure it over some weeks, at the time of day when it is highest",
	"usual":            "measure it over some weeks",
	"chloride":         "ask the water supplier for the analysis, or measure with a test strip",
	"salt_treatment":   "say the strongest salt bath that is planned, or `none`",
	"alkalinity":       "measure with a drop test",
	"temperature":      "measure it in the coldest and in the warmest week",
	"grade":            "read the letters stamped on the bolt or screw; without letters, ask where it was bought",
	"residual_current": "read the figure with mA on the safety switch that feeds the sockets",
	"curve":            "take points of flow and height from the maker's curve, not the figure on the box",
	"open_flow":        "measure the flow with a bucket and a watch while the hose lies at the height of the water, or give the maker's `curve` instead",
	"shut_off":         "hold the end of a hose up until nothing comes out and measure from the water up to there, or give the maker's `curve` instead",
	"running":          "measure from the inner floor of the vessel up to the water while the pump runs",
	"wall":             "measure the plug that the hole saw cuts out",
	"hardness":         "ask where the rubber was bought for its Shore A figure",
	"standoff":         "measure from the floor up to the drain's open edge",
	"tail_at":          "stand the drain loose on the floor and measure from the floor up to the middle of its tail",
	"span":             "measure the rubber that lies free between the two pipe ends",
	"weight_in_water":  "weigh the part while it hangs under water",
	"lip_at":           "measure from the inner floor of the vessel up to the lip",
	"crest_at":         "measure from the inner floor of the vessel up to the edge",
	"at":               "measure from the inner floor of the vessel up to the centre of the hole or pipe end",
	"inside":           "measure across the inside",
	"outside":          "measure across the outside",
	"height":           "measure from the inner floor up to the rim",
	"stands_at":        "measure from the datum up to the inner floor, not to the top of the stand",
	"slots":            "count the slots",
	"holes":            "count the holes",
	"class":            "read the print along the pipe",
	"size":             "read the print along the pipe",
	"standard":         "read the print along the pipe",
	"joint":            "say how the joint is made, such as cemented, pinned or uncemented, here or as `joints` of the whole line",
	"material":         "look for the mark in the base of the vessel",
}

func howToFind(pointer string) string {
	key := pointer[strings.LastIndex(pointer, "/")+1:]
	if how := finding[key]; how != "" {
		return how
	}
	return "measure it or look it up"
}
