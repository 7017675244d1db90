package marking

import (
	"path/filepath"
	"strings"

	"dryfit/internal/quantity"
)

// Moderate puts marks that were changed by hand in the place of those worked out, which stay beside them.
func (m *Marked) Moderate(changes []Moderation) {
	was := m.Total
	for _, c := range changes {
		if !m.isNamed(c.Submission) {
			continue
		}
		change := c
		change.Stale = c.Hash != "" && !strings.HasPrefix(m.Hash, c.Hash)
		if c.Item == "" {
			m.Changed = &change
			continue
		}
		for i := range m.Lines {
			if line := &m.Lines[i]; line.Item.ID == c.Item {
				before := line.Marks
				line.Was, line.Marks, line.Changed = &before, c.Marks, &change
			}
		}
	}
	m.add()
	if m.Changed != nil {
		m.Total = quantity.Rounded(m.Changed.Marks)
	}
	if m.Total != was {
		m.Was = &was
	}
}

// ByHand is the changes by hand of a submission: those of its items, then that of the total.
func (m *Marked) ByHand() []*Moderation {
	var out []*Moderation
	for _, line := range m.Lines {
		if line.Changed != nil {
			out = append(out, line.Changed)
		}
	}
	if m.Changed != nil {
		out = append(out, m.Changed)
	}
	return out
}

// isNamed says that a name in a file of changes by hand is that of the submission, with its ending or without.
func (m *Marked) isNamed(name string) bool {
	return name == m.Name || name == m.Name+filepath.Ext(m.File)
}
