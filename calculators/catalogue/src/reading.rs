//! Reading an input: one walk completes what a person left to the unit system, then the schema judges the whole.
//!
//! All faults of an input are found, not the first only. The schema is the calculator's own, made from its types, so that
//! what the reader passes the types read; a property test holds the two together.

use jsonschema::error::{TypeKind, ValidationErrorKind};
use jsonschema::{ValidationError, Validator};
use schemars::generate::SchemaSettings;
use schemars::{JsonSchema, Schema};
use serde_json::{Map, Value, json};

use super::{Fault, Note, Words};
use quantity::{Exact, INCH, Length, MILLIMETRE, Money, PHYSICAL_KINDS, Tape, Units, kind_named, read_physical};

/// More list entries and fields than this are not looked at one by one.
const MOST_FAULTS: usize = 1_000;

pub(super) fn input_schema<T: JsonSchema>() -> Schema {
    settings().for_deserialize().into_generator().into_root_schema_for::<T>()
}

pub(super) fn answer_schema<T: JsonSchema>() -> Schema {
    settings().for_serialize().into_generator().into_root_schema_for::<T>()
}

fn settings() -> SchemaSettings {
    SchemaSettings::draft2020_12().with(|settings| settings.inline_subschemas = true)
}

/// A calculator's schema, compiled once.
pub(super) struct Reader {
    schema: Value,
    validator: Validator,
}

impl Reader {
    pub(super) fn new(schema: Schema) -> Self {
        let schema = schema.to_value();
        let validator = jsonschema::options().build(&schema).expect("schemars writes valid schemas");
        Self { schema, validator }
    }

    /// The input with every quantity in its exact form, and notes on values outside what is usual.
    pub(super) fn read(&self, raw: &Value, units: Units, example: &Value) -> Result<(Value, Vec<Note>), Vec<Fault>> {
        let mut walk = Walk { units, example, faults: Vec::new(), notes: Vec::new() };
        let complete = walk.complete(&self.schema, raw, &mut String::new());
        let Walk { mut faults, notes, .. } = walk;
        for error in self.validator.iter_errors(&complete).take(MOST_FAULTS) {
            self.explain(&error, example, &mut faults);
        }
        if faults.is_empty() { Ok((complete, notes)) } else { Err(faults) }
    }

