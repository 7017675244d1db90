package report

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"dryfit/internal/review"
)

// The words that the reports have in common.

// counted writes a small number as a word: "none", "one", "two" ... "13".
func counted(n int) string {
	words := []string{"none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
	if n >= 0 && n < len(words) {
		return words[n]
	}
	return strconv.Itoa(n)
}

// are is the verb for so many.
func are(n int) string {
	if n == 1 {
		return "is"
	}
	return "are"
}

// series is a list in a sentence: "a, b and c".
func series(items []string, last string) string {
	if len(items) < 2 {
		return strings.Join(items, "")
	}
	return strings.Join(items[:len(items)-1], ", ") + " " + last + " " + items[len(items)-1]
}

// capital makes the first letter of a sentence large.
func capital(text string) string {
	_, size := utf8.DecodeRuneInString(text)
	if text == "" || !utf8.ValidString(text[:size]) {
		return text
	}
	return strings.ToUpper(text[:size]) + text[size:]
}

// sentence ends text with a full stop.
func sentence(text string) string {
	text = strings.TrimSpace(text)
	if text == "" || strings.ContainsAny(text[len(text)-1:], ".?!") {
		return text
	}
	return text + "."
}

// own is the possessive of a name: "the settler's".
func own(name string) string { return name + "'s" }

// verdictWords is how a finding is headed: "shall, not met".
func verdictWords(j *review.Judgement) string {
	return string(j.Clause.Strength) + ", " + string(j.Verdict)
}

// verdictInk is the ink of flags and verdict words.
func verdictInk(j *review.Judgement) ink {
	switch {
	case j.Verdict == review.Undetermined:
		return openInk
	case j.Verdict != review.NotMet:
		return noInk
	case j.Clause.Strength == review.Shall:
		return shallInk
	}
	return shouldInk
}

// flagText is the sign in the margin.
func flagText(number int) string { return "/" + strconv.Itoa(number) + `\` }

const cautionFlag = `/!\`

// caseWords says each case of the running loop as a builder would.
var caseWords = map[string]string{
	"always":    "in every state",
	"run_clean": "pump at its greatest, all walls clean",
	"run_least": "pump side fouled, the least flow",
	"run_worst": "pump side clean, gravity side fouled",

	"power_cut":      "the power cut off",
	"air_pump_fails": "the air pump still",
	"unattended":     "nobody there",
}

// stateWords turns a state such as "run_worst, water low" into words. What it
// does not know it leaves as it is.
func stateWords(when string) string {
	var out []string
	parts := strings.Split(when, ", ")
	if parts[0] == "always" && len(parts) > 1 { // then only the water counts
		parts = parts[1:]
	}
	if head := caseHeads[parts[0]]; head != "" {
		switch parts[0] {
		case "rain", "restart": // with one fault, which says no more
			return head
		case "stopped", "cleaning":
			out = append(out, head)
		default: // the fault says it all, where there is one
			if len(parts) == 1 {
				return head
			}
		}
		parts = parts[1:]
	}
	for _, part := range parts {
		switch words, known := caseWords[part]; {
		case known:
			out = append(out, words)
		case part == "water low":
			out = append(out, "water at its coldest")
		case part == "water usual":
			out = append(out, "water as usual")
		case part == "water high":
			out = append(out, "water at its warmest")
		default:
			out = append(out, strings.ReplaceAll(faultWords(part), "_", " "))
		}
	}
	return strings.Join(out, ", ")
}

// statusWords is the status of a system file in words.
func statusWords(status string) string { return strings.ReplaceAll(status, "-", " ") }
