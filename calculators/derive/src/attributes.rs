//! What stands above a field, a variant or a type.

use syn::ext::IdentExt;
use syn::parse::ParseStream;
use syn::{
    Attribute, Error, Expr, ExprLit, Ident, Lit, LitInt, LitStr, Meta, Path, Result, Token, bracketed, parenthesized,
};

/// What is said of a field or a variant.
#[derive(Default)]
pub(crate) struct Said {
    /// The label of a field, the word of a variant.
    pub(crate) title: Option<String>,
    /// It may be left out; the function that says what stands there then, where it is not the type's own default.
    pub(crate) default: Option<Option<Path>>,
    /// From where to where it usually lies.
    pub(crate) usual: Option<[String; 2]>,
    /// Fewest and most letters or items.
    pub(crate) size: Option<(usize, usize)>,
    /// No person reads it.
    pub(crate) for_machines: bool,
    /// It is no part of the answer.
    pub(crate) skip: bool,
}

/// The doc comment: its lines without the space before them, joined.
pub(crate) fn doc(attributes: &[Attribute]) -> String {
    let lines = attributes.iter().filter_map(|attribute| match &attribute.meta {
        Meta::NameValue(meta) if meta.path.is_ident("doc") => match &meta.value {
            Expr::Lit(ExprLit { lit: Lit::Str(text), .. }) => Some(text.value()),
            _ => None,
        },
        _ => None,
    });
    let lines: Vec<String> = lines.map(|line| line.strip_prefix(' ').unwrap_or(&line).trim_end().to_owned()).collect();
    lines.join("\n").trim().to_owned()
}

impl Said {
    /// Reads the attributes of a field or a variant.
    pub(crate) fn of<'a>(attributes: impl IntoIterator<Item = &'a Attribute>) -> Result<Self> {
        let mut said = Self::default();
        for attribute in attributes {
            if attribute.path().is_ident("field") {
                attribute.parse_args_with(|input: ParseStream<'_>| said.read(input))?;
            }
        }
        Ok(said)
    }

    fn read(&mut self, input: ParseStream<'_>) -> Result<()> {
        while !input.is_empty() {
            if input.peek(LitStr) {
                self.title = Some(input.parse::<LitStr>()?.value());
            } else {
                self.word(input)?;
            }
            if !input.is_empty() {
                input.parse::<Token![,]>()?;
            }
        }
        Ok(())
    }

    fn word(&mut self, input: ParseStream<'_>) -> Result<()> {
        let word = input.call(Ident::parse_any)?;
        match word.to_string().as_str() {
            "default" => {
                let function = input.peek(Token![=]).then(|| input.parse::<Token![=]>().and_then(|_| input.parse()));
                self.default = Some(function.transpose()?);
            }
            "usual" => {
                input.parse::<Token![=]>()?;
                self.usual = Some(pair(input)?);
            }
            "size" => {
                let inside;
                parenthesized!(inside in input);
                self.size = Some(size(&inside)?);
            }
            "for_machines" => self.for_machines = true,
            "skip" => self.skip = true,
            _ => {
                return Err(Error::new(word.span(), "known here are default, usual, size, for_machines and skip"));
            }
        }
        Ok(())
    }
}

/// Two texts in square brackets.
fn pair(input: ParseStream<'_>) -> Result<[String; 2]> {
    let inside;
    bracketed!(inside in input);
    let first: LitStr = inside.parse()?;
    inside.parse::<Token![,]>()?;
    let second: LitStr = inside.parse()?;
    Ok([first.value(), second.value()])
}

/// `1..=40` or `..=40`.
fn size(input: ParseStream<'_>) -> Result<(usize, usize)> {
    let number = || input.parse::<LitInt>()?.base10_parse::<usize>();
    let least = if input.peek(LitInt) { number()? } else { 0 };
    input.parse::<Token![..=]>()?;
    Ok((least, number()?))
}
