//! Shapes as JSON Schema 2020-12, the dialect of OpenAPI 3.1: bounds in standard keywords, words of choice as `enum`.
//!
//! A quantity is asked for as a number in its metric unit or as text with a unit; it is answered as an object, described once.

use quantity::Money;
use serde_json::{Map, Value, json};

use crate::shape::{Choice, Field, Kind, Shape};
use crate::{NoteLevel, Printed};

/// Where the schemas that every answer shares stand, in the document that is written.
#[derive(Clone, Copy, Debug)]
pub struct Schemas {
    /// What goes before a name in a reference: `#/components/schemas/`.
    pub root: &'static str,
}

impl Schemas {
    /// What is asked: the schema of a calculator's input.
    pub fn input(self, shape: &Shape) -> Value {
        match shape.kind {
            Kind::Length(bounds) => {
                let bounds = bounds.map(|[least, most]| [least.in_mm(), most.in_mm()]);
                self.asked(shape, bounds, "mm")
            }
            Kind::Physical(facts, range) => self.asked(shape, range, facts.metric.symbol),
            Kind::Money => {
                let most = Money::MOST.minor() as f64 / 100.0;
                self.asked(shape, Some([-most, most]), "")
            }
            Kind::Group(fields) => group(shape, fields, Field::required, |field| {
                let mut schema = self.input(&field.shape);
                if let Some(default) = field.default.map(|default| default())
                    && matches!(field.shape.kind, Kind::Choice(_) | Kind::Flag | Kind::Count { .. })
                    && !default.is_null()
                {
                    schema["default"] = Printed(&default, quantity::Units::Metric).to_value();
                }
                if let Some(usual) = field.usual {
                    schema["x-usual"] = json!(usual);
                }
                schema
            }),
            Kind::List { item, least, most } => list(shape, self.input(item), least, most),
            _ => plain(shape),
        }
    }

    /// What is answered: the schema of a calculator's whole answer.
    pub fn answer(self, result: &Shape) -> Value {
        let list = |name: &str| json!({ "type": "array", "items": self.named(name) });
        object(&[
            ("result", self.told(result)),
            ("working", list("Step")),
            ("notes", list("Note")),
            ("cautions", list("Caution")),
        ])
    }

    fn told(self, shape: &Shape) -> Value {
        match shape.kind {
            Kind::Length(_) => self.quantity(shape, "Length"),
            Kind::Reading => self.quantity(shape, "Reading"),
            Kind::Run => self.quantity(shape, "Run"),
            Kind::Physical(facts, _) => {
                let mut schema = self.quantity(shape, "Quantity");
                schema["x-kind"] = facts.name.into();
                schema
            }
            Kind::Money => self.quantity(shape, "Money"),
            Kind::Figure => self.quantity(shape, "Figure"),
            Kind::Group(fields) => group(
                shape,
                fields,
                |field| field.default.is_none(),
                |field| {
                    let mut schema = self.told(&field.shape);
                    if field.for_machines {
                        schema["x-for-machines"] = true.into();
                    }
                    schema
                },
            ),
            Kind::List { item, least, most } => list(shape, self.told(item), least, most),
            _ => plain(shape),
        }
    }

    /// The schemas that every answer shares, by name.
    pub fn shared(self) -> Map<String, Value> {
        let text = || json!({ "type": "string" });
        let number = || json!({ "type": "number" });
        let fraction = || {
            let whole = json!({ "type": ["integer", "string"] });
            let about = "Numerator and denominator in nanometres; text where a number would not hold it";
            json!({ "type": "array", "items": whole, "minItems": 2, "maxItems": 2, "description": about })
        };
        let length =
            || vec![("mm", number()), ("text", text()), ("tape", text()), ("other", text()), ("nm", fraction())];
        let about = |mut schema: Value, about: &str| {
            schema["description"] = about.into();
            schema
        };
        let mut reading = length();
        reading.insert(4, ("left", text()));
        reading.push(("exact_nm", fraction()));
        let mut run = length();
        run.push(("run", json!({ "type": "boolean", "const": true })));
        let any = |names: &[&str]| names.iter().map(|name| self.named(name)).collect::<Vec<_>>();
        let mut figure = any(&["Reading", "Run", "Length", "Quantity", "Money"]);
        figure.extend([json!({ "type": "integer" }), number(), text()]);
        let named = [("symbol", text()), ("name", text()), ("value", self.named("Figure"))];
        let levels = [NoteLevel::Note, NoteLevel::Check, NoteLevel::Hold].map(NoteLevel::word);
        let step = optional(
            &[
                ("what", text()),
                ("formula", text()),
                ("given", json!({ "type": "array", "items": self.named("Named") })),
                ("result", self.named("Named")),
                ("because", text()),
            ],
            &["formula", "result", "because"],
        );
        let note = optional(
            &[
                ("level", json!({ "type": "string", "enum": levels })),
                ("words", text()),
                ("offer", self.named("Offer")),
            ],
            &["offer"],
        );
        let caution = optional(
            &[
                ("signal_word", json!({ "type": "string", "enum": ["danger", "warning", "caution", "notice"] })),
                ("hazard", text()),
                ("consequence", text()),
                ("avoid", text()),
                ("added", about(text(), "What a shop adds to it")),
            ],
            &["added"],
        );
        let quantity = [("value", number()), ("unit", text()), ("text", text()), ("other", text()), ("kind", text())];
        [
            ("Length", about(object(&length()), "A length, exact, with its text in both unit systems")),
            (
                "Reading",
                about(
                    object(&reading),
                    "A length as a tape shows it; `left` says how far the exact place lies beside the mark",
                ),
            ),
            ("Run", about(object(&run), "A length of goods that run on, told to the inch or the centimetre")),
            ("Quantity", about(object(&quantity), "A physical quantity: `value` in its metric unit `unit`")),
            (
                "Money",
                about(
                    object(&[("minor", json!({ "type": "integer" })), ("text", text())]),
                    "An amount in whole minor units of the shop's currency",
                ),
            ),
            ("Figure", json!({ "anyOf": figure, "description": "Any quantity, or a word where a number will not do" })),
            ("Named", about(object(&named), "A quantity with its letter and its name")),
            ("Step", about(step, "One line of working: what is worked out, by which formula, from what, to what")),
            (
                "Offer",
                about(
                    object(&[("field", text()), ("value", text()), ("action", text())]),
                    "A value offered beside a note",
                ),
            ),
            ("Note", about(note, "A sentence raised by the numbers")),
            ("Caution", about(caution, "A caution that stands with the answer")),
        ]
        .into_iter()
        .map(|(name, schema)| (name.to_owned(), schema))
        .collect()
    }

