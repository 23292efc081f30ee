package fieldmap

import (
	"bufio"
	"encoding/xml"
	"fmt"
	"io"
	"strconv"

	"ullage/sim/rocket"
	"ullage/sim/study"
)

// kml writes features as Placemarks of OGC KML 2.3, those of a drive in a Folder. Everything but
// tracks clings to the ground.
type kml struct {
	w      *bufio.Writer
	pad    Pad
	folder rocket.Power
}

// look is how features of a kind are drawn: alpha, blue, green and red of lines and signs.
type look struct {
	kind, line string
	fill       bool
}

// looks are dark enough on a photograph of ground; what comes down hard is red.
var looks = [...]look{
	{"pad", "ffffffff", false}, {study.Planned.String(), "ffffc040", false}, {study.DrogueOnly.String(), "ff40c0ff", false}, {study.Falling.String(), "ff3030ff", false},
	{ellipseKinds[study.Planned], "ffffc040", true}, {ellipseKinds[study.DrogueOnly], "ff40c0ff", true}, {ellipseKinds[study.Falling], "ff3030ff", true},
	{"field", "ff60ff60", false}, {"boundary", "ff60ff60", false}, {"clear_distance", "ff00ffff", true}, {"track", "ffff60ff", false},
}

func newKML(w io.Writer, pad Pad, title string) *kml {
	k := &kml{w: bufio.NewWriterSize(w, buffer), pad: pad}
	k.w.WriteString(xml.Header + `<kml xmlns="http://www.opengis.net/kml/2.3" version="2.3">` + "\n<Document>")
	k.element("name", title)
	for _, l := range looks {
		fill := "0"
		if l.fill {
			fill = "1"
		}
		fmt.Fprintf(k.w, "\n"+`<Style id="%s"><IconStyle><color>%s</color><scale>0.4</scale></IconStyle><LabelStyle><scale>0.7</scale></LabelStyle>`+
			`<LineStyle><color>%s</color><width>2</width></LineStyle><PolyStyle><color>30%s</color><fill>%s</fill></PolyStyle></Style>`,
			l.kind, l.line, l.line, l.line[2:], fill)
	}
	k.w.WriteByte('\n')
	return k
}

// element writes one with a text in it. The buffer keeps its error for Flush.
func (k *kml) element(name, text string) {
	k.w.WriteString("<" + name + ">")
	_ = xml.EscapeText(k.w, []byte(text))
	k.w.WriteString("</" + name + ">")
}

func (k *kml) add(f *feature) error {
	if f.drive != k.folder {
		k.leave()
		if k.folder = f.drive; k.folder != "" {
			k.w.WriteString("<Folder>")
			k.element("name", string(f.drive))
			k.w.WriteByte('\n')
		}
	}
	k.w.WriteString("<Placemark>")
	if f.name != "" { // a landing among thousands needs none
		k.element("name", f.name)
	}
	k.w.WriteString("<styleUrl>#" + f.kind + "</styleUrl><ExtendedData>")
	for i := range f.facts {
		x := &f.facts[i]
		k.w.WriteString(`<Data name="` + x.key + `">`)
		if x.word == "" {
			k.element("value", string(x.appendNumber(nil)))
		} else {
			k.element("value", x.word)
		}
		k.w.WriteString("</Data>")
	}
	k.w.WriteString("</ExtendedData>")
	switch f.shape {
	case aTrack:
		mode, base := "relativeToGround", 0.0
		if k.pad.Elevation != 0 {
			mode, base = "absolute", k.pad.Elevation
		}
		k.w.WriteString("<LineString><altitudeMode>" + mode + "</altitudeMode><coordinates>")
		for _, s := range f.at {
			k.position(s)
			k.w.WriteByte(',')
			k.w.WriteString(strconv.FormatFloat(base+s.height, 'f', 2, 64))
			k.w.WriteByte(' ')
		}
		k.w.WriteString("</coordinates></LineString>")
	case aOutline:
		k.w.WriteString("<Polygon><tessellate>1</tessellate><altitudeMode>clampToGround</altitudeMode><outerBoundaryIs><LinearRing><coordinates>")
		for i := range len(f.at) + 1 { // the first again at the end
			k.position(f.at[i%len(f.at)])
			k.w.WriteByte(' ')
		}
		k.w.WriteString("</coordinates></LinearRing></outerBoundaryIs></Polygon>")
	default:
		k.w.WriteString("<Point><coordinates>")
		k.position(f.at[0])
		k.w.WriteString("</coordinates></Point>")
	}
	_, err := k.w.WriteString("</Placemark>\n")
	return err
}

// position writes longitude, then latitude.
func (k *kml) position(s spot) {
	p := k.pad.Offset(s.east, s.north)
	k.w.WriteString(strconv.FormatFloat(wrapped(p.Longitude), 'f', decimals, 64))
	k.w.WriteByte(',')
	k.w.WriteString(strconv.FormatFloat(p.Latitude, 'f', decimals, 64))
}

// leave ends a folder.
func (k *kml) leave() {
	if k.folder != "" {
		k.w.WriteString("</Folder>\n")
	}
}

func (k *kml) close(partial bool) error {
	k.leave()
	if partial {
		k.w.WriteString("<Placemark><name>partial: interrupted</name></Placemark>\n")
	}
	k.w.WriteString("</Document>\n</kml>\n")
	return k.w.Flush()
}
