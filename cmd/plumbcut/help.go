package main

import (
	"fmt"
	"strings"
)

// commands lists the verbs, in the order in which help shows them.
func commands() []command {
	return []command{
		{
			name:    "draw",
			does:    "write the drawings, the full-size templates and the lists",
			example: "plumbcut draw garden.yaml",
			text: `Writes garden.pdf and garden-A00.svg, garden-A01.svg ... into the folder
garden-drawings beside the job file, and the lists to order and cut by for a
spreadsheet: garden-cutting.csv, garden-stock.csv and garden-hardware.csv.
Writes garden-templates.pdf, paper patterns at full size to print and mark from,
and garden-template-T01.svg ..., each of them whole. With "-" the job file is
read from standard input, its name is "job" and the folder lies where you are.

All the drawings are written, or none: when the job has an error, or the disk
is full, the drawings of an earlier run stay as they were. Sheets and templates
of an earlier run of the same job that are no longer drawn are removed. A link or a
write-protected file in a drawing's place is never written through or replaced.

What is doubtful but can be built is told with the job file's line, and is
noted on the drawings too.
`,
			options: []option{
				{"-o", "DIR", "write into this folder; it is made if it is not there",
					func(r *request, v string) { r.dir = v }},
				{"--flat", "", "also write garden-flat.pdf, without layers or attachment",
					func(r *request, _ string) { r.flat = true }},
				{"--png", "", "also write a PNG picture of each sheet",
					func(r *request, _ string) { r.png = true }},
			},
			run: console.draw,
		},
		{
			name:    "check",
			does:    "look the job over and audit its drawings, write nothing",
			example: "plumbcut check garden.yaml",
			text: `Reads and builds the job, makes every sheet and template in memory and audits
it all: no two members in one place, contact at every bearing, every figure equal
to the model and to its length on paper, every cut line of a template on an edge
of its timber, no words that touch. Tells what it finds, one line each. The exit
status is 1 if a drawing would not be true (draw then writes nothing); a place
that is only hard to read is told. With "-" the job file is read from standard
input.
`,
			run: console.check,
		},
		{
			name:    "figures",
			does:    "print every computed number as JSON",
			example: "plumbcut figures garden.yaml > garden.json",
			text: `Prints the job's levels, set-out, members and their features as JSON, in
millimetres and degrees at full precision, for other programs. The README says
what each key means. With "-" the job file is read from standard input.
`,
			run: console.figures,
		},
	}
}

// generalHelp is what "plumbcut --help" prints.
func generalHelp() string {
	var b strings.Builder
	b.WriteString(`Example:

    plumbcut draw garden.yaml

draws the pergola that garden.yaml describes: plan, set-out, elevations, section
and joint details, dimensioned and to scale, into the folder garden-drawings.

Commands:

`)
	for _, cmd := range commands() {
		fmt.Fprintf(&b, "    plumbcut %-8s JOB.yaml   %s\n", cmd.name, cmd.does)
	}
	b.WriteString(`    plumbcut help COMMAND        say more about one command

Exit status: 0 fine; 1 the job cannot be built or written, and nothing was; 2 the
command line is wrong. Errors are told as file:line:column: what is wrong; what
would be right.
`)
	return b.String()
}

// help is what "plumbcut help COMMAND" prints.
func (cmd command) help() string {
	var b strings.Builder
	fmt.Fprintf(&b, "Example:\n\n    %s\n\n%s", cmd.example, cmd.text)
	if len(cmd.options) > 0 {
		b.WriteString("\nOptions, before or after the job file:\n\n")
		for _, o := range cmd.options {
			fmt.Fprintf(&b, "    %-8s  %s\n", strings.TrimSpace(o.name+" "+o.value), o.does)
		}
	}
	return b.String()
}
