package marking

import (
	"dryfit/internal/system"
)

// moderationForm is a file of changed marks as it is written.
type moderationForm struct {
	Changes []struct {
		Submission, Item, Reason, By, On string
		Marks                            float64
		SHA256                           string
	}
}

// ReadModeration reads a file of marks that were changed by hand, for the items of a guide. It
// tells all that is wrong with it at once; only a file without a problem gives any.
func ReadModeration(file string, data []byte, g *Guide) ([]Moderation, []system.Problem) {
	var form moderationForm
	k := changes.Read(file, data, &form)
	most := map[string]float64{"": g.Total}
	var ids []string
	for _, item := range g.Items {
		ids = append(ids, item.ID)
		most[item.ID] = item.Marks
		if item.Bonus {
			most[""] += item.Marks
		}
	}
	var out []Moderation
	seen := map[[2]string]bool{}
	for i, f := range form.Changes {
		at := system.Element("/changes", i)
		m := Moderation{Submission: f.Submission, Item: f.Item, Marks: f.Marks, Reason: f.Reason, By: f.By, On: f.On, Hash: f.SHA256, Pointer: at, Place: k.Doc.Place(at)}
		limit, known := most[m.Item]
		whole := "the item " + quoted(m.Item)
		if m.Item == "" {
			whole = "the total"
		}
		switch {
		case !known:
			k.Add(at+"/item", whole+", which is not in the guide", orNearest(m.Item, ids, "`dryfit guide` lists the items; for the total, leave `item` out"))
		case m.Marks > limit && m.Item == "":
			if k.Sound(at) { // else the item may be what is misspelt
				k.Add(at+"/marks", quoted(MarksNumber(m.Marks))+", more than all items give", "write at most "+MarksNumber(limit))
			}
		case m.Marks > limit:
			k.Add(at+"/marks", quoted(MarksNumber(m.Marks))+", more than "+whole+" gives", "write at most "+MarksNumber(limit))
		}
		if key := [2]string{m.Submission, m.Item}; k.Sound(at) && seen[key] {
			k.Add(at, whole+" of "+quoted(m.Submission)+" changed again", "keep the change that counts")
		} else if k.Sound(at) {
			seen[key] = true
		}
		out = append(out, m)
	}
	if len(k.Problems()) > 0 {
		return nil, k.Problems()
	}
	return out, nil
}
