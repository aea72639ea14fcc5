package view

import (
	"context"
	"crypto/rand"
	"crypto/subtle"
	"embed"
	"encoding/base64"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"net"
	"net/http"
	"path"
	"strings"
	"sync"
	"sync/atomic"

	"flitchlay/internal/page"
)

//go:embed assets
var assets embed.FS

// Server serves the page of some rooms.
type Server struct {
	source Source
	host   string // 127.0.0.1:PORT
	secret string
	listen net.Listener
	known  *known
	lanes  sync.Map // of *lane, by client
	pages  atomic.Int64
	drawn  drawnSets
	stop   context.Context // ends what waits when the server does
}

// New listens on a port of the loopback address, on a free one for 0, and reads the rooms.
//
// Errors: the port is taken.
func New(ctx context.Context, source Source, port int) (*Server, error) {
	l, err := net.Listen("tcp", fmt.Sprintf("127.0.0.1:%d", port))
	if err != nil {
		return nil, err
	}
	secret := make([]byte, 18)
	rand.Read(secret) // never fails
	s := &Server{source: source, listen: l, host: l.Addr().String(), secret: base64.RawURLEncoding.EncodeToString(secret), stop: ctx}
	s.known = newKnown(source.Read(false))
	return s, nil
}

// Address is where the page is.
func (s *Server) Address() string { return "http://" + s.host + "/" + s.secret + "/" }

// Serve serves until the context ends, and follows the files.
//
// Errors: the folders cannot be followed, or the network fails.
func (s *Server) Serve() error {
	follow, err := s.follow()
	if err != nil {
		s.listen.Close()
		return err
	}
	defer follow.Close()
	server := &http.Server{Handler: s.guarded(s.routes()), MaxHeaderBytes: 1 << 14}
	go func() {
		<-s.stop.Done()
		server.Close()
	}()
	if err := server.Serve(s.listen); !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}

// policy lets a page load what this server has and nothing else: no script or style in the page itself, no frame, no form.
//
// Source: W3C Content Security Policy Level 3.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; " +
	"base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

// mostSent is the largest body that is read: a trial of a few hundred changes.
const mostSent = 1 << 18

// guarded lets through what comes to this address, with its secret, and, where it changes anything, from its own page.
func (s *Server) guarded(next http.Handler) http.Handler {
	_, port, _ := net.SplitHostPort(s.host)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cache-Control", "no-store")
		// a name that somebody else's server gives to this address is another host
		if r.Host != s.host && r.Host != "localhost:"+port {
			http.Error(w, "not here", http.StatusMisdirectedRequest)
			return
		}
		first, rest, _ := strings.Cut(strings.TrimPrefix(r.URL.Path, "/"), "/")
		if subtle.ConstantTimeCompare([]byte(first), []byte(s.secret)) != 1 {
			http.Error(w, "open the address that the terminal shows", http.StatusForbidden)
			return
		}
		origin := r.Header.Get("Origin")
		own := origin == "http://"+r.Host
		site := r.Header.Get("Sec-Fetch-Site")
		if origin != "" && !own || r.Method != http.MethodGet && !own || site == "cross-site" || site == "same-site" {
			http.Error(w, "not from there", http.StatusForbidden)
			return
		}
		if r.Method == http.MethodPost && r.Header.Get("Content-Type") != "application/json" {
			http.Error(w, "JSON alone", http.StatusUnsupportedMediaType)
			return
		}
		r.Body = http.MaxBytesReader(w, r.Body, mostSent)
		r.URL.Path = "/" + rest
		next.ServeHTTP(w, r)
	})
}

func (s *Server) routes() http.Handler {
	m := http.NewServeMux()
	m.HandleFunc("GET /{$}", s.page)
	m.HandleFunc("GET /a/{file}", s.asset)
	m.HandleFunc("GET /events", s.events)
	m.HandleFunc("GET /state", s.state)
	m.HandleFunc("POST /try", s.try)
	m.HandleFunc("POST /keep", s.keep)
	m.HandleFunc("GET /pages", s.listPages)
	m.HandleFunc("GET /page", s.onePage)
	m.HandleFunc("GET /pdf", s.pdf)
	m.HandleFunc("GET /card", s.card)
	return m
}

// kinds are the types of what is served, by the ends of its names. Nothing else is.
var kinds = map[string]string{".css": "text/css; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".ttf": "font/ttf", ".svg": "image/svg+xml"}

// asset serves a file that is embedded in the program.
func (s *Server) asset(w http.ResponseWriter, r *http.Request) {
	name := r.PathValue("file")
	kind := kinds[path.Ext(name)]
	data, err := fs.ReadFile(assets, "assets/"+name)
	if err != nil {
		data, err = page.Asset(name)
	}
	if err != nil || kind == "" {
		http.NotFound(w, r)
		return
	}
	w.Header().Set("Content-Type", kind)
	w.Write(data)
}

// page serves the page itself: it holds nothing of a room.
func (s *Server) page(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.Write(shell())
}

// send answers with JSON.
func send(w http.ResponseWriter, status int, v any) {
	data, err := json.Marshal(v)
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "application/json; charset=utf-8")
	w.WriteHeader(status)
	w.Write(data)
}

// refuse answers with why not.
func refuse(w http.ResponseWriter, status int, why string) {
	send(w, status, map[string]any{"error": why, "stale": why == errStale.Error()})
}
