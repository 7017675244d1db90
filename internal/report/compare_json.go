package report

import (
	"bytes"
	"encoding/json"
	"io"

	"dryfit/internal/compare"
	"dryfit/internal/making"
	"dryfit/internal/quantity"
	"dryfit/internal/review"
	"dryfit/internal/working"
)

// The form of a comparison as JSON. Its schema is schema/compare.schema.json.
type (
	comparingRecord struct {
		Form       int              `json:"dryfit_compare"`
		Was        string           `json:"was"`
		Now        string           `json:"now"`
		AsOf       string           `json:"as_of"`
		ExitStatus int              `json:"exit_status"`
		Files      []comparedRecord `json:"files"`
	}
	comparedRecord struct {
		Path       string            `json:"path,omitempty"`
		From       string            `json:"moved_from,omitempty"`
		ExitStatus int               `json:"exit_status"`
		Same       bool              `json:"same,omitempty"`
		Was        versionRecord     `json:"was"`
		Now        versionRecord     `json:"now"`
		Open       []movedRecord     `json:"open,omitempty"`
		Comparison *comparisonRecord `json:"comparison,omitempty"`
	}
	versionRecord struct {
		File     string          `json:"file"`
		Absent   bool            `json:"absent,omitempty"`
		Unread   string          `json:"unread,omitempty"`
		Problems []problemRecord `json:"problems,omitempty"`
	}
	comparisonRecord struct {
		Inputs     []inputRecord      `json:"inputs"`
		Judged     []movedRecord      `json:"judged"`
		Quantities []farRecord        `json:"quantities"`
		Parts      []partPair         `json:"parts"`
		Cuts       []cutPair          `json:"cuts"`
		Holes      []holePair         `json:"holes"`
		Joints     []jointPair        `json:"joints"`
		Cost       []costRecord       `json:"cost"`
		Permits    []permitMoveRecord `json:"permits"`
		House      *housePair         `json:"house,omitempty"`
	}
	inputRecord struct {
		Pointer string  `json:"pointer"`
		Was     *string `json:"was"`
		Now     *string `json:"now"`
	}
	movedRecord struct {
		Clause    string         `json:"clause"`
		Strength  string         `json:"strength"`
		Safety    bool           `json:"safety,omitempty"`
		Subject   string         `json:"subject"`
		Title     string         `json:"title"`
		Direction string         `json:"direction"`
		Leave     bool           `json:"leave,omitempty"`
		Was       *verdictRecord `json:"was"`
		Now       *verdictRecord `json:"now"`
		Share     *float64       `json:"more_of_limit,omitempty"`
		Margin    *float64       `json:"less_left,omitempty"`
		Remedies  []string       `json:"remedies,omitempty"`
	}
	verdictRecord struct {
		Verdict string       `json:"verdict"`
		Value   *valueRecord `json:"value,omitempty"`
		Word    string       `json:"word,omitempty"`
		OfLimit *float64     `json:"of_limit,omitempty"`
	}
	farRecord struct {
		Address string       `json:"address"`
		Title   string       `json:"title"`
		Was     *valueRecord `json:"was"`
		Now     *valueRecord `json:"now"`
	}
	partPair  = pairRecord[partRecord]
	cutPair   = pairRecord[cutRecord]
	holePair  = pairRecord[holeRecord]
	jointPair = pairRecord[jointRecord]

	pairRecord[T any] struct {
		Was *T `json:"was"`
		Now *T `json:"now"`
	}
	partRecord struct {
		Name  string   `json:"name"`
		Spec  string   `json:"spec,omitempty"`
		Use   string   `json:"use"`
		Step  string   `json:"step"`
		Count float64  `json:"count"`
		Got   string   `json:"got"`
		Sum   *float64 `json:"sum,omitempty"`
		Money string   `json:"currency,omitempty"`
	}
	cutRecord struct {
		Line   string   `json:"line"`
		Piece  string   `json:"piece"`
		Pipe   string   `json:"pipe,omitempty"`
		Count  int      `json:"count"`
		Length *float64 `json:"length"`
	}
	holeRecord struct {
		Vessel string   `json:"vessel"`
		In     string   `json:"in"`
		Piece  string   `json:"piece"`
		Count  int      `json:"count"`
		Across *float64 `json:"across"`
		At     *float64 `json:"at,omitempty"`
		Fit    string   `json:"fit,omitempty"`
		Tool   string   `json:"tool,omitempty"`
	}
	jointRecord struct {
		Piece  string `json:"piece"`
		Before string `json:"before"`
		After  string `json:"after"`
		Kind   string `json:"kind"`
		Count  int    `json:"count"`
	}
	costRecord struct {
		Currency string  `json:"currency"`
		Was      float64 `json:"was"`
		Now      float64 `json:"now"`
		More     float64 `json:"more"`
		Less     float64 `json:"less"`
	}
	permitMoveRecord struct {
		What    string `json:"what"`
		Kind    string `json:"kind"`
		Clause  string `json:"clause"`
		Subject string `json:"subject"`
		Until   string `json:"until"`
	}
)

// CompareJSON writes comparisons for programs: all of it, nothing left out.
func CompareJSON(w io.Writer, list []Compared, o Comparing) error {
	d := comparingRecord{Form: 1, Was: o.Was, Now: o.Now, AsOf: o.AsOf, ExitStatus: comparedStatus(list), Files: []comparedRecord{}}
	for _, c := range list {
		f := comparedRecord{Path: c.Path, From: c.From, ExitStatus: c.Status(), Same: c.Same, Was: versionOf(c.Was), Now: versionOf(c.Now)}
		for _, j := range c.open() {
			f.Open = append(f.Open, recorder{c.New, o.Look.Units}.moved(j, nil))
		}
		if c.Comparison != nil {
			f.Comparison = recorder{c.Comparison.Now.Review, o.Look.Units}.comparison(c)
		}
		d.Files = append(d.Files, f)
	}
	line, err := harmlessJSON(d)
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := json.Indent(&b, line, "", "  "); err != nil {
		return err
	}
	b.WriteByte('\n')
	_, err = w.Write(b.Bytes())
	return err
}

