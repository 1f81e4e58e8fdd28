//! A struct with named fields: a group.

use proc_macro2::TokenStream;
use quote::quote;
use syn::{DataStruct, DeriveInput, Error, Field, Fields, Ident, Result};

use crate::Role;
use crate::attributes::{Said, doc};

pub(crate) fn derived(item: &DeriveInput, data: &DataStruct, role: Role) -> Result<TokenStream> {
    let Fields::Named(named) = &data.fields else {
        return Err(Error::new_spanned(item, "a group has fields with names"));
    };
    let fields: Vec<(&Field, &Ident, Said)> = named
        .named
        .iter()
        .filter_map(|field| Some((field, field.ident.as_ref()?, Said::of(&field.attrs))))
        .map(|(field, ident, said)| said.map(|said| (field, ident, said)))
        .collect::<Result<_>>()?;
    let told = || fields.iter().filter(|(.., said)| !said.skip);
    let (name, about) = (&item.ident, doc(&item.attrs));
    let called = Said::of(&item.attrs)?.title.map(|title| quote!(.called(#title)));
    let shapes = told().map(|(field, ident, said)| shape_of(field, ident, said));
    let nodes = told().map(|(_, ident, _)| {
        let word = ident.to_string();
        quote!((#word, ::catalogue::Shaped::node(&self.#ident)))
    });
    let shaped = quote! {
        impl ::catalogue::Shaped for #name {
            const SHAPE: ::catalogue::Shape = {
                const FIELDS: &[::catalogue::Field] = &[#(#shapes),*];
                ::catalogue::Shape::group(#about, FIELDS) #called
            };
            fn node(&self) -> ::catalogue::Node {
                ::catalogue::Node::Group(::std::vec![#(#nodes),*])
            }
        }
    };
    if role == Role::Output {
        return Ok(shaped);
    }
    let taken = fields.iter().map(|(field, ident, said)| taken(field, ident, said));
    let idents = fields.iter().map(|(_, ident, _)| ident);
    Ok(quote! {
        #shaped
        impl ::catalogue::FromNode for #name {
            fn from_node(node: ::catalogue::Node) -> ::std::option::Option<Self> {
                let ::catalogue::Node::Group(fields) = node else { return ::std::option::Option::None };
                let mut fields = fields.into_iter().peekable();
                #(#taken)*
                ::std::option::Option::Some(Self { #(#idents),* })
            }
        }
    })
}

fn shape_of(field: &Field, ident: &Ident, said: &Said) -> TokenStream {
    let (name, of, about) = (ident.to_string(), &field.ty, doc(&field.attrs));
    let title = said.title.clone().unwrap_or_default();
    let for_machines = said.for_machines;
    let usual = match &said.usual {
        Some([least, most]) => quote!(::std::option::Option::Some([#least, #most])),
        None => quote!(::std::option::Option::None),
    };
    let default = match &said.default {
        Some(function) => {
            let value = value_of(function.as_ref(), of);
            quote!(::std::option::Option::Some(|| ::catalogue::Shaped::node(&#value)))
        }
        None => quote!(::std::option::Option::None),
    };
    let sized = said.size.map(|(least, most)| quote!(.sized(#least, #most)));
    quote! {
        ::catalogue::Field {
            name: #name,
            title: #title,
            about: #about,
            default: #default,
            usual: #usual,
            for_machines: #for_machines,
            shape: <#of as ::catalogue::Shaped>::SHAPE #sized,
        }
    }
}

fn value_of(function: Option<&syn::Path>, of: &syn::Type) -> TokenStream {
    match function {
        Some(function) => quote!(#function()),
        None => quote!(<#of as ::std::default::Default>::default()),
    }
}

/// Fields stand in the tree in their order, but those that were left out do not.
fn taken(field: &Field, ident: &Ident, said: &Said) -> TokenStream {
    let (name, of) = (ident.to_string(), &field.ty);
    if said.skip {
        return quote!(let #ident = ::std::default::Default::default(););
    }
    let missing = match &said.default {
        Some(function) => value_of(function.as_ref(), of),
        None => quote!(<#of as ::catalogue::FromNode>::when_missing()?),
    };
    quote! {
        let #ident = match fields.next_if(|(name, _)| *name == #name) {
            ::std::option::Option::Some((_, node)) => <#of as ::catalogue::FromNode>::from_node(node)?,
            ::std::option::Option::None => #missing,
        };
    }
}
