package editor

import "encoding/json"

// The parts of the protocol that are used here, under its own names.
//
// Source: Language Server Protocol 3.17.

type position struct {
	Line      int `json:"line"`
	Character int `json:"character"`
}

type textRange struct {
	Start position `json:"start"`
	End   position `json:"end"`
}

type location struct {
	URI   string    `json:"uri"`
	Range textRange `json:"range"`
}

type initializeParams struct {
	Capabilities struct {
		General struct {
			PositionEncodings []string `json:"positionEncodings"`
		} `json:"general"`
		Workspace struct {
			WorkspaceEdit struct {
				DocumentChanges bool `json:"documentChanges"`
			} `json:"workspaceEdit"`
		} `json:"workspace"`
		TextDocument struct {
			PublishDiagnostics struct {
				RelatedInformation bool `json:"relatedInformation"`
			} `json:"publishDiagnostics"`
		} `json:"textDocument"`
	} `json:"capabilities"`
}

type documentID struct {
	URI     string `json:"uri"`
	Version *int   `json:"version,omitempty"`
}

type openParams struct {
	Document struct {
		URI     string `json:"uri"`
		Version int    `json:"version"`
		Text    string `json:"text"`
	} `json:"textDocument"`
}

type changeParams struct {
	Document struct {
		URI     string `json:"uri"`
		Version int    `json:"version"`
	} `json:"textDocument"`
	Changes []struct {
		Range *textRange `json:"range"`
		Text  string     `json:"text"`
	} `json:"contentChanges"`
}

type documentParams struct {
	Document documentID `json:"textDocument"`
}

type positionParams struct {
	Document documentID `json:"textDocument"`
	Position position   `json:"position"`
}

type actionParams struct {
	Document documentID `json:"textDocument"`
	Range    textRange  `json:"range"`
	Context  struct {
		Only []string `json:"only"`
	} `json:"context"`
}

type diagnostic struct {
	Range    textRange `json:"range"`
	Severity int       `json:"severity"`
	Code     string    `json:"code,omitempty"`
	Source   string    `json:"source"`
	Message  string    `json:"message"`
	Related  []related `json:"relatedInformation,omitempty"`
}

type related struct {
	Location location `json:"location"`
	Message  string   `json:"message"`
}

// The severities.
const (
	asError       = 1
	asWarning     = 2
	asInformation = 3
	asHint        = 4
)

type publishParams struct {
	URI         string       `json:"uri"`
	Version     int          `json:"version"`
	Diagnostics []diagnostic `json:"diagnostics"`
}

type markup struct {
	Kind  string `json:"kind"`
	Value string `json:"value"`
}

type hover struct {
	Contents markup    `json:"contents"`
	Range    textRange `json:"range"`
}

type textEdit struct {
	Range   textRange `json:"range"`
	NewText string    `json:"newText"`
}

type completionItem struct {
	Label         string   `json:"label"`
	Kind          int      `json:"kind,omitempty"`
	Detail        string   `json:"detail,omitempty"`
	Documentation *markup  `json:"documentation,omitempty"`
	SortText      string   `json:"sortText,omitempty"`
	FilterText    string   `json:"filterText,omitempty"`
	TextEdit      textEdit `json:"textEdit"`
}

// The kinds of completions that are used here.
const (
	kindProperty  = 10
	kindUnit      = 11
	kindValue     = 12
	kindEnum      = 20
	kindReference = 18
)

type completionList struct {
	IsIncomplete bool             `json:"isIncomplete"`
	Items        []completionItem `json:"items"`
}

type codeAction struct {
	Title       string        `json:"title"`
	Kind        string        `json:"kind"`
	Diagnostics []diagnostic  `json:"diagnostics,omitempty"`
	IsPreferred bool          `json:"isPreferred,omitempty"`
	Edit        workspaceEdit `json:"edit"`
}

type workspaceEdit struct {
	Changes         map[string][]textEdit `json:"changes,omitempty"`
	DocumentChanges []documentEdit        `json:"documentChanges,omitempty"`
}

type documentEdit struct {
	Document documentID `json:"textDocument"`
	Edits    []textEdit `json:"edits"`
}

// decode reads the params of a message.
func decode[T any](params json.RawMessage) (T, error) {
	var out T
	if err := json.Unmarshal(params, &out); err != nil {
		return out, &failure{invalidParams, "the params cannot be read: " + err.Error()}
	}
	return out, nil
}
