// Mutate breaks a package in one small place at a time and counts how often its
// tests notice. The tree itself is never touched: the build is given the broken
// file in place of the true one.
//
//	go run .ci/mutate/main.go -n 60 -seed 1 ./geom
//	go run .ci/mutate/main.go -n 60 -tests ./geom/frame,./sheets ./geom/frame
//
// A mutant is one comparison, sum, product, condition or boolean turned round.
// One that the tests let pass is printed, to be looked at: either a test is
// missing, or the change makes no difference. Mutants that do not compile or
// that never end count as noticed.
package main

import (
	"cmp"
	"encoding/json"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// mutant is one change of a file: the bytes from lo to hi become new.
type mutant struct {
	file   string
	lo, hi int
	old    string
	new    string
	at     token.Position
}

// turned are the operators and what each is turned into. Pairs that differ only
// where two float64 are exactly equal, such as < and <=, are left out: geometry
// that hung on them would be wrong.
var turned = map[token.Token]token.Token{
	token.LSS: token.GTR, token.GTR: token.LSS, token.LEQ: token.GEQ, token.GEQ: token.LEQ,
	token.EQL: token.NEQ, token.NEQ: token.EQL, token.LAND: token.LOR, token.LOR: token.LAND,
	token.ADD: token.SUB, token.SUB: token.ADD, token.MUL: token.QUO, token.QUO: token.MUL,
}

func main() {
	n := flag.Int("n", 60, "how many mutants to try")
	seed := flag.Uint64("seed", 1, "chooses which")
	tests := flag.String("tests", "", "packages whose tests are to notice, with commas; the package itself if none")
	bound := flag.Duration("timeout", 2*time.Minute, "for the tests of one mutant")
	least := flag.Float64("least", 0, "share that must be noticed, percent")
	short := flag.Bool("short", false, "run the tests with -short")
	flag.Parse()
	if flag.NArg() != 1 {
		flag.Usage()
		os.Exit(2)
	}
	all, err := mutants(flag.Arg(0))
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	r := rand.New(rand.NewPCG(*seed, 0))
	r.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	all = all[:min(*n, len(all))]
	run := []string{"test", "-failfast", "-vet=off", "-timeout", bound.String()}
	if *short {
		run = append(run, "-short")
	}
	noticed := 0
	for _, m := range all {
		ok, err := m.passes(append(slices.Clone(run), strings.Split(cmp.Or(*tests, flag.Arg(0)), ",")...))
		if err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		if !ok {
			noticed++
			continue
		}
		fmt.Printf("passed: %s: %q for %q\n", m.at, m.new, m.old)
	}
	share := 100 * float64(noticed) / float64(max(len(all), 1))
	fmt.Printf("%s: %d of %d mutants noticed, %.0f %%\n", flag.Arg(0), noticed, len(all), share)
	if share < *least {
		os.Exit(1)
	}
}

// mutants lists all changes of a package's own files.
func mutants(dir string) ([]mutant, error) {
	files, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil {
		return nil, err
	}
	var out []mutant
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		set := token.NewFileSet()
		tree, err := parser.ParseFile(set, name, nil, 0)
		if err != nil {
			return nil, err
		}
		add := func(at token.Pos, old, new string) {
			p := set.Position(at)
			out = append(out, mutant{name, p.Offset, p.Offset + len(old), old, new, p})
		}
		ast.Inspect(tree, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.GenDecl:
				return n.Tok == token.VAR // a constant turned round would mostly be a tolerance
			case *ast.BinaryExpr:
				if to, ok := turned[n.Op]; ok && !wordy(n) {
					add(n.OpPos, n.Op.String(), to.String())
				}
			case *ast.UnaryExpr:
				if n.Op == token.NOT || n.Op == token.SUB {
					add(n.OpPos, n.Op.String(), " ")
				}
			case *ast.Ident:
				if other, ok := map[string]string{"true": "false", "false": "true"}[n.Name]; ok {
					add(n.Pos(), n.Name, other)
				}
			}
			return true
		})
	}
	return out, nil
}

// wordy reports whether an operator joins text: turning + round would not compile.
func wordy(b *ast.BinaryExpr) bool {
	words := false
	ast.Inspect(b, func(n ast.Node) bool {
		l, ok := n.(*ast.BasicLit)
		words = words || ok && l.Kind == token.STRING
		return !words
	})
	return words && b.Op == token.ADD
}

// passes reports whether the tests let the mutant pass.
func (m mutant) passes(run []string) (bool, error) {
	text, err := os.ReadFile(m.file)
	if err != nil {
		return false, err
	}
	dir, err := os.MkdirTemp("", "mutant")
	if err != nil {
		return false, err
	}
	defer os.RemoveAll(dir)
	broken, overlay := filepath.Join(dir, "broken.go"), filepath.Join(dir, "overlay.json")
	if err := os.WriteFile(broken, slices.Concat(text[:m.lo], []byte(m.new), text[m.hi:]), 0o666); err != nil {
		return false, err
	}
	whole, err := filepath.Abs(m.file)
	if err != nil {
		return false, err
	}
	list, err := json.Marshal(map[string]map[string]string{"Replace": {whole: broken}})
	if err != nil {
		return false, err
	}
	if err := os.WriteFile(overlay, list, 0o666); err != nil {
		return false, err
	}
	run = slices.Insert(run, 1, "-overlay", overlay)
	return exec.Command("go", run...).Run() == nil, nil
}
