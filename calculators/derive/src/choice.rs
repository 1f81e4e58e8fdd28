//! An enum without fields: a choice between words.

use proc_macro2::TokenStream;
use quote::quote;
use syn::{DataEnum, DeriveInput, Error, Fields, Result};

use crate::Role;
use crate::attributes::{Said, doc};

pub(crate) fn derived(item: &DeriveInput, data: &DataEnum, role: Role) -> Result<TokenStream> {
    let (name, about) = (&item.ident, doc(&item.attrs));
    let (mut choices, mut told, mut read) = (Vec::new(), Vec::new(), Vec::new());
    for variant in &data.variants {
        if !matches!(variant.fields, Fields::Unit) {
            return Err(Error::new_spanned(
                variant,
                "a word of a choice holds nothing: tell what goes with it in a field",
            ));
        }
        let (ident, meaning) = (&variant.ident, doc(&variant.attrs));
        let word = Said::of(&variant.attrs)?.title.unwrap_or_else(|| kebab(&ident.to_string()));
        choices.push(quote!(::catalogue::Choice { word: #word, meaning: #meaning }));
        told.push(quote!(Self::#ident => #word));
        read.push(quote!(#word => ::std::option::Option::Some(Self::#ident)));
    }
    let shaped = quote! {
        impl ::catalogue::Shaped for #name {
            const SHAPE: ::catalogue::Shape = {
                const CHOICES: &[::catalogue::Choice] = &[#(#choices),*];
                ::catalogue::Shape::choice(#about, CHOICES)
            };
            fn node(&self) -> ::catalogue::Node {
                ::catalogue::Node::Word(match self { #(#told),* })
            }
        }
    };
    if role == Role::Output {
        return Ok(shaped);
    }
    Ok(quote! {
        #shaped
        impl ::catalogue::FromNode for #name {
            fn from_node(node: ::catalogue::Node) -> ::std::option::Option<Self> {
                match node {
                    ::catalogue::Node::Word(word) => match word {
                        #(#read,)*
                        _ => ::std::option::Option::None,
                    },
                    _ => ::std::option::Option::None,
                }
            }
        }
    })
}

/// `InsideFirst` as `inside-first`.
fn kebab(name: &str) -> String {
    let mut out = String::with_capacity(name.len() + 4);
    for (at, sign) in name.char_indices() {
        if sign.is_uppercase() && at > 0 {
            out.push('-');
        }
        out.extend(sign.to_lowercase());
    }
    out
}
