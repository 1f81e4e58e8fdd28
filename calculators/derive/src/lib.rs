//! The derives `Input` and `Output`: what a calculator's types look like, written from their fields and doc comments.
//!
//! `Output` implements `catalogue::Shaped`: the shape as a constant, and a value as a node of the answer's tree. `Input` implements
//! that and `catalogue::FromNode`: a value from a node that the shape has judged. A field whose type has no shape does not compile.
//!
//! # Attributes
//! On a field, `#[field(...)]` with any of: a label (a string, first); `default` or `default = function`: it may be left out;
//! `usual = ["10 mm", "30 mm"]`: outside, the answer says so; `size(1..=40)`: letters of a text, items of a list;
//! `for_machines`: no person reads it; `skip`: it is no part of the answer.
//! On a struct, `#[field("Opening")]`: what one of it is called, for rows of a list.
//! On a variant, `#[field("word")]`: the word of the choice, where the variant's name in kebab-case will not do.

mod attributes;
mod choice;
mod group;

use proc_macro::TokenStream;
use syn::{Data, DeriveInput, Error, parse_macro_input};

/// What a derived type is for.
#[derive(Clone, Copy, PartialEq)]
enum Role {
    /// It is read from an input.
    Input,
    /// It is told in an answer.
    Output,
}

/// The type can be asked for, and told: it has a shape, becomes a node, and is read from one.
#[proc_macro_derive(Input, attributes(field))]
pub fn input(item: TokenStream) -> TokenStream {
    derived(&parse_macro_input!(item as DeriveInput), Role::Input)
}

/// The type can be told in an answer: it has a shape, and becomes a node.
#[proc_macro_derive(Output, attributes(field))]
pub fn output(item: TokenStream) -> TokenStream {
    derived(&parse_macro_input!(item as DeriveInput), Role::Output)
}

fn derived(item: &DeriveInput, role: Role) -> TokenStream {
    let tokens = match &item.data {
        Data::Struct(fields) => group::derived(item, fields, role),
        Data::Enum(variants) => choice::derived(item, variants, role),
        Data::Union(_) => Err(Error::new_spanned(item, "a union has no shape")),
    };
    tokens.unwrap_or_else(|error| error.to_compile_error()).into()
}