func versionOf(v Version) versionRecord {
	out := versionRecord{File: v.Name, Absent: v.Absent, Unread: v.Unread}
	for _, p := range v.Problems {
		out.Problems = append(out.Problems, problemRecord{place{p.Line, p.Column, p.Pointer}, p.Found, p.Write})
	}
	return out
}

func (r recorder) comparison(of Compared) *comparisonRecord {
	c := of.Comparison
	out := &comparisonRecord{Inputs: []inputRecord{}, Judged: []movedRecord{}, Quantities: []farRecord{}, Cost: []costRecord{}, Permits: []permitMoveRecord{},
		Parts: pairsOf(c.Parts, partOf), Cuts: pairsOf(c.Cuts, cutOf), Holes: pairsOf(c.Holes, holeOf), Joints: pairsOf(c.Joints, jointOf)}
	for _, i := range c.Inputs {
		one := inputRecord{Pointer: i.Pointer}
		if !i.Added {
			one.Was = &i.Was
		}
		if !i.Gone {
			one.Now = &i.Now
		}
		out.Inputs = append(out.Inputs, one)
	}
	out.House = housePairOf(c, r.in)
	remedies := map[*review.Judgement]*review.Finding{}
	for _, f := range of.offered() {
		remedies[f.Judgement] = f
	}
	for _, j := range c.Judged {
		out.Judged = append(out.Judged, r.moved(j, remedies[j.Now]))
	}
	for _, q := range c.Quantities {
		was, _ := q.Was.Value()
		now, _ := q.Now.Value()
		out.Quantities = append(out.Quantities, farRecord{q.Now.Address.String(), q.Now.Title, r.value(q.Now.Kind, was), r.value(q.Now.Kind, now)})
	}
	for _, m := range c.Cost {
		out.Cost = append(out.Cost, costRecord{m.Currency, quantity.Rounded(m.Was), quantity.Rounded(m.Now), quantity.Rounded(m.More), quantity.Rounded(m.Less)})
	}
	for _, p := range c.Permits {
		one := firstOf(p.Now, p.Was)
		out.Permits = append(out.Permits, permitMoveRecord{p.What, one.Kind(), one.Clause, one.Subject, one.Until})
	}
	return out
}

func (r recorder) moved(j compare.Judged, f *review.Finding) movedRecord {
	one := firstOf(j.Now, j.Was)
	out := movedRecord{Clause: j.Clause.ID, Strength: string(j.Clause.Strength), Safety: j.Clause.Safety, Subject: j.Subject, Title: one.Title,
		Direction: string(j.Direction), Leave: j.Leave != nil, Was: r.verdict(j.Was), Now: r.verdict(j.Now)}
	if by := quantity.Rounded(j.Moved); j.Margin && j.OfLimit {
		out.Share = &by
	} else if j.Margin {
		out.Margin = &by
	}
	if f != nil {
		for _, m := range f.Remedies {
			out.Remedies = append(out.Remedies, remedySaid(m, r.in))
		}
	}
	return out
}

func (r recorder) verdict(j *review.Judgement) *verdictRecord {
	if j == nil {
		return nil
	}
	out := &verdictRecord{Verdict: string(j.Verdict), Word: j.Word}
	if !j.Fact && j.Verdict != review.Undetermined {
		out.Value = r.value(j.Kind, j.Value)
	}
	if share, ok := j.OfLimit(); ok {
		share = quantity.Rounded(share)
		out.OfLimit = &share
	}
	return out
}

func pairsOf[T, R any](list []compare.Pair[T], record func(*T) *R) []pairRecord[R] {
	out := []pairRecord[R]{}
	for _, p := range list {
		var one pairRecord[R]
		if p.Was != nil {
			one.Was = record(p.Was)
		}
		if p.Now != nil {
			one.Now = record(p.Now)
		}
		out = append(out, one)
	}
	return out
}

func partOf(p *making.Part) *partRecord {
	out := &partRecord{Name: p.Name, Spec: p.Spec, Use: p.Use, Step: p.Step, Count: quantity.Rounded(p.Count), Got: string(p.Got)}
	if p.Sum.Known {
		sum := quantity.Rounded(p.Sum.Amount)
		out.Sum, out.Money = &sum, p.Sum.Currency
	}
	return out
}

func cutOf(c *making.Cut) *cutRecord {
	return &cutRecord{c.Line, c.Piece, c.Pipe, max(c.Count, 1), metres(c.Length.Value, c.Known)}
}

func holeOf(h *making.Hole) *holeRecord {
	out := &holeRecord{Vessel: h.Vessel, In: string(h.In), Piece: h.Piece, Count: max(h.Count, 1), Across: metres(working.Exactly(h.Across), h.Across > 0), Fit: h.Fit, Tool: h.Tool}
	if h.In == making.InWall {
		out.At = metres(h.At.Value, h.At.Known)
	}
	return out
}

func jointOf(j *making.Joint) *jointRecord {
	return &jointRecord{j.Piece, j.Before, j.After, j.Kind, max(j.Count, 1)}
}

// metres is a length for programs; nothing where it is not known.
func metres(v working.Value, known bool) *float64 {
	if !known {
		return nil
	}
	x := quantity.Rounded(v.X)
	return &x
}
