package frame

import "plumbcut/geom/frame/keys"

// draft is a job file as it is written, before the defaults that hang on other
// values. The tables of keys are bound to its parts.
type draft struct {
	*Job
	units       string
	timber      Timber // of every member that does not say otherwise
	boundaries  [4]float64
	basis       [6]Stated // wind to bushfire
	others      []Stated
	openings    []openingDraft
	studFirst   float64
	studSpacing float64
	plateLength float64
	underside   float64
	beamLength  float64
	beamOut     struct{ one, left, right float64 }
	rearLength  float64
	rearUnder   float64
	rearPosts   []Post
	post        Post // what every post has unless it says otherwise
	overhang    float64
	drop        float64
	angle       float64
	oneIn       float64
	braceLength float64
	braceAngle  float64
}

func newDraft(j *Job) *draft {
	return &draft{Job: j, basis: [...]Stated{
		{What: "Wind"}, {What: "Snow"}, {What: "Corrosion"}, {What: "Ground"}, {What: "Earthquake"}, {What: "Bushfire"},
	}}
}

type openingDraft struct {
	Opening
	door, window string
}

// far bounds every length and level in a job, either way: 50 m, beyond any
// pergola. It keeps the arithmetic exact to well under a micrometre.
const far = 50_000

// The lengths of texts, in characters: what a line of a table, a title and a
// narrow column have room for.
const (
	lineText  = 200
	titleText = 80
	codeText  = 12
)

// Spans that several keys have in common.
func anywhere() keys.Span { return keys.Between(-far, far) }
func distance() keys.Span { return keys.Between(0, far) }

// fields is the table of the whole file.
func (d *draft) fields() keys.Group {
	return keys.Group{Choices: []keys.Choice{{Keys: []string{"plate", "rear_beam"}, Need: true}}, Fields: []keys.Field{
		{Key: "plumbcut", Is: keys.Version(1), Need: true,
			Doc: "The version of these keys, so that later programs read an old file rightly."},
		{Key: "units", Is: keys.Word(&d.units, "mm", "feet-inches"), Def: "mm",
			Doc: "How the drawings give lengths, and what a number without a unit is: millimetres or inches."},
		{Key: "project", Is: d.projectFields(), Need: true,
			Doc: "What the title block says."},
		{Key: "paper", Is: d.paperFields(), Also: []string{"sheet"},
			Doc: "The sheet, and the scale of plan, elevations and section."},
		{Key: "site", Is: d.siteFields(),
			Doc: "Where the frame stands."},
		{Key: "basis", Is: d.basisFields(), Also: []string{"design", "loads"},
			Doc: "What others have stated that the design rests on, and who; what is missing is printed as 'to be stated'."},
		{Key: "levels", Is: d.levelFields(), Need: true, Also: []string{"heights", "level"},
			Doc: "Heights above the datum; a level below it is negative."},
		{Key: "wall", Is: d.wallFields(), Also: []string{"house"},
			Doc: "The house wall that the plate is fixed to, seen from outside."},
		{Key: "timber", Is: timberFields(&d.timber), Also: []string{"material", "wood", "lumber"},
			Doc: "What all members are made of, unless one says otherwise."},
		{Key: "plate", Is: d.plateFields(), Also: []string{"wall_plate", "ledger", "ribbon", "ribbon_plate", "waling"},
			Doc: "The wall plate, along the wall."},
		{Key: "rear_beam", Is: d.rearFields(), Also: []string{"back_beam", "inner_beam"},
			Doc: "Or the rear beam of a free-standing frame, on posts of its own. There is then no wall: lengths out run from the base line, along the outer face of this beam."},
		{Key: "beam", Is: d.beamFields(), Need: true, Also: []string{"bearer", "front_beam"},
			Doc: "The front beam, on the posts."},
		{Key: "posts", Is: d.postsFields(), Need: true, Also: []string{"post", "columns"},
			Doc: "The posts under the beam, and under a rear beam, with their footings."},
		{Key: "rafters", Is: d.rafterFields(), Need: true, Also: []string{"rafter", "joists"},
			Doc: "The rafters, from plate or rear beam to beam."},
		{Key: "battens", Is: d.battenFields(), Also: []string{"batten", "purlins"},
			Doc: "The battens across the rafters; left out, there are none."},
		{Key: "laths", Is: d.lathFields(), Also: []string{"lath", "second_layer", "top_battens"},
			Doc: "A second layer over the battens, parallel with the rafters; left out, there is none."},
		{Key: "slats", Is: d.slatFields(), Also: []string{"slat", "louvres"},
			Doc: "Slats between the rafters, in every bay, on cleats, instead of battens over them; left out, there are none."},
		{Key: "roof", Is: d.roofFields(), Also: []string{"roofing", "cover", "sheeting"},
			Doc: "A roof of sheets over the battens; left out, the frame is open."},
		{Key: "fall", Is: d.fallFields(), Need: true, Also: []string{"pitch", "slope"},
			Doc: "The slope of the rafters' top edges, down to the front."},
		{Key: "braces", Is: d.braceFields(), Also: []string{"brace", "knee_braces", "knee_brace"},
			Doc: "Knee braces from the posts to the beam; left out, there are none."},
		{Key: "roof_straps", Is: d.roofStrapFields(), Also: []string{"roof_strap", "diagonal_straps", "strap_brace", "strap_bracing"},
			Doc: "Flat steel straps across the rafters, a pair on the two diagonals; left out, there are none. What they carry, and by what they are held, is for a licensed designer."},
		{Key: "blocking", Is: d.blockingFields(), Also: []string{"blocks", "noggings", "nogging", "dwangs"},
			Doc: "Blocks between the rafters; left out, there are none."},
		{Key: "fascia", Is: d.fasciaFields(), Also: []string{"fascia_board", "eaves_board"},
			Doc: "The board across the rafters' outer ends, where they lie over the beam; left out, there is none."},
		{Key: "valance", Is: d.valanceFields(), Also: []string{"valance_board", "apron"},
			Doc: "A board that hangs under the beam; left out, there is none."},
		{Key: "stock", Is: d.stockFields(), Also: []string{"merchant", "yard", "sticks"},
			Doc: "The timber that can be bought and what the saw takes of it, for the cutting and stock lists."},
		{Key: "concrete", Is: d.concreteFields(),
			Doc: "How concrete is bought."},
		{Key: "adhesive", Is: d.adhesiveFields(), Also: []string{"epoxy", "glue"},
			Doc: "What the rods are set in."},
		{Key: "primer", Is: d.primerFields(), Also: []string{"preservative", "paint"},
			Doc: "What cut ends, housings and seats are coated with."},
		{Key: "hardware", Is: d.hardwareFields(), Also: []string{"spares"},
			Doc: "How loose fixings are bought."},
		{Key: "templates", Is: d.templateFields(), Also: []string{"template", "patterns"},
			Doc: "What the full-size templates are printed on."},
		{Key: "printer", Is: d.printerFields(), Also: []string{"calibration"},
			Doc: "What the check bars of a first print of the templates measured; it corrects the templates alone, for that printer only."},
	}}
}

