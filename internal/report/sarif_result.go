package report

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strings"

	"dryfit/internal/review"
)

const sourceRoot = "%SRCROOT%"

// Rules that are no clauses: what keeps a file from being judged, and what is wrong with its permits.
const (
	fileRead     = "file_read"
	permitServes = "permit_serves"
)

// sarifRules is the book as rules, and the two of our own.
func sarifRules(book []*review.Clause) []sarifRule {
	out := []sarifRule{}
	for _, c := range book {
		out = append(out, sarifRuleOf(c))
	}
	own := func(id, level, title, why string) {
		out = append(out, sarifRule{ID: id, Short: sarifText{Text: title}, Full: sarifText{Text: why}, Help: sarifText{Text: why, Markdown: marked(why)}, Default: sarifLevel{level}})
	}
	own(fileRead, "error", "A system file shall be readable.", "What cannot be read is not judged: nothing is known of this loop until the file is put right.")
	own(permitServes, "warning", "A permit should serve.", "A permit that has run out, is refused or fits nothing changes nothing, and whoever reads it may think that it does.")
	return out
}

func sarifRuleOf(c *review.Clause) sarifRule {
	why := sentence(c.Why)
	if why == "" {
		why = sentence(c.Title)
	}
	text, markdown := why, marked(why)
	if c.Safety && c.Caution != "" {
		text += "\nCAUTION " + sentence(c.Caution)
		markdown += "\n\n**CAUTION** " + marked(sentence(c.Caution))
	}
	for _, s := range c.Sources {
		text += "\nSource, " + sentence(sourceWords(s))
		markdown += "\n\n*Source*, " + marked(sentence(sourceWords(s)))
	}
	tags := []string{c.Chapter, string(c.Strength)}
	if c.Safety && c.Chapter != "safety" {
		tags = append(tags, "safety")
	}
	return sarifRule{
		ID: c.ID, Short: sarifText{Text: clipped(sentence(c.Title))}, Full: sarifText{Text: clipped(why)}, Help: sarifText{text, markdown},
		Default: sarifLevel{sarifLevels[c.Strength]}, Bag: sarifRuleBag{c.Chapter, string(c.Strength), c.Safety, tags},
	}
}

// mostDescription is how many letters a code host takes of a description; the help has all.
//
// Source: GitHub documentation, "SARIF support for code scanning", reportingDescriptor.
const mostDescription = 1024

// clipped cuts a description between words.
func clipped(text string) string {
	if len(text) <= mostDescription {
		return text
	}
	head := strings.ToValidUTF8(text[:mostDescription-3], "")
	return head[:max(strings.LastIndex(head, " "), 0)] + "..."
}

var sarifLevels = map[review.Strength]string{review.Shall: "error", review.Should: "warning", review.May: "note"}

// levelOf is how loud a finding is. One that is undetermined is one step quieter than one
// that is not met. SARIF has a word of its own for it, the kind `open`, but then the level
// must be `none`, which code hosts do not show beside the line: and the line is where the
// missing value has to be written. So it is a failure of kind, and the message says what it is.
func levelOf(f *review.Finding) string {
	if f.Verdict == review.Undetermined {
		if f.Clause.Strength == review.Shall {
			return "warning"
		}
		return "note"
	}
	return sarifLevels[f.Clause.Strength]
}

// unread writes what keeps a file from being judged, as results: hosts show results
// beside the line that is meant, and show nothing of notifications.
func (s *sarifWriter) unread(i Item) {
	same := counter{}
	put := func(line, column int, pointer, text string) {
		s.result(sarifResult{
			RuleID: fileRead, Level: "error", Message: message(text), Locations: []sarifLocation{fileLocation(i.File, line, column)},
			Fingerprints: same.fingerprints(fileRead, i.File, pointer), Suppressions: []sarifSuppression{},
		})
	}
	if i.Unread != "" || len(i.Problems) == 0 {
		put(1, 1, "", strings.TrimSuffix("The file cannot be read: "+i.Unread, ": "))
	}
	for _, p := range i.Problems {
		put(p.Line, p.Column, p.Pointer, "Found "+p.Found+": "+sentence(p.Write))
	}
}

