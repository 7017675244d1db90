package corpus_test

import (
	"bytes"
	"flag"
	"os"
	"testing"
)

var update = flag.Bool("update", false, "write schema/input.schema.json afresh")

// schema/input.schema.json is what clauses see, made from the catalogue and the book.
func TestTheSchemaOfWhatClausesSeeIsFresh(t *testing.T) {
	const path = "../../schema/input.schema.json"
	r, err := reviewer()
	if err != nil {
		t.Fatal(err)
	}
	want := append(bytes.TrimRight(r.Book().InputSchema(), "\n"), '\n')
	if *update {
		if err := os.WriteFile(path, want, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	have, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(have, want) {
		t.Errorf("%s is not what the catalogue and the book make: run go test ./internal/corpus -update", path)
	}
}
