package editor

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"sync"
	"time"
)

// Messages are framed by a header with their length in bytes, then a blank line.
//
// Source: Language Server Protocol 3.17, "Base Protocol"; JSON-RPC 2.0.
const (
	mostMessage = 16 << 20 // bytes
	mostHeader  = 4 << 10
)

// A message is a request (with an id and a method), a notification (without an id) or an answer (without a method).
type message struct {
	Version string          `json:"jsonrpc"`
	ID      json.RawMessage `json:"id,omitempty"`
	Method  string          `json:"method,omitempty"`
	Params  json.RawMessage `json:"params,omitempty"`
	Result  json.RawMessage `json:"result,omitempty"`
	Error   *failure        `json:"error,omitempty"`
}

// A failure is the answer to a request that has no other.
type failure struct {
	Code    int    `json:"code"`
	Message string `json:"message"`
}

func (f *failure) Error() string { return f.Message }

// The codes of failures that are used here.
const (
	parseError     = -32700
	invalidRequest = -32600
	methodNotFound = -32601
	invalidParams  = -32602
	internalError  = -32603
	notInitialized = -32002
	cancelled      = -32800
)

// readFrame reads the next message as it came. It gives io.EOF where the stream ends between two.
func readFrame(r *bufio.Reader) ([]byte, error) {
	length, header := -1, 0
	for {
		line, err := r.ReadSlice('\n')
		header += len(line)
		switch {
		case err == io.EOF && header == 0:
			return nil, io.EOF
		case errors.Is(err, bufio.ErrBufferFull) || header > mostHeader:
			return nil, errors.New("the header of a message is too long; send `Content-Length: N` and a blank line")
		case err != nil:
			return nil, fmt.Errorf("the header of a message breaks off: %w", err)
		}
		text := strings.TrimSpace(string(line))
		if text == "" {
			break
		}
		name, value, _ := strings.Cut(text, ":")
		if !strings.EqualFold(strings.TrimSpace(name), "Content-Length") {
			continue
		}
		if length, err = strconv.Atoi(strings.TrimSpace(value)); err != nil || length < 0 || length > mostMessage {
			return nil, fmt.Errorf("the length of a message is out of reach; send one of at most %d bytes", mostMessage)
		}
	}
	if length < 0 {
		return nil, errors.New("a message has no length; send `Content-Length: N` and a blank line before it")
	}
	data, err := io.ReadAll(io.LimitReader(r, int64(length))) // memory for what comes, not for what is announced
	if err == nil && len(data) < length {
		err = io.ErrUnexpectedEOF
	}
	if err != nil {
		return nil, fmt.Errorf("a message breaks off: %w", err)
	}
	return data, nil
}

// An outlet sends messages in their order. Whoever sends does not wait for the reader: an editor
// that is busy writing must not hold up the one who reads from it.
type outlet struct {
	mutex   sync.Mutex
	changed *sync.Cond
	waiting [][]byte
	closed  bool
	done    chan struct{}
}

func newOutlet(w io.Writer) *outlet {
	o := &outlet{done: make(chan struct{})}
	o.changed = sync.NewCond(&o.mutex)
	go o.run(w)
	return o
}

func (o *outlet) run(w io.Writer) {
	defer close(o.done)
	broken := false
	for {
		o.mutex.Lock()
		for len(o.waiting) == 0 && !o.closed {
			o.changed.Wait()
		}
		batch := o.waiting
		o.waiting = nil
		o.mutex.Unlock()
		if len(batch) == 0 {
			return
		}
		for _, data := range batch {
			if broken {
				break // nobody reads any more
			}
			_, err := fmt.Fprintf(w, "Content-Length: %d\r\n\r\n%s", len(data), data)
			broken = err != nil
		}
	}
}

func (o *outlet) send(m message) {
	m.Version = "2.0"
	data, err := json.Marshal(m)
	if err != nil {
		return // every message is made of what can be written
	}
	o.mutex.Lock()
	defer o.mutex.Unlock()
	if !o.closed {
		o.waiting = append(o.waiting, data)
		o.changed.Signal()
	}
}

// patience is how long the end waits for a client that reads no more.
const patience = 2 * time.Second

// close sends what is waiting and ends.
func (o *outlet) close() {
	o.mutex.Lock()
	o.closed = true
	o.changed.Signal()
	o.mutex.Unlock()
	select {
	case <-o.done:
	case <-time.After(patience):
	}
}

// answer answers a request. An answer without a result has the result null.
func (o *outlet) answer(id json.RawMessage, result any, err error) {
	m := message{ID: id}
	switch data, fault := json.Marshal(result); {
	case err != nil:
		var f *failure
		if !errors.As(err, &f) {
			f = &failure{internalError, err.Error()}
		}
		m.Error = f
	case fault != nil:
		m.Error = &failure{internalError, fault.Error()}
	default:
		m.Result = data
	}
	if len(id) == 0 {
		m.ID = json.RawMessage("null")
	}
	o.send(m)
}

// notify sends a notification.
func (o *outlet) notify(method string, params any) {
	if data, err := json.Marshal(params); err == nil {
		o.send(message{Method: method, Params: data})
	}
}
