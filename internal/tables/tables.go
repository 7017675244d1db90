// Package tables gives typed access to the tables that dryfit works from:
// pipes, fittings, roughness, materials and the like, each with its source.
//
// Lengths are metres and concentrations kilograms a cubic metre; a table's
// heading names the unit in which its file has them.
package tables

import (
	"errors"
	"io/fs"
	"sync"

	"dryfit/rules"
)

// Tables is the whole set. It does not change after Load and may be shared.
type Tables struct {
	pipes         []Pipe
	pipeAt        map[string]int
	classes       map[string][]Pipe
	fittings      map[string]Fitting
	valves        map[string][]valvePoint
	roughness     map[string]Rough
	metals        []Material
	metalAt       map[string]int
	nonmetals     map[string]Nonmetal
	contents      map[string]string // kind by words
	clamps        map[string]Clamp
	rubbers       map[string]Rubber
	seals         []Seal
	bulkheads     []Bulkhead
	drums         []Drum
	hoses         []Hose
	sockets       map[string]Socket // by pipeKey
	assumptions   []Assumption
	curing        []Cure
	takeoffs      map[string]Takeoff // by pipeKey
	saws          []Saw
	loadings      []Loading
	solidsClasses []SolidsClass
	solidsFigures []solidsFigure
	species       []Species
	media         []Medium
	crops         []Crop
	bases         []Base
	biology       []Figure
	nitrification map[string][]Point // by temperature and pH, rising
}

// Load reads and checks every table that is built into the program. The error
// names each row that is wrong, with its file and line.
func Load() (*Tables, error) {
	files, err := fs.Sub(rules.Tables, "tables")
	if err != nil {
		return nil, err
	}
	return load(files)
}

func load(files fs.FS) (*Tables, error) {
	var t Tables
	err := errors.Join(
		t.readPipes(files),
		t.readFittings(files),
		t.readValves(files),
		t.readRoughness(files),
		t.readMetals(files),
		t.readNonmetals(files),
		t.readContents(files),
		t.readClamps(files),
		t.readRubbers(files),
		t.readSeals(files),
		t.readBulkheads(files),
		t.readDrums(files),
		t.readHoses(files),
		t.readSockets(files),
		t.readAssumptions(files),
		t.readCuring(files),
		t.readTakeoffs(files),
		t.readSaws(files),
		t.readLoadings(files),
		t.readSolids(files),
		t.readSpecies(files),
		t.readMedia(files),
		t.readCrops(files),
		t.readBases(files),
		t.readBiology(files),
		t.readNitrification(files),
	)
	if err != nil {
		return nil, err
	}
	return &t, nil
}

var built = sync.OnceValues(Load)

// Embedded returns the tables that are built into the program, read once. It
// panics when they are wrong, which a test of this package rules out.
func Embedded() *Tables {
	t, err := built()
	if err != nil {
		panic("tables: " + err.Error())
	}
	return t
}

// Sure says how well a figure is known.
type Sure string

// The degrees of Sure, best first.
const (
	Published      Sure = "published"
	Derived        Sure = "derived"
	FromMemory     Sure = "from memory"
	CommonPractice Sure = "common practice"
	Judgement      Sure = "project judgement"
)

// Origin is where a row comes from and how sure it is; of several figures in a
// row the weakest decides.
type Origin struct {
	Source string
	Sure   Sure
}

// Bound is a figure that a table may leave empty.
type Bound struct {
	Value float64
	Known bool
}