    /// Turns what the schema says into a fault in our words, unless that field already has one.
    fn explain(&self, error: &ValidationError<'_>, example: &Value, faults: &mut Vec<Fault>) {
        use ValidationErrorKind as Kind;
        let at = error.instance_path().as_str();
        if faults.iter().any(|fault| fault.pointer == at) {
            return;
        }
        match error.kind() {
            Kind::OneOfNotValid { context } | Kind::AnyOf { context } => {
                // The branch that was meant is the one with the fewest deeper errors and a matching tag.
                let branch = context
                    .iter()
                    .filter(|errors| errors.iter().all(|error| !matches!(error.kind(), Kind::Constant { .. })))
                    .min_by_key(|errors| errors.len());
                if let Some(errors) =
                    branch.filter(|errors| errors.iter().any(|error| error.instance_path().as_str() != at))
                {
                    errors.iter().for_each(|error| self.explain(error, example, faults));
                    return;
                }
                let words = self.choices(error.schema_path().as_str());
                let tagged = words.tag.as_ref().map_or_else(|| at.to_owned(), |tag| format!("{at}/{tag}"));
                let said = words.tag.as_ref().and_then(|tag| error.instance().get(tag)).unwrap_or(error.instance());
                let known = words.words.first().cloned();
                let fault = fault(&tagged, error.instance(), words.sentence(), example, known);
                faults.push(with_nearest(fault, said, &words.words));
            }
            Kind::Enum { options } => {
                let words: Vec<_> =
                    options.as_array().into_iter().flatten().filter(|word| !word.is_null()).cloned().collect();
                let why = format!("must be one of {}", listed(&words));
                let fault = fault(at, error.instance(), why, example, words.first().cloned());
                faults.push(with_nearest(fault, error.instance(), &words));
            }
            Kind::Constant { expected_value } => {
                let why = format!("must be {}", plain(expected_value));
                faults.push(fault(at, error.instance(), why, example, Some((**expected_value).clone())));
            }
            Kind::Required { property } => {
                let pointer = format!("{at}/{}", escaped(property.as_str().unwrap_or_default()));
                if !faults.iter().any(|fault| fault.pointer == pointer) {
                    let instead = instead(&pointer, example, None);
                    faults.push(Fault::new(pointer, "nothing", "this is needed and was left out", instead));
                }
            }
            Kind::AdditionalProperties { unexpected } => {
                for name in unexpected {
                    let known = self.schema_fields(error.schema_path().as_str());
                    let why = format!("there is no such field here; known are {known}");
                    faults.push(Fault::new(format!("{at}/{}", escaped(name)), quoted(name), why, Value::Null));
                }
            }
            Kind::Type { kind } => {
                let why = format!("must be {}", type_words(kind));
                faults.push(fault(at, error.instance(), why, example, None));
            }
            Kind::Minimum { limit } | Kind::Maximum { limit } => {
                let parent = error.schema_path().as_str().rsplit_once('/').map_or("", |(parent, _)| parent);
                let bound = |name: &str| self.schema.pointer(parent).and_then(|schema| schema.get(name)).map(plain);
                let why = match (bound("minimum"), bound("maximum")) {
                    (Some(least), Some(most)) => format!("must be from {least} to {most}"),
                    (Some(least), None) => format!("must be {least} or more"),
                    _ => format!("must be {} or less", plain(limit)),
                };
                faults.push(fault(at, error.instance(), why, example, Some(limit.clone())));
            }
            Kind::MinItems { limit } => {
                faults.push(fault(at, error.instance(), format!("needs at least {limit}"), example, None));
            }
            Kind::MaxItems { limit } => {
                faults.push(fault(at, error.instance(), format!("can hold at most {limit}"), example, None));
            }
            Kind::MaxLength { limit } => {
                faults.push(fault(at, error.instance(), format!("must have at most {limit} letters"), example, None));
            }
            Kind::MinLength { limit } => {
                faults.push(fault(at, error.instance(), format!("must have at least {limit} letters"), example, None));
            }
            other => {
                let why = format!("does not fit the rule «{}»", other.keyword());
                faults.push(fault(at, error.instance(), why, example, None));
            }
        }
    }

    fn choices(&self, path: &str) -> Choices {
        let mut choices = Choices { tag: None, words: Vec::new() };
        for branch in self.schema.pointer(path).and_then(Value::as_array).into_iter().flatten() {
            if let Some(word) = branch.get("const") {
                choices.words.push(word.clone());
            } else if let Some((tag, word)) = tag_of(branch) {
                choices.tag = Some(tag.to_owned());
                choices.words.push(word.clone());
            }
        }
        choices
    }

    fn schema_fields(&self, path: &str) -> String {
        let parent = path.rsplit_once('/').map_or("", |(parent, _)| parent);
        let fields = self.schema.pointer(parent).and_then(|schema| schema.get("properties")).and_then(Value::as_object);
        fields.map_or_else(String::new, |fields| fields.keys().cloned().collect::<Vec<_>>().join(", "))
    }
}

struct Choices {
    tag: Option<String>,
    words: Vec<Value>,
}

impl Choices {
    fn sentence(&self) -> String {
        if self.words.is_empty() {
            "fits none of the allowed forms".to_owned()
        } else {
            format!("must be one of {}", listed(&self.words))
        }
    }
}

/// The property that tells the branches of a choice apart, and its word in this branch.
fn tag_of(branch: &Value) -> Option<(&str, &Value)> {
    let properties = branch.get("properties")?.as_object()?;
    properties.iter().find_map(|(name, schema)| schema.get("const").map(|word| (name.as_str(), word)))
}

