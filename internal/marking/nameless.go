package marking

import "strconv"

// Nameless is the same class with numbers for names, for what may end in a log.
func (c *Class) Nameless() *Class {
	out := *c
	out.Marked = make([]*Marked, len(c.Marked))
	same := map[*Marked]*Marked{}
	for i, m := range c.Marked {
		one := *m
		one.Name, one.File = strconv.Itoa(m.Number), ""
		one.Changed = nameless(m.Changed, one.Name)
		one.Lines = append([]Line{}, m.Lines...)
		for k := range one.Lines {
			one.Lines[k].Changed = nameless(one.Lines[k].Changed, one.Name)
		}
		out.Marked[i], same[m] = &one, &one
	}
	out.Pairs = append([]Pair{}, c.Pairs...)
	for i, p := range out.Pairs {
		out.Pairs[i].A, out.Pairs[i].B = same[p.A], same[p.B]
	}
	out.Unfit = append([]Moderation{}, c.Unfit...)
	for i := range out.Unfit {
		out.Unfit[i].Submission = ""
	}
	return &out
}

func nameless(m *Moderation, name string) *Moderation {
	if m == nil {
		return nil
	}
	one := *m
	one.Submission = name
	return &one
}
