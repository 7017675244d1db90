package git

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// Read hands on the content of files, one after the other, of each no more than its first
// bytes, as many as most. One process of git reads them all. An error of take ends it.
func (c Commit) Read(ctx context.Context, files []File, most int64, take func(File, []byte) error) error {
	if len(files) == 0 {
		return nil
	}
	var asked strings.Builder
	for _, f := range files {
		asked.WriteString(f.object + "\n")
	}
	err := stream(ctx, c.repo.top, asked.String(), func(out io.Reader) error {
		r := bufio.NewReader(out)
		for _, f := range files {
			data, err := next(r, f, most)
			if err != nil {
				return err
			}
			if err := take(f, data); err != nil {
				return err
			}
		}
		return nil
	}, "cat-file", "--batch")
	return plainly(err)
}

// next reads one answer: a line with the name, the kind and the size, then the content and
// the end of a line.
func next(r *bufio.Reader, f File, most int64) ([]byte, error) {
	line, err := r.ReadString('\n')
	if err != nil {
		return nil, errCutShort
	}
	words := strings.Fields(line)
	if len(words) != 3 || words[0] != f.object || words[1] != "blob" {
		return nil, fmt.Errorf("git does not have the content of %s here; `git fsck` looks whether the repository is whole", quoted(f.Path))
	}
	size, err := strconv.ParseInt(words[2], 10, 64)
	if err != nil || size < 0 {
		return nil, fmt.Errorf("git does not say how large %s is; a newer dryfit may know what it says", quoted(f.Path))
	}
	data, err := io.ReadAll(io.LimitReader(r, min(size, most)))
	if err == nil {
		_, err = io.CopyN(io.Discard, r, size-int64(len(data))+1)
	}
	if err != nil {
		return nil, errCutShort
	}
	return data, nil
}