func (d *draft) projectFields() keys.Group {
	p := &d.Project
	return keys.Group{Fields: []keys.Field{
		{Key: "title", Is: keys.Text(&p.Title, titleText), Need: true, Also: []string{"name"}, Doc: "Title of the drawings."},
		{Key: "number", Is: keys.Text(&p.Number, titleText), Doc: "Job number."},
		{Key: "client", Is: keys.Text(&p.Client, titleText), Doc: "Whom it is drawn for."},
		{Key: "site", Is: keys.Text(&p.Site, titleText), Also: []string{"address"}, Doc: "Address of the site."},
		{Key: "owner", Is: keys.Text(&p.Owner, titleText), Doc: "Legal owner of the drawings."},
		{Key: "drawn_by", Is: keys.Text(&p.DrawnBy, titleText), Doc: "Who drew it."},
		{Key: "approved_by", Is: keys.Text(&p.ApprovedBy, titleText), Doc: "Who approved it for issue."},
		{Key: "date", Is: keys.Date(&p.Date), Doc: "Day of issue."},
		{Key: "status", Is: keys.Word(&p.Status, Statuses()...), Def: "preliminary", Doc: "What the drawings may be used for."},
		{Key: "revisions", Is: keys.ListOf(&p.Revisions, 0, keys.Zero, revisionFields), Doc: "The issues so far, oldest first."},
	}}
}

func revisionFields(r *Revision) keys.Kind {
	return keys.Group{Fields: []keys.Field{
		{Key: "rev", Is: keys.Text(&r.Rev, codeText), Need: true, Doc: "Letter or number of the revision."},
		{Key: "date", Is: keys.Date(&r.Date), Need: true, Doc: "Its day of issue."},
		{Key: "note", Is: keys.Text(&r.Note, titleText), Doc: "What changed, in one line."},
		{Key: "by", Is: keys.Text(&r.By, codeText), Doc: "Initials of who changed it."},
	}}
}

