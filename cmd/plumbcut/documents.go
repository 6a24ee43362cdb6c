package main

import (
	"io"
	"path/filepath"
	"strings"

	"plumbcut/draw"
	"plumbcut/draw/pdf"
	"plumbcut/draw/png"
	"plumbcut/draw/svg"
	"plumbcut/sheets/csv"
)

// pictureDPI is the fineness of --png: every figure can be read on a screen,
// and an A3 sheet stays under 2500 pixels wide.
const pictureDPI = 150

// documents lists the files of a set and its lists. The PDFs come first since they
// take longest to render.
func documents(name string, set *draw.Set, lists []csv.Table, r request) []document {
	docs := []document{pdfOf(pdfName(name), set, pdf.Options{})}
	if r.flat {
		docs = append(docs, pdfOf(flatName(name), set, pdf.Options{Flat: true}))
	}
	for _, s := range set.Sheets {
		docs = append(docs, document{name + "-" + s.Number + ".svg",
			func(w io.Writer) error { return svg.Write(w, set, s) }})
		if r.png {
			docs = append(docs, pngOf(name+"-"+s.Number+".png", s))
		}
	}
	for _, l := range lists {
		docs = append(docs, document{listName(name, l.Name), l.Write})
	}
	return docs
}

func pdfOf(name string, set *draw.Set, opt pdf.Options) document {
	return document{name, func(w io.Writer) error { return pdf.Write(w, set, opt) }}
}

func pngOf(name string, s *draw.Sheet) document {
	return document{name, func(w io.Writer) error { return png.Write(w, s, pictureDPI) }}
}

func pdfName(name string) string  { return name + ".pdf" }
func flatName(name string) string { return name + "-flat.pdf" }

// listName is the file of a list. Every run writes every list, so none of an
// earlier run stays behind.
func listName(name, list string) string { return name + "-" + list + ".csv" }

// staleSheets tells the sheets that an earlier run of the same job drew and
// that are not among files: they must not lie beside the new ones.
func staleSheets(name string, files []file) func(string) bool {
	fresh := map[string]bool{}
	for _, f := range files {
		fresh[f.name] = true
	}
	return func(other string) bool { return isSheet(name, other) && !fresh[other] }
}

// isSheet reports whether a file has the name of a sheet of the job called
// name: NAME-Ann.svg or NAME-Ann.png.
func isSheet(name, file string) bool {
	number, ok := strings.CutPrefix(file, name+"-A")
	ext := filepath.Ext(number)
	number = strings.TrimSuffix(number, ext)
	digits := strings.Trim(number, "0123456789") == "" && len(number) >= 2
	return ok && digits && (ext == ".svg" || ext == ".png")
}
