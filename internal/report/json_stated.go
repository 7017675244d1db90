package report

import (
	"math"

	"dryfit/internal/quantity"
	"dryfit/internal/review"
)

// statedRecord is a number or fact of the file beside what is worked out.
type statedRecord struct {
	How        string       `json:"how"`
	Quantity   string       `json:"quantity"`
	Text       string       `json:"text"`
	Place      place        `json:"place"`
	Address    string       `json:"address,omitempty"`
	Title      string       `json:"title,omitempty"`
	Value      *valueRecord `json:"value,omitempty"`
	WorkedOut  *valueRecord `json:"worked_out,omitempty"`
	Difference *float64     `json:"difference,omitempty"`
	Share      *float64     `json:"share,omitempty"`
	Word       string       `json:"word,omitempty"`
	Fact       string       `json:"fact,omitempty"`
	Allowed    *float64     `json:"allowed,omitempty"`
	Agrees     string       `json:"agrees,omitempty"`
	Missing    []string     `json:"missing,omitempty"`
	Working    string       `json:"working,omitempty"`
	On         string       `json:"on,omitempty"`
	By         string       `json:"by,omitempty"`
	With       string       `json:"with,omitempty"`
	Note       string       `json:"note,omitempty"`
}

// stated records what the file states and measures.
func (r recorder) stated() []statedRecord {
	out := []statedRecord{}
	for _, c := range r.Stated {
		rec := statedRecord{
			How: "stated", Quantity: c.Quantity, Text: c.Text, Place: r.place(c.Pointer), Agrees: string(c.Agrees()), Missing: c.Missing,
			Allowed: roundedLimit(c.Off), Working: c.Working, On: c.On, By: c.By, With: c.With, Note: c.Note,
		}
		if c.Measured {
			rec.How = "measured"
		}
		if c.Node != nil {
			rec.Address, rec.Title = c.Node.Address.String(), c.Node.Title
			if c.Value != nil {
				rec.Value = &valueRecord{SI: quantity.Rounded(*c.Value), Unit: siUnits[c.Node.Kind], Shown: c.Text}
			}
			if v, known := c.Node.Value(); known {
				rec.WorkedOut = r.value(c.Node.Kind, v)
			}
		}
		if c.Fact != nil {
			rec.Word, rec.Fact, rec.Title = c.Word, c.Fact.Word, titleOfFact(r.Review, c.Fact.Name)
		}
		if d, share, ok := c.Difference(); ok {
			d = quantity.Rounded(d)
			rec.Difference = &d
			if !math.IsNaN(share) {
				share = quantity.Rounded(share)
				rec.Share = &share
			}
		}
		out = append(out, rec)
	}
	return out
}

// titleOfFact is a fact in plain words.
func titleOfFact(r *review.Review, name string) string {
	for _, d := range r.Catalogue.Facts {
		if d.Name == name {
			return d.Title
		}
	}
	return name
}
