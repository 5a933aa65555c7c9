package plan

import "reflect"

// Things is everything with a name that a plan declares: set, kit, people, each in
// the order of the text.
func (p *Plan) Things() []Thing {
	var out []Thing
	out = appendThings(out, reflect.ValueOf(&p.Set).Elem())
	out = appendThings(out, reflect.ValueOf(&p.Kit).Elem())
	for _, who := range p.People {
		out = append(out, who)
	}
	return out
}

// appendThings adds what the lists of a section hold. They are found by their type,
// so that a new kind of thing is forgotten by nobody who asks for all.
func appendThings(out []Thing, section reflect.Value) []Thing {
	for i := range section.NumField() {
		list := section.Field(i)
		if list.Kind() != reflect.Slice || !list.Type().Elem().Implements(reflect.TypeFor[Thing]()) {
			continue
		}
		for k := range list.Len() {
			out = append(out, list.Index(k).Interface().(Thing))
		}
	}
	return out
}
