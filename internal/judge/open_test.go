package judge

import (
	"context"
	"reflect"
	"strings"
	"testing"
	"testing/fstest"

	"dryfit/internal/survey"
	"dryfit/rules"
)

// A book that is opened without the checks judges as it does with them. That it passes
// them is what Load is asked for here: the program does not ask again.
func TestOpenJudgesAsLoadDoes(t *testing.T) {
	loaded, err := Load(survey.Catalogue(), rules.Book)
	if err != nil {
		t.Fatal(err)
	}
	opened := Open(survey.Catalogue(), rules.Book)
	if !reflect.DeepEqual(opened.Clauses(), loaded.Clauses()) {
		t.Error("the clauses differ")
	}
	if string(opened.InputSchema()) != string(loaded.InputSchema()) {
		t.Error("the schemas of the input differ")
	}
	for _, name := range []string{"quarry-road.yaml", "quarry-road-as-found.yaml", "two-settlers.yaml", "siphon-beds.yaml"} {
		l := surveyed(t, name)
		want, _, err := loaded.Judge(context.Background(), l)
		if err != nil {
			t.Fatal(err)
		}
		got, _, err := opened.Judge(context.Background(), l)
		if err != nil || len(got) != len(want) || len(got) < 100 {
			t.Fatalf("%s: %d judgements in place of %d, error %v", name, len(got), len(want), err)
		}
		for i, j := range got {
			same := *want[i]
			if same.Clause.ID != j.Clause.ID {
				t.Fatalf("%s: %s stands in place of %s", name, j.Clause.ID, same.Clause.ID)
			}
			if same.Clause = j.Clause; !reflect.DeepEqual(*j, same) {
				t.Errorf("%s: %s of %s is %+v and was %+v", name, j.Clause.ID, j.Subject, *j, same)
			}
		}
	}
}

// What does not load after all is an error where it is judged by, and never a review without clauses.
func TestOpenOfWhatDoesNotLoad(t *testing.T) {
	b := Open(catalogue(), fstest.MapFS{"broken.rego": {Data: []byte("package book.a.broken\n\njudgements contains {\n")}})
	if got, _, err := b.Judge(context.Background(), soundLoop().Ledger); err == nil || got != nil || !strings.Contains(err.Error(), "the book does not load: broken.rego:") {
		t.Errorf("%d judgements, error %v", len(got), err)
	}
	defer func() {
		if recover() == nil {
			t.Error("its clauses can be read")
		}
	}()
	b.Clauses()
}