// findings is the results of one file, each at its place. There are no `fixes` in them: a fix
// replaces a stretch of text, and of an edit only the pointer is known here, not where the old
// value ends; and most edits of a remedy change the form of the file, not one value.
func (s *sarifWriter) findings(of *review.Summary) []sarifResult {
	var out []sarifResult
	same := counter{}
	for _, f := range of.Findings {
		at := fileLocation(of.File, f.Place.Line, f.Place.Column)
		at.Logical = []sarifLogical{{safe(f.Subject)}}
		text := sentence(safe(f.Subject) + ": " + said(f, s.run.Look.Units))
		if remedies := remediesSaid(f, s.run.Look.Units); remedies != "" {
			text += " " + remedies
		}
		r := sarifResult{
			RuleID: f.Clause.ID, Level: levelOf(f), Message: message(text), Locations: []sarifLocation{at},
			Fingerprints: same.fingerprints(f.Clause.ID, of.File, f.Subject, f.Name, f.Limit.Name), Suppressions: []sarifSuppression{},
			Bag: &sarifResultBag{Verdict: string(f.Verdict), Counts: of.Counts(f, s.run.HeldTo), OfLimit: shareOf(f.Judgement), House: byHouse(f.Judgement, s.run.Look.Units)},
		}
		if f.Verdict == review.NotMet && !f.Fact {
			r.Bag.Value, r.Bag.Unit = finite(f.Value.X), siUnits[f.Kind]
		}
		if p := f.Permit; p != nil {
			r.Suppressions = append(r.Suppressions, suppressed(of.File, p))
		}
		out = append(out, r)
	}
	for _, p := range stale(of) {
		at := fileLocation(p.Place.File, p.Place.Line, p.Place.Column)
		at.Logical = []sarifLogical{{safe(p.Subject)}}
		out = append(out, sarifResult{
			RuleID: permitServes, Level: "warning", Message: message(sentence(capital(staleSaid(p)))), Locations: []sarifLocation{at},
			Fingerprints: same.fingerprints(permitServes, p.Place.File, p.Clause, p.Subject), Suppressions: []sarifSuppression{},
			Bag: &sarifResultBag{Verdict: "stale", Counts: s.run.HeldTo == review.Should},
		})
	}
	return out
}

// suppressed is a permit that holds: `inSource` where it stands in the system file itself.
func suppressed(file string, p *review.Permit) sarifSuppression {
	at := fileLocation(p.Place.File, p.Place.Line, p.Place.Column)
	out := sarifSuppression{Kind: "external", Status: "accepted", Justification: safe(leaveSaid(p)), Location: &at}
	if p.Place.File == file {
		out.Kind = "inSource"
	}
	return out
}

// message is text in which nothing is a link: in a message of SARIF [text](target) is one,
// and what a host makes of the brackets of strangers is not ours to find out.
func message(text string) sarifText {
	return sarifText{Text: strings.ReplaceAll(safe(text), "](", "] (")}
}

// fileLocation is a place in a file, by a URI relative to where dryfit was called.
func fileLocation(file string, line, column int) sarifLocation {
	uri, absolute := uriOf(file)
	at := sarifLocation{Physical: sarifPhysical{Artifact: sarifArtifact{URI: uri}, Region: sarifRegion{max(line, 1), max(column, 0)}}}
	if !absolute {
		at.Physical.Artifact.Base = sourceRoot
	}
	return at
}

// counter tells results of the same parts apart, in their order.
type counter map[string]int

// fingerprints is by what a host knows a result again: the SHA-256 of the clause, the file
// by its URI, the subject, and the quantity or fact with the name of its limit; and how many
// of the same came before it in the file. No number, line or word of the report is in it, so it
// stays when lines move, values change or the report is worded anew; it goes with the name
// of the file. The second name is that under which code hosts look for it: without it they
// take the words of the line, and lose the result when the value on it changes.
func (n counter) fingerprints(clause, file string, parts ...string) map[string]string {
	uri, _ := uriOf(file)
	key := strings.Join(append([]string{clause, uri}, parts...), "\n")
	n[key]++
	sum := sha256.Sum256([]byte(key))
	text := fmt.Sprintf("%s:%d", hex.EncodeToString(sum[:16]), n[key])
	return map[string]string{"clauseFileSubject/v1": text, "primaryLocationLineHash": text}
}
