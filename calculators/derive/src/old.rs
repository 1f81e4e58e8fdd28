//! The attributes of serde and schemars, as far as declarations use them. Goes when none is left.

use syn::ext::IdentExt;
use syn::parse::ParseStream;
use syn::{Error, Expr, Ident, LitInt, LitStr, Result, Token, parenthesized};

use crate::attributes::{Said, pair};

impl Said {
    pub(crate) fn read_old(&mut self, input: ParseStream<'_>) -> Result<()> {
        while !input.is_empty() {
            let word = input.call(Ident::parse_any)?;
            match word.to_string().as_str() {
                "title" | "rename" => {
                    input.parse::<Token![=]>()?;
                    self.title = Some(input.parse::<LitStr>()?.value());
                }
                "default" => {
                    let mut function = None;
                    if input.peek(Token![=]) {
                        input.parse::<Token![=]>()?;
                        function = Some(input.parse::<LitStr>()?.parse()?);
                    }
                    self.default = Some(function);
                }
                "length" => {
                    let inside;
                    parenthesized!(inside in input);
                    let mut size = (0, usize::MAX);
                    while !inside.is_empty() {
                        let bound: Ident = inside.parse()?;
                        inside.parse::<Token![=]>()?;
                        let number = inside.parse::<LitInt>()?.base10_parse()?;
                        if bound == "min" {
                            size.0 = number
                        } else {
                            size.1 = number
                        }
                        if !inside.is_empty() {
                            inside.parse::<Token![,]>()?;
                        }
                    }
                    self.size = Some(size);
                }
                "extend" => {
                    let inside;
                    parenthesized!(inside in input);
                    let key = inside.parse::<LitStr>()?.value();
                    inside.parse::<Token![=]>()?;
                    match key.as_str() {
                        "x-usual" => self.usual = Some(pair(&inside)?),
                        _ => {
                            inside.parse::<Expr>()?;
                            self.for_machines |= key == "x-for-machines";
                        }
                    }
                }
                "skip" => self.skip = true,
                _ => return Err(Error::new(word.span(), "not known here")),
            }
            if !input.is_empty() {
                input.parse::<Token![,]>()?;
            }
        }
        Ok(())
    }
}
