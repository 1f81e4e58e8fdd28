//! One place of a form: a field with what it says of itself, or an item of a list.

use calculators::catalogue::{Field, Kind, Node, Shape, capital, in_words};

/// A place, with the field it is where it is one.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Place {
    /// What it holds.
    pub(crate) shape: Shape,
    field: Option<&'static Field>,
}

/// A list of a form grows to so many rows where the calculator sets no bound.
pub(super) const LONGEST_LIST: usize = 600;

impl Place {
    /// A whole input, or an item of a list.
    pub(crate) const fn of(shape: Shape) -> Self {
        Self { shape, field: None }
    }

    /// A field of a group.
    pub(crate) const fn of_field(field: &'static Field) -> Self {
        Self { shape: field.shape, field: Some(field) }
    }

    /// The place at a pointer of an input.
    pub(crate) fn at(input: &Shape, pointer: &str) -> Option<Self> {
        let shape = input.at(pointer)?;
        let row = pointer.rsplit('/').next().is_some_and(|part| part.parse::<usize>().is_ok());
        let field = if row { None } else { input.field_at(pointer) };
        Some(Self { shape, field })
    }

    /// The fields of a group in order.
    pub(crate) fn fields(&self) -> impl Iterator<Item = (&'static str, Self)> + use<> {
        self.shape.fields().iter().map(|field| (field.name, Self::of_field(field)))
    }

    /// The label: the field's, or its type's, or this name in words.
    pub(crate) fn label(&self, name: &str) -> String {
        match (self.field, self.shape.title) {
            (Some(field), _) => field.label(),
            (None, "") => capital(&in_words(name)),
            (None, title) => title.to_owned(),
        }
    }

    /// What it is, or how it is measured.
    pub(crate) fn help(&self) -> &'static str {
        self.field.map_or_else(|| self.shape.about.split("\n\n").next().unwrap_or_default().trim(), Field::help)
    }

    /// Whether it may be left out.
    pub(crate) fn optional(&self) -> bool {
        self.field.is_some_and(|field| !field.required())
    }

    /// What stands there when nothing is given, where that is something.
    pub(crate) fn default(&self) -> Option<Node> {
        self.field?.default.map(|default| default()).filter(|node| !node.is_null())
    }

    /// Whether it may be left empty, and then is empty.
    pub(crate) fn spare(&self) -> bool {
        self.optional() && self.default().is_none()
    }

    /// Whether it is one field, no group and no list.
    pub(crate) const fn is_single(&self) -> bool {
        !matches!(self.shape.kind, Kind::Group(_) | Kind::List { .. })
    }
}
