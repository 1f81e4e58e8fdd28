//! A calculator with its types erased, so that one list serves every face.

use std::sync::OnceLock;

use schemars::Schema;
use serde_json::{Value, json};

use super::reading::{self, Reader};
use super::{Answer, Calculator, Card, Example, Fault, Note};
use quantity::{Units, print};

/// One line of the catalogue.
pub struct Entry {
    card: Card,
    input_schema: fn() -> Schema,
    answer_schema: fn() -> Schema,
    example: fn(Units) -> Example,
    run: fn(Value) -> Result<Value, Vec<Fault>>,
    reader: OnceLock<Reader>,
    faces: OnceLock<Faces>,
}

/// What is made once per calculator: its schemas as JSON and its examples.
struct Faces {
    input_schema: Value,
    answer_schema: Value,
    examples: [Example; 2],
}

impl Entry {
    /// The entry of one calculator.
    pub const fn of<C: Calculator>() -> Self {
        Self {
            card: C::CARD,
            input_schema: reading::input_schema::<C::Input>,
            answer_schema: reading::answer_schema::<Answer<C::Output>>,
            example: C::example,
            run: run::<C>,
            reader: OnceLock::new(),
            faces: OnceLock::new(),
        }
    }

    /// Names, question, cautions, sources.
    pub const fn card(&self) -> &Card {
        &self.card
    }

    /// JSON Schema (2020-12) of the input.
    pub fn input_schema(&self) -> &Value {
        &self.faces().input_schema
    }

    /// JSON Schema (2020-12) of the answer: result, working and notes.
    pub fn answer_schema(&self) -> &Value {
        &self.faces().answer_schema
    }

    /// The worked example in one unit system.
    pub fn example(&self, units: Units) -> &Example {
        let [imperial, metric] = &self.faces().examples;
        match units {
            Units::Imperial => imperial,
            Units::Metric => metric,
        }
    }

    /// Reads an input: every quantity in its exact form, bare numbers in `units`.
    /// # Errors
    /// All faults of the input at once.
    pub fn read(&self, raw: &Value, units: Units) -> Result<Value, Vec<Fault>> {
        self.read_with_notes(raw, units).map(|(input, _)| input)
    }

    /// The one way in, for a form, a JSON body and a command line alike: the answer with quantities still exact.
    ///
    /// Shape: `{"result", "working", "notes"}`; [`Entry::answer`] prints it.
    /// # Errors
    /// All faults of the input at once, those of single fields before those between fields.
    pub fn work(&self, raw: &Value, units: Units) -> Result<Value, Vec<Fault>> {
        let (input, raised) = self.read_with_notes(raw, units)?;
        let mut answer = (self.run)(input)?;
        if let Some(notes) = answer.get_mut("notes").and_then(Value::as_array_mut) {
            notes.splice(0..0, raised.into_iter().filter_map(|note| serde_json::to_value(note).ok()));
        }
        Ok(answer)
    }

    /// The answer, printed in one unit system.
    /// # Errors
    /// As [`Entry::work`].
    pub fn answer(&self, raw: &Value, units: Units) -> Result<Value, Vec<Fault>> {
        self.work(raw, units).map(|answer| print::walk(answer, units))
    }

    fn read_with_notes(&self, raw: &Value, units: Units) -> Result<(Value, Vec<Note>), Vec<Fault>> {
        let reader = self.reader.get_or_init(|| Reader::new((self.input_schema)()));
        reader.read(raw, units, &self.example(units).input)
    }

    fn faces(&self) -> &Faces {
        self.faces.get_or_init(|| Faces {
            input_schema: (self.input_schema)().to_value(),
            answer_schema: (self.answer_schema)().to_value(),
            examples: [(self.example)(Units::Imperial), (self.example)(Units::Metric)],
        })
    }
}

/// Faults with every quantity printed in one unit system: a list of `{"pointer", "said", "why", "try"}`.
pub(super) fn printed(faults: &[Fault], units: Units) -> Value {
    print::walk(json!(faults), units)
}

impl Fault {
    /// Faults as JSON with every quantity printed in one unit system: `{"pointer", "said", "why", "try"}` each.
    pub fn print_all(faults: &[Self], units: Units) -> Value {
        printed(faults, units)
    }
}

fn run<C: Calculator>(input: Value) -> Result<Value, Vec<Fault>> {
    let input: C::Input = serde_json::from_value(input).map_err(|error| {
        // The schema passed what the type refuses: our own fault, held down by a property test, told plainly all the same.
        vec![Fault::new("", "this input", error.to_string(), Value::Null)]
    })?;
    C::compute(&input).map(|answer| {
        serde_json::to_value(answer).unwrap_or_else(|error| json!({ "result": null, "notes": [error.to_string()] }))
    })
}
