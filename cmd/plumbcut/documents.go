package main

import (
	"io"
	"path/filepath"
	"slices"
	"strings"

	"plumbcut/draw"
	"plumbcut/draw/pdf"
	"plumbcut/draw/png"
	"plumbcut/draw/svg"
	"plumbcut/sheets/csv"
	"plumbcut/sheets/template"
)

// pictureDPI is the fineness of --png: every figure can be read on a screen,
// and an A3 sheet stays under 2500 pixels wide.
const pictureDPI = 150

// drawn is everything that is made of a job.
type drawn struct {
	set       *draw.Set
	templates template.Templates
	lists     []csv.Table
}

// documents lists the files of a job. The PDFs come first since they take
// longest to render.
func documents(name string, d drawn, r request) []document {
	docs := []document{pdfOf(pdfName(name), d.set, pdf.Options{}), pdfOf(templatesName(name), d.templates.Pages, pdf.Options{})}
	if r.flat {
		docs = append(docs, pdfOf(flatName(name), d.set, pdf.Options{Flat: true}))
	}
	for _, s := range d.set.Sheets {
		docs = append(docs, svgOf(name+"-"+s.Number+".svg", d.set, s))
		if r.png {
			docs = append(docs, pngOf(name+"-"+s.Number+".png", s))
		}
	}
	for _, s := range d.templates.Whole.Sheets {
		docs = append(docs, svgOf(templateName(name, s), d.templates.Whole, s))
	}
	for _, l := range d.lists {
		docs = append(docs, document{listName(name, l.Name), l.Write})
	}
	return docs
}

func svgOf(name string, set *draw.Set, s *draw.Sheet) document {
	return document{name, func(w io.Writer) error { return svg.Write(w, set, s) }}
}

func pdfOf(name string, set *draw.Set, opt pdf.Options) document {
	return document{name, func(w io.Writer) error { return pdf.Write(w, set, opt) }}
}

func pngOf(name string, s *draw.Sheet) document {
	return document{name, func(w io.Writer) error { return png.Write(w, s, pictureDPI) }}
}

func pdfName(name string) string  { return name + ".pdf" }
func flatName(name string) string { return name + "-flat.pdf" }

// templatesName is the file of the full-size templates, and templateName that of
// one whole template.
func templatesName(name string) string               { return name + "-templates.pdf" }
func templateName(name string, s *draw.Sheet) string { return name + "-template-" + s.Number + ".svg" }

// listName is the file of a list. Every run writes every list, so none of an
// earlier run stays behind.
func listName(name, list string) string { return name + "-" + list + ".csv" }

// staleSheets tells the sheets and templates that an earlier run of the same job
// drew and that are not among docs: they must not lie beside the new ones.
func staleSheets(name string, docs []document) func(string) bool {
	fresh := map[string]bool{}
	for _, d := range docs {
		fresh[d.name] = true
	}
	return func(other string) bool { return isSheet(name, other) && !fresh[other] }
}

// isSheet reports whether a file has the name of a sheet or template of the job
// called name: NAME-Ann.svg, NAME-Ann.png or NAME-template-Tnn.svg.
func isSheet(name, file string) bool {
	numbered := func(prefix string, exts ...string) bool {
		number, ok := strings.CutPrefix(file, name+prefix)
		ext := filepath.Ext(number)
		number = strings.TrimSuffix(number, ext)
		digits := strings.Trim(number, "0123456789") == "" && len(number) >= 2
		return ok && digits && slices.Contains(exts, ext)
	}
	return numbered("-A", ".svg", ".png") || numbered("-template-T", ".svg")
}