// ansiB is the other name of a paper size.
const ansiB = "ANSI B"

func (d *draft) paperFields() keys.Group {
	p := &d.Paper
	return keys.Group{Fields: []keys.Field{
		{Key: "size", Is: keys.Word(&p.Size, "A4", "A3", "A2", "A1", "Letter", "Tabloid", ansiB, "ARCH B", "ARCH C"), Def: "A3",
			Doc: "Size of sheet."},
		{Key: "scale", Is: keys.Scale(&p.Scale, keys.Between(1, 500)), Def: "auto",
			Doc: "Scale of plan, elevations and section; auto takes the largest of the usual ones that fits."},
	}}
}

func (d *draft) siteFields() keys.Group {
	b := &d.boundaries
	reference := func(r *Reference) keys.Kind {
		return keys.Group{Fields: []keys.Field{
			{Key: "what", Is: keys.Text(&r.What, titleText), Need: true, Doc: "What is measured from, such as: face of the garage."},
			{Key: "side", Is: keys.Word(&r.Side, Left, Right, Rear, Out), Need: true, Doc: "On which side of the frame it is."},
			{Key: "distance", Is: keys.Length(&r.Distance, distance()), Need: true,
				Doc: "How far it is from the base line, from the front beam's outer face, or from the left or right end of the rear beam."},
		}}
	}
	return keys.Group{Fields: []keys.Field{
		{Key: "north", Is: keys.Angle(&d.Site.North, keys.Between(-360, 360)),
			Doc: "Direction of north: degrees clockwise from straight into the house."},
		{Key: "boundaries", Is: keys.Group{Opt: true, Fields: []keys.Field{
			{Key: "left", Is: keys.Length(&b[0], distance()), Doc: "Clear distance to the boundary on the left."},
			{Key: "right", Is: keys.Length(&b[1], distance()), Doc: "Clear distance to the boundary on the right."},
			{Key: "front", Is: keys.Length(&b[2], distance()), Doc: "Clear distance to the boundary in front."},
			{Key: "rear", Is: keys.Length(&b[3], distance()), Doc: "Clear distance to the boundary behind a free-standing frame."},
		}}, Doc: "Clear distances from the frame to the site's boundaries, as far as they are known."},
		{Key: "references", Is: keys.ListOf(&d.Site.References, 0, keys.Zero, reference), Also: []string{"stake", "pegs", "site_lines"},
			Doc: "What the corner pegs of a free-standing frame are measured from: one thing behind or in front and one at a side place it."},
		{Key: "keep_out", Is: keys.ListOf(&d.Site.KeepOuts, 0, keys.Zero, keepOutFields), Also: []string{"keep_outs", "keep_clear"},
			Doc: "Where no post may stand: drains, steps, joists of a deck."},
	}}
}

func keepOutFields(k *KeepOut) keys.Kind {
	return keys.Group{Fields: []keys.Field{
		{Key: "name", Is: keys.Text(&k.Name, titleText), Need: true, Doc: "What is there, such as: drain."},
		{Key: "from", Is: keys.Length(&k.From, anywhere()), Need: true, Doc: "Its left side, along."},
		{Key: "to", Is: keys.Length(&k.To, anywhere()), Need: true, Doc: "Its right side, along."},
		{Key: "near", Is: keys.Length(&k.Near, distance()), Def: "0", Doc: "Its side towards the house, out from the cladding."},
		{Key: "far", Is: keys.Length(&k.Far, keys.Between(1, far)), Else: "as far as the job goes", Doc: "Its far side, out from the cladding."},
		{Key: "every", Is: keys.Length(&k.Every, keys.Between(20, 5000)), With: "number", Doc: "Where there are several alike, such as joists: from one's left side to the next one's, to the right."},
		{Key: "number", Is: keys.Count(&k.Number, 2, maxSticks), With: "every", Doc: "How many of them there are."},
		{Key: "of", Is: keys.Word(&k.Of, KeepHole, KeepPost), Def: string(KeepHole), Doc: "What stays out of it: post and hole, or the post alone."},
	}}
}

