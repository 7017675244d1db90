package marking

import (
	"dryfit/internal/review"
	"dryfit/internal/system"
)

// guideForm is a guide as it is written. The schema says what each key means.
type guideForm struct {
	Name, Note string
	Total      float64
	RoundTo    *float64 `json:"round_to"`
	Alike      *int
	Items      []itemForm
	Caps       []capForm
}

type itemForm struct {
	ID, Title   string
	Marks       float64
	Bonus       bool
	Clauses     *clausesForm
	Stated      *statedForm
	Inputs      *inputsForm
	Grounds     *groundsForm
	Requirement *requirementForm
	OfLimit     *ofLimitForm `json:"of_limit"`
}

type capForm struct {
	ID, Why string
	Clauses clausesForm
	Most    float64
}

type clausesForm struct {
	IDs              []string
	Chapter          string
	Strength         review.Strength
	Safety           bool
	Count            string
	WhereNoneApplies string `json:"where_none_applies"`
}

type bandForm struct {
	Within, Floor *written
	Ratio         *float64
	Marks         float64
}

type statedForm struct {
	Quantity, Of, Case, Unit string
	Bands                    []bandForm
	NoUnit                   *float64 `json:"no_unit"`
	WrongUnit                *float64 `json:"wrong_unit"`
	NoWorking                *float64 `json:"no_working"`
	CarriedForward           *bool    `json:"carried_forward"`
	WithinSources            bool     `json:"within_sources"`
}

type inputsForm struct {
	Keys         []string
	Undetermined bool
}

type groundsForm struct {
	SourcesFor  []string `json:"sources_for"`
	Assumptions int
}

type requirementForm struct {
	Quantity, Of, Case string
	Together           bool
	Least, Most        *written
	Close              []bandForm
}

type ofLimitForm struct {
	Clause string
	Bands  []shareForm
}

type shareForm struct{ Least, Most, Marks float64 }

// written is a value as it is written.
type written = system.Written