struct Walk<'a> {
    units: Units,
    example: &'a Value,
    faults: Vec<Fault>,
    notes: Vec<Note>,
}

impl Walk<'_> {
    fn complete(&mut self, schema: &Value, value: &Value, at: &mut String) -> Value {
        if value.is_null() {
            return Value::Null;
        }
        if let Some(bounds) = schema.get("x-length") {
            return self.length(schema, bounds, value, at);
        }
        if let Some(kind) = schema.get("x-kind").and_then(Value::as_str) {
            return self.physical(schema, kind, value, at);
        }
        if schema.get("x-money").is_some() {
            return self.money(value, at);
        }
        let branches = schema.get("anyOf").or_else(|| schema.get("oneOf")).and_then(Value::as_array);
        if let Some(branch) = branches.and_then(|branches| chosen(branches, value)) {
            return self.complete(branch, value, at);
        }
        match value {
            Value::Object(fields) => Value::Object(self.fields(schema, fields, at)),
            Value::Array(items) => {
                let item_schema = schema.get("items").unwrap_or(&Value::Null);
                let most = schema.get("maxItems").and_then(Value::as_u64).map_or(MOST_FAULTS, |most| most as usize + 1);
                let mut list = Vec::with_capacity(items.len().min(most));
                for (index, item) in items.iter().take(most).enumerate() {
                    list.push(self.inside(item_schema, item, at, &index.to_string()));
                }
                Value::Array(list)
            }
            other => other.clone(),
        }
    }

    fn fields(&mut self, schema: &Value, fields: &Map<String, Value>, at: &mut String) -> Map<String, Value> {
        let known = schema.get("properties").unwrap_or(&Value::Null);
        let mut complete = Map::new();
        for (name, value) in fields.iter().take(MOST_FAULTS) {
            let field_schema = known.get(name).unwrap_or(&Value::Null);
            complete.insert(name.clone(), self.inside(field_schema, value, at, &escaped(name)));
        }
        complete
    }

    fn inside(&mut self, schema: &Value, value: &Value, at: &mut String, name: &str) -> Value {
        let end = at.len();
        at.push('/');
        at.push_str(name);
        let complete = self.complete(schema, value, at);
        at.truncate(end);
        complete
    }

    fn length(&mut self, schema: &Value, bounds: &Value, value: &Value, at: &str) -> Value {
        let length = match Length::from_json(value, Some(self.units)) {
            Ok(length) => length,
            Err(rule) => {
                let example = instead(at, self.example, Some(rule.valid_example(self.units).into()));
                self.faults.push(Fault::new(at, quoted(&plain(value)), rule.to_string(), example));
                return json!({ "nm": [0, 1] });
            }
        };
        let bound = |name: &str| bounds.get(name).and_then(Value::as_i64).map(Length::from_nm);
        if let (Some(least), Some(most)) = (bound("min_nm"), bound("max_nm"))
            && (length < least || length > most)
        {
            let said = Words::new("{}").with(length);
            let (least_said, most_said) = (self.bound(least, true), self.bound(most, false));
            let mut why = Words::new("must be from {} to {}").with(least_said.clone()).with(most_said.clone());
            if let Some(other) = self.other_reading(value, least, most) {
                why = Words::new("must be from {} to {}; if {} was meant, write the unit")
                    .with(least_said)
                    .with(most_said)
                    .with(other);
            }
            let example = instead(at, self.example, Some(least.text(self.units).into()));
            self.faults.push(Fault::new(at, said, why, example));
            return json!({ "nm": [0, 1] });
        }
        if let Some([least, most]) = usual(schema).and_then(|words| {
            let read = |word: &Value| Length::read_with_unit(word.as_str()?).ok();
            Some([read(&words[0])?, read(&words[1])?])
        }) && (length < least || length > most)
        {
            let label = label(schema, at);
            self.notes.push(Note::check(
                Words::new("{}: {} is outside the usual {} to {}").with(label).with(length).with(least).with(most),
            ));
        }
        json!({ "nm": [length.nm(), 1] })
    }

    /// A bound as it is told: rounded to the inside, to a mark that is easy to read.
    fn bound(&self, bound: Length, up: bool) -> String {
        let coarse = bound.size() >= INCH;
        let step = match (self.units, coarse) {
            (Units::Imperial, true) => Tape::Eighth.step(),
            (Units::Imperial, false) => Tape::SixtyFourth.step(),
            (Units::Metric, true) => MILLIMETRE,
            (Units::Metric, false) => Length::um(100),
        };
        let rounded = if up { bound.exact().up_to(step) } else { bound.exact().down_to(step) };
        rounded.text(self.units)
    }

    /// What a bare number out of range would be in the other unit system, when that would be in range.
    fn other_reading(&self, value: &Value, least: Length, most: Length) -> Option<Figurative> {
        let text = value.as_str()?.trim();
        let bare = text.chars().all(|sign| sign.is_ascii_digit() || sign == '.');
        let other = self.units.other();
        let length = Length::read(text, other).ok().filter(|length| bare && least <= *length && *length <= most)?;
        Some(Figurative(match other {
            Units::Metric => quantity::print::millimetres(length.exact(), Length::from_nm(1)),
            Units::Imperial => quantity::print::inches(Exact::from(length), 64),
        }))
    }

    fn physical(&mut self, schema: &Value, kind: &str, value: &Value, at: &str) -> Value {
        let facts = kind_named(kind).unwrap_or(&PHYSICAL_KINDS[0]);
        let bounds = schema.get("x-range").and_then(Value::as_array);
        let range = bounds.and_then(|pair| Some((pair.first()?.as_f64()?, pair.get(1)?.as_f64()?)));
        let figure = |metric: f64| super::Figure::Physical(facts.name, metric);
        let put_right = || {
            let middle = range.map(|(least, most)| (least + most) / 2.0);
            let text = middle.map(|middle| Words::new("{}").with(figure(middle)).in_units(self.units));
            instead(at, self.example, text.map(Value::from))
        };
        let metric = match read_physical(facts, value, self.units) {
            Ok(metric) => metric,
            Err(rule) => {
                let example = put_right();
                self.faults.push(Fault::new(at, quoted(&plain(value)), rule.to_string(), example));
                return json!({ "value": 0 });
            }
        };
        if let Some((least, most)) = range {
            let slack = 1e-9 * least.abs().max(most.abs()).min(1e9);
            if metric < least - slack || metric > most + slack {
                let why = Words::new("must be from {} to {}").with(figure(least)).with(figure(most));
                let example = put_right();
                self.faults.push(Fault::new(at, Words::new("{}").with(figure(metric)), why, example));
                return json!({ "value": least });
            }
        }
        if let Some([least, most]) = usual(schema).and_then(|words| {
            let read = |word: &Value| read_physical(facts, word, Units::Metric).ok();
            Some([read(&words[0])?, read(&words[1])?])
        }) && (metric < least || metric > most)
        {
            let words = Words::new("{}: {} is outside the usual {} to {}").with(label(schema, at)).with(figure(metric));
            self.notes.push(Note::check(words.with(figure(least)).with(figure(most))));
        }
        json!({ "value": metric })
    }

    fn money(&mut self, value: &Value, at: &str) -> Value {
        match serde_json::from_value::<Money>(value.clone()) {
            Ok(money) => json!({ "minor": money.minor() }),
            Err(rule) => {
                let example = instead(at, self.example, Some("48.00".into()));
                self.faults.push(Fault::new(at, quoted(&plain(value)), rule.to_string(), example));
                json!({ "minor": 0 })
            }
        }
    }
}

