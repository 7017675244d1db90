package remedy

import (
	"testing"

	"dryfit/internal/judge"
	"dryfit/internal/review"
	"dryfit/internal/survey"
	"dryfit/rules"
)

// Every exchange has its words, no word stands for an exchange that is gone, and every lever of
// the book is an exchange or a place.
func TestEveryExchangeHasWords(t *testing.T) {
	for name := range exchanges {
		if exchangeWords[name] == "" {
			t.Errorf("the exchange %s has no words", name)
		}
	}
	for name := range exchangeWords {
		if exchanges[name] == nil {
			t.Errorf("%s has words and is no exchange", name)
		}
	}
	for _, c := range judge.Open(survey.Catalogue(), rules.Book).Clauses() {
		for _, l := range c.Levers {
			if l.Replace != "" && exchanges[l.Replace] == nil {
				t.Errorf("%s names the exchange %s, which there is not", c.ID, l.Replace)
			}
		}
	}
}

func TestWords(t *testing.T) {
	for _, c := range []struct {
		lever review.Lever
		want  string
	}{
		{review.Lever{Solve: "/vessels/{subject}/well/lip_at", Toward: "5 mm"}, "change well.lip_at of the vessel, in steps of 5 mm"},
		{review.Lever{Solve: "/vessels/{subject}/form/{form}/height", Toward: "10 mm"}, "change form.height of the vessel, in steps of 10 mm"},
		{review.Lever{Solve: "/lines/{subject}/pieces/{last}/outlet/at", Toward: "5 mm"}, "change outlet.at of the last piece of the line, in steps of 5 mm"},
		{review.Lever{Solve: "/lines/{on}/pieces/0/floor_drain/standoff", Toward: "1 mm"}, "change floor_drain.standoff of the first piece of the line, in steps of 1 mm"},
		{review.Lever{Solve: "/lines/{on}/pieces/{piece}/through/at", Toward: "1 mm"}, "change through.at of the piece of the line, in steps of 1 mm"},
		{review.Lever{Solve: "/water/alkalinity/usual", Toward: "5 mg/L CaCO3"}, "change water.alkalinity.usual, in steps of 5 mg/L CaCO3"},
		{review.Lever{Solve: "/{subject}/from_intake", Toward: "10 mm"}, "change from_intake of what is judged, in steps of 10 mm"},
		{review.Lever{Replace: "grade", Toward: "A4"}, "fixings of another grade: A4"},
		{review.Lever{Replace: "of_the_house"}, "of the house"},
	} {
		if got := Words(c.lever); got != c.want {
			t.Errorf("%+v: %q, want %q", c.lever, got, c.want)
		}
	}
}