func (d *draft) basisFields() keys.Group {
	b := &d.basis
	return keys.Group{Fields: []keys.Field{
		{Key: "wind", Is: statedFields(&b[0]), Doc: "Wind zone or speed."},
		{Key: "snow", Is: statedFields(&b[1]), Doc: "Snow load or zone."},
		{Key: "corrosion", Is: statedFields(&b[2]), Doc: "Corrosion zone, for the fixings."},
		{Key: "ground", Is: statedFields(&b[3]), Also: []string{"soil"}, Doc: "What the ground is and bears."},
		{Key: "earthquake", Is: statedFields(&b[4]), Also: []string{"seismic"}, Doc: "Earthquake zone."},
		{Key: "bushfire", Is: statedFields(&b[5]), Also: []string{"wildfire"}, Doc: "Bushfire or wildfire rating."},
		{Key: "other", Is: keys.ListOf(&d.others, 0, keys.Zero, func(s *Stated) keys.Kind {
			g := statedFields(s)
			what := keys.Field{Key: "what", Is: keys.Text(&s.What, titleText), Need: true, Doc: "What is stated."}
			return keys.Group{Fields: append([]keys.Field{what}, g.Fields...)}
		}), Doc: "Anything else that is stated."},
	}}
}

func statedFields(s *Stated) keys.Group {
	return keys.Group{Short: "value", Opt: true, Fields: []keys.Field{
		{Key: "value", Is: keys.Text(&s.Value, titleText), Doc: "What is stated."},
		{Key: "by", Is: keys.Text(&s.By, titleText), Doc: "Who states it."},
	}}
}

func (d *draft) levelFields() keys.Group {
	l := &d.Levels
	return keys.Group{Fields: []keys.Field{
		{Key: "datum", Is: keys.Text(&l.Datum, titleText), Need: true,
			Doc: "What level 0 is, such as: finished deck at the wall."},
		{Key: "ground", Is: keys.Length(&l.Ground, anywhere()), Need: true,
			Doc: "Finished ground at the posts, unless a post has its own."},
		{Key: "ground_line", Is: keys.ListOf(&l.Line, 2, keys.Zero, groundFields), Also: []string{"terrain", "ground_profile"},
			Doc: "The finished ground along the frame from left to right, straight from point to point and level beyond the end ones; two points at one place are a plumb step. The ground at every post is then read off it. Left out, the ground runs straight from post to post."},
		{Key: "deck", Is: keys.Group{Opt: true, Fields: []keys.Field{
			{Key: "level", Is: keys.Length(&l.Deck, anywhere()), Def: "0", Doc: "Its top."},
			{Key: "out", Is: keys.Length(&l.DeckOut, keys.Between(1, far)), Need: true, Doc: "How far it runs out from the wall."},
		}}, Also: []string{"paving", "floor"}, Doc: "Deck or paving under the frame; left out, there is none."},
		{Key: "eye", Is: keys.Length(&l.Eye, keys.Between(300, 3000)), Def: "1600 mm", Habit: true,
			Doc: "Height of the eye for the sight line under the beam, above what one stands on."},
		{Key: "head_room", Is: keys.Length(&l.HeadRoom, distance()), Def: "2100 mm", Habit: true, Also: []string{"headroom", "head_height"},
			Doc: "Least height under the beam; less of it is warned of."},
	}}
}

func groundFields(p *GroundPoint) keys.Kind {
	return keys.Group{Fields: []keys.Field{
		{Key: "at", Is: keys.Length(&p.Along, anywhere()), Need: true, Doc: "Its place, along."},
		{Key: "level", Is: keys.Length(&p.Level, anywhere()), Need: true, Doc: "The level there."},
	}}
}

func timberFields(t *Timber) keys.Group {
	return keys.Group{Fields: []keys.Field{
		{Key: "species", Is: keys.Text(&t.Species, titleText), Doc: "Species."},
		{Key: "grade", Is: keys.Text(&t.Grade, titleText), Doc: "Grade."},
		{Key: "treatment", Is: keys.Text(&t.Treatment, titleText), Doc: "Treatment."},
		{Key: "finish", Is: keys.Text(&t.Finish, titleText), Doc: "Finish."},
		{Key: "density", Is: keys.Number(&t.Density, keys.Between(200, 1400)), Else: "that of the job's timber, or 550 (from memory, no source: confirm)", Also: []string{"weight"},
			Doc: "What a cubic metre of it weighs as it is built in, kg. Only the weights on the member drawings rest on it."},
	}}
}

// texts are the free texts that the file itself gives, for Job.Texts.
func (d *draft) texts() []located {
	var all []located
	keys.Texts(d.fields(), func(path, text string) {
		if d.Given(path) {
			all = append(all, located{path, text})
		}
	})
	return all
}

// located is a text and the path where it stands.
type located struct{ path, text string }