/// Text that stands in a sentence as it is.
struct Figurative(String);

impl From<Figurative> for super::Figure {
    fn from(text: Figurative) -> Self {
        Self::Text(text.0)
    }
}

/// The branch of a choice that a value means: the one whose tag it carries, or whose type it has.
fn chosen<'s>(branches: &'s [Value], value: &Value) -> Option<&'s Value> {
    let tagged = branches.iter().find(|branch| tag_of(branch).is_some_and(|(tag, word)| value.get(tag) == Some(word)));
    tagged.or_else(|| {
        let mut real = branches.iter().filter(|branch| branch.get("type").is_none_or(|kind| kind != "null"));
        real.next().filter(|_| real.next().is_none())
    })
}

fn usual(schema: &Value) -> Option<[Value; 2]> {
    let words = schema.get("x-usual")?.as_array()?;
    Some([words.first()?.clone(), words.get(1)?.clone()])
}

fn label(schema: &Value, at: &str) -> String {
    let title = schema.get("title").and_then(Value::as_str);
    title.map_or_else(|| at.rsplit('/').next().unwrap_or_default().replace('_', " "), str::to_owned)
}

fn fault(at: &str, said: &Value, why: String, example: &Value, known: Option<Value>) -> Fault {
    Fault::new(at, quoted(&plain(said)), why, instead(at, example, known))
}

