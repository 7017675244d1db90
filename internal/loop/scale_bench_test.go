package loop

import (
	"fmt"
	"strings"
	"testing"

	"dryfit/internal/system"
	"dryfit/internal/working"
)

// A file holds at most 100 vessels and 200 lines: the largest loops here are about as large as can be. The 190
// lines of a manifold are 284 between its tees.
var sizes = []int{10, 30, 100, 190}

// chain is a loop of so many lines: vessels in a row, each a little lower than the one before,
// two lines from each to the next but the last, and a pump from the last to the first.
func chain(lines int) string {
	const fall, reserve = 60, 1500 // mm
	var vessels, runs strings.Builder
	last := lines / 2
	top := fall * last
	for i := range last + 1 {
		role := map[int]string{0: "fish-tank", last: "sump"}[i]
		if role == "" {
			role = "other"
		}
		fmt.Fprintf(&vessels, "  v%d:\n    role: %s\n    form: {cylinder: {inside: %d mm, height: 600 mm}}\n    stands_at: %d mm\n", i, role, 600+i*37%500, top-i*fall)
		if i == last {
			vessels.WriteString("    water: {running: 350 mm}\n")
			continue
		}
		for k := range 2 {
			if i == last-1 && k == 1 {
				break
			}
			fmt.Fprintf(&runs, `  run-%d-%d:
    from: v%d
    to: v%d
    pipe: wide
    joints: cemented
    pieces:
      - through: {wall_of: v%d, at: %d mm, seal: {hole: 58 mm}}
      - across: %d mm
      - valve: ball
      - bend: 90 deg
      - fall: fit
      - outlet: {at: 250 mm, facing: down}
`, i, k, i, i+1, i, 340+(i+k)*7%30, 200+(i+2*k)*53%400)
		}
	}
	return fmt.Sprintf(`dryfit: 1
name: %d lines in a row
site: {under: indoors}
water: {temperature: 20 degC}
working_flow: {least: 500 L/h, most: 3000 L/h}
pipes:
  wide: {inside: 45 mm}
  riser: {inside: 32 mm}
vessels:
%spumps:
  main: {shut_off: %d mm, open_flow: 4000 L/h, dry_below: 60 mm}
lines:
%s  riser:
    from: v%d
    to: v0
    pipe: riser
    joints: cemented
    pieces:
      - intake: {at: 50 mm}
      - pump: main
      - rise: fit
      - bend: 90 deg
      - across: 300 mm
      - over: {rim_of: v0, at: 650 mm}
      - across: 150 mm
      - bend: 90 deg
      - fall: 50 mm
      - outlet: {facing: down}
`, lines, vessels.String(), top+650+reserve, runs.String(), last)
}

// manifold is a loop of so many lines: a riser to a tank with a tee for each bed, and from each bed and the tank a line back to the sump.
func manifold(lines int) string {
	beds := lines/2 - 1
	var vessels, tees, runs strings.Builder
	drain := func(from string, at, across int) {
		fmt.Fprintf(&runs, `  drain-%s:
    from: %s
    to: sump
    pipe: wide
    joints: cemented
    pieces:
      - through: {wall_of: %s, at: %d mm, seal: {hole: 78 mm}}
      - across: %d mm
      - bend: 90 deg
      - fall: fit
      - outlet: {at: 450 mm, facing: down}
`, from, from, from, at, across)
	}
	drain("tank", 650, 300)
	for i := range beds {
		fmt.Fprintf(&vessels, "  bed-%d:\n    role: raft-bed\n    form: {box: {length: %d mm, width: 700 mm, height: 400 mm}}\n    stands_at: 700 mm\n", i, 900+i*41%600)
		fmt.Fprintf(&tees, "      - across: %d mm\n      - tee: {id: t%d, way: through, third: line}\n", 300+i*29%200, i)
		fmt.Fprintf(&runs, `  feed-%d:
    from: riser.t%d
    to: bed-%d
    pipe: feed
    joints: cemented
    pieces:
      - across: %d mm
      - valve: ball
      - over: {rim_of: bed-%d, at: 450 mm}
      - across: 150 mm
      - bend: 90 deg
      - fall: 60 mm
      - outlet: {facing: down}
`, i, i, i, 200+i*17%300, i)
		drain(fmt.Sprintf("bed-%d", i), 250, 200+i*31%500)
	}
	return fmt.Sprintf(`dryfit: 1
name: %d beds on a manifold
site: {under: indoors}
water: {temperature: 20 degC}
working_flow: {least: %d L/h, most: %d L/h}
pipes:
  main: {inside: 104 mm}
  feed: {inside: 20 mm}
  wide: {inside: 60 mm}
vessels:
%s  tank:
    role: fish-tank
    form: {cylinder: {inside: 1600 mm, height: 900 mm}}
    stands_at: 100 mm
  sump:
    role: sump
    form: {box: {length: %d mm, width: 1000 mm, height: 600 mm}}
    stands_at: 0 mm
    water: {running: 350 mm}
pumps:
  main: {shut_off: 4 m, open_flow: %d L/h, dry_below: 60 mm}
lines:
%s  riser:
    from: sump
    to: tank
    pipe: main
    joints: cemented
    pieces:
      - intake: {at: 50 mm}
      - pump: main
      - rise: fit
      - bend: 90 deg
%s      - across: 300 mm
      - over: {rim_of: tank, at: 1050 mm}
      - across: 150 mm
      - bend: 90 deg
      - fall: 60 mm
      - outlet: {facing: down, nozzle: 20 mm}
`, lines, 100*beds, 1500*beds, vessels.String(), 900+100*beds, 1200*(beds+1), runs.String(), tees.String())
}

func scaled(b testing.TB, text string) *system.System {
	b.Helper()
	s, problems := system.Read("scaled.yaml", []byte(text))
	if len(problems) > 0 {
		b.Fatal(problems[:min(3, len(problems))])
	}
	return s
}

var scales = []struct {
	name string
	text func(lines int) string
}{{"chain", chain}, {"manifold", manifold}}

// One balance of a loop, from levels that are only guessed, against the number of its lines.
func BenchmarkBalanceOf(b *testing.B) {
	for _, form := range scales {
		for _, lines := range sizes {
			b.Run(fmt.Sprintf("%s/%d", form.name, lines), func(b *testing.B) {
				s := scaled(b, form.text(lines))
				v := newSurveyor(s, tablesForTest, working.NewLedger())
				v.water()
				r := newRun(v, working.RunClean, "usual")
				for b.Loop() {
					if balance := r.settle(nil); len(balance.node.Gaps()) > 0 || balance.levels() == nil {
						b.Fatal(balance.node.Gaps())
					}
				}
			})
		}
	}
}

// The whole of what this package works out of a loop, all of its states and scenes, against the number of its lines.
func BenchmarkSurveyOf(b *testing.B) {
	for _, form := range scales {
		for _, lines := range sizes {
			b.Run(fmt.Sprintf("%s/%d", form.name, lines), func(b *testing.B) {
				s := scaled(b, form.text(lines))
				for b.Loop() {
					Survey(s, tablesForTest, working.NewLedger())
				}
			})
		}
	}
}
