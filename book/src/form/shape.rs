//! A schema seen as form fields: what kind of control each place of an input needs.
//!
//! The catalogue's schemas are JSON Schema 2020-12 with inline subschemas; `x-length`, `x-kind` and `x-money` mark quantities.

use serde_json::Value;

/// One place of an input.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Node<'s> {
    outer: &'s Value,
    /// The schema without its "or nothing".
    pub(crate) schema: &'s Value,
    /// Whether it may be left out.
    pub(crate) optional: bool,
}

/// What a place holds.
#[derive(Clone, Debug)]
pub(crate) enum Shape<'s> {
    /// A length.
    Length { least: Option<i64>, most: Option<i64> },
    /// A whole number.
    Count { least: Option<i64>, most: Option<i64> },
    /// A physical quantity: the kind's name and its range in the metric unit.
    Physical { kind: &'s str, range: Option<(f64, f64)> },
    /// An amount of money.
    Money,
    /// A plain number.
    Number,
    /// Words.
    Text,
    /// Yes or no.
    Flag,
    /// One of some words.
    Choice(Vec<Choice<'s>>),
    /// Several fields together.
    Group,
    /// One of several groups, told apart by the word in one field.
    Variants { tag: &'s str, branches: Vec<(&'s str, &'s Value)> },
    /// Any number of the same.
    List { item: &'s Value, least: usize, most: usize },
}

/// A word that can be chosen, and what it means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Choice<'s> {
    pub(crate) word: &'s str,
    pub(crate) meaning: &'s str,
}

const LONGEST_LIST: usize = 600;

impl<'s> Node<'s> {
    /// The place a schema describes; `required` as its group says.
    pub(crate) fn new(outer: &'s Value, required: bool) -> Self {
        let branches = outer.get("anyOf").and_then(Value::as_array);
        let real = branches.and_then(|branches| {
            let mut real = branches.iter().filter(|branch| !is_null(branch));
            real.next().filter(|_| real.next().is_none() && branches.iter().any(is_null))
        });
        let nullable = real.is_some()
            || outer.get("type").and_then(Value::as_array).is_some_and(|kinds| kinds.iter().any(|kind| kind == "null"));
        Self { outer, schema: real.unwrap_or(outer), optional: nullable || !required }
    }

    fn word(&self, key: &str) -> Option<&'s str> {
        let text = |schema: &'s Value| schema.get(key).and_then(Value::as_str);
        text(self.outer).or_else(|| text(self.schema))
    }

    /// The label: the schema's title, or the field's name in words.
    pub(crate) fn label(&self, name: &str) -> String {
        self.word("title").map_or_else(|| capital(&in_words(name)), str::to_owned)
    }

    /// The first paragraph of the description.
    pub(crate) fn help(&self) -> &'s str {
        self.word("description").unwrap_or_default().split("\n\n").next().unwrap_or_default().trim()
    }

    /// The value where nothing is given.
    pub(crate) fn default(&self) -> Option<&'s Value> {
        self.outer.get("default").or_else(|| self.schema.get("default")).filter(|value| !value.is_null())
    }

    /// The fields of a group in order, each with its name.
    pub(crate) fn fields(&self) -> impl Iterator<Item = (&'s str, Node<'s>)> + use<'s> {
        fields(self.schema)
    }

    /// Whether it is one field, no group and no list.
    pub(crate) fn is_single(&self) -> bool {
        !matches!(self.shape(), Shape::Group | Shape::List { .. } | Shape::Variants { .. })
    }

    /// What it holds.
    pub(crate) fn shape(&self) -> Shape<'s> {
        let schema = self.schema;
        let number = |bounds: &Value, name: &str| bounds.get(name).and_then(Value::as_i64);
        if let Some(bounds) = schema.get("x-length") {
            return Shape::Length { least: number(bounds, "min_nm"), most: number(bounds, "max_nm") };
        }
        if let Some(kind) = schema.get("x-kind").and_then(Value::as_str) {
            let range = schema.get("x-range").and_then(Value::as_array);
            let range = range.and_then(|range| Some((range.first()?.as_f64()?, range.get(1)?.as_f64()?)));
            return Shape::Physical { kind, range };
        }
        if schema.get("x-money").is_some() {
            return Shape::Money;
        }
        let choices = choices(schema);
        if !choices.is_empty() {
            return Shape::Choice(choices);
        }
        if let Some((tag, branches)) = variants(schema) {
            return Shape::Variants { tag, branches };
        }
        let is = |kind: &str| match schema.get("type") {
            Some(Value::String(one)) => one == kind,
            Some(Value::Array(many)) => many.iter().any(|one| one == kind),
            _ => false,
        };
        if is("array") {
            let size =
                |name: &str| schema.get(name).and_then(Value::as_u64).and_then(|size| usize::try_from(size).ok());
            return Shape::List {
                item: schema.get("items").unwrap_or(&Value::Null),
                least: size("minItems").unwrap_or(0),
                most: size("maxItems").unwrap_or(LONGEST_LIST).min(LONGEST_LIST),
            };
        }
        if schema.get("properties").is_some() {
            return Shape::Group;
        }
        if is("integer") {
            return Shape::Count { least: number(schema, "minimum"), most: number(schema, "maximum") };
        }
        if is("boolean") {
            return Shape::Flag;
        }
        if is("number") { Shape::Number } else { Shape::Text }
    }
}

