package main

import (
	"cmp"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// The rules of the house, as DEVELOPERS.md states them, read off the source.

const (
	root   = "../.."
	module = "plumbcut"
)

// rooms says which rooms of this project each room may import, and which
// third-party modules. A room is a package and all that nests under it, unless
// a deeper one is listed. Every room may use geom/measure and its own parts.
var rooms = map[string]struct{ ours, theirs []string }{
	"geom/measure":    {},
	"geom":            {},
	"geom/frame/keys": {theirs: []string{"gopkg.in/yaml.v3"}},
	"geom/frame":      {ours: []string{"geom", "geom/frame/keys"}},
	"fonts":           {},
	"draw":            {ours: []string{"geom", "fonts"}},
	"draw/pdf":        {ours: []string{"geom", "fonts", "draw"}, theirs: []string{"github.com/go-pdf/fpdf"}},
	"draw/svg":        {ours: []string{"geom", "fonts", "draw"}},
	"draw/png":        {ours: []string{"geom", "fonts", "draw"}, theirs: []string{"github.com/tdewolff/canvas"}},
	"sheets":          {ours: []string{"geom", "geom/frame", "geom/frame/keys", "draw"}},
	"cmd": {ours: []string{"geom", "geom/frame", "geom/frame/keys", "draw",
		"draw/pdf", "draw/svg", "draw/png", "sheets"}},
}

// room is the room that a package lies in; "" for none.
func room(pkg string) string {
	for ; pkg != "."; pkg = path.Dir(pkg) {
		if _, ok := rooms[pkg]; ok {
			return pkg
		}
	}
	return ""
}

func TestRoomsImportDownwardsOnly(t *testing.T) {
	for _, f := range sources(t) {
		from := room(f.pkg)
		if from == "" {
			t.Errorf("%s: no room of the house", f.name)
			continue
		}
		for _, imp := range f.ast.Imports {
			p, err := strconv.Unquote(imp.Path.Value)
			if err != nil {
				t.Fatal(err)
			}
			if !mayImport(from, p) {
				t.Errorf("%s: %s may not import %s", f.name, from, p)
			}
		}
	}
}

func mayImport(from, imp string) bool {
	r := rooms[from]
	if sub, ok := strings.CutPrefix(imp, module+"/"); ok {
		to := room(sub)
		return to == from || to == "geom/measure" || slices.Contains(r.ours, to)
	}
	first, _, _ := strings.Cut(imp, "/")
	if !strings.Contains(first, ".") {
		return true // the standard library
	}
	return slices.ContainsFunc(r.theirs, func(m string) bool {
		return imp == m || strings.HasPrefix(imp, m+"/")
	})
}

func TestRoomRules(t *testing.T) {
	for _, c := range []struct {
		from, imp string
		want      bool
	}{
		{"cmd", "plumbcut/sheets", true},
		{"sheets", "plumbcut/geom/frame", true},
		{"sheets", "plumbcut/draw/pdf", false},
		{"draw", "plumbcut/geom/frame", false},
		{"draw", "plumbcut/geom/measure", true},
		{"geom", "plumbcut/draw", false},
		{"geom", "math", true},
		{"geom/frame/keys", "gopkg.in/yaml.v3", true},
		{"geom/frame", "gopkg.in/yaml.v3", false},
		{"draw/png", "github.com/tdewolff/canvas/renderers/rasterizer", true},
		{"draw/pdf", "github.com/tdewolff/canvas", false},
		{"sheets", "gopkg.in/yaml.v3", false},
		{"geom/frame", "plumbcut/geom/frame/jobgen", true},
	} {
		if got := mayImport(c.from, c.imp); got != c.want {
			t.Errorf("mayImport(%s, %s) = %v, want %v", c.from, c.imp, got, c.want)
		}
	}
}

func TestTopLevelIsFixed(t *testing.T) {
	out, err := exec.Command("git", "-C", root, "ls-files", "-z").Output()
	if err != nil {
		t.Skip("not a git work tree:", err)
	}
	allowed := strings.Fields("cmd draw geom sheets fonts examples go.mod go.sum README.md DEVELOPERS.md LICENSE NOTICE")
	for name := range strings.SplitSeq(strings.TrimRight(string(out), "\x00"), "\x00") {
		top, _, _ := strings.Cut(name, "/")
		if !strings.HasPrefix(top, ".") && !slices.Contains(allowed, top) {
			t.Errorf("%s: the top level has no place for it", name)
		}
	}
}

// The budgets. They keep a room readable at one sitting: measured in good
// neighbouring code, it is the long tail that tells clear from sprawling.
const (
	longestFunc   = 120 // lines
	usualFunc     = 80  // lines, for usualPart of all functions
	usualPart     = 0.99
	longestFile   = 700 // lines
	mostParams    = 5
	fewestSources = 4 // guards against a walk that finds nothing
)

func TestBudgets(t *testing.T) {
	type fn struct {
		at    string
		lines int
	}
	var fns []fn
	for _, f := range sources(t) {
		if n := f.set.File(f.ast.Pos()).LineCount(); n > longestFile {
			t.Errorf("%s: %d lines, more than %d", f.name, n, longestFile)
		}
		for _, d := range f.ast.Decls {
			d, ok := d.(*ast.FuncDecl)
			if !ok {
				continue
			}
			at := fmt.Sprintf("%s: %s", f.set.Position(d.Pos()), d.Name.Name)
			lines := f.set.Position(d.End()).Line - f.set.Position(d.Pos()).Line + 1
			fns = append(fns, fn{at, lines})
			if n := d.Type.Params.NumFields(); n > mostParams {
				t.Errorf("%s takes %d parameters, more than %d", at, n, mostParams)
			}
		}
	}
	slices.SortFunc(fns, func(a, b fn) int { return cmp.Compare(b.lines, a.lines) })
	long := 0
	for _, f := range fns {
		if f.lines > longestFunc {
			t.Errorf("%s has %d lines, more than %d", f.at, f.lines, longestFunc)
		}
		if f.lines > usualFunc {
			long++
		}
	}
	if most := int(float64(len(fns)) * (1 - usualPart)); long > most {
		t.Errorf("%d of %d functions have more than %d lines, more than %d; the longest: %v",
			long, len(fns), usualFunc, most, fns[:min(long, 10)])
	}
}

func TestExportedNamesAreDocumented(t *testing.T) {
	for _, f := range sources(t) {
		if f.ast.Name.Name == "main" {
			continue
		}
		for _, d := range f.ast.Decls {
			for _, name := range undocumented(d) {
				t.Errorf("%s: %s has no comment", f.set.Position(d.Pos()), name)
			}
		}
	}
}

// undocumented lists the exported names of a declaration that no comment
// stands by. A group's comment serves constants, variables and types that are
// only another name, not types of their own. An error's Error needs none.
func undocumented(d ast.Decl) (names []string) {
	switch d := d.(type) {
	case *ast.FuncDecl:
		isError := d.Recv != nil && d.Name.Name == "Error"
		if d.Name.IsExported() && d.Doc == nil && !isError && receiverExported(d) {
			names = append(names, d.Name.Name)
		}
	case *ast.GenDecl:
		for _, s := range d.Specs {
			switch s := s.(type) {
			case *ast.TypeSpec:
				if s.Name.IsExported() && s.Doc == nil && (d.Doc == nil || d.Lparen.IsValid() && !s.Assign.IsValid()) {
					names = append(names, s.Name.Name)
				}
			case *ast.ValueSpec:
				if s.Names[0].IsExported() && s.Doc == nil && s.Comment == nil && d.Doc == nil {
					names = append(names, s.Names[0].Name)
				}
			}
		}
	}
	return names
}

func receiverExported(d *ast.FuncDecl) bool {
	if d.Recv == nil {
		return true
	}
	typ := d.Recv.List[0].Type
	for {
		switch t := typ.(type) {
		case *ast.StarExpr:
			typ = t.X
		case *ast.IndexExpr:
			typ = t.X
		case *ast.Ident:
			return t.IsExported()
		default:
			return true
		}
	}
}

// TestNothingGlobalChanges finds assignments to package variables, and calls
// that would make a run depend on the clock.
func TestNothingGlobalChanges(t *testing.T) {
	files := sources(t)
	globals := map[string]bool{} // "pkg.name"
	for _, f := range files {
		for _, d := range f.ast.Decls {
			if d, ok := d.(*ast.GenDecl); ok && d.Tok == token.VAR {
				for _, s := range d.Specs {
					for _, n := range s.(*ast.ValueSpec).Names {
						globals[f.pkg+"."+n.Name] = true
					}
				}
			}
		}
	}
	for _, f := range files {
		changed := func(e ast.Expr) {
			if id := rootIdent(e); id != nil && globals[f.pkg+"."+id.Name] && !localTo(f.ast, id) {
				t.Errorf("%s: changes the package variable %s", f.set.Position(e.Pos()), id.Name)
			}
		}
		ast.Inspect(f.ast, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.AssignStmt:
				if n.Tok != token.DEFINE {
					for _, e := range n.Lhs {
						changed(e)
					}
				}
			case *ast.IncDecStmt:
				changed(n.X)
			case *ast.SelectorExpr:
				if x, ok := n.X.(*ast.Ident); ok && x.Name == "time" && (n.Sel.Name == "Now" || n.Sel.Name == "Since") {
					t.Errorf("%s: reads the clock", f.set.Position(n.Pos()))
				}
			}
			return true
		})
	}
}

