//! A calculator with its types erased, so that one list serves every face.

use std::borrow::Cow;
use std::sync::OnceLock;

use quantity::Units;
use serde_json::Value;

use crate::{Answer, Calculator, Card, Example, Fault, FromNode, Node, Note, Printed, Shape, Shaped};

/// One line of the catalogue.
pub struct Entry {
    card: Card,
    input: Shape,
    output: Shape,
    heavy: bool,
    example: fn(Units) -> Example,
    run: fn(Node) -> Result<Answer<Node>, Vec<Fault>>,
    examples: OnceLock<[Example; 2]>,
}

impl Entry {
    /// The entry of one calculator.
    pub const fn of<C: Calculator>() -> Self {
        Self {
            card: C::CARD,
            input: C::Input::SHAPE,
            output: C::Output::SHAPE,
            heavy: C::HEAVY,
            example: C::example,
            run: run::<C>,
            examples: OnceLock::new(),
        }
    }

    /// Names, question, cautions, sources.
    pub const fn card(&self) -> &Card {
        &self.card
    }

    /// What an input looks like.
    pub const fn input(&self) -> &Shape {
        &self.input
    }

    /// What the result of an answer looks like.
    pub const fn output(&self) -> &Shape {
        &self.output
    }

    /// Whether an input can take longer than a millisecond.
    pub const fn is_heavy(&self) -> bool {
        self.heavy
    }

    /// The worked example in one unit system.
    pub fn example(&self, units: Units) -> &Example {
        let made = || [(self.example)(Units::Imperial), (self.example)(Units::Metric)];
        let [imperial, metric] = self.examples.get_or_init(made);
        match units {
            Units::Imperial => imperial,
            Units::Metric => metric,
        }
    }

    /// Reads an input: every quantity exact, bare numbers in `units`.
    /// # Errors
    /// All faults of the input at once.
    pub fn read(&self, raw: &Value, units: Units) -> Result<Node, Vec<Fault>> {
        self.judge(raw, units).map(|(input, _)| input)
    }

    /// The one way in, for a form, a JSON body and a command line alike: the answer, exact and without units.
    /// # Errors
    /// All faults of the input at once, those of single fields before those between fields.
    pub fn work(&self, raw: &Value, units: Units) -> Result<Answer<Node>, Vec<Fault>> {
        let (input, raised) = self.judge(raw, units)?;
        let mut answer = (self.run)(input)?;
        answer.notes.splice(0..0, raised);
        Ok(answer)
    }

    /// The answer as JSON, printed in one unit system.
    /// # Errors
    /// As [`Entry::work`].
    pub fn answer(&self, raw: &Value, units: Units) -> Result<Value, Vec<Fault>> {
        self.work(raw, units).map(|answer| Printed(&answer, units).to_value())
    }

    fn judge(&self, raw: &Value, units: Units) -> Result<(Node, Vec<Note>), Vec<Fault>> {
        let example = &self.example(units).input;
        self.input.judge(&with_usual_tape(raw, example, units), units, example)
    }
}

/// Where a tape may be given and was left out, the usual one of the reader's units: nobody who writes millimetres marks in inches.
fn with_usual_tape<'r>(raw: &'r Value, example: &Value, units: Units) -> Cow<'r, Value> {
    let mut raw = Cow::Borrowed(raw);
    for place in ["", "/scheme"] {
        let asked = example.pointer(&format!("{place}/tape")).is_some();
        let left_out = raw
            .pointer(place)
            .and_then(Value::as_object)
            .is_some_and(|fields| fields.get("tape").is_none_or(Value::is_null));
        if asked
            && left_out
            && let Some(fields) = raw.to_mut().pointer_mut(place).and_then(Value::as_object_mut)
        {
            fields.insert("tape".to_owned(), units.usual_tape().word().into());
        }
    }
    raw
}

fn run<C: Calculator>(input: Node) -> Result<Answer<Node>, Vec<Fault>> {
    // The judge passed what the type refuses: our own fault, held down by a test, told plainly all the same.
    let ours = || vec![Fault::new("", "this input", "its own type refuses what its shape has passed", Value::Null)];
    let answer = C::compute(&C::Input::from_node(input).ok_or_else(ours)?)?;
    Ok(Answer { result: answer.result.node(), working: answer.working, notes: answer.notes })
}