/// The fields of an object schema in order.
pub(crate) fn fields<'s>(schema: &'s Value) -> impl Iterator<Item = (&'s str, Node<'s>)> + use<'s> {
    let required = schema.get("required").and_then(Value::as_array);
    let properties = schema.get("properties").and_then(Value::as_object);
    properties.into_iter().flatten().map(move |(name, field)| {
        let needed = required.is_some_and(|required| required.iter().any(|one| one == name.as_str()));
        (name.as_str(), Node::new(field, needed))
    })
}

/// The schema at a pointer of a value: through groups by name, through lists whatever the place.
pub(crate) fn at<'s>(schema: &'s Value, pointer: &str) -> Option<Node<'s>> {
    let mut node = Node::new(schema, true);
    for part in pointer.split('/').skip(1) {
        node = match node.schema.get("items") {
            Some(item) => Node::new(item, true),
            None => fields(node.schema).find(|(name, _)| *name == part)?.1,
        };
    }
    Some(node)
}

fn is_null(schema: &Value) -> bool {
    schema.get("type").is_some_and(|kind| kind == "null")
}

fn choices(schema: &Value) -> Vec<Choice<'_>> {
    let mut found = Vec::new();
    push_choices(schema, &mut found);
    if found.is_empty() {
        for branch in schema.get("oneOf").and_then(Value::as_array).into_iter().flatten() {
            if is_null(branch) {
                continue;
            }
            let before = found.len();
            push_choices(branch, &mut found);
            if found.len() == before {
                return Vec::new();
            }
        }
    }
    found
}

fn push_choices<'s>(schema: &'s Value, found: &mut Vec<Choice<'s>>) {
    let meaning = schema.get("description").and_then(Value::as_str).unwrap_or_default();
    if let Some(word) = schema.get("const").and_then(Value::as_str) {
        found.push(Choice { word, meaning });
    }
    for word in schema.get("enum").and_then(Value::as_array).into_iter().flatten().filter_map(Value::as_str) {
        found.push(Choice { word, meaning: "" });
    }
}

/// The branches of a choice between groups, by the word of the field that tells them apart.
fn variants(schema: &Value) -> Option<(&str, Vec<(&str, &Value)>)> {
    let branches = schema.get("oneOf").or_else(|| schema.get("anyOf"))?.as_array()?;
    let mut tag = None;
    let mut found = Vec::with_capacity(branches.len());
    for branch in branches {
        let properties = branch.get("properties")?.as_object()?;
        let (name, word) =
            properties.iter().find_map(|(name, field)| Some((name.as_str(), field.get("const")?.as_str()?)))?;
        if *tag.get_or_insert(name) != name {
            return None;
        }
        found.push((word, branch));
    }
    Some((tag?, found))
}

/// `inside-first` and `board_width` as words.
pub(crate) fn in_words(name: &str) -> String {
    name.replace(['-', '_'], " ")
}

/// The same with a capital at the beginning.
pub(crate) fn capital(text: &str) -> String {
    let mut signs = text.chars();
    signs.next().map_or_else(String::new, |first| first.to_uppercase().chain(signs).collect())
}