// rootIdent is the variable that an assignable expression reaches into.
func rootIdent(e ast.Expr) *ast.Ident {
	for {
		switch x := e.(type) {
		case *ast.Ident:
			return x
		case *ast.IndexExpr:
			e = x.X
		case *ast.SelectorExpr:
			e = x.X
		case *ast.StarExpr:
			e = x.X
		case *ast.ParenExpr:
			e = x.X
		default:
			return nil
		}
	}
}

// localTo reports whether the identifier was declared inside a function of f.
func localTo(f *ast.File, id *ast.Ident) bool {
	return id.Obj != nil && f.Scope.Lookup(id.Name) != id.Obj
}

// source is one Go file of the shipped program.
type source struct {
	name string // from the top of the project
	pkg  string // folder, from the top of the project
	set  *token.FileSet
	ast  *ast.File
}

// sources reads every Go file but tests.
func sources(t *testing.T) []source {
	t.Helper()
	var files []source
	set := token.NewFileSet()
	err := fs.WalkDir(os.DirFS(root), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		base := path.Base(name)
		if d.IsDir() {
			if name != "." && (base[0] == '.' || base == "testdata") {
				return fs.SkipDir
			}
			return nil
		}
		if !strings.HasSuffix(base, ".go") || strings.HasSuffix(base, "_test.go") {
			return nil
		}
		f, err := parser.ParseFile(set, filepath.Join(root, name), nil, parser.ParseComments)
		if err != nil {
			return err
		}
		files = append(files, source{name, path.Dir(name), set, f})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(files) < fewestSources {
		t.Fatalf("found only %d source files", len(files))
	}
	return files
}
