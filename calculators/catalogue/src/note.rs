//! What the numbers give reason to say beside an answer.

use std::borrow::Cow;

use crate::shape::{Choice, Field, Kind, Shape};
use crate::{Node, Shaped, Words};

/// How much a note weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoteLevel {
    /// Worth knowing.
    Note,
    /// Outside what is usual: look again.
    Check,
    /// Work stops here until somebody has settled it.
    Hold,
}

impl NoteLevel {
    const CHOICES: [Choice; 3] = [
        Choice { word: Self::Note.word(), meaning: "Worth knowing." },
        Choice { word: Self::Check.word(), meaning: "Outside what is usual: look again." },
        Choice { word: Self::Hold.word(), meaning: "Work stops here until somebody has settled it." },
    ];

    /// The word used in answers and style sheets.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Note => "note",
            Self::Check => "check",
            Self::Hold => "hold",
        }
    }
}

/// A sentence raised by the numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct Note {
    /// How much it weighs.
    pub level: NoteLevel,
    /// The sentence.
    pub words: Words,
    /// A value that would change it, for a button beside it.
    pub offer: Option<Offer>,
}

/// A value offered beside a note.
#[derive(Clone, Debug, PartialEq)]
pub struct Offer {
    /// Which field it goes into, as a JSON pointer.
    pub field: Cow<'static, str>,
    /// The value, as it is typed.
    pub value: String,
    /// What taking it does, for the button.
    pub action: Cow<'static, str>,
}

impl Note {
    /// The same note with a value to take.
    #[must_use]
    pub fn offering(
        mut self,
        field: impl Into<Cow<'static, str>>,
        value: impl ToString,
        action: impl Into<Cow<'static, str>>,
    ) -> Self {
        self.offer = Some(Offer { field: field.into(), value: value.to_string(), action: action.into() });
        self
    }

    /// Worth knowing.
    pub fn remark(words: impl Into<Words>) -> Self {
        Self { level: NoteLevel::Note, words: words.into(), offer: None }
    }

    /// Outside what is usual.
    pub fn check(words: impl Into<Words>) -> Self {
        Self { level: NoteLevel::Check, words: words.into(), offer: None }
    }

    /// Work stops here.
    pub fn hold(words: impl Into<Words>) -> Self {
        Self { level: NoteLevel::Hold, words: words.into(), offer: None }
    }
}

const fn field(name: &'static str, about: &'static str, default: Option<fn() -> Node>, shape: Shape) -> Field {
    Field { name, title: "", about, default, usual: None, for_machines: false, shape }
}

impl Shaped for Note {
    const SHAPE: Shape = {
        const FIELDS: &[Field] = &[
            field("level", "How much it weighs.", None, Shape::choice("How much a note weighs.", &NoteLevel::CHOICES)),
            field("words", "The sentence.", None, Words::SHAPE),
            field("offer", "A value that would change it.", Some(|| Node::Nothing), Offer::SHAPE),
        ];
        Shape::group("A sentence raised by the numbers.", FIELDS)
    };

    /// Without an offer its field is left out.
    fn node(&self) -> Node {
        let mut fields = vec![("level", Node::Word(self.level.word())), ("words", self.words.node())];
        fields.extend(self.offer.as_ref().map(|offer| ("offer", offer.node())));
        Node::Group(fields)
    }
}

impl Shaped for Offer {
    const SHAPE: Shape = {
        const TEXT: Shape = Shape::of(Kind::Text { least: 0, most: None });
        const FIELDS: &[Field] = &[
            field("field", "Which field it goes into, as a JSON pointer.", None, TEXT),
            field("value", "The value, as it is typed.", None, TEXT),
            field("action", "What taking it does, for the button.", None, TEXT),
        ];
        Shape::group("A value offered beside a note.", FIELDS)
    };
    fn node(&self) -> Node {
        Node::Group(vec![("field", self.field.node()), ("value", self.value.node()), ("action", self.action.node())])
    }
}
