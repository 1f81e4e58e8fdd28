//! What an input or an answer looks like, told once by the types of a calculator.
//!
//! A [`Shape`] is a constant made by the derives `Input` and `Output`. The reader, the form, the answer panel, the lists and the
//! OpenAPI document are made from it; none of them says a bound, a label or a word of choice again.

use quantity::{KindFacts, Length};

use crate::Node;

/// What stands at one place.
#[derive(Clone, Copy, Debug)]
pub struct Shape {
    /// What it holds.
    pub kind: Kind,
    /// Whether nothing may stand there.
    pub nullable: bool,
    /// What the type says of itself: its doc comment, empty where it has none.
    pub about: &'static str,
    /// What one of the type is called, for fields and rows that have no label of their own; empty where its field says that.
    pub title: &'static str,
}

/// What a place holds.
#[derive(Clone, Copy, Debug)]
pub enum Kind {
    /// A length, from the first to the second where it has bounds.
    Length(Option<[Length; 2]>),
    /// A length as a tape shows it.
    Reading,
    /// A length of goods that run on.
    Run,
    /// A physical quantity, with its range in the metric unit where it has one.
    Physical(&'static KindFacts, Option<[f64; 2]>),
    /// An amount of money.
    Money,
    /// A whole number, from `least` to `most`.
    Count {
        /// The least allowed.
        least: Option<i64>,
        /// The most allowed.
        most: Option<i64>,
    },
    /// A plain number.
    Number,
    /// Words, from `least` to `most` letters.
    Text {
        /// The fewest letters.
        least: usize,
        /// The most letters.
        most: Option<usize>,
    },
    /// Yes or no.
    Flag,
    /// One of some words.
    Choice(&'static [Choice]),
    /// Several fields together.
    Group(&'static [Field]),
    /// Any number of the same.
    List {
        /// What each is.
        item: &'static Shape,
        /// The fewest.
        least: usize,
        /// The most.
        most: Option<usize>,
    },
    /// A quantity of any kind, as lines of working hold them.
    Figure,
    /// What only a program reads.
    Data,
}

/// One field of a group.
#[derive(Clone, Copy, Debug)]
pub struct Field {
    /// Its name in JSON.
    pub name: &'static str,
    /// Its label, where the name will not do.
    pub title: &'static str,
    /// What it is, or how it is measured: its doc comment.
    pub about: &'static str,
    /// What stands there when nothing is given.
    pub default: Option<fn() -> Node>,
    /// From where to where it usually lies; outside, the answer says so.
    pub usual: Option<[&'static str; 2]>,
    /// No person reads it: it stands in answers that programs ask for, and nowhere else.
    pub for_machines: bool,
    /// What it holds.
    pub shape: Shape,
}

/// A word that can be chosen, and what it means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choice {
    /// The word as it travels.
    pub word: &'static str,
    /// What it means: the doc comment.
    pub meaning: &'static str,
}

impl Shape {
    /// A place that holds this.
    pub const fn of(kind: Kind) -> Self {
        Self { kind, nullable: false, about: "", title: "" }
    }

    /// One of some words.
    pub const fn choice(about: &'static str, choices: &'static [Choice]) -> Self {
        Self { kind: Kind::Choice(choices), nullable: false, about, title: "" }
    }

    /// Several fields together.
    pub const fn group(about: &'static str, fields: &'static [Field]) -> Self {
        Self { kind: Kind::Group(fields), nullable: false, about, title: "" }
    }

    /// The same under a name: what one of it is called.
    #[must_use]
    pub const fn called(self, title: &'static str) -> Self {
        Self { title, ..self }
    }

    /// The same, or nothing.
    #[must_use]
    pub const fn or_nothing(self) -> Self {
        Self { nullable: true, ..self }
    }

    /// The same text or list with its size bounded: letters of a text, items of a list. Everything else stays as it is.
    #[must_use]
    pub const fn sized(self, least: usize, most: usize) -> Self {
        let kind = match self.kind {
            Kind::Text { .. } => Kind::Text { least, most: Some(most) },
            Kind::List { item, .. } => Kind::List { item, least, most: Some(most) },
            other => other,
        };
        Self { kind, ..self }
    }

    /// The fields of a group in order; none for anything else.
    pub const fn fields(&self) -> &'static [Field] {
        match self.kind {
            Kind::Group(fields) => fields,
            _ => &[],
        }
    }

    /// What stands at a pointer: through groups by name, through lists whatever the place.
    pub fn at(&self, pointer: &str) -> Option<Self> {
        pointer.split('/').skip(1).try_fold(*self, |shape, part| match shape.kind {
            Kind::List { item, .. } => Some(*item),
            Kind::Group(fields) => fields.iter().find(|field| field.name == part).map(|field| field.shape),
            _ => None,
        })
    }

    /// The field at a pointer: the last one named on the way, so that the place in a list of plain values finds the list's field.
    pub fn field_at(&self, pointer: &str) -> Option<&'static Field> {
        let (mut shape, mut last) = (*self, None);
        for part in pointer.split('/').skip(1) {
            match shape.kind {
                Kind::List { item, .. } => shape = *item,
                Kind::Group(fields) => {
                    let field = fields.iter().find(|field| field.name == part)?;
                    (shape, last) = (field.shape, Some(field));
                }
                _ => return None,
            }
        }
        last
    }
}

impl Field {
    /// Whether an input without it is refused.
    pub const fn required(&self) -> bool {
        !self.shape.nullable && self.default.is_none()
    }

    /// The label: its title, or its type's, or its name in words.
    pub fn label(&self) -> String {
        match (self.title, self.shape.title) {
            ("", "") => capital(&in_words(self.name)),
            ("", title) | (title, _) => title.to_owned(),
        }
    }

    /// The first paragraph of what it says of itself, or of what its type does.
    pub fn help(&self) -> &'static str {
        let about = if self.about.is_empty() { self.shape.about } else { self.about };
        about.split("\n\n").next().unwrap_or_default().trim()
    }
}

/// `inside-first` and `board_width` as words.
pub fn in_words(name: &str) -> String {
    name.replace(['-', '_'], " ")
}

/// The same text with a capital at its beginning.
pub fn capital(text: &str) -> String {
    let mut signs = text.chars();
    signs.next().map_or_else(String::new, |first| first.to_uppercase().chain(signs).collect())
}
