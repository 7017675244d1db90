package corpus_test

import (
	"context"
	"flag"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"dryfit/internal/review"
	"dryfit/internal/survey"
	"dryfit/internal/system"
)

// Deleting a value may turn a judgement from open to met where the value is what
// makes the subject bad, and silence is sound. Each needs a reason.
var soundToDelete = map[string]string{
	"joints_hold /lines/solids-run/pieces/12/across/joint": "the joints of the whole line are stated too, cemented, and then they speak for this one",
}

// Clauses that judge a statement itself: with the statement, here the value under
// a key, the subject goes. The reason why silence does not help all the same.
var judgesStatement = map[string][2]string{
	"toxic_metals": {"/material", "the list of metals has to be stated, and covers every part that names no material"},
	"media_fill":   {"/media/kind", "only carriers move; without their kind nothing is known of the bacteria on them, and nitrified says so"},
	// A line without its duty is one in which water runs every day, and is judged as such.
	"siphon_crest":     {"/duty", "what makes it a siphon worked by hand is its duty"},
	"siphon_end":       {"/duty", "as siphon_crest"},
	"siphon_primed":    {"/duty", "as siphon_crest"},
	"takes_draw_down":  {"/duty", "as siphon_crest"},
	"overflow_carries": {"/duty", "what makes it an overflow is its duty"},
	"overflow_way":     {"/duty", "as overflow_carries"},
	"drain_fast":       {"/duty", "what makes it a drain is its duty"},
	"drain_fast_least": {"/duty", "as drain_fast"},
	"suction_lift":     {"/duty", "what makes it a sludge line is its duty"},
}

// Whatever is deleted from a file, no judgement of a subject that is still there
// may vanish, and none may turn from not met or undetermined to met: silence never helps.
func TestSilenceNeverHelps(t *testing.T) {
	files, err := filepath.Glob(systems + "*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		name := filepath.Base(file)
		if name == "ten-mistakes.yaml" {
			continue
		}
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			whole := reviewed(t, name)
			before := verdicts(whole.Judgements)
			leaves := append(whole.System.Looked(), whole.System.NotLooked()...)
			if name != "quarry-road.yaml" && !*everyLeaf {
				leaves = oneIn(24, leaves, name)
			}
			tried := 0
			each(leaves, func(leaf system.Leaf) {
				less, problems := whole.System.Edited(system.Edit{Op: system.Delete, Pointer: leaf.Pointer()})
				if len(problems) > 0 {
					return // the file is no longer valid, and says so
				}
				r, err := reviewer()
				if err != nil {
					t.Error(err)
					return
				}
				judgements, _, err := r.Book().Judge(context.Background(), survey.Survey(less))
				if err != nil {
					t.Errorf("without %s: %v", leaf.Pointer(), err)
					return
				}
				after := verdicts(judgements)
				mutex.Lock()
				defer mutex.Unlock()
				tried++
				for key, was := range before {
					is, there := after[key]
					switch {
					case !there && stands(less, key.subject) && !renumbered(leaf.Pointer(), key.subject) && !gone(key.clause, leaf.Pointer()):
						t.Errorf("without %s there is no judgement of %s on %s", leaf.Pointer(), key.clause, key.subject)
					case there && is == review.Met && (was == review.NotMet || was == review.Undetermined) && soundToDelete[key.clause+" "+leaf.Pointer()] == "":
						t.Errorf("without %s, %s on %s turns from %s to met", leaf.Pointer(), key.clause, key.subject, was)
					}
				}
			})
			if tried < 8 {
				t.Errorf("only %d deletions left a valid file", tried)
			}
		})
	}
}

var mutex sync.Mutex

// everyLeaf has every leaf of every file deleted: half an hour on two cores. Without
// it that is done to the demo; of the others one in 24 goes, another one in each file.
var everyLeaf = flag.Bool("every-leaf", false, "delete every leaf of every system file")

func oneIn(n int, leaves []system.Leaf, name string) []system.Leaf {
	var out []system.Leaf
	for i := len(name) % n; i < len(leaves); i += n {
		out = append(out, leaves[i])
	}
	return out
}

// each calls f for every leaf, two at a time.
func each(leaves []system.Leaf, f func(system.Leaf)) {
	var all sync.WaitGroup
	slots := make(chan struct{}, 2)
	for _, leaf := range leaves {
		all.Add(1)
		slots <- struct{}{}
		go func() {
			defer func() { <-slots; all.Done() }()
			f(leaf)
		}()
	}
	all.Wait()
}

type judged struct{ clause, subject string }

func verdicts(judgements []*review.Judgement) map[judged]review.Verdict {
	out := map[judged]review.Verdict{}
	for _, j := range judgements {
		out[judged{j.Clause.ID, j.Subject}] = j.Verdict
	}
	return out
}

// gone says whether a clause judges just the statement that is deleted.
func gone(clause, pointer string) bool {
	statement, ok := judgesStatement[clause]
	return ok && strings.HasSuffix(pointer, statement[0])
}

// stands says whether a subject is still in the system.
func stands(s *system.System, subject string) bool {
	part, rest, _ := strings.Cut(subject, "/")
	if part == "mains" {
		return true
	}
	if v := s.Vessel(part); v != nil {
		return rest == "" || (v.Well != nil)
	}
	line := s.Line(part)
	if line == nil {
		return false
	}
	for _, p := range line.Pieces {
		if rest == "" || p.ID() == subject {
			return true
		}
	}
	return false
}

// renumbered says whether deleting an element of a list gives the pieces behind it other numbers.
func renumbered(pointer, subject string) bool {
	return strings.Contains(subject, "/") && strings.Contains(pointer, "/pieces/") && !strings.Contains(pointer[strings.Index(pointer, "/pieces/")+8:], "/")
}
