package judge

import (
	"context"
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/open-policy-agent/opa/v1/ast"
)

// hostileText is a clause of a house whose body and answer are given.
func hostileText(helpers, answer, body string) string {
	at := strings.Index(houseClause, "judgements contains")
	return strings.Replace(houseClause[:at], "import data.vocab\n", "", 1) + helpers +
		"\njudgements contains " + answer + " if {\n" + body + "\n}\n"
}

// hostile is the book with one such clause.
func hostile(t *testing.T, helpers, answer, body string) (*Book, error) {
	t.Helper()
	return Load(catalogue(), firstSeven, house(houseClause, hostileText(helpers, answer, body)))
}

// failsAs judges a sound loop by a book and wants one clause to fail in these words, and all others to judge.
func failsAs(t *testing.T, b *Book, says string) {
	t.Helper()
	want := len(judge(t, theBook(t), soundLoop().Ledger))
	got, failed, err := b.Judge(context.Background(), soundLoop().Ledger)
	if err != nil || len(got) != want {
		t.Errorf("%d judgements in place of %d, error %v", len(got), want, err)
	}
	if len(failed) != 1 || failed[0].Clause != "house_turn" || !strings.Contains(failed[0].Why, says) {
		t.Errorf("failed: %v, which should say %q", failed, says)
	}
}

func TestWhatClausesMayNotCall(t *testing.T) {
	for _, call := range []string{
		`http.send({"method": "get", "url": "http://localhost"})`, `opa.runtime()`, `time.now_ns()`, `rand.intn("a", 5)`,
		`net.lookup_ip_addr("localhost")`, `uuid.rfc4122("a")`, `concat("", ["a"])`, `sprintf("%d", [1])`, `replace("a", "a", "aa")`,
		`json.marshal([])`, `yaml.marshal([])`, `json.unmarshal("1")`, `regex.match("(a*)*", "a")`, `glob.match("*", [], "a")`,
		`array.concat([1], [2])`, `object.union({}, {})`, `numbers.range(1, 1000000000)`, `1000000 * 1000000`, `1 / 3`, `7 % 2`,
		`bits.lsh(1, 1000000000)`, `to_number("1e999999999")`, `product([1, 2])`, `format_int(10, 2)`, `walk([1])`, `graph.reachable({}, set())`,
		`split("a", "")`, `strings.reverse("a")`, `rego.parse_module("a", "b")`, `crypto.sha256("a")`, `print("a")`, `trace("a")`,
		`$"{1}{2}"`, `semver.is_valid("1")`, `units.parse("1K")`, `base64.encode("a")`, `strings.render_template("a", {})`,
	} {
		b, err := hostile(t, "", "1", "x := "+call+"\nx")
		if err == nil {
			t.Errorf("%s loads: %v", call, b.Clauses()[0].ID)
		}
	}
}

func TestEveryAllowedFunctionExistsAndIsPure(t *testing.T) {
	known := map[string]*ast.Builtin{}
	for _, b := range ast.CapabilitiesForThisVersion().Builtins {
		known[b.Name] = b
	}
	for _, name := range allowed {
		if b := known[name]; b == nil || b.Nondeterministic {
			t.Errorf("%s does not exist or is not determined by its arguments", name)
		}
	}
	if got := len(capabilities().Builtins); got != len(allowed) || got > 60 || !slices.Contains(allowed, "count") {
		t.Errorf("%d functions", got)
	}
}

func TestNumbersTooLargeToWorkWith(t *testing.T) {
	for _, n := range []string{"1e400", "-1e400", "1" + strings.Repeat("0", 400)} {
		if _, err := hostile(t, "", "1", n+" < 1"); err == nil || !strings.Contains(err.Error(), "too large") {
			t.Errorf("%.20s: error %v", n, err)
		}
	}
}

// What a clause says has to follow from what was worked out.
func TestMadeUpJudgementsAreRefused(t *testing.T) {
	for answer, says := range map[string]string{
		`{"subject": "solids-run/2", "quantity": "turn", "limit": {"most": 0.785398}, "at": "", "verdict": "met", "value": 1.5708, "when": "always"}`: "does not follow",
		`{"subject": "solids-run/2", "quantity": "turn", "limit": {"most": 2}, "at": "", "verdict": "met", "value": 1.5708, "when": "always"}`:        "does not give for it",
		`{"subject": "solids-run/2", "quantity": "turn", "limit": {"most": 0.785398}, "at": "", "verdict": "met", "value": 0.5, "when": "always"}`:    "does not follow",
		`{"subject": "solids-run/2", "quantity": "turns", "limit": {"most": 0.785398}, "at": "", "verdict": "met"}`:                                   `the nearest is "turn"`,
		`{"subject": "solids-run/2", "quantity": "turn", "limit": {"most": 0.785398}, "at": "", "verdict": "fine"}`:                                   errShape.Error(),
		`{"subject": "solids-run/2", "fact": "opens_to_brush", "wanted": {"no"}, "at": "", "verdict": "met", "word": "no"}`:                           "does not follow",
		`{"subject": "solids-run/2", "fact": "opens_to_brush", "wanted": {"yess"}, "at": "", "verdict": "met", "word": "yes"}`:                        `the nearest is "yes"`,
		`{"subject": "solids-run/2", "fact": "opens", "wanted": {"yes"}, "at": "", "verdict": "met", "word": "yes"}`:                                  "there is no fact",
	} {
		b, err := hostile(t, "", answer, "true")
		if err != nil {
			t.Fatal(err)
		}
		failsAs(t, b, says)
	}
}

func TestCallerMayStop(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	b, err := Load(catalogue(), firstSeven, house())
	if err != nil {
		t.Fatal(err)
	}
	if got, failed, err := b.Judge(ctx, soundLoop().Ledger); !errors.Is(err, context.Canceled) || got != nil || failed != nil {
		t.Errorf("%d judgements, failed %v, error %v", len(got), failed, err)
	}
}

func TestFunctionsThatFailAreErrors(t *testing.T) {
	b := Open(catalogue(), firstSeven, house(houseClause, hostileText("", "1", `object.remove(1, ["a"])`)))
	failsAs(t, b, "object.remove")
}
