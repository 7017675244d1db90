package corpus

import (
	"context"
	"fmt"
	"os"
	"testing"
	"time"
)

func TestTry(t *testing.T) {
	start := time.Now()
	r, err := NewReviewer()
	if err != nil { t.Fatal(err) }
	fmt.Println("load", time.Since(start))
	for _, f := range []string{"quarry-road", "common-drum", "quarry-road-as-found", "everything"} {
	data, err := os.ReadFile("../../testdata/systems/" + f + ".yaml")
	if err != nil { fmt.Println(err); continue }
	start = time.Now()
	o, err := r.Review(context.Background(), f, data)
	fmt.Println(f, time.Since(start), err, o.Problems)
	if o.Review == nil { continue }
	for _, j := range o.Review.Judgements {
		u, _ := j.OfLimit()
		fmt.Println(j.Clause.ID, j.Subject, j.On, j.Name, j.Value, j.Word, j.When, j.Verdict, j.Missing, j.At, u)
	}
	for _, f := range o.Review.Findings { fmt.Println("FINDING", f.Number, f.Clause.ID, f.Place, f.Remedies) }
	fmt.Println(len(o.Review.NotLooked), o.Review.ExitStatus("shall"))
	for _, a := range o.Review.Assumed { fmt.Println(a.Pointer, a.Title, a.Source) }
	}
}
