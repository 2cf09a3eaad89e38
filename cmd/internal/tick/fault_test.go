package tick

import (
	"bytes"
	"context"
	"io"
	"strings"
	"sync"
	"testing"
	"time"

	tea "charm.land/bubbletea/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// paper is a terminal that keeps what was written to it.
type paper struct {
	mu   sync.Mutex
	text bytes.Buffer
}

func (p *paper) Write(data []byte) (int, error) {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.text.Write(data)
}

func (p *paper) String() string {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.text.String()
}

// TestAFaultLeavesTheTerminalItself, wherever the program breaks: the screen is left
// before the fault is raised for whoever words it.
func TestAFaultLeavesTheTerminalItself(t *testing.T) {
	sound := Log{
		Write: func(r Request) Answer { return Answer{Request: r} },
		Look:  func() (News, bool) { return News{}, false },
	}
	for name, broken := range map[string]func(log *Log, on *Terminal){
		"writing": func(log *Log, _ *Terminal) { log.Write = func(Request) Answer { panic("broken") } },
		"looking": func(log *Log, _ *Terminal) { log.Look = func() (News, bool) { panic("broken") } },
		"a key": func(_ *Log, on *Terminal) {
			on.NewID = func() (string, error) { panic("broken") }
		},
	} {
		t.Run(name, func(t *testing.T) {
			keys, typing := io.Pipe()
			t.Cleanup(func() { _ = typing.Close() })
			out := &paper{}
			log, on := sound, Terminal{
				In: keys, Out: out,
				Now:   func() time.Time { return evening },
				NewID: func() (string, error) { return "one", nil },
			}
			broken(&log, &on)
			state, guide := estuary(t)
			screen := NewScreen(state, guide, state.Rows()[0].Operation, settings())
			go func() { _, _ = io.WriteString(typing, " ") }()
			assert.PanicsWithValue(t, "broken", func() { _ = Run(context.Background(), screen, log, on) })
			text := out.String()
			require.Contains(t, text, "\x1b[?1049h", "the screen was up")
			assert.Greater(t, strings.LastIndex(text, "\x1b[?1049l"), strings.LastIndex(text, "\x1b[?1049h"))
			assert.Greater(t, strings.LastIndex(text, "\x1b[?25h"), strings.LastIndex(text, "\x1b[?25l"))
		})
	}
}

// TestAFaultInDrawingEndsTheScreen with the next message, and there is one every
// second: nobody sits before a screen that shows nothing.
func TestAFaultInDrawingEndsTheScreen(t *testing.T) {
	m := &model{} // without a screen there is nothing to draw
	m.View()
	require.NotNil(t, m.fault)
	_, cmd := m.Update(seen{})
	require.NotNil(t, cmd)
	assert.IsType(t, tea.QuitMsg{}, cmd())
}