    /// A reference to a shared schema.
    pub fn named(self, name: &str) -> Value {
        json!({ "$ref": format!("{}{name}", self.root) })
    }

    fn quantity(self, shape: &Shape, name: &str) -> Value {
        or_null(shape, self.named(name))
    }

    /// A number in the metric unit, or text with a unit.
    fn asked(self, shape: &Shape, bounds: Option<[f64; 2]>, unit: &str) -> Value {
        let mut number = json!({ "type": "number" });
        if let Some([least, most]) = bounds {
            number["minimum"] = least.into();
            number["maximum"] = most.into();
        }
        if !unit.is_empty() {
            number["x-unit"] = unit.into();
        }
        let mut forms = vec![number, json!({ "type": "string" })];
        if shape.nullable {
            forms.push(json!({ "type": "null" }));
        }
        json!({ "anyOf": forms })
    }
}

/// What is the same in an input and an answer.
fn plain(shape: &Shape) -> Value {
    match shape.kind {
        Kind::Count { least, most } => {
            let mut schema = typed(shape, "integer");
            least.into_iter().for_each(|least| schema["minimum"] = least.into());
            most.into_iter().for_each(|most| schema["maximum"] = most.into());
            schema
        }
        Kind::Number => typed(shape, "number"),
        Kind::Text { least, most } => {
            let mut schema = typed(shape, "string");
            if 0 < least {
                schema["minLength"] = least.into();
            }
            most.into_iter().for_each(|most| schema["maxLength"] = most.into());
            schema
        }
        Kind::Flag => typed(shape, "boolean"),
        Kind::Choice(choices) => choice(shape, choices),
        // No person reads it, and no schema binds it.
        _ => json!({}),
    }
}

fn typed(shape: &Shape, name: &str) -> Value {
    if shape.nullable { json!({ "type": [name, "null"] }) } else { json!({ "type": name }) }
}

fn or_null(shape: &Shape, schema: Value) -> Value {
    if shape.nullable { json!({ "anyOf": [schema, { "type": "null" }] }) } else { schema }
}

fn choice(shape: &Shape, choices: &[Choice]) -> Value {
    let words: Vec<_> = choices.iter().map(|choice| choice.word).collect();
    let meanings: Vec<_> = choices.iter().map(|choice| choice.meaning).collect();
    or_null(shape, json!({ "type": "string", "enum": words, "x-enum-descriptions": meanings }))
}

fn list(shape: &Shape, item: Value, least: usize, most: Option<usize>) -> Value {
    let mut schema = typed(shape, "array");
    schema["items"] = item;
    if 0 < least {
        schema["minItems"] = least.into();
    }
    most.into_iter().for_each(|most| schema["maxItems"] = most.into());
    schema
}

fn group(
    shape: &Shape,
    fields: &[Field],
    required: impl Fn(&Field) -> bool,
    schema_of: impl Fn(&Field) -> Value,
) -> Value {
    let properties = fields.iter().map(|field| {
        let mut schema = schema_of(field);
        if !field.title.is_empty() {
            schema["x-label"] = field.title.into();
        }
        let about = if field.about.is_empty() { field.shape.about } else { field.about };
        if !about.is_empty() {
            schema["description"] = about.into();
        }
        (field.name.to_owned(), schema)
    });
    let needed: Vec<_> = fields.iter().filter(|field| required(field)).map(|field| field.name).collect();
    let mut schema = json!({
        "type": "object",
        "properties": properties.collect::<Map<_, _>>(),
        "required": needed,
        "additionalProperties": false,
    });
    if !shape.about.is_empty() && !shape.nullable {
        schema["description"] = shape.about.into();
    }
    or_null(shape, schema)
}

fn object(fields: &[(&str, Value)]) -> Value {
    optional(fields, &[])
}

fn optional(fields: &[(&str, Value)], spare: &[&str]) -> Value {
    let needed: Vec<_> = fields.iter().map(|(name, _)| *name).filter(|name| !spare.contains(name)).collect();
    let properties: Map<_, _> = fields.iter().map(|(name, schema)| ((*name).to_owned(), schema.clone())).collect();
    json!({ "type": "object", "properties": properties, "required": needed, "additionalProperties": false })
}
