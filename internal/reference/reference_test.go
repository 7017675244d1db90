package reference

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

const (
	folder = "../../testdata/reference"
	least  = 60 // rows of kind holds that must be there, so that a lost table is noticed
)

var columns = []string{"id", "what", "inputs", "answer", "unit", "tolerance", "source", "sure", "kind"}

// function works one row out, in SI.
type function func(*inputs) (float64, error)

// functions maps what to how; each subject's file adds its own.
var functions = map[string]function{}

func register(more map[string]function) {
	for what, f := range more {
		if functions[what] != nil {
			panic("two functions are called " + what)
		}
		functions[what] = f
	}
}

func TestReference(t *testing.T) {
	tables, err := filepath.Glob(filepath.Join(folder, "*.csv"))
	if err != nil || len(tables) == 0 {
		t.Fatalf("no tables in %s (%v)", folder, err)
	}
	ids, called := map[string]string{}, map[string]bool{}
	holds := 0
	for _, table := range tables {
		subject := strings.TrimSuffix(filepath.Base(table), ".csv")
		t.Run(subject, func(t *testing.T) {
			count := map[string]int{}
			for i, cells := range read(t, table) {
				row, err := parse(cells)
				if err != nil {
					t.Errorf("row %d (%s): %v", i+2, cells[0], err)
					continue
				}
				if other := ids[row.id]; other != "" {
					t.Errorf("%s: the id stands in %s too", row.id, other)
				}
				ids[row.id] = subject
				called[row.what] = true
				if err := row.check(); err != nil {
					t.Errorf("%s: %v", row.id, err)
				}
				count[row.kind]++
				count[row.sure]++
			}
			t.Logf("%s: %d hold (and %d traps); %d published, %d derived, %d from memory", subject,
				count["holds"], count["trap"], count["published"], count["derived"], count["from memory"])
			holds += count["holds"]
		})
	}
	for what := range functions {
		if !called[what] {
			t.Errorf("no row calls %s", what)
		}
	}
	if holds < least {
		t.Errorf("%d rows hold, want %d or more", holds, least)
	}
}

func read(t *testing.T, table string) [][]string {
	file, err := os.Open(table)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll() // also refuses rows of another length
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) < 2 || !slices.Equal(rows[0], columns) {
		t.Fatalf("the columns must be %s, with rows below", strings.Join(columns, ","))
	}
	return rows[1:]
}

type row struct {
	id, what, kind, sure string
	in                   *inputs
	answer, tolerance    float64 // SI
}

func parse(cells []string) (row, error) {
	r := row{id: cells[0], what: cells[1], sure: cells[7], kind: cells[8]}
	for i, cell := range cells {
		if strings.TrimSpace(cell) == "" && columns[i] != "unit" {
			return r, fmt.Errorf("%s is empty", columns[i])
		}
	}
	if source := cells[6]; len(source) < 15 || !strings.Contains(source, ",") {
		return r, fmt.Errorf("source %q names no work and place", source)
	}
	if !slices.Contains([]string{"published", "derived", "from memory"}, r.sure) {
		return r, fmt.Errorf("sure is %q", r.sure)
	}
	if r.kind != "holds" && r.kind != "trap" {
		return r, fmt.Errorf("kind is %q", r.kind)
	}
	if functions[r.what] == nil {
		return r, fmt.Errorf("nothing is called %q", r.what)
	}
	var err error
	if r.in, err = parseInputs(cells[2]); err != nil {
		return r, err
	}
	if r.answer, err = toSI(cells[3], cells[4]); err != nil {
		return r, fmt.Errorf("answer: %w", err)
	}
	if r.tolerance, err = parseTolerance(cells[5], r.answer); err != nil {
		return r, fmt.Errorf("tolerance: %w", err)
	}
	return r, nil
}

func (r row) check() error {
	got, err := functions[r.what](r.in)
	switch {
	case r.in.missing() != "":
		return fmt.Errorf("%s needs the input %s", r.what, r.in.missing())
	case err != nil:
		return err
	case r.in.unread() != "":
		return fmt.Errorf("%s does not use the input %s", r.what, r.in.unread())
	}
	switch near := math.Abs(got-r.answer) <= r.tolerance; {
	case math.IsNaN(got):
		return fmt.Errorf("%s gives no number", r.what)
	case r.kind == "holds" && !near:
		return fmt.Errorf("ours %.9g, published %.9g, tolerance %.2g (SI)", got, r.answer, r.tolerance)
	case r.kind == "trap" && near:
		return fmt.Errorf("ours %.9g falls into the trap %.9g, within %.2g (SI)", got, r.answer, r.tolerance)
	}
	return nil
}
