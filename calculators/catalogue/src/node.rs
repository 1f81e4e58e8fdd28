//! An input that was judged, or the result of an answer: a tree whose leaves are exact and know what they are.
//!
//! The tree knows no unit system. Units are chosen when it is written: by [`Printed`](crate::Printed) as JSON, by pages as figures.

use std::borrow::Cow;

use quantity::{Count, Exact, Kind as Quantity, Length, Money, Physical, Reading, Run, Tape, Units, Within};
use serde_json::Value;

use crate::shape::{Choice, Kind, Shape};
use crate::{Fault, Figure, Words};

/// One place of an input or an answer.
#[derive(Clone, Debug, PartialEq)]
pub enum Node {
    /// Nothing stands there.
    Nothing,
    /// Yes or no.
    Flag(bool),
    /// A word of a choice; what it means stands in the shape.
    Word(&'static str),
    /// A quantity, or words.
    Leaf(Figure),
    /// Fields in the order of their declaration.
    Group(Vec<(&'static str, Node)>),
    /// The same over and over.
    List(Vec<Node>),
    /// What only a program reads.
    Data(Value),
}

impl Node {
    /// What stands at a JSON pointer.
    pub fn at(&self, pointer: &str) -> Option<&Self> {
        pointer.split('/').skip(1).try_fold(self, |node, part| match node {
            Self::Group(_) => node.field(part),
            Self::List(items) => items.get(part.parse::<usize>().ok()?),
            _ => None,
        })
    }

    /// A field of a group.
    pub fn field(&self, name: &str) -> Option<&Self> {
        self.fields().iter().find(|(other, _)| *other == name).map(|(_, node)| node)
    }

    /// The fields of a group; none of anything else.
    pub fn fields(&self) -> &[(&'static str, Self)] {
        match self {
            Self::Group(fields) => fields,
            _ => &[],
        }
    }

    /// The items of a list; none of anything else.
    pub fn items(&self) -> &[Self] {
        match self {
            Self::List(items) => items,
            _ => &[],
        }
    }

    /// The quantity or the words of a leaf.
    pub const fn figure(&self) -> Option<&Figure> {
        match self {
            Self::Leaf(figure) => Some(figure),
            _ => None,
        }
    }

    /// The exact length of a leaf; a reading's is that of its mark.
    pub fn length(&self) -> Option<Exact> {
        self.figure()?.length()
    }

    /// The number that formulas work with behind a leaf.
    pub fn number(&self) -> Option<f64> {
        self.figure()?.number()
    }

    /// Whether nothing stands there.
    pub const fn is_null(&self) -> bool {
        matches!(self, Self::Nothing)
    }

    /// The word of a choice, or a text.
    pub fn as_str(&self) -> Option<&str> {
        match self {
            Self::Word(word) => Some(word),
            Self::Leaf(Figure::Text(text)) => Some(text),
            Self::Data(value) => value.as_str(),
            _ => None,
        }
    }
}

/// A type that an answer can hold: it has a shape, and its values become nodes of the tree. The derive `Output` writes it.
pub trait Shaped {
    /// What its values look like.
    const SHAPE: Shape;

    /// A value as a node.
    fn node(&self) -> Node;
}

/// A type that an input can hold: read from a node that its shape has judged. The derive `Input` writes it, and [`Shaped`].
pub trait FromNode: Shaped + Sized {
    /// The value; `None` where the node is none of this type, which a judged node never is.
    fn from_node(node: Node) -> Option<Self>;

    /// The value of a field that was left out; `None` where it is needed.
    fn when_missing() -> Option<Self> {
        None
    }
}

/// Reads a value of a type from JSON as its calculator would: in millimetres and metric units where no unit is written.
/// # Errors
/// All faults of the JSON at once.
pub fn read_as<T: FromNode>(raw: Value) -> Result<T, Vec<Fault>> {
    let (node, _) = T::SHAPE.judge(&raw, Units::Metric, &Value::Null)?;
    T::from_node(node)
        .ok_or_else(|| vec![Fault::new("", "this", "its type refuses what its shape has passed", Value::Null)])
}

impl<T: Shaped> Shaped for Option<T> {
    const SHAPE: Shape = T::SHAPE.or_nothing();
    fn node(&self) -> Node {
        self.as_ref().map_or(Node::Nothing, T::node)
    }
}

impl<T: FromNode> FromNode for Option<T> {
    fn from_node(node: Node) -> Option<Self> {
        match node {
            Node::Nothing => Some(None),
            node => T::from_node(node).map(Some),
        }
    }
    fn when_missing() -> Option<Self> {
        Some(None)
    }
}

impl<T: Shaped> Shaped for Vec<T> {
    const SHAPE: Shape = Shape::of(Kind::List { item: &T::SHAPE, least: 0, most: None });
    fn node(&self) -> Node {
        Node::List(self.iter().map(T::node).collect())
    }
}

impl<T: FromNode> FromNode for Vec<T> {
    fn from_node(node: Node) -> Option<Self> {
        match node {
            Node::List(items) => items.into_iter().map(T::from_node).collect(),
            _ => None,
        }
    }
}

impl<T: Shaped, const N: usize> Shaped for [T; N] {
    const SHAPE: Shape = Shape::of(Kind::List { item: &T::SHAPE, least: N, most: Some(N) });
    fn node(&self) -> Node {
        Node::List(self.iter().map(T::node).collect())
    }
}

impl Shaped for bool {
    const SHAPE: Shape = Shape::of(Kind::Flag);
    fn node(&self) -> Node {
        Node::Flag(*self)
    }
}

impl FromNode for bool {
    fn from_node(node: Node) -> Option<Self> {
        match node {
            Node::Flag(flag) => Some(flag),
            _ => None,
        }
    }
}

macro_rules! leaves {
    ($($of:ty: $kind:expr;)*) => { $(
        impl Shaped for $of {
            const SHAPE: Shape = Shape::of($kind);
            fn node(&self) -> Node {
                Node::Leaf(self.clone().into())
            }
        }
    )* };
}

const WHOLE: Kind = Kind::Count { least: None, most: None };
const FROM_NONE: Kind = Kind::Count { least: Some(0), most: None };
const ANY_TEXT: Kind = Kind::Text { least: 0, most: None };

leaves! {
    u8: FROM_NONE;
    u16: FROM_NONE;
    u32: FROM_NONE;
    u64: FROM_NONE;
    usize: FROM_NONE;
    i32: WHOLE;
    i64: WHOLE;
    String: ANY_TEXT;
    &'static str: ANY_TEXT;
    Cow<'static, str>: ANY_TEXT;
    Words: ANY_TEXT;
    Length: Kind::Length(Some([Length::from_nm(-Length::LONGEST.nm()), Length::LONGEST]));
    Exact: Kind::Length(None);
    Reading: Kind::Reading;
    Run: Kind::Run;
    Money: Kind::Money;
    Figure: Kind::Figure;
}

impl Shaped for f64 {
    const SHAPE: Shape = Shape::of(Kind::Number);
    fn node(&self) -> Node {
        Node::Leaf(Figure::Number(*self))
    }
}

impl Shaped for Value {
    const SHAPE: Shape = Shape::of(Kind::Data);
    fn node(&self) -> Node {
        Node::Data(self.clone())
    }
}

impl<const MIN: i64, const MAX: i64> Shaped for Within<MIN, MAX> {
    const SHAPE: Shape = Shape::of(Kind::Length(Some([Self::MIN, Self::MAX])));
    fn node(&self) -> Node {
        Node::Leaf(self.get().into())
    }
}

impl<const MIN: u32, const MAX: u32> Shaped for Count<MIN, MAX> {
    const SHAPE: Shape = Shape::of(Kind::Count { least: Some(MIN as i64), most: Some(MAX as i64) });
    fn node(&self) -> Node {
        Node::Leaf(self.get().into())
    }
}

impl<K: Quantity, const MIN: i64, const MAX: i64> Shaped for Physical<K, MIN, MAX> {
    const SHAPE: Shape = Shape::of(Kind::Physical(&K::FACTS, Self::RANGE));
    fn node(&self) -> Node {
        Node::Leaf((*self).into())
    }
}

impl FromNode for Length {
    fn from_node(node: Node) -> Option<Self> {
        match node {
            Node::Leaf(Figure::Length(exact)) => Some(exact.nearest(Self::from_nm(1))),
            _ => None,
        }
    }
}

impl<const MIN: i64, const MAX: i64> FromNode for Within<MIN, MAX> {
    fn from_node(node: Node) -> Option<Self> {
        Self::new(Length::from_node(node)?)
    }
}

impl<const MIN: u32, const MAX: u32> FromNode for Count<MIN, MAX> {
    fn from_node(node: Node) -> Option<Self> {
        match node {
            Node::Leaf(Figure::Count(count)) => Self::new(u32::try_from(count).ok()?),
            _ => None,
        }
    }
}

impl<K: Quantity, const MIN: i64, const MAX: i64> FromNode for Physical<K, MIN, MAX> {
    fn from_node(node: Node) -> Option<Self> {
        match node {
            Node::Leaf(Figure::Physical(_, metric)) => Self::new(metric),
            _ => None,
        }
    }
}

impl FromNode for Money {
    fn from_node(node: Node) -> Option<Self> {
        match node {
            Node::Leaf(Figure::Money(money)) => Some(money),
            _ => None,
        }
    }
}

impl FromNode for String {
    fn from_node(node: Node) -> Option<Self> {
        match node {
            Node::Leaf(Figure::Text(text)) => Some(text),
            _ => None,
        }
    }
}

/// A choice declared beneath this crate: its words come from the type itself.
macro_rules! choices {
    ($($of:ty: $about:literal;)*) => { $(
        impl Shaped for $of {
            const SHAPE: Shape = {
                const CHOICES: [Choice; <$of>::ALL.len()] = {
                    let mut found = [Choice { word: "", meaning: "" }; <$of>::ALL.len()];
                    let mut at = 0;
                    while at < found.len() {
                        found[at] = Choice { word: <$of>::ALL[at].word(), meaning: <$of>::ALL[at].meaning() };
                        at += 1;
                    }
                    found
                };
                Shape::choice($about, &CHOICES)
            };
            fn node(&self) -> Node {
                Node::Word(self.word())
            }
        }

        impl FromNode for $of {
            fn from_node(node: Node) -> Option<Self> {
                match node {
                    Node::Word(word) => Self::ALL.into_iter().find(|one| one.word() == word),
                    _ => None,
                }
            }
        }
    )* };
}

choices! {
    Tape: "The finest mark used on a tape or a saw stop. It also says in which system the shop marks and cuts.";
    Units: "The two ways in which a shop reads its tape.";
}

macro_rules! nodes {
    ($($from:ty => |$value:ident| $node:expr;)*) => { $(
        impl From<$from> for Node {
            fn from($value: $from) -> Self { $node }
        }
    )* };
}

nodes! {
    Length => |length| Self::Leaf(length.into());
    Money => |money| Self::Leaf(money.into());
    &str => |text| Self::Leaf(text.into());
    String => |text| Self::Leaf(text.into());
    Words => |words| Self::Leaf(words.into());
    i64 => |count| Self::Leaf(count.into());
    u32 => |count| Self::Leaf(count.into());
    i32 => |count| Self::Leaf(count.into());
    usize => |count| Self::Leaf(count.into());
    f64 => |number| Self::Leaf(Figure::Number(number));
    Value => |value| if value.is_null() { Self::Nothing } else { Self::Data(value) };
}
