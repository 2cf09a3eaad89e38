package tick

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"time"

	tea "charm.land/bubbletea/v2"

	"quiltrun/tracker"
)

// Log is what a screen is handed to read and write the log with. Both open it for
// the moment and let go of it.
type Log struct {
	// Write makes an entry of a request, and answers once it is on disk.
	Write func(Request) Answer
	// Look gives the job as it is now, and false where nothing has changed since
	// it was read or written here, or where it cannot be had at once.
	Look func() (News, bool)
}

// News is what the log has now. Guide is nil where the plan is what it was.
type News struct {
	State tracker.State
	Guide *Guide
}

// Terminal is where a screen runs, and what it needs of the world.
type Terminal struct {
	In    io.Reader
	Out   io.Writer
	Now   func() time.Time
	NewID func() (string, error)
	Words <-chan string // sentences to show that come from below, nil: none do
}

// frames a second bound how late a key may show: at most 9 ms.
const frames = 120

// lookEvery is how often the log is looked at for what others wrote.
const lookEvery = time.Second

// tryEvery is how long the screen leaves the log alone that another has open,
// after it has waited for it.
const tryEvery = 200 * time.Millisecond

// Run shows the screen until it is left, whichever way: by its key, by a signal,
// because the terminal was closed, or by a fault of the program, which it raises
// again once the terminal is itself. What then still waits to be written is the
// screen's Unwritten. The error says that the terminal failed.
func Run(ctx context.Context, screen *Screen, log Log, on Terminal) error {
	guard := startGuard(on.In, on.Out)
	defer guard.dismiss()
	m := &model{screen: screen, log: log, on: on, begin: time.Now(), wide: 80, high: 24, guard: guard}
	screen.Opened(on.Now())
	program := tea.NewProgram(m, tea.WithContext(ctx), tea.WithInput(on.In), tea.WithOutput(on.Out), tea.WithFPS(frames), tea.WithoutSignalHandler())
	stop := leaveOnSignals(program)
	defer stop()
	_, err := program.Run()
	if m.fault != nil {
		panic(m.fault)
	}
	if err != nil && !m.leaving() {
		return fmt.Errorf("the terminal cannot be used: %w", err)
	}
	return nil
}

// leaveOnSignals has the screen left in order when the system asks for it, or
// when the terminal is closed.
func leaveOnSignals(program *tea.Program) (stop func()) {
	signals := make(chan os.Signal, 1)
	signal.Notify(signals, leavingSignals...)
	done := make(chan struct{})
	go func() {
		select {
		case <-signals:
			program.Send(leaveNow{})
		case <-done:
		}
	}()
	return func() {
		signal.Stop(signals)
		close(done)
	}
}

// What comes to the model beside keys.
type (
	answered Answer
	seen     struct {
		news    News
		changed bool
	}
	told     string
	again    struct{} // send what waits once more
	leaveNow struct{} // a signal came
	faulted  struct{ cause any }
)

// model fits the screen to the library that runs the terminal.
type model struct {
	screen     *Screen
	log        Log
	on         Terminal
	begin      time.Time
	guard      guard
	wide, high int
	sending    bool
	signalled  bool
	fault      any // a panic, to be raised again
}

func (m *model) leaving() bool { return m.signalled || m.screen.Over() }

// Init begins to look at the log and to listen to what comes from below.
func (m *model) Init() tea.Cmd { return tea.Batch(m.look(), m.listen()) }

// Update takes in a message. A fault of the program ends the screen, and is kept
// for whoever words it.
func (m *model) Update(msg tea.Msg) (next tea.Model, cmd tea.Cmd) {
	next, cmd = m, tea.Quit
	if m.fault != nil { // in drawing, which has no other way to end the screen
		return
	}
	defer m.catch()
	cmd = m.take(msg)
	if m.leaving() && !m.sending {
		return m, tea.Quit
	}
	return m, cmd
}

