package judge

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/open-policy-agent/opa/v1/ast"
)

// hostile is the book with one clause whose body and answer are given.
func hostile(t *testing.T, helpers, answer, body string) (*Book, error) {
	t.Helper()
	at := strings.Index(houseClause, "judgements contains")
	text := strings.Replace(houseClause[:at], "import data.vocab\n", "", 1) + helpers +
		"\njudgements contains " + answer + " if {\n" + body + "\n}\n"
	b, err := Load(catalogue(), firstSeven, house(houseClause, text))
	if err == nil {
		b.bounds = bounds{300 * time.Millisecond, 256 << 20}
	}
	return b, err
}

// pairs hides from the compiler what is doubled: it would type the whole of it.
const pairs = "pair(x) := [x, x]\n"

// doublings is n arrays of which each holds the one before twice: small as a term,
// 2 to the n elements when written out.
func doublings(name string, n int, seed, form string) string {
	text := fmt.Sprintf("%s0 := [%s]\n", name, seed)
	for i := range n {
		text += fmt.Sprintf("%s%d := %s\n", name, i+1, strings.ReplaceAll(form, "x", fmt.Sprint(name, i)))
	}
	return text
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

func TestBounds(t *testing.T) {
	ten := "ten := [0, 1, 2, 3, 4, 5, 6, 7, 8, 9]\n"
	loop := ""
	for i := range 12 {
		loop += fmt.Sprintf("some x%d in ten\n", i)
	}
	sum := "x0 + x1 + x2 + x3 + x4 + x5 + x6 + x7 + x8 + x9 + x10 + x11"
	for name, c := range map[string]struct {
		helpers, answer, body string
		want                  error
	}{
		"a loop of 10^12 steps":                  {ten, "1", loop + sum + " == -1", errTime},
		"comparing 2^27 elements":                {pairs + doublings("a", 27, "1", "pair(x)") + doublings("b", 27, "1", "pair(x)"), "1", "a27 == b27", errTime},
		"a set of 10^12 numbers":                 {ten, "x0", "count({y | " + strings.ReplaceAll(loop, "\n", "; ") + "y := [x0, x1, x2, x3, x4, x5, x6, x7, x8, x9, x10, x11]}) == 1\nsome x0 in ten", nil},
		"answers that share 2^33 elements":       {doublings("a", 33, "1", "[x, x]"), "a33", "true", errShape},
		"a missing list of 2^33 elements":        {doublings("a", 33, "1", "[x, x]"), `{"subject": "s", "quantity": "turn", "verdict": "undetermined", "missing": {a33}}`, "true", errShape},
		"two answers that differ in the last":    {pairs + doublings("a", 27, "1", "pair(x)") + doublings("b", 27, "2", "pair(x)"), "x", "some x in [a27, b27]", nil},
		"an answer of no shape":                  {"", "{\"subject\": \"s\"}", "true", errShape},
		"an answer with a field of its own":      {"", `{"subject": "s", "quantity": "turn", "verdict": "met", "mood": "good"}`, "true", errShape},
		"an answer that is a number":             {"", "1", "true", errShape},
		"an answer with a long text":             {"", `{"subject": "` + strings.Repeat("s", mostLetters+1) + `", "quantity": "turn"}`, "true", errShape},
		"an answer with a number as its subject": {"", `{"subject": 1, "quantity": "turn"}`, "true", errShape},
	} {
		b, err := hostile(t, c.helpers, c.answer, c.body)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		start := time.Now()
		got, err := b.Judge(context.Background(), soundLoop().Ledger)
		if took := time.Since(start); took > 3*time.Second {
			t.Errorf("%s: took %v", name, took)
		}
		if err == nil || len(got) > 0 || !strings.Contains(err.Error(), "clause house_turn") {
			t.Errorf("%s: %d judgements, error %v", name, len(got), err)
		}
		if c.want != nil && !errors.Is(err, c.want) {
			t.Errorf("%s: error %v", name, err)
		}
	}
}

// The compiler types what is doubled as far as it goes. It cannot be stopped, so
// loading leaves it behind.
func TestLoadingIsBounded(t *testing.T) {
	doubled := doublings("a", 22, "1", "[x, x]") + doublings("b", 22, "1", "[x, x]")
	text := houseClause + "\n" + doubled + "\nsame if a22 == b22\n"
	start := time.Now()
	_, err := load(catalogue(), bounds{200 * time.Millisecond, heap}, firstSeven, house(houseClause, text))
	if !errors.Is(err, errTime) || time.Since(start) > 3*time.Second {
		t.Errorf("error %v after %v", err, time.Since(start))
	}
}

func TestMemoryIsBounded(t *testing.T) {
	thousand := "thousand := [" + strings.Repeat("1,", 999) + "1]\n"
	b, err := hostile(t, thousand, "1", "count([[i, j, k] | some i in thousand; some j in thousand; some k in thousand]) == 1")
	if err != nil {
		t.Fatal(err)
	}
	b.bounds = bounds{time.Minute, 64 << 20}
	if _, err := b.Judge(context.Background(), soundLoop().Ledger); !errors.Is(err, errHeap) || !strings.Contains(err.Error(), "clause house_turn") {
		t.Errorf("error %v", err)
	}
}

func TestTooManyJudgements(t *testing.T) {
	seventyTwo := "seventy_two := [" + strings.Repeat("1,", 71) + "1]\n"
	b, err := hostile(t, seventyTwo, "[i, j]", "some i, _ in seventy_two\nsome j, _ in seventy_two")
	if err != nil {
		t.Fatal(err)
	}
	b.bounds.time = time.Minute
	if _, err := b.Judge(context.Background(), soundLoop().Ledger); err == nil || !strings.Contains(err.Error(), "5184 judgements") {
		t.Errorf("error %v", err)
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
		if _, err := b.Judge(context.Background(), soundLoop().Ledger); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%s\nerror %v", answer, err)
		}
	}
}

func TestCallerMayStop(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if got, err := theBook(t).Judge(ctx, soundLoop().Ledger); !errors.Is(err, context.Canceled) || got != nil {
		t.Errorf("%d judgements, error %v", len(got), err)
	}
}

func TestFunctionsThatFailAreErrors(t *testing.T) {
	b, err := hostile(t, "", "1", `object.remove(1, ["a"])`)
	if err == nil {
		_, err = b.Judge(context.Background(), soundLoop().Ledger)
	}
	if err == nil {
		t.Error("a call that cannot work went unnoticed")
	}
}
