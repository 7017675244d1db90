// Package making works out what a builder makes: holes, joints and runs of pipe, drains held by cuffs,
// fixings and their grades, and the protection of the power supply.
package making

import (
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// Survey enters what this package works out into the ledger.
func Survey(s *system.System, t *tables.Tables, l *working.Ledger) {
	v := &surveyor{System: s, t: t, l: l}
	v.drains()
	v.closures()
	v.fixings()
	v.materials()
	v.power()
	v.meetings()
	v.holes()
	v.spacing()
	v.runs()
	v.joints()
	v.supports()
}

type surveyor struct {
	*system.System
	t *tables.Tables
	l *working.Ledger
}

func always(subject, name string) working.Address {
	return working.Address{Subject: subject, Name: name, Case: working.Always}
}

// work enters a quantity of the catalogue.
func (v *surveyor) work(a working.Address, at string, f working.Func, in ...working.Input) *working.Node {
	return v.l.Work(a, define(a.Name), at, f, in...)
}