// catch keeps a panic.
func (m *model) catch() {
	if p := recover(); p != nil && m.fault == nil {
		m.fault = p
	}
}

// take does what a message says.
func (m *model) take(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.guard.tell(changed) // the library has set the terminal by now
		m.wide, m.high = msg.Width, msg.Height
	case tea.KeyboardEnhancementsMsg:
		if msg.SupportsEventTypes() {
			m.screen.KeysReported()
		}
	case tea.KeyPressMsg:
		return m.press(msg)
	case tea.PasteMsg:
		m.screen.Paste(msg.Content)
	case answered:
		m.sending = false
		m.screen.Answered(Answer(msg))
		if msg.Held {
			return tea.Tick(tryEvery, func(time.Time) tea.Msg { return again{} })
		}
		return m.send()
	case again:
		return m.send()
	case seen:
		if msg.changed {
			m.screen.Seen(msg.news)
		}
		return m.look()
	case told:
		m.screen.Told(string(msg))
		return m.listen()
	case leaveNow:
		m.signalled = true
	case faulted:
		m.fault = msg.cause
		return tea.Quit
	}
	return nil
}

// press hands a key to the screen with an id for the entry that may come of it.
func (m *model) press(msg tea.KeyPressMsg) tea.Cmd {
	id, err := m.on.NewID()
	if err != nil {
		m.fault = err
		return tea.Quit
	}
	key := msg.Key()
	m.screen.Press(Press{
		Key: keyName(msg.String()), Text: key.Text, Repeat: key.IsRepeat,
		Since: time.Since(m.begin), At: m.on.Now(), ID: id,
	})
	return m.send()
}

// keyName is a key as the screen calls it: those of the number block are those of
// the rows.
func keyName(name string) string {
	if rest, ok := strings.CutPrefix(name, "kp"); ok && (rest == "enter" || isDigit(rest)) {
		return rest
	}
	return name
}

// send has the next request written, one at a time.
func (m *model) send() tea.Cmd {
	r, ok := m.screen.Send()
	if !ok || m.sending {
		return nil
	}
	m.sending = true
	return m.guarded(func() tea.Msg { return answered(m.log.Write(r)) })
}

// look looks at the log after a while.
func (m *model) look() tea.Cmd {
	return m.guarded(func() tea.Msg {
		time.Sleep(lookEvery)
		news, changed := m.log.Look()
		return seen{news, changed}
	})
}

// listen waits for a sentence from below.
func (m *model) listen() tea.Cmd {
	if m.on.Words == nil {
		return nil
	}
	return func() tea.Msg { return told(<-m.on.Words) }
}

// guarded is work beside the screen whose panic ends it in order.
func (m *model) guarded(work func() tea.Msg) tea.Cmd {
	return func() (msg tea.Msg) {
		defer func() {
			if p := recover(); p != nil {
				msg = faulted{p}
			}
		}()
		return work()
	}
}

// View is the screen as it is now.
func (m *model) View() (view tea.View) {
	defer m.catch()
	view.AltScreen = true
	// Held keys are reported only where every key is, as an escape with its text.
	view.KeyboardEnhancements = tea.KeyboardEnhancements{
		ReportEventTypes: true, ReportAllKeysAsEscapeCodes: true, ReportAssociatedText: true,
	}
	var out strings.Builder
	for i, l := range m.screen.Lines(m.wide, m.high) {
		if i > 0 {
			out.WriteByte('\n')
		}
		out.WriteString(styled(l, m.screen.Look.Colour))
	}
	view.SetContent(out.String())
	return view
}

// styled is a line as the terminal takes it. Bold and exchanged colours read on
// light and on dark alike.
func styled(l Line, welcome bool) string {
	switch {
	case !welcome || l.Text == "":
		return l.Text
	case l.Turned:
		return "\x1b[7m" + l.Text + "\x1b[0m"
	case l.Strong:
		return "\x1b[1m" + l.Text + "\x1b[0m"
	}
	return l.Text
}
