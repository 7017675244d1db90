package tables

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"slices"
	"strconv"
	"strings"
)

// sheet is one CSV file; it gathers what is wrong with it.
type sheet struct {
	file string
	at   map[string]int // column of a heading
	seen map[string]int // line of a key
	errs []error
}

// row is one line of a sheet.
type row struct {
	*sheet
	line  int
	cells []string
}

// each reads the file and hands its rows to take. The heading must consist of
// the columns, then source and sure.
func each(files fs.FS, file, columns string, take func(row)) error {
	f, err := files.Open(file)
	if err != nil {
		return err
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	heading, err := r.Read()
	if err != nil {
		return fmt.Errorf("%s: no heading: %w", file, err)
	}
	want := append(strings.Fields(columns), "source", "sure")
	if !slices.Equal(heading, want) {
		return fmt.Errorf("%s: the heading should be %s", file, strings.Join(want, ","))
	}
	s := &sheet{file: file, at: map[string]int{}, seen: map[string]int{}}
	for i, name := range heading {
		s.at[name] = i
	}
	for {
		cells, err := r.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			s.errs = append(s.errs, fmt.Errorf("%s: %w", file, err))
			break
		}
		line, _ := r.FieldPos(0)
		take(row{s, line, cells})
	}
	if len(s.seen) == 0 {
		s.errs = append(s.errs, fmt.Errorf("%s: no rows", file))
	}
	return errors.Join(s.errs...)
}

func (r row) wrong(format string, args ...any) {
	r.errs = append(r.errs, fmt.Errorf("%s:%d: %s", r.file, r.line, fmt.Sprintf(format, args...)))
}

// key notes a key that no other row of the file may have.
func (r row) key(parts ...string) string {
	k := strings.Join(parts, "\t")
	if first, twice := r.seen[k]; twice {
		r.wrong("the same key stands in line %d", first)
	}
	r.seen[k] = r.line
	return k
}

func (r row) maybe(column string) string { return strings.TrimSpace(r.cells[r.at[column]]) }

func (r row) text(column string) string {
	s := r.maybe(column)
	if s == "" {
		r.wrong("%s is empty", column)
	}
	return s
}

// bound reads a figure that may be empty. None of the tables needs a negative one.
func (r row) bound(column string) Bound {
	s := r.maybe(column)
	if s == "" {
		return Bound{}
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) || v < 0 {
		r.wrong("%s: %q is no figure from 0 up", column, s)
		return Bound{}
	}
	return Bound{v, true}
}

func (r row) number(column string) float64 {
	b := r.bound(column)
	if !b.Known {
		r.text(column)
	}
	return b.Value
}

// positive reads a figure above zero.
func (r row) positive(column string) float64 {
	v := r.number(column)
	if v == 0 {
		r.wrong("%s should be above 0", column)
	}
	return v
}

// milli reads a length given in millimetres, or a concentration given in
// milligrams a litre, above zero; in metres, or kilograms a cubic metre.
func (r row) milli(column string) float64 { return r.positive(column) / 1000 }

func (r row) milliBound(column string) Bound {
	b := r.bound(column)
	return Bound{b.Value / 1000, b.Known}
}

// ordered checks that figures do not fall from one to the next.
func (r row) ordered(what string, figures ...float64) {
	if !slices.IsSorted(figures) {
		r.wrong("%s should not fall: %v", what, figures)
	}
}

func (r row) oneOf(column string, allowed ...string) string {
	s := r.text(column)
	if !slices.Contains(allowed, s) {
		r.wrong("%s: %q should be one of %s", column, s, strings.Join(allowed, ", "))
	}
	return s
}

func (r row) yes(column string) bool { return r.oneOf(column, "yes", "no") == "yes" }

func (r row) origin() Origin {
	sure := r.oneOf("sure", string(Published), string(Derived), string(FromMemory), string(CommonPractice), string(Judgement))
	return Origin{r.text("source"), Sure(sure)}
}
