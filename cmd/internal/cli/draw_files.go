package cli

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"quiltrun/cmd/internal/draw"
	"quiltrun/planner"
)

// drawnFile is a drawing and the file that it goes to.
type drawnFile struct {
	draw.Drawing
	path  string
	data  []byte
	state string // new, anew or same
}

// What becomes of a file.
const (
	drawnNew  = "new"
	drawnAnew = "anew" // it was another drawing
	drawnSame = "same" // it was this drawing
)

// drawn makes drawings and looks whether their files may be written.
func drawn(plan planner.Plan, chosen []draw.Drawing, folder string) ([]drawnFile, error) {
	files := make([]drawnFile, len(chosen))
	for i, d := range chosen {
		var data bytes.Buffer
		if err := d.Draw(&data, plan); err != nil {
			return nil, err
		}
		path := filepath.Join(folder, d.File)
		state, err := mayDraw(path, data.Bytes())
		if err != nil {
			return nil, err
		}
		files[i] = drawnFile{Drawing: d, path: path, data: data.Bytes(), state: state}
	}
	if folder == "" {
		return files, nil
	}
	if err := os.Mkdir(folder, 0o755); err != nil && !errors.Is(err, fs.ErrExist) {
		return nil, failed("the folder %s cannot be made: %v", folder, cause(err))
	}
	return files, nil
}

// mayDraw says what writing a drawing to a path comes to, and refuses to write
// over anything but a drawing of our own.
func mayDraw(path string, data []byte) (string, error) {
	there, err := os.ReadFile(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return drawnNew, nil
	case err != nil:
		return "", failed("%s cannot be written: %v", path, cause(err))
	case bytes.Equal(there, data):
		return drawnSame, nil
	case !draw.IsDrawing(there):
		return "", failed("%s is there, and is no drawing of quiltrun's", path).
			hint("move it away, or write into another folder: --out FOLDER")
	}
	return drawnAnew, nil
}

// cause is the system's own word for what went wrong with a path.
func cause(err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	return err
}

// write puts the drawing in its place as a whole: whoever reads the file sees the
// old one or the new one.
func (f drawnFile) write() error {
	if f.state == drawnSame {
		return nil
	}
	temporary, err := os.CreateTemp(filepath.Dir(f.path), ".quiltrun-*.svg")
	if err != nil {
		return failed("%s cannot be written: %v", f.path, cause(err))
	}
	_, err = temporary.Write(f.data)
	err = errors.Join(err, temporary.Chmod(0o644), temporary.Close())
	if err == nil {
		err = os.Rename(temporary.Name(), f.path)
	}
	if err != nil {
		_ = os.Remove(temporary.Name())
		return failed("%s cannot be written: %v", f.path, cause(err))
	}
	return nil
}

// jsonDrawn is a file that draw has written, for scripts. Quilt and colourway are
// null where the drawing is of the other.
type jsonDrawn struct {
	File      string  `json:"file"`
	Quilt     *int    `json:"quilt"`
	Colourway *string `json:"colourway"`
	Bytes     int     `json:"bytes"`
	State     string  `json:"state"`

	Fabrics []string `json:"fabrics"` // that are cut so; empty for other drawings
}

// showDrawn says what was written.
func showDrawn(env *Env, job string, files []drawnFile) error {
	if env.given.json {
		return drawnJSON(env.Out, job, files)
	}
	began := map[string]string{drawnNew: "Written", drawnAnew: "Written anew", drawnSame: "As it was"}
	for _, f := range files {
		if _, err := fmt.Fprintf(env.Out, "%s: %s, %s\n", began[f.state], f.path, plainText(f.What)); err != nil {
			return err
		}
	}
	return nil
}

func drawnJSON(w io.Writer, job string, files []drawnFile) error {
	list := make([]jsonDrawn, len(files))
	for i, f := range files {
		list[i] = jsonDrawn{File: f.path, Bytes: len(f.data), State: f.state, Fabrics: append([]string{}, f.Fabrics...)}
		switch {
		case f.Quilt > 0:
			list[i].Quilt = &f.Quilt
		case f.Colourway != "":
			list[i].Colourway = &f.Colourway
		}
	}
	encode := json.NewEncoder(w)
	encode.SetEscapeHTML(false)
	return encode.Encode(struct {
		Schema int         `json:"schema"`
		Job    string      `json:"job"`
		Files  []jsonDrawn `json:"files"`
	}{schema, job, list})
}
