package report

import (
	"strconv"
	"strings"

	"dryfit/internal/system"
	"dryfit/internal/working"
)

// caseHeads says each case of what may go wrong, or is done by hand, as the head of its scenes.
var caseHeads = map[string]string{
	"one_blocked":     "one opening blocked",
	"stopped":         "pump stands still",
	"restart":         "pump starts again",
	"open_joint":      "a line comes open",
	"drain_left_open": "a drain left open",
	"rain":            "strongest rain",
	"topup_stuck":     "top-up stays open",
	"wrong_valve":     "a valve the other way",
	"cleaning":        "settler drawn down",
}

func caseHead(name string) string {
	if words := caseHeads[name]; words != "" {
		return words
	}
	return strings.ReplaceAll(name, "_", " ")
}

// sceneLabels names scenes of one case under its head: by what the case is about.
func sceneLabels(scenes []working.Scene) []string {
	out := make([]string, len(scenes))
	valves := map[string]int{}
	for _, s := range scenes {
		line, _, _ := strings.Cut(s.Subject, "/")
		valves[line]++
	}
	for i, s := range scenes {
		line, piece := ofLine(s.Subject)
		switch s.Case {
		case "one_blocked", "drain_left_open", "cleaning":
			out[i] = s.Subject
		case "open_joint":
			out[i] = s.Subject + strings.TrimPrefix(strings.TrimPrefix(s.Fault, s.Subject), " open")
		case "wrong_valve":
			if out[i] = line; valves[line] > 1 {
				out[i] += " " + piece
			}
			out[i] += ", " + s.Fault[strings.LastIndexByte(s.Fault, ' ')+1:]
		default:
			out[i] = s.Fault
		}
	}
	return out
}

// ofLine splits the subject of a piece: "solids-run/11" is piece 12 of solids-run.
func ofLine(subject string) (line, piece string) {
	line, index, cut := strings.Cut(subject, "/")
	n, err := strconv.Atoi(index)
	if !cut || err != nil {
		return subject, ""
	}
	return line, "piece " + strconv.Itoa(n+1)
}

// faultWords says a fault without the index of a piece: "piece 12 of solids-run shut".
func faultWords(fault string) string {
	subject, rest, _ := strings.Cut(fault, " ")
	line, piece := ofLine(subject)
	if piece == "" {
		return fault
	}
	return strings.TrimSpace(piece + " of " + line + " " + rest)
}

// sceneName names a scene by itself: "solids-run blocked", "strongest rain".
func sceneName(sc working.Scene) string {
	switch sc.Case {
	case "rain", "topup_stuck", "restart":
		return caseHead(sc.Case)
	}
	return faultWords(sc.Fault)
}

// sceneMeaning says in a line what is done to the loop in a scene.
func sceneMeaning(sc working.Scene, s *system.System) string {
	line, piece := ofLine(sc.Subject)
	switch sc.Case {
	case "one_blocked":
		return "nothing gets through " + line
	case "stopped":
		if strings.HasSuffix(sc.Fault, "open") {
			return "every pump off; siphon breaks let air in"
		}
		return "every pump off; siphon breaks let no air in"
	case "restart":
		return "every pump goes on, from the levels at rest"
	case "open_joint":
		words := "it comes apart"
		if l := s.Line(line); l != nil {
			for _, p := range l.Pieces {
				if p.Pointer == sc.At {
					words += " behind piece " + strconv.Itoa(p.Index+1) + " (" + strings.ReplaceAll(p.Kind, "_", " ") + ")"
				}
			}
		}
		if strings.HasSuffix(sc.Fault, "capped") {
			words += ", its vents shut"
		}
		return words
	case "drain_left_open":
		return "the valves of " + line + " stand open"
	case "cleaning":
		return "every pump off, water let out by " + line
	case "rain":
		return "it falls on all that is not covered"
	case "topup_stuck":
		return "it runs into " + line + " whatever the level"
	case "wrong_valve":
		return "the valve of " + line + ", its " + piece + ", " + sc.Fault[strings.LastIndexByte(sc.Fault, ' ')+1:]
	}
	return faultWords(sc.Fault)
}
