package working

import "context"

// stopped is how work on a ledger ends before its time: it unwinds to Within, and no further.
type stopped struct{ error }

// Within does work that enters into the ledger, and breaks off when the context
// ends, with its error: the ledger is then good for nothing. The work breaks off
// where it enters a quantity or asks GoOn.
func (l *Ledger) Within(ctx context.Context, work func()) (err error) {
	l.ctx = ctx
	defer func() {
		l.ctx = nil
		switch why := recover().(type) {
		case nil:
		case stopped:
			err = why.error
		default:
			panic(why)
		}
	}()
	l.GoOn()
	work()
	return nil
}

// GoOn breaks the work off if the context of Within has ended. Whatever takes long
// before it enters a quantity asks it now and then.
func (l *Ledger) GoOn() {
	if l.ctx == nil {
		return
	}
	if err := l.ctx.Err(); err != nil {
		panic(stopped{err})
	}
}

// Aside is an empty ledger that is bound by the same context.
func (l *Ledger) Aside() *Ledger {
	aside := NewLedger()
	aside.ctx = l.ctx
	return aside
}