/// How alike two words must be, from 0 to 1, for one to have been meant by the other.
const ALIKE: f64 = 0.8;

/// The fault with the allowed word that is most like what was said, where one is.
fn with_nearest(mut fault: Fault, said: &Value, words: &[Value]) -> Fault {
    let Some(said) = said.as_str() else { return fault };
    let likeness = |word: &Value| word.as_str().map_or(0.0, |word| strsim::jaro_winkler(said, word));
    let nearest = words.iter().max_by(|one, other| likeness(one).total_cmp(&likeness(other)));
    if let Some(nearest) = nearest.filter(|word| likeness(word) >= ALIKE) {
        fault.instead = nearest.clone();
    }
    fault
}

/// What would do at this place: the worked example's value where it has one, else what is known of the field.
fn instead(pointer: &str, example: &Value, known: Option<Value>) -> Value {
    let at_zero: String = pointer
        .split('/')
        .map(|part| if !part.is_empty() && part.chars().all(|sign| sign.is_ascii_digit()) { "0" } else { part })
        .collect::<Vec<_>>()
        .join("/");
    let found = example.pointer(pointer).or_else(|| example.pointer(&at_zero));
    found.filter(|value| !value.is_object() && !value.is_array()).cloned().or(known).unwrap_or(Value::Null)
}

fn escaped(name: &str) -> String {
    name.replace('~', "~0").replace('/', "~1")
}

/// What was given, shortened to what fits a line.
fn plain(value: &Value) -> String {
    let text = match value {
        Value::String(text) => text.clone(),
        Value::Object(_) => "several fields".to_owned(),
        Value::Array(items) => format!("a list of {}", items.len()),
        other => other.to_string(),
    };
    if text.chars().count() > 60 { text.chars().take(57).chain("…".chars()).collect() } else { text }
}

fn quoted(text: &str) -> Words {
    Words::from(format!("«{text}»"))
}

fn listed(words: &[Value]) -> String {
    words.iter().map(|word| format!("«{}»", plain(word))).collect::<Vec<_>>().join(", ")
}

fn type_words(kind: &TypeKind) -> String {
    let word = |kind: &str| match kind {
        "integer" => "a whole number",
        "number" => "a number",
        "string" => "text",
        "boolean" => "yes or no (true or false)",
        "array" => "a list",
        "object" => "a group of fields",
        _ => "left out",
    };
    match kind {
        TypeKind::Single(one) => word(&one.to_string()).to_owned(),
        TypeKind::Multiple(many) => many
            .iter()
            .map(|one| word(&one.to_string()))
            .filter(|word| *word != "left out")
            .collect::<Vec<_>>()
            .join(" or "),
    }
}
