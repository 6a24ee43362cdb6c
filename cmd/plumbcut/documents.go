package main

import (
	"io"
	"regexp"

	"plumbcut/draw"
	"plumbcut/draw/pdf"
	"plumbcut/draw/png"
	"plumbcut/draw/svg"
)

// pictureDPI is the fineness of --png: every figure can be read on a screen,
// and an A3 sheet stays under 2500 pixels wide.
const pictureDPI = 150

// documents lists the files of a set. The PDFs come first since they take
// longest to render.
func documents(name string, set *draw.Set, r request) []document {
	docs := []document{pdfOf(pdfName(name), set, pdf.Options{})}
	if r.flat {
		docs = append(docs, pdfOf(flatName(name), set, pdf.Options{Flat: true}))
	}
	for _, s := range set.Sheets {
		docs = append(docs, document{name + "-" + s.Number + ".svg",
			func(w io.Writer) error { return svg.Write(w, set, s) }})
		if r.png {
			docs = append(docs, document{name + "-" + s.Number + ".png",
				func(w io.Writer) error { return png.Write(w, s, pictureDPI) }})
		}
	}
	return docs
}

func pdfOf(name string, set *draw.Set, opt pdf.Options) document {
	return document{name, func(w io.Writer) error { return pdf.Write(w, set, opt) }}
}

func pdfName(name string) string  { return name + ".pdf" }
func flatName(name string) string { return name + "-flat.pdf" }

// staleSheets tells the sheets that an earlier run of the same job drew and
// that are not among files: they must not lie beside the new ones. Only what
// has the name of a sheet of this job is one.
func staleSheets(name string, files []file) func(string) bool {
	sheet := regexp.MustCompile(`^` + regexp.QuoteMeta(name) + `-A\d{2,}\.(svg|png)$`)
	fresh := map[string]bool{}
	for _, f := range files {
		fresh[f.name] = true
	}
	return func(other string) bool { return sheet.MatchString(other) && !fresh[other] }
}
