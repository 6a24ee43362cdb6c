package main

import (
	"fmt"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
)

// command is one verb of the command line.
type command struct {
	name    string
	does    string   // one line, for the list of commands
	example string   // shown first in its help
	text    string   // the rest of its help
	options []option // legal options besides --help
	run     func(console, request) int
}

// option is one legal option of a command.
type option struct {
	name  string // with its dashes
	value string // what follows it, in capitals; empty for a switch
	does  string
	set   func(r *request, value string)
}

// request is a command line, read.
type request struct {
	job       string // the job file's name, or "-" for standard input
	dir       string // where drawings go; empty: beside the job file
	flat, png bool
	help      bool
}

// fromStdin is the job's name that stands for standard input.
const fromStdin = "-"

// parse reads what follows a command's name. Options may stand before or after
// the job file; after "--" everything is a file.
func (cmd command) parse(args []string) (request, error) {
	var r request
	var files []string
	for len(args) > 0 {
		arg := args[0]
		args = args[1:]
		switch {
		case arg == "--":
			files, args = append(files, args...), nil
		case arg == fromStdin || !strings.HasPrefix(arg, "-"):
			files = append(files, arg)
		case arg == "-h" || arg == "-help" || arg == "--help":
			return request{help: true}, nil
		default:
			rest, err := cmd.option(&r, arg, args)
			if err != nil {
				return r, err
			}
			args = rest
		}
	}
	switch {
	case len(files) == 0:
		return r, fmt.Errorf("%s needs a job file, as in: %s", cmd.name, cmd.example)
	case len(files) > 1:
		return r, fmt.Errorf("%s takes one job file, not %d: %s", cmd.name, len(files), quoteAll(files))
	case files[0] == "":
		return r, fmt.Errorf("%s was given an empty name for the job file", cmd.name)
	}
	r.job = files[0]
	return r, nil
}

// option takes one option, and its value from rest where it has one, and
// returns what is left.
func (cmd command) option(r *request, arg string, rest []string) ([]string, error) {
	name, value, joined := strings.Cut(arg, "=")
	i := slices.IndexFunc(cmd.options, func(o option) bool { return o.name == name })
	if i < 0 {
		return nil, fmt.Errorf("%s has no option %q; it takes %s", cmd.name, name, cmd.legal())
	}
	switch o := cmd.options[i]; {
	case o.value == "":
		if joined {
			return nil, fmt.Errorf("%s takes no value; %q was given", name, value)
		}
		o.set(r, "")
		return rest, nil
	case joined:
	case len(rest) > 0:
		value, rest = rest[0], rest[1:]
	}
	o := cmd.options[i]
	if value == "" {
		return nil, fmt.Errorf("%s needs a value, as in: %s %s", name, name, o.value)
	}
	o.set(r, value)
	return rest, nil
}

// legal lists a command's options for a message.
func (cmd command) legal() string {
	var names []string
	for _, o := range cmd.options {
		names = append(names, strings.TrimSpace(o.name+" "+o.value))
	}
	return strings.Join(append(names, "--help"), ", ")
}

func findCommand(name string) (command, bool) {
	for _, cmd := range commands() {
		if cmd.name == name {
			return cmd, true
		}
	}
	return command{}, false
}

// unknownCommand says what may stand first. A job file that stands there alone
// was most likely meant to be drawn.
func unknownCommand(args []string) error {
	var names []string
	for _, cmd := range commands() {
		names = append(names, cmd.name)
	}
	legal := strings.Join(append(names, "help"), ", ")
	if strings.HasPrefix(args[0], "-") {
		return fmt.Errorf("a command comes first (%s); %q was given", legal, args[0])
	}
	if ext := strings.ToLower(filepath.Ext(args[0])); ext == ".yaml" || ext == ".yml" {
		return fmt.Errorf("%q is no command (%s); to draw it: plumbcut draw %s", args[0], legal, args[0])
	}
	return fmt.Errorf("%q is no command; the commands are %s", args[0], legal)
}

func quoteAll(args []string) string {
	var quoted []string
	for _, a := range args {
		quoted = append(quoted, strconv.Quote(a))
	}
	return strings.Join(quoted, ", ")
}
