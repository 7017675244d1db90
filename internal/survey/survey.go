// Package survey orders what is worked out about a loop: water and levels
// first, then fish and settlers, then what is made and where it stands.
package survey

import (
	"context"

	"dryfit/internal/fishload"
	"dryfit/internal/loop"
	"dryfit/internal/making"
	"dryfit/internal/settling"
	"dryfit/internal/site"
	"dryfit/internal/system"
	"dryfit/internal/tables"
	"dryfit/internal/working"
)

// Survey works out everything about a system that dryfit knows how to.
func Survey(s *system.System) *working.Ledger {
	l, _ := Within(context.Background(), s) // which never ends
	return l
}

// Within is the same for as long as the context lasts: then it gives the context's error, and no ledger.
func Within(ctx context.Context, s *system.System) (*working.Ledger, error) {
	l, t := working.NewLedger(), tables.Embedded()
	err := l.Within(ctx, func() {
		loop.Survey(s, t, l)
		fishload.Survey(s, t, l)
		settling.Survey(s, l)
		fishload.Renewal(s, t, l)
		making.Survey(s, t, l)
		site.Survey(s, l)
	})
	if err != nil {
		return nil, err
	}
	return l, nil
}

// Follow plays the scenes of a case in time, all of its faults or one; with an empty case, all that there are.
func Follow(s *system.System, kase, fault string) []working.Followed {
	return loop.Follow(s, tables.Embedded(), kase, fault)
}

// Catalogue is every word that is worked out, for clauses to use and for people to look up.
func Catalogue() working.Catalogue {
	return working.Catalogue{
		Quantities: join(loop.Quantities, fishload.Quantities, settling.Quantities, making.Quantities, site.Quantities),
		Facts:      join(loop.Facts, fishload.Facts, settling.Facts, making.Facts, site.Facts),
		Sets:       join(loop.Sets, fishload.Sets, settling.Sets, making.Sets, site.Sets),
		Cases:      join(loop.Cases, fishload.Cases),
		Relations:  join(loop.Relations, settling.Relations, making.Relations, site.Relations),
	}
}

func join[T any](lists ...[]T) []T {
	var out []T
	for _, l := range lists {
		out = append(out, l...)
	}
	return out
}
